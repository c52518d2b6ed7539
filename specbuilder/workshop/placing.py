"""What is open about the place of a part, in words."""

from __future__ import annotations

from specbuilder.model.catalogue import Option

from .positions import Spot
from .view import Chosen, SpecView


def open_about(view: SpecView, one: Chosen) -> str:
    """Why a figure is missing or not to be relied on; empty where its place is settled."""
    option = one.option
    if option is None:
        return ""
    spot = view.positions.of_choice(one.choice, option)
    other = other_body(view, option, spot) if spot is not None else ()
    body = f"drawn for a van of another {' and '.join(other)}: measure on the van" if other else ""
    return "; ".join(filter(None, (body, _open(view, one, option, spot))))


def other_body(view: SpecView, option: Option, spot: Spot) -> tuple[str, ...]:
    """What of the van the place hangs on and is other than drawn: ``height`` for its z, ``width`` for its y."""
    body = view.positions.body(option)
    found = (("height", body.z_is_open(spot.z_mm)), ("width", body.y_is_open(spot.y_mm, option.space.width_mm)))
    return tuple(name for name, is_open in found if is_open)


def _open(view: SpecView, one: Chosen, option: Option, spot: Spot | None) -> str:
    """What its choice and those beside it leave open."""
    sits_at = option.sits_at or view.catalogue.groups[option.group].sits_at
    if not view.positions.is_drawn(option):
        return f"measure on the van: {option.measure or 'its place is drawn beside other parts'}"
    if spot is None and sits_at is not None and option.position is not None:
        return f"NOT DECIDED: {view.catalogue.groups[sits_at].name}"
    if spot is not None and spot.x_mm is None:
        return "x is NOT KNOWN before the base van is decided"
    if option.places and one.choice.place is None:
        return "side NOT DECIDED; shown for the usual one"
    return "measure on the van: more than one" if spot is not None and one.choice.count > 1 else ""
