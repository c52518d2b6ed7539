"""How far a build is: which hold points are passed, what was read there, and where its parts are."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import PassFigure, WorkStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec

from .passing import pass_figures
from .view import Chosen, SpecView


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldPoint:
    """A step of the build that stops until it is read and signed."""

    step: WorkStep
    figures: tuple[PassFigure, ...]
    """What must be read in this build."""
    passed: Record | None
    readings: tuple[Record, ...]
    """What was read and written down."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartOfBuild:
    """A part that is fetched, and what was last written down of it."""

    chosen: Chosen
    supply: Record | None
    fitted: bool
    """The hold point of its step is passed."""


def hold_points(view: SpecView) -> tuple[HoldPoint, ...]:
    """Every hold point, in build order."""
    return tuple(
        HoldPoint(
            step=step,
            figures=pass_figures(view, step),
            passed=_last(view.spec, RecordKind.PASSED, step.hold_point),
            readings=tuple(r for r in view.spec.recorded(RecordKind.READING) if r.about == step.hold_point),
        )
        for step in view.catalogue.work.values()
        if step.hold_point
    )


def next_hold(points: tuple[HoldPoint, ...]) -> HoldPoint | None:
    """The first that is not passed."""
    return next((point for point in points if point.passed is None), None)


def parts_of_build(view: SpecView) -> tuple[PartOfBuild, ...]:
    """What is fetched for this build, in build order: all that weighs something and is no van."""
    passed = {point.step.id for point in hold_points(view) if point.passed is not None}
    return tuple(
        PartOfBuild(
            chosen=one,
            supply=_last(view.spec, RecordKind.SUPPLY, one.choice.option),
            fitted=view.build_step(one.option) in passed,
        )
        for one in view.in_build_order()
        if one.option is not None and one.option.mass_kg > 0 and one.option.van is None
    )


def _last(spec: Spec, kind: RecordKind, about: str) -> Record | None:
    return next((record for record in reversed(spec.recorded(kind)) if record.about == about), None)
