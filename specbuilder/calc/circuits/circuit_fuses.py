"""What can flow into a fault where a circuit starts, and which kind of fuse breaks it there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from specbuilder.calc.formulas.cables import drop_by_resistivity_v
from specbuilder.calc.formulas.fuses import kind_by_amps, kind_that_breaks, short_circuit_behind_ka
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.catalogue import Option
from specbuilder.model.circuits import CircuitCode, CircuitProblem

from .cable_sizing import BREAKER, BY_AMPS, MAIN, NO_FUSE, PANELS
from .circuit_tables import CircuitTables, FuseKind, Start

BATTERY, OWN_FEED, STARTER = "leisure battery", "its own feed", "starter battery"
"""Words of the table of starts for what feeds a cable."""
BLADE = "blade"
"""The series of small fuses, which stand in panels behind a larger one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What the fuses must know of one circuit."""

    label: str
    from_point: str
    to_point: str
    start: Start
    run_one_way_m: float
    area_mm2: float | None
    """Of all that lie side by side together."""
    fuse_a: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuse:
    """The fuse of one circuit."""

    kind: str = ""
    breaking_needed_ka: float | None = None
    breaking_ka: float | None = None
    problems: tuple[CircuitProblem, ...] = ()


class Fed:
    """Every circuit of a build, to see what feeds which."""

    def __init__(self, tables: CircuitTables, runs: Iterable[Run], battery: Option | None) -> None:
        """``battery`` is the leisure battery, None where there is none."""
        self._tables, self._battery = tables, battery
        self._feeds: dict[str, Run] = {}
        self._mains: list[Run] = []
        for run in runs:
            if run.start.feeds == BATTERY:
                self._feeds.setdefault(run.to_point, run)
            if run.start.fuse == MAIN:
                self._mains.append(run)

    def fuse(self, run: Run) -> Fuse:
        """Kind and breaking capacity of the fuse of one circuit."""
        start = run.start
        if start.fuse == NO_FUSE:
            asks = start.feeds == PANELS
            return Fuse(problems=(CircuitProblem(code=CircuitCode.FUSE_FROM_PART),) if asks else ())
        if run.fuse_a is None:
            return Fuse()
        if start.fuse == BREAKER:
            return Fuse(kind=self._tables.breaker_kind)
        needed, unknown = self._needed(run)
        kind = self._kind(run, needed)
        if kind is None:
            missing = CircuitProblem(code=CircuitCode.FUSE_KIND_MISSING, has=run.fuse_a)
            return Fuse(breaking_needed_ka=needed, problems=(*unknown, missing))
        problems = (*unknown, *self._short_of(run, kind, needed))
        return Fuse(kind=kind.kind, breaking_needed_ka=needed, breaking_ka=kind.breaking_ka, problems=problems)

    def _needed(self, run: Run) -> tuple[float | None, tuple[CircuitProblem, ...]]:
        """What a short circuit right behind the fuse may draw, in kA; None where it cannot be told."""
        feeds, settings = run.start.feeds, self._tables.settings
        if feeds == STARTER:
            return settings["short circuit of a starter battery in kA"], ()
        if feeds not in (BATTERY, OWN_FEED):
            return None, ()
        source = self._battery.power.short_circuit_ka if self._battery else None
        if source is None or source <= 0:
            return None, (CircuitProblem(code=CircuitCode.SHORT_CIRCUIT_UNKNOWN),)
        feed = self._feeds.get(run.from_point) if feeds == OWN_FEED else None
        return (source if feed is None else self._behind(source, feed)), ()

    def _behind(self, source_ka: float, feed: Run) -> float:
        """At the end of the cable that feeds it. Copper is cold then: that draws most."""
        settings = self._tables.settings
        rho = self._tables.rho[settings["warmth of the conductor for a short circuit in degrees"]]
        if feed.area_mm2 is None:
            return source_ka
        try:
            loop_mohm = drop_by_resistivity_v(1, feed.run_one_way_m, feed.area_mm2, rho) * 1000
            return short_circuit_behind_ka(source_ka, settings["open volts of a 12 V battery"], loop_mohm)
        except OutsideValidity:
            return source_ka

    def _kind(self, run: Run, needed_ka: float | None) -> FuseKind | None:
        """The kind by its place, else by its amps; of the bolted ones the first that breaks enough."""
        start, fuse_a = run.start, run.fuse_a
        assert fuse_a is not None, "only a circuit with a fuse has a kind of it"
        kinds = [kind for kind in self._tables.kinds if kind.largest_a >= fuse_a]
        named = self._main_kind() if start.fuse == MAIN else "" if start.fuse == BY_AMPS else start.fuse
        first = next((kind for kind in kinds if kind.kind == named), None)
        if first is not None and (needed_ka is None or first.breaking_ka >= needed_ka):
            return first
        bought = first.series if first else kind_by_amps(fuse_a, [(kind.series, kind.largest_a) for kind in kinds])
        same = [kind for kind in kinds if kind.series == bought]
        if bought == BLADE and needed_ka is not None and self._backing(run, needed_ka) is None:
            same += [kind for kind in kinds if fuse_a in self._tables.ratings_a.get(kind.series, ())]
        if not same:
            return None
        if needed_ka is None:
            return min(same, key=lambda kind: kind.breaking_ka)
        found = kind_that_breaks(needed_ka, [(kind.kind, kind.breaking_ka) for kind in same])
        able = next((kind for kind in same if kind.kind == found), None)
        return able or max(same, key=lambda kind: (kind.breaking_ka, kind.series == bought))

    def _main_kind(self) -> str:
        chemistry = self._battery.power.chemistry if self._battery else ""
        return self._tables.main_kinds.get(chemistry, "")

    def _short_of(self, run: Run, kind: FuseKind, needed_ka: float | None) -> tuple[CircuitProblem, ...]:
        """Whether it breaks enough; a blade fuse may lean on the larger one before it."""
        if needed_ka is None or kind.breaking_ka >= needed_ka:
            return ()
        backing = self._backing(run, needed_ka) if kind.series == BLADE else None
        if backing is not None:
            code, what = CircuitCode.BREAKING_BACKED_UP, backing.label
        else:
            code, what = CircuitCode.BREAKING_CAPACITY_TOO_SMALL, ""
        return (CircuitProblem(code=code, has=kind.breaking_ka, needs=needed_ka, what=what),)

    def _backing(self, run: Run, needed_ka: float) -> Run | None:
        """The circuit whose fuse stands before this one and breaks so much: its feed, else the battery's main."""
        if run.start.feeds not in (BATTERY, OWN_FEED):
            return None
        feed = self._feeds.get(run.from_point) if run.start.feeds == OWN_FEED else None
        before = feed if feed is not None else next(iter(self._mains), None)
        if before is None or before is run or before.fuse_a is None:
            return None
        kind = self._kind(before, self._needed(before)[0])
        return before if kind is not None and kind.breaking_ka >= needed_ka else None
