"""A spec with its report as text: what was said, and beside it what follows, in the order the workshop builds."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.plain_text import hidden_character, lines, one_line
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.vans import Van
from specbuilder.workshop.view import SpecView, view_of

from .spec_format import CHECKSUM, FORMAT, checksum_of
from .spec_head import first_page, sides_and_limits
from .spec_log import log
from .spec_notes import notes
from .spec_parts import parts
from .spec_schedules import schedules
from .spec_sums import sums
from .spec_work import work
from .text_limits import CONTACT_LONGEST, NAME_LONGEST, NOTE_LONGEST, VAN_TEXT_LONGEST, VIN_TAIL_LONGEST, cut
from .toml_out import Value, comment, exact, figure, item, keys, table

_HEAD = """\
# The spec of one van: what nobody has looked at, the van, the parts, holes and schedules, sums, the order of work,
# what is said and signed. Parts, holes and circuits stand in build order; mm are on the datum; money is in whole pence.
# What is "Computed" follows from the rest: it is there to be read, and changing it changes nothing. The program writes
# this file again with every change, so nothing is signed or measured in here: that is done on paper.
"""
_PARTS = """\
PARTS, in build order. Said: option, taken, count, place, whose, note, came_with, at and own_part; the rest is computed.
x_mm, y_mm and z_mm are the middle of its mass. basis is that of mass, price and weeks; without it, the house list. What
is ordered and in store is not kept in this file."""
_NOT_BUILT = {
    JobState.DRAFT: "NOT TO BE BUILT: this is a draft.",
    JobState.QUOTED: "NOT TO BE BUILT: this is quoted and not ordered.",
    JobState.EXPIRED: "NOT TO BE BUILT: this has expired.",
}


def spec_text(catalogue: Catalogue, spec: Spec, report: Report) -> str:
    """The file of a spec. The same spec, catalogue and report give the same text, byte for byte.

    Hidden characters are shown as a replacement sign (see ``spec_format``), those of a catalogue nobody looked at as
    well; numbers must be finite.
    """
    view = view_of(catalogue, spec, report)
    head = _readable(f"{_HEAD}format = {FORMAT}\n{_job(view)}")
    rest = _readable("".join(_rest(view)))
    return f"{head}{keys({CHECKSUM: checksum_of(head + rest)})}{rest}"


def _readable(text: str) -> str:
    return lines(text) if hidden_character(text, lines=True) else text


def _rest(view: SpecView) -> Iterator[str]:
    spec, chosen = view.spec, view.in_build_order()
    yield from first_page(view)
    customer = {
        "name": cut(one_line(spec.customer.name), NAME_LONGEST),
        "contact": cut(lines(spec.customer.contact), CONTACT_LONGEST),
    }
    yield table("customer", customer, remark="CUSTOMER. Private: on no paper for anybody else.")
    yield _vehicle(view)
    yield from sides_and_limits(view)
    yield from _answers(view)
    yield "\n" + comment(_PARTS)
    yield from parts(view, chosen)
    yield from schedules(view, chosen)
    yield from sums(view)
    yield from work(view, chosen)
    yield from notes(view)
    yield _headed("ACCEPTED: cautions the customer was told and accepted, in the words used.", spec.accepted)
    for acceptance in spec.accepted:
        rule = view.catalogue.rules.get(acceptance.rule)
        said = {"rule": one_line(acceptance.rule), "said": rule.because if rule else "NO LONGER IN THE CATALOGUE"}
        accepted = {"words": lines(acceptance.words), "by": one_line(acceptance.by), "at": one_line(acceptance.at)}
        yield item("accepted", said | accepted, always=("rule",))
    yield _headed("OPEN QUESTIONS: who finds it out, by when, and what it stops.", spec.questions)
    for question in spec.questions:
        asked = {"text": one_line(question.text), "owner": one_line(question.owner)}
        asked |= {"due": one_line(question.due), "stops": one_line(question.stops)}
        asked |= {"part": one_line(question.part)} if question.part else {}
        yield item("open", asked, always=("text",))
    yield from log(spec)


def _headed(remark: str, said: tuple[object, ...]) -> str:
    return "\n" + comment(remark if said else f"{remark} None.")


def _job(view: SpecView) -> str:
    spec, catalogue = view.spec, view.catalogue
    return table(
        "job",
        {
            "number": one_line(spec.number),
            "revision": spec.revision,
            "replaces": spec.replaces,
            "reason": cut(one_line(spec.reason), NOTE_LONGEST),
            "state": spec.state.value,
            "not_to_be_built": _NOT_BUILT.get(spec.state),
            "valid_until": one_line(spec.valid_until),
            "signed_on": one_line(spec.signed_on),
            "newest_entry_at": max(_times(spec), default="") or "NOT KNOWN",
            "note": cut(lines(spec.note), NOTE_LONGEST),
            "firm": f"{catalogue.firm.name}, {catalogue.firm.town}",
            "catalogue_version": catalogue.firm.catalogue_version,
            "catalogue_digest": catalogue.digest,
        },
        remark="JOB. Said: number, revision, replaces, reason, state, note (private to the house); computed: the rest.",
    )


def _times(spec: Spec) -> Iterator[str]:
    """When something was taken or accepted, as written down: YYYY-MM-DD HH:MM sorts as it stands."""
    yield from (one_line(choice.at) for choice in spec.choices)
    yield from (one_line(acceptance.at) for acceptance in spec.accepted)


def _vehicle(view: SpecView) -> str:
    data = view.spec.van_data
    option = view.van_option
    said: dict[str, Value | None] = {
        "vin_tail": cut(one_line(data.vin_tail), VIN_TAIL_LONGEST),
        "year": data.year,
        "registration": cut(one_line(data.registration), VAN_TEXT_LONGEST),
        "paint_code": cut(one_line(data.paint_code), VAN_TEXT_LONGEST),
        "mileage_km": data.mileage_km,
        "damage": cut(lines(data.damage), VAN_TEXT_LONGEST),
        "front_as_received_kg": exact(data.weighed_front_kg),
        "rear_as_received_kg": exact(data.weighed_rear_kg),
    }
    name = option.name if option else "NOT DECIDED"
    follows: dict[str, Value | None] = {"base_van": name, "base_van_option": option.id if option else None}
    body = _body(view, option.van) if option and option.van else {}
    remark = "VAN. Said: vin_tail to rear_as_received_kg; the rest is computed from the base van."
    return table("vehicle", follows | said | body, remark=remark)


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
        "remark": van.remark,
    }


def _answers(view: SpecView) -> Iterator[str]:
    """Given answers, in the order they are asked; what the catalogue does not ask comes last."""
    given = view.spec.answers.given
    lines_ = view.catalogue.brief
    brief = {key: given[key] for key, line in lines_.items() if line.question is not None and key in given}
    state = {key: given[key] for key, line in lines_.items() if line.question is None and key in given}
    strange = {key: value for key, value in given.items() if key not in lines_}
    yield "\n# BRIEF: what the customer said. A line that is missing is not known yet.\n[brief]\n"
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
