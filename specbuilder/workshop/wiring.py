"""The wiring of a build as trees: from what feeds it down to what uses it, one for every source and side.

Made from the cable runs alone: one run hangs below another when it starts where that one ends, or at something that
stands there, as a fuse on a busbar does. Where no run ends, the catalogue's table of cable starts says what feeds it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.report import Report

_STARTS, _START, _FEEDS, _STANDS_AT = "cable-starts", "start", "feeds", "stands_at"
"""The table of the catalogue that says what feeds a cable, and three of its columns."""
_OWN_FEED = "its own feed"
"""In that table: whatever run ends there."""
_ANY = "any"
_IN_SERIES = "in series before "
"""In that table: it lies in the run that ends there, and all that run carries goes through it, as through a shunt."""
_AND = ", "
"""In that table, between places that are joined: it is drawn at the first, and the others lead to it."""
FUSE_BLOCK = "leisure battery fuse block"
"""Start or end of what never goes through the main user switch."""
SHUNT = "battery negative shunt"
"""Where the display of a battery monitor starts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WirePoint:
    """A place in the van where cables end or start."""

    name: str
    line: CircuitLine | None = None
    """The run that leads to it; None for a source and for a place that no run of the schedule leads to."""
    fed_by: CircuitLine | None = None
    """Of a source that is itself fed from the other side: the run that feeds it."""
    drawn_at: CircuitLine | None = None
    """Of a place to which more than one run leads: the one at whose end it is drawn with what hangs on it."""
    in_series: bool = False
    """It lies in its run: all below it goes through it."""
    below: tuple[WirePoint, ...] = ()
    """What hangs on it."""

    def lines(self) -> Iterator[CircuitLine]:
        """Its own run and those below it."""
        if self.line is not None:
            yield self.line
        for point in self.below:
            yield from point.lines()


@dataclass(frozen=True, slots=True, kw_only=True)
class Wiring:
    """Both sides; every run of the schedule stands in one of them, once."""

    low: tuple[WirePoint, ...]
    """12 V."""
    mains: tuple[WirePoint, ...]
    """230 V."""


def wiring(catalogue: Catalogue, report: Report) -> Wiring:
    """The trees of the circuit schedule."""
    return wired(catalogue, report.circuits)


def wired(catalogue: Catalogue, lines: tuple[CircuitLine, ...]) -> Wiring:
    """The trees of these runs."""
    told = _Told(feeds=starts_column(catalogue, _FEEDS), stands_at=starts_column(catalogue, _STANDS_AT))
    low = _Side(tuple(line for line in lines if not line.is_mains), lines, told)
    mains = _Side(tuple(line for line in lines if line.is_mains), lines, told)
    return Wiring(low=low.trees(), mains=mains.trees())


class _Told(NamedTuple):
    """What the table of starts says, by start."""

    feeds: Mapping[str, str]
    stands_at: Mapping[str, str]
    """Where what a cable starts from stands, if that is no place of its own."""

    def places_of(self, start: str) -> tuple[str, ...]:
        """The places at which it stands, that at which it is drawn first."""
        return tuple(self.stands_at.get(start, "").removeprefix(_IN_SERIES).split(_AND))

    def in_series_before(self, start: str, place: str) -> bool:
        """Whether all that goes on to that place goes through it."""
        return self.stands_at.get(start) == _IN_SERIES + place


def starts_column(catalogue: Catalogue, key: str) -> Mapping[str, str]:
    """What stands there in one column by the start of a cable."""
    return column_of(catalogue, _STARTS, _START, key)


def column_of(catalogue: Catalogue, table: str, by: str, key: str) -> Mapping[str, str]:
    """One column of a table of the catalogue by another; empty without that table or one of the columns."""
    found = catalogue.tables.get(table)
    if found is None:
        return {}
    keys = [column.key for column in found.columns]
    if by not in keys or key not in keys:
        return {}
    start, at = keys.index(by), keys.index(key)
    return {str(row[start]): str(row[at]) for row in found.rows}


