"""Which side everything is on, in one line that nobody can read the wrong way round."""

from __future__ import annotations

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Pick, Place

from .view import Chosen, SpecView


def handed_line(view: SpecView) -> str:
    """``SLIDING DOOR: LEFT. GALLEY: RIGHT. HOOK-UP: RIGHT REAR.``: every side, in the order of the catalogue."""
    van = view.van_option.van if view.van_option else None
    sides = [f"sliding door: {' and '.join(van.sliding_doors) if van else 'not decided'}"]
    sides.append(f"steering: {view.steering or 'not known'}")
    for group in view.catalogue.groups.values():
        if not any(option.places for option in view.catalogue.options_of(group.id)):
            continue
        if group.id in view.report.undecided:
            sides.append(f"{group.name}: not decided")
        for one in view.taken:
            if one.option is not None and one.option.group == group.id and one.option.places:
                name = group.name if group.pick is Pick.ONE else one.option.name
                sides.append(f"{name}{_what_of_it(one.option)}: {_side(view, one, one.option)}")
    return " ".join(f"{side.upper()}." for side in sides)


def _what_of_it(option: Option) -> str:
    """What its side is about, when that is not the part itself."""
    return " exhaust" if option.exhaust_outlet is not None else ""


def _side(view: SpecView, one: Chosen, option: Option) -> str:
    """The place; for a hole at the rear, the corner it is cut in as well."""
    place = one.choice.place
    if place is None:
        return "not decided"
    spots = [view.positions.of_cut_drawn(hole, one.choice, option) for hole in one.holes] if place is Place.REAR else []
    sides = {Place.LEFT if spot.y_mm > 0 else Place.RIGHT for spot in spots if spot is not None and spot.y_mm}
    return f"{sides.pop()} {place}" if len(sides) == 1 else place.value
