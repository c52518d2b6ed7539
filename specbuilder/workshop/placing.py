"""What is open about the place of a part, in words."""

from __future__ import annotations

from .view import Chosen, SpecView


def open_about(view: SpecView, one: Chosen) -> str:
    """Why a figure is missing or not to be relied on; empty where its place is settled."""
    option = one.option
    if option is None:
        return ""
    spot = view.positions.of_choice(one.choice, option)
    sits_at = option.sits_at or view.catalogue.groups[option.group].sits_at
    if not view.positions.is_drawn(option):
        return "measure on the van: its place is drawn beside other parts"
    if spot is None and sits_at is not None and option.position is not None:
        return f"NOT DECIDED: {view.catalogue.groups[sits_at].name}"
    if spot is not None and spot.x_mm is None:
        return "x is NOT KNOWN before the base van is decided"
    if option.places and one.choice.place is None:
        return "side NOT DECIDED; shown for the usual one"
    return "measure on the van: more than one" if spot is not None and one.choice.count > 1 else ""
