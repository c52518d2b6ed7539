"""What of a part must be there before the step that fits it: its template, its plates, its report."""

from __future__ import annotations

from specbuilder.model.parts import Hole

from .view import Chosen, SpecView

_WORD = "template"


def by_template(hole: Hole) -> bool:
    """Whether the catalogue says that it is marked by the template of its part."""
    return _WORD in hole.cut_from or _WORD in hole.measure


def needed_before(view: SpecView, one: Chosen) -> tuple[str, ...]:
    """Steps before its own that cannot be passed without the part.

    A hole is cut there by its template, or the hold point looks at it; but where its hole is cut only later, no more
    than the place is agreed.
    """
    option, steps = one.option, tuple(view.catalogue.work.values())
    ids = [step.id for step in steps]
    if option is None or view.build_step(option) not in ids:
        return ()
    cut_at = {hole.freeze_step for hole in one.holes}
    by_its_template = {hole.freeze_step for hole in one.holes if by_template(hole)}
    found = []
    for number, step in enumerate(steps[: ids.index(view.build_step(option))]):
        looked_at = bool(step.hold_point) and step.hold_point in option.hold_points
        cut_later = not cut_at.isdisjoint(ids[number + 1 :])
        if step.id in by_its_template or (looked_at and not cut_later):
            found.append(step.id)
    return tuple(found)
