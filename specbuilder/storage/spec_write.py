"""A spec with its report as text: what was said, and beside it what follows, in the order the workshop builds."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue, Van
from specbuilder.model.kinds import JobState, Owner
from specbuilder.model.report import Report
from specbuilder.model.spec import OwnPart, Spec

from .spec_format import CHECKSUM, FORMAT, checksum_of, lines, one_line
from .spec_tables import after_choices, before_brief, before_choices, before_questions
from .spec_view import Chosen, SpecView
from .toml_out import Value, exact, figure, item, keys, table

_HEAD = """\
# The spec of one van, in build order. x_mm, y_mm and z_mm are on the datum of the job; money is in whole pence.
# Tables and keys marked "computed" follow from the rest: they are there to be read, and changing them changes nothing.
"""
_NOT_BUILT = {
    JobState.DRAFT: "NOT TO BE BUILT: this is a draft.",
    JobState.QUOTED: "NOT TO BE BUILT: this is quoted and not ordered.",
    JobState.EXPIRED: "NOT TO BE BUILT: this has expired.",
}


def spec_text(catalogue: Catalogue, spec: Spec, report: Report) -> str:
    """The file of a spec. The same spec, catalogue and report give the same text, byte for byte.

    Hidden characters in what was said are shown as a replacement sign (see ``spec_format``); numbers must be finite.
    """
    view = SpecView(catalogue=catalogue, spec=spec, report=report)
    head = f"{_HEAD}format = {FORMAT}\n{_job(view)}"
    rest = "".join(_rest(view))
    return f"{head}{keys({CHECKSUM: checksum_of(head + rest)})}{rest}"


def _rest(view: SpecView) -> Iterator[str]:
    spec = view.spec
    customer = {"name": one_line(spec.customer.name), "contact": lines(spec.customer.contact)}
    yield table("customer", customer, remark="Private: on no paper for anybody else.")
    yield _vehicle(view)
    yield from before_brief(view)
    yield from _answers(view)
    yield from before_choices(view)
    for chosen in view.in_build_order():
        yield _choice(view, chosen)
    yield from after_choices(view)
    for acceptance in spec.accepted:
        rule = view.catalogue.rules.get(acceptance.rule)
        said = {"rule": one_line(acceptance.rule), "said": rule.because if rule else "NO LONGER IN THE CATALOGUE"}
        accepted = {"words": lines(acceptance.words), "by": one_line(acceptance.by), "at": one_line(acceptance.at)}
        yield item("accepted", said | accepted, always="rule")
    yield from before_questions(view)
    for question in spec.questions:
        asked = {"text": one_line(question.text), "owner": one_line(question.owner)}
        asked |= {"due": one_line(question.due), "stops": one_line(question.stops)}
        yield item("open", asked, always="text")


def _job(view: SpecView) -> str:
    spec, catalogue = view.spec, view.catalogue
    return table(
        "job",
        {
            "number": one_line(spec.number),
            "revision": spec.revision,
            "replaces": spec.replaces,
            "state": spec.state.value,
            "not_to_be_built": _NOT_BUILT.get(spec.state),
            "note": lines(spec.note),
            "firm": f"{catalogue.firm.name}, {catalogue.firm.town}",
            "catalogue_version": catalogue.firm.catalogue_version,
            "catalogue_digest": catalogue.digest,
        },
        remark="note is private to the house. Firm, catalogue and checksum are computed.",
    )


def _vehicle(view: SpecView) -> str:
    data = view.spec.van_data
    option = view.van_option
    said: dict[str, Value | None] = {
        "vin_tail": one_line(data.vin_tail),
        "year": data.year,
        "registration": one_line(data.registration),
        "paint_code": one_line(data.paint_code),
        "mileage_km": data.mileage_km,
        "damage": lines(data.damage),
        "front_as_received_kg": exact(data.weighed_front_kg),
        "rear_as_received_kg": exact(data.weighed_rear_kg),
    }
    unknown = "; ".join(words for key, words in _VAN_DATA.items() if said[key] in (None, ""))
    name = option.name if option else "NOT DECIDED"
    follows: dict[str, Value | None] = {"base_van": name, "base_van_option": option.id if option else None}
    body = _body(view, option.van) if option and option.van else {}
    remark = "The real vehicle: vin_tail to rear_as_received_kg were said, the rest is computed from the base van."
    return table("vehicle", follows | said | {"not_known": unknown} | body, remark=remark)


_VAN_DATA = {
    "vin_tail": "last six of the chassis number",
    "year": "year",
    "registration": "registration",
    "paint_code": "paint code",
    "mileage_km": "mileage",
    "damage": "damage on arrival",
    "front_as_received_kg": "weight on the front axle as received",
    "rear_as_received_kg": "weight on the rear axle as received",
}


def _body(view: SpecView, van: Van) -> dict[str, Value | None]:
    return {
        "wheelbase_mm": figure(van.wheelbase_mm),
        "length_mm": figure(van.length_mm),
        "width_mm": figure(van.width_mm),
        "height_mm": figure(van.height_mm),
        "load_length_mm": figure(van.load_length_mm),
        "sliding_doors": " and ".join(van.sliding_doors),
        "rear_doors": van.rear_doors,
        "steering": view.steering,
        "fuel": van.fuel,
        "driven_axle": van.driven_axle,
        "plate_kg": figure(van.m_max_kg),
        "front_axle_plate_kg": figure(van.f_max_kg),
        "rear_axle_plate_kg": figure(van.r_max_kg),
        "running_order_kg": figure(van.mro_kg),
        "do_not_drill": "; ".join(van.no_drill_zones),
        "remark": van.remark,
    }


def _answers(view: SpecView) -> Iterator[str]:
    """Given answers, in the order they are asked; what the catalogue does not ask comes last."""
    given = view.spec.answers.given
    lines_ = view.catalogue.brief
    brief = {key: given[key] for key, line in lines_.items() if line.question is not None and key in given}
    state = {key: given[key] for key, line in lines_.items() if line.question is None and key in given}
    strange = {key: value for key, value in given.items() if key not in lines_}
    yield "\n# What the customer said. A line that is missing is not known yet.\n[brief]\n"
    yield keys({one_line(key): _answer(value) for key, value in (brief | strange).items()})
    yield "\n[job_state]\n" + keys({one_line(key): _answer(value) for key, value in state.items()})


def _answer(value: Answer) -> Value:
    match value:
        case str():
            return one_line(value)
        case tuple():
            return [one_line(v) for v in value if isinstance(v, str)] or [v for v in value if isinstance(v, int)]
        case float():
            return exact(value) or 0
        case _:
            return value


def _choice(view: SpecView, chosen: Chosen) -> str:
    choice, option = chosen.choice, chosen.option
    said: dict[str, Value | None] = {
        "option": one_line(choice.option),
        "taken": chosen.taken,
        "count": choice.count,
        "place": choice.place.value if choice.place else None,
        "whose": choice.owner.value,
        "note": lines(choice.note),
        "came_with": [one_line(cause) for cause in choice.came_with] or None,
        "at": one_line(choice.at),
    }
    name: dict[str, Value | None] = {"name": option.name if option else "NO LONGER IN THE CATALOGUE"}
    text = item("choice", name | said | (_part(view, chosen) if option else {}), always="option")
    return text + (_own_part(choice.own_part) if choice.own_part is not None else "")


def _part(view: SpecView, chosen: Chosen) -> dict[str, Value | None]:
    """What the catalogue says of the part; everything here is computed.

    Mass, price and weeks of a van stand under ``[vehicle]``, ``[price]`` and the ledgers; those of a customer's part
    are its own, on its sheet.
    """
    option, choice = chosen.option, chosen.choice
    if option is None:
        return {}
    catalogue = view.catalogue
    spot = view.positions.of_choice(choice, option)
    ours = choice.owner is Owner.HOUSE and option.van is None
    return {
        "group": catalogue.groups[option.group].name,
        "build_step": view.work_name(view.build_step(option)),
        "mass_each_kg": figure(option.mass_kg) if ours else None,
        "price_net_each_pence": option.price_net_pence if ours else None,
        "lead_weeks": figure(option.lead_weeks) if ours else None,
        "x_mm": figure(spot.x_mm) if spot else None,
        "y_mm": figure(spot.y_mm) if spot else None,
        "z_mm": figure(spot.z_mm) if spot else None,
        "position": _position_words(view, chosen),
        "length_mm": figure(option.space.length_mm),
        "width_mm": figure(option.space.width_mm),
        "height_mm": figure(option.space.height_mm),
        "hold_points": ", ".join(option.hold_points),
        "papers": "; ".join(catalogue.papers[p].name for p in option.papers if p in catalogue.papers),
        "figures": option.basis.value,
    }


def _position_words(view: SpecView, chosen: Chosen) -> str:
    """What is open about the position, so that a missing number is no silent blank."""
    option = chosen.option
    if option is None:
        return ""
    spot = view.positions.of_choice(chosen.choice, option)
    sits_at = view.catalogue.groups[option.group].sits_at
    if spot is None and sits_at is not None and option.position is not None:
        return f"NOT DECIDED: {view.catalogue.groups[sits_at].name}"
    if spot is not None and spot.x_mm is None:
        return "x is NOT KNOWN before the base van is decided"
    if option.places and chosen.choice.place is None:
        return "side NOT DECIDED; shown for the usual one"
    return "measure on the van: more than one" if spot is not None and chosen.choice.count > 1 else ""


def _own_part(part: OwnPart) -> str:
    said: dict[str, Value | None] = {
        "mass_kg": exact(part.mass_kg),
        "watts_w": exact(part.watts_w),
        "cut_out_mm": one_line(part.cut_out_mm),
        "arrives": one_line(part.arrives),
    }
    words = {"mass_kg": "mass", "watts_w": "watts", "cut_out_mm": "size of its hole", "arrives": "date of arrival"}
    unknown = "; ".join(name for key, name in words.items() if said[key] in (None, ""))
    return table("choice.own_part", said | {"not_known": unknown})
