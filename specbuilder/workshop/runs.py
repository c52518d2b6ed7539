"""What only the whole build tells of a cable run: how far apart its ends sit, and which breaker stands before it.

A run is stated in the catalogue, and so is where parts sit. Where both ends of a run, or of runs one behind the other,
are at parts with a place, no cable is shorter than the straight line between them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import hypot

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.vans import Van

from .positions import Positions, Spot
from .wiring import WirePoint, column_of, wired

_ENDS, _END, _TAG = "cable-ends", "end", "tag"
"""The table of the catalogue that says at which part a cable ends, and its columns."""


def in_place(
    catalogue: Catalogue, spec: Spec, van: Van | None, lines: tuple[CircuitLine, ...]
) -> tuple[CircuitLine, ...]:
    """The runs of a schedule with what is to be said of them in this van."""
    if not lines:
        return lines
    both, seen = wired(catalogue, lines), _Seen(catalogue, spec, van)
    found: dict[str, list[CircuitProblem]] = {}
    for tree in (*both.low, *both.mains):
        for label, problem in seen.problems(tree, _Way()):
            found.setdefault(label, []).append(problem)
    return tuple(
        replace(line, problems=(*line.problems, *found[line.label])) if line.label in found else line for line in lines
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """Where a part sits, with the figures that hold in this van."""

    x_mm: float | None
    y_mm: float | None
    z_mm: float | None

    def straight_m(self, other: _Place) -> float:
        """At least so far away: a figure that one of them lacks counts as none."""
        pairs = ((self.x_mm, other.x_mm), (self.y_mm, other.y_mm), (self.z_mm, other.z_mm))
        return hypot(*(a - b for a, b in pairs if a is not None and b is not None)) / 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """What was passed on the way down from the source."""

    place: _Place | None = None
    """The last one that is known."""
    run_m: float = 0
    """Of cable since then."""
    runs: tuple[str, ...] = ()
    """Their labels."""
    breaker: CircuitLine | None = None
    """The last run of the mains that has one."""


class _Seen:
    """Where the ends of cables are in one van."""

    def __init__(self, catalogue: Catalogue, spec: Spec, van: Van | None) -> None:
        self._positions = Positions(catalogue=catalogue, spec=spec, van=van)
        self._tags: Mapping[str, str] = column_of(catalogue, _ENDS, _END, _TAG)
        known = ((choice, catalogue.options.get(choice.option)) for choice in spec.choices)
        self._chosen = tuple((choice, option) for choice, option in known if option is not None)

    def problems(self, point: WirePoint, way: _Way) -> Iterator[tuple[str, CircuitProblem]]:
        """By label, of everything from here down."""
        line = point.line
        if line is not None:
            way = replace(way, run_m=way.run_m + line.run_one_way_m, runs=(*way.runs, line.label))
            yield from ((line.label, problem) for problem in _breaker_problem(line, way.breaker))
            if line.is_mains and line.fuse_a is not None:
                way = replace(way, breaker=line)
        place = self._place(point.name)
        if place is not None:
            if line is not None and way.place is not None:
                yield from ((line.label, problem) for problem in _length_problem(way, way.place.straight_m(place)))
            way = replace(way, place=place, run_m=0, runs=())
        for below in point.below:
            yield from self.problems(below, way)

    def _place(self, end: str) -> _Place | None:
        """None where the catalogue does not say at which part it is, or where that part sits."""
        tag = self._tags.get(end)
        at = [(choice, option) for choice, option in self._chosen if tag in option.gives]
        if len(at) != 1 or at[0][0].count != 1:
            return None
        spot = self._positions.of_choice(*at[0])
        return self._holding(spot, *at[0]) if spot is not None else None

    def _holding(self, spot: Spot, choice: Choice, option: Option) -> _Place:
        """Without what hangs on a body that is other than drawn, or on a side nobody has chosen yet."""
        body, side_open = self._positions.body(option), bool(option.places) and choice.place is None
        return _Place(
            x_mm=spot.x_mm,
            y_mm=None if side_open or body.y_is_open(spot.y_mm, option.space.width_mm) else spot.y_mm,
            z_mm=None if body.z_is_open(spot.z_mm) else spot.z_mm,
        )


def _length_problem(way: _Way, straight_m: float) -> Iterator[CircuitProblem]:
    if way.run_m < straight_m:
        before = ", ".join(reversed(way.runs[:-1]))
        yield CircuitProblem(code=CircuitCode.RUN_BELOW_STRAIGHT_LINE, has=way.run_m, needs=straight_m, what=before)


def _breaker_problem(line: CircuitLine, before: CircuitLine | None) -> Iterator[CircuitProblem]:
    """A larger breaker behind a smaller one never trips first."""
    if before is None or before.fuse_a is None or line.fuse_a is None or line.fuse_a <= before.fuse_a:
        return
    yield CircuitProblem(code=CircuitCode.BREAKER_ABOVE_FEED, has=line.fuse_a, needs=before.fuse_a, what=before.label)