class _Side:
    """The runs of one side, and those they hang on."""

    def __init__(self, own: tuple[CircuitLine, ...], every: tuple[CircuitLine, ...], told: _Told) -> None:
        self._own, self._every, self._told = own, every, told
        self._inward = {line.label for line in own if self._fed_from_elsewhere(line) is not None}
        self._parent = {line.label: self._above(line) for line in own}
        for line in own:
            self._cut_circle(line)

    def trees(self) -> tuple[WirePoint, ...]:
        """One for every source, that with the most runs first."""
        found: dict[str, dict[str, list[CircuitLine]]] = {}
        for line in self._own:
            if self._parent[line.label] is None:
                found.setdefault(self._source(line), {}).setdefault(line.from_point, []).append(line)
        trees = [self._tree(source, starts) for source, starts in found.items()]
        return tuple(sorted(trees, key=lambda tree: -len(tuple(tree.lines()))))

    def _tree(self, source: str, starts: Mapping[str, list[CircuitLine]]) -> WirePoint:
        """What starts at the source itself hangs on it; a source with one other place to start is that place."""
        points = {start: self._start_point(lines) for start, lines in starts.items()}
        if len(points) == 1:
            return next(iter(points.values()))
        root = points.pop(source, WirePoint(name=source))
        return WirePoint(name=source, fed_by=root.fed_by, below=(*root.below, *points.values()))

    def _start_point(self, lines: list[CircuitLine]) -> WirePoint:
        below = tuple(self._point(line) for line in lines)
        return WirePoint(name=lines[0].from_point, fed_by=self._other_side(lines[0]), below=below)

    def _point(self, line: CircuitLine) -> WirePoint:
        """Where a run leads, with what stands there and what hangs on that."""
        starts: dict[str, list[CircuitLine]] = {}
        for one in self._own:
            if self._parent[one.label] == line.label:
                starts.setdefault(one.from_point, []).append(one)
        series = next((start for start in starts if self._told.in_series_before(start, line.to_point)), None)
        through = starts.pop(series, []) if series is not None else []
        below = [self._point(one) for one in starts.pop(line.to_point, ())]
        below += self._standing_at(starts)
        below += self._joined(line)
        if series is None:
            return WirePoint(name=line.to_point, line=line, below=tuple(below))
        behind = WirePoint(name=line.to_point, below=tuple(below))
        own = tuple(self._point(one) for one in through)
        return WirePoint(name=series, line=line, in_series=True, below=(behind, *own))

    def _standing_at(self, starts: Mapping[str, list[CircuitLine]]) -> Iterator[WirePoint]:
        """Places of their own name at the end of a run, each on the one it stands at where that is there as well."""
        on = {start: next((at for at in self._told.places_of(start) if at in starts), None) for start in starts}
        for start, lines in starts.items():
            if on[start] is None:
                standing = {each: starts[each] for each, at in on.items() if at == start}
                below = (*(self._point(line) for line in lines), *self._standing_at(standing))
                yield WirePoint(name=start, below=below)

    def _joined(self, line: CircuitLine) -> Iterator[WirePoint]:
        """Places drawn at the end of another run, to which this one leads as well: it does not end dead."""
        for start in dict.fromkeys(one.from_point for one in self._own):
            first, *others = self._told.places_of(start)
            if line.to_point in others:
                at = next((one for one in self._own if one.to_point == first), None)
                if at is not None and at.label != line.label:
                    yield WirePoint(name=start, drawn_at=at)

    def _source(self, line: CircuitLine) -> str:
        """In words what feeds a run to which nothing of this side leads. Of two chargers each is a source."""
        feeds = self._told.feeds
        named = feeds.get(line.from_point) or feeds.get(f"{_ANY} {line.bus}") or ""
        other = self._other_side(line)
        if other is not None and named != line.from_point:
            return f"{line.from_point}, {other.label}"
        return line.from_point if named in ("", _OWN_FEED) else named

    def _above(self, line: CircuitLine) -> str | None:
        """The run of this side at whose end it starts: one of the same part, else one that brings what feeds it.

        A charger's run ends at the fuse block, and yet the heater's run, which starts there, does not hang on it: the
        block is fed by the battery, and the charger only fills that.
        """
        if self._other_side(line) is not None:
            return None
        ends = [one for one in self._own if one.to_point == line.from_point and one.label != line.label]
        own = next((one for one in ends if one.option == line.option), None)
        if own is not None:
            return own.label
        brings = next((one.label for one in ends if self._brings(one, line)), None)
        return brings if brings is not None else self._beside(line)

    def _beside(self, line: CircuitLine) -> str | None:
        """The run that leads to the place where the fuse or block stands from which it starts."""
        return self._leads_to(line, line.from_point, frozenset())

    def _leads_to(self, line: CircuitLine, start: str, seen: frozenset[str]) -> str | None:
        """The same of a place that may stand at another one to which no run of its own leads."""
        for at in () if start in seen else self._told.places_of(start):
            found = next((one.label for one in self._own if one.to_point == at and one.label != line.label), None)
            found = found or self._leads_to(line, at, seen | {start})
            if found is not None:
                return found
        return None

    def _brings(self, one: CircuitLine, line: CircuitLine) -> bool:
        """A run that brings power in from elsewhere feeds only what the table says it feeds, as an inverter's does."""
        fills = one.bus == line.bus and one.label in self._inward
        return not fills or self._told.feeds.get(line.from_point) == one.from_point

    def _fed_from_elsewhere(self, line: CircuitLine) -> CircuitLine | None:
        """A run of another bus at whose end it starts: it brings power in, as a charger's output does."""
        ends = [one for one in self._every if one.to_point == line.from_point and one.bus != line.bus]
        return next((one for one in ends if one.option == line.option), ends[0] if ends else None)

    def _other_side(self, line: CircuitLine) -> CircuitLine | None:
        """The run of the other side, of the same part, that feeds what this one starts from."""
        return next(
            (
                one
                for one in self._every
                if one.to_point == line.from_point and one.option == line.option and one.is_mains != line.is_mains
            ),
            None,
        )

    def _cut_circle(self, line: CircuitLine) -> None:
        """Runs that hang on each other in a circle begin a tree: none may be lost."""
        seen = {line.label}
        above = self._parent[line.label]
        while above is not None and above not in seen:
            seen.add(above)
            above = self._parent[above]
        if above == line.label:
            self._parent[line.label] = None
