"""Which hole centres are marked at the hold point for marking, and which only when their template is there."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.parts import Hole
from specbuilder.workshop.templates import by_template
from specbuilder.workshop.view import Chosen

from .material import Material

_MARKING = "H1"
"""The hold point at which holes are marked out."""


def marked(material: Material, step: WorkStep) -> Iterator[tuple[str, str]]:
    """At the marking, what waits for its template, with its step; at that step, what is still to be marked there."""
    marking = next((one for one in material.steps if one.hold_point == _MARKING), None)
    if marking is None:
        return
    later = dict.fromkeys(
        (hole.id, hole.freeze_step) for one, _, hole in material.holes() if _is_later(material, marking, one, hole)
    )
    if step is marking and later:
        yield "Marked later, template in hand", ", ".join(f"{hole} (at {at})" for hole, at in later)
    elif here := [hole for hole, at in later if at == step.id]:
        yield "Marked here, template in hand", f"{', '.join(here)}: read each centre and sign before it is cut"


def _is_later(material: Material, marking: WorkStep, one: Chosen, hole: Hole) -> bool:
    """Marked by a template that is not there yet when the marking is done, or that nobody has a date for."""
    if not by_template(hole) or hole.freeze_step == marking.id:
        return False
    planned = material.planned(marking.id)
    arrivals = (arrival for step in material.case.plan.steps for arrival in step.arrivals)
    arrival = next((found for found in arrivals if found.option == one.choice.option), None)
    if planned is None or arrival is None or arrival.here:
        return False
    return arrival.on is None or arrival.on > planned.last_day
