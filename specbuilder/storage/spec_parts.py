"""A choice in a spec's file: what was said of it, and beside it what the catalogue says of the part."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Basis, JobState, Owner
from specbuilder.model.plain_text import lines, one_line
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.workshop.placing import open_about
from specbuilder.workshop.view import Chosen, SpecView

from .text_limits import NOTE_LONGEST, cut
from .toml_out import Value, comment, exact, figure, item, table


def parts(view: SpecView, chosen: tuple[Chosen, ...]) -> Iterator[str]:
    """Every choice, each step of the build under a line of its own."""
    last = None
    for one in chosen:
        step = view.build_step(one.option) if one.option else ""
        if step != last:
            last = step
            yield "\n" + comment(view.work_name(step) if step else "Of no step")
        yield _part(view, one)


def _part(view: SpecView, chosen: Chosen) -> str:
    """``[[choice]]``, with ``[choice.own_part]`` for a part the customer brings."""
    choice, option = chosen.choice, chosen.option
    said: dict[str, Value | None] = {
        "option": one_line(choice.option),
        "taken": chosen.taken,
        "count": choice.count,
        "place": choice.place.value if choice.place else None,
        "whose": choice.owner.value,
        "note": cut(lines(choice.note), NOTE_LONGEST),
        "came_with": [one_line(cause) for cause in choice.came_with] or None,
        "at": one_line(choice.at),
    }
    name: dict[str, Value | None] = {"name": option.name if option else "NO LONGER IN THE CATALOGUE"}
    text = item("choice", name | said | (_follows(view, chosen, option) if option else {}), always=("option",))
    return text + (_own_part(choice.own_part) if choice.own_part is not None else "")


def _follows(view: SpecView, chosen: Chosen, option: Option) -> dict[str, Value | None]:
    """Everything that is computed.

    Mass, price and weeks of a van stand under ``[vehicle]``, ``[price]`` and the ledgers; those of a customer's part
    are its own, on its sheet. What is no part has neither, but says why.
    """
    catalogue, choice = view.catalogue, chosen.choice
    ours = choice.owner is Owner.HOUSE and option.van is None
    nothing = option.zero_note if not option.mass_kg and not option.price_net_pence else ""
    counted = ours and not nothing
    return {
        "what": option.description,
        "no_part": nothing,
        "group": catalogue.groups[option.group].name,
        "build_step": view.build_step(option),
        "status": _status(view, choice) if option.mass_kg > 0 and option.van is None else "",
        "mass_each_kg": figure(option.mass_kg) if counted else None,
        "price_net_each_pence": option.price_net_pence if counted else None,
        "lead_weeks": figure(option.lead_weeks) if counted else None,
        **_where(view, chosen, option),
        "length_mm": figure(option.space.length_mm),
        "width_mm": figure(option.space.width_mm),
        "height_mm": figure(option.space.height_mm),
        "front_edge_x_mm": figure(view.front_edge_x_mm(option)),
        "turns_back_to_x_mm": figure(option.space.swivel_sweep_x_mm),
        "door_swing_mm": figure(option.space.swing_mm),
        "lid_swing_mm": figure(option.space.lid_swing_mm),
        "pull_out_mm": figure(option.space.pull_out_mm),
        "hold_points": ", ".join(option.hold_points),
        "papers": "; ".join(catalogue.papers[p].name for p in option.papers if p in catalogue.papers),
        "basis": "" if option.basis is Basis.SCENARIO else option.basis.value,
    }


def _status(view: SpecView, choice: Choice) -> str:
    """Where the part is, as far as the spec can tell: it keeps no store. What weighs nothing is work, not a part."""
    if choice.owner is Owner.CUSTOMER:
        arrives = one_line(choice.own_part.arrives) if choice.own_part else ""
        return f"the customer's: arrives {arrives}" if arrives else "the customer's: arrives NOT KNOWN"
    return "" if view.spec.state is JobState.AS_BUILT else "to be ordered"


def _where(view: SpecView, chosen: Chosen, option: Option) -> dict[str, Value | None]:
    spot = view.positions.of_choice(chosen.choice, option)
    return {
        "x_mm": figure(spot.x_mm) if spot else None,
        "y_mm": figure(spot.y_mm) if spot else None,
        "z_mm": figure(spot.z_mm) if spot else None,
        "position": open_about(view, chosen),
    }


def _own_part(own: OwnPart) -> str:
    """What the customer's part was said to be; what is missing stands in ``[not_known]``."""
    said: dict[str, Value | None] = {
        "mass_kg": exact(own.mass_kg),
        "watts_w": exact(own.watts_w),
        "cut_out_mm": one_line(own.cut_out_mm),
        "arrives": one_line(own.arrives),
        "door_mm": exact(own.door_mm),
        "day_wh": exact(own.day_wh),
        "continuous_a": exact(own.continuous_a),
        "capacity_ah": exact(own.capacity_ah),
        "chemistry": one_line(own.chemistry),
    }
    return table("choice.own_part", said)
