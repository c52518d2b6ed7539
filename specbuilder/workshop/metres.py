"""How many metres of which cable a build takes: a run is stated one way, and most of 12 V go there and back."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitLine

from .wiring import starts_column

_FUSE, _FEEDS = "fuse", "feeds"
_UNFUSED = frozenset({"main", "none"})
_BATTERY, _EARTH = "leisure battery", "earth"


class Cores(StrEnum):
    """What lies in one run."""

    PAIR = "plus and minus"
    """Two single cores, each as long as the run."""
    ONE = "one core"
    """The run is itself the plus, the negative or the earth."""
    CABLE = "one cable with all its cores"
    """Mains."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Metres:
    """Runs of one side, section, insulation and kind, together."""

    like: CircuitLine
    """The first of them: cable and side."""
    cores: Cores
    runs: int
    one_way_m: float
    drawn_m: float
    """Off the drum, without ends and waste."""


def metres(catalogue: Catalogue, lines: Iterable[CircuitLine]) -> tuple[Metres, ...]:
    """Thinnest first; cables of which no section is known last."""
    fuse, feeds = starts_column(catalogue, _FUSE), starts_column(catalogue, _FEEDS)
    found: dict[tuple[object, ...], list[CircuitLine]] = {}
    for line in lines:
        start = line.from_point if line.from_point in fuse else f"any {line.bus}"
        cores = _cores(line, fuse.get(start, ""), feeds.get(start, ""))
        found.setdefault((cores, line.area_mm2, line.side_by_side, line.insulation_c), []).append(line)
    return tuple(sorted(_summed(found), key=lambda one: (one.like.area_mm2 is None, one.like.area_mm2 or 0, one.cores)))


def _summed(found: dict[tuple[object, ...], list[CircuitLine]]) -> Iterator[Metres]:
    for (cores, *_), lines in found.items():
        assert isinstance(cores, Cores), "the key begins with the cores"
        one_way_m = sum(line.run_one_way_m for line in lines)
        each = lines[0].side_by_side * (2 if cores is Cores.PAIR else 1)
        yield Metres(like=lines[0], cores=cores, runs=len(lines), one_way_m=one_way_m, drawn_m=one_way_m * each)


def _cores(line: CircuitLine, fuse: str, feeds: str) -> Cores:
    """A cable of the battery without a fuse but its main one is one of its poles; a bonding conductor is an earth."""
    if feeds == _EARTH or (feeds == _BATTERY and fuse in _UNFUSED):
        return Cores.ONE
    return Cores.CABLE if line.is_mains else Cores.PAIR
