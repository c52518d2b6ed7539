"""The circuits on a screen: how many there are, a row for each, and what the row under the cursor says below it."""

from __future__ import annotations

from dataclasses import astuple, dataclass, replace

from specbuilder.model.circuits import CircuitCode, CircuitLine
from specbuilder.model.mains import MainsPoint, MainsStand
from specbuilder.model.report import Report

from .circuits import amount, cable_words, drop_words, fuse_words, said_of
from .plain import ended, raised
from .quantities import unit_text
from .readings import ESTIMATED, estimated_legend
from .states import TO_MIND

SETTLE, MIND = "to settle", TO_MIND


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitCells:
    """The cells of one row, in their order."""

    circuit: str
    load: str
    cable: str
    fuse: str
    drop: str
    mark: str

    @property
    def all(self) -> tuple[str, ...]:
        """Each of them."""
        return astuple(self)


LONG_HEAD = CircuitCells(mark="Mark", circuit="Circuit", load="Load", cable="Cable", fuse="Fuse", drop="Drop")
SHORT_HEAD = replace(LONG_HEAD, cable=unit_text("mm2"))


def long_cells(line: CircuitLine) -> CircuitCells:
    """As they stand in the printed table."""
    return CircuitCells(
        mark=line.label,
        circuit=line.circuit,
        load=amount(line.load_a, "A", 1),
        cable=cable_words(line),
        fuse=fuse_words(line),
        drop=drop_words(line),
    )


def short_cells(line: CircuitLine) -> CircuitCells:
    """For little room: without kind of fuse, warmth of the insulation and volts lost; the unit stands over the mm²."""
    cells = long_cells(line)
    return CircuitCells(
        mark=cells.mark,
        circuit=cells.circuit,
        load=cells.load,
        cable=cells.cable.partition(",")[0].removesuffix(f" {unit_text('mm2')}"),
        fuse=cells.fuse if line.fuse_a is None else amount(line.fuse_a, "A", 1),
        drop=amount(line.drop_pct, "%"),
    )


def circuits_count(report: Report) -> str:
    """``Circuits: 28 runs, 0 to settle, 5 to mind``; what protects the 230 V side counts with them."""
    lines, points = report.circuits, report.mains
    settle = sum(bool(line.serious) for line in lines) + sum(p.stand is MainsStand.TO_SETTLE for p in points)
    mind = sum(minded(line) for line in lines) + sum(p.stand is MainsStand.BY_PAPER for p in points)
    mind += bool(backed_up_words(lines))
    runs = "1 run" if len(lines) == 1 else f"{len(lines)} runs"
    return f"Circuits: {runs}, {settle} {SETTLE}, {mind} {MIND}"


def circuits_title(report: Report) -> str:
    """``CIRCUITS: 28 runs, 0 to settle, 5 to mind``."""
    return circuits_count(report).replace("Circuits", "CIRCUITS", 1)


def no_circuits() -> str:
    """What stands where no cable is run yet."""
    return "No cable is run yet. Cables come with what gives or takes current: the steps kitchen, heating and power."


def minded(line: CircuitLine) -> bool:
    """True when there is something to mind of it that is not true of nearly every run."""
    return any(not problem.serious and problem.code is not CircuitCode.BREAKING_BACKED_UP for problem in line.problems)


def backed_up_words(lines: tuple[CircuitLine, ...]) -> str:
    """What is true of nearly every run and marks no row, said once: the fuse before it helps; empty where of none."""
    runs = sum(any(p.code is CircuitCode.BREAKING_BACKED_UP for p in line.problems) for line in lines)
    if not runs:
        return ""
    who = "1 run has a fuse that breaks" if runs == 1 else f"{runs} runs have fuses that break"
    return (
        f"Mind, of all rows: {who} less than can flow there, and the fuse before breaks the rest, if the electrician "
        "confirms that the two go together. The figures stand with each run."
    )


def legend(settle: str, mind: str) -> str:
    """``! to settle   * to mind   e: ESTIMATE``, with the signs of the screen."""
    return f"{settle} {SETTLE}   {mind} {MIND}   {estimated_legend()}"


def estimate_sign(line: CircuitLine) -> str:
    """The sign beside the row; blank where section and fuse are the part's own."""
    return ESTIMATED if line.estimate else " "


def circuits_hint() -> str:
    """What Enter does on the line that counts them."""
    return "Enter shows every cable run with its section, fuse and drop, and what protects the 230 V side."


def side_head(lines: tuple[CircuitLine, ...]) -> str:
    """``12 V: 22 runs``."""
    runs = "1 run" if len(lines) == 1 else f"{len(lines)} runs"
    return f"{'230 V' if lines[0].is_mains else '12 V'}: {runs}"


def circuit_told(line: CircuitLine) -> tuple[str, ...]:
    """From where to where, drop, fuse, what to settle, what to mind: a sentence each."""
    told = [
        f"{raised(line.circuit)} ({line.label}): from {line.from_point} to {line.to_point}, "
        f"{amount(line.run_one_way_m, 'm')} one way.",
        _cable(line),
        _fuse(line),
    ]
    told += (f"To settle: {ended(said_of(problem))}" for problem in line.serious)
    told += (f"Mind: {ended(said_of(problem))}" for problem in line.problems if not problem.serious)
    return tuple(told)


def circuit_short(line: CircuitLine) -> str:
    """``Cable of the water pump: 2.5 mm², fuse 7.5 A blade.``"""
    fuse = "no fuse of its own" if line.fuse_a is None and line.area_mm2 is not None else f"fuse {fuse_words(line)}"
    settle = f"; {SETTLE}, see the circuits" if line.serious else ""
    sign = " (ESTIMATE)" if line.estimate and line.area_mm2 is not None else ""
    return ended(f"Cable, {line.circuit}: {cable_words(line)}, {fuse}{sign}{settle}")


def point_mark(point: MainsPoint, holds: str, mind: str, settle: str) -> str:
    """The sign of one point of the protection."""
    return {MainsStand.HOLDS: holds, MainsStand.BY_PAPER: mind, MainsStand.TO_SETTLE: settle}[point.stand]


def _cable(line: CircuitLine) -> str:
    carries = "" if line.carries_a is None else f", carries {amount(line.carries_a, 'A', 1)}"
    most = "" if line.drop_limit_pct is None else f" of {amount(line.drop_limit_pct, '%')} at most"
    lost = "" if line.drop_v is None else f"; loses {drop_words(line)}{most}"
    start = "ESTIMATE: cable" if line.estimate else "Cable"
    return f"{start} {cable_words(line)}{carries}{lost}; {line.basis.value}."


def _fuse(line: CircuitLine) -> str:
    if line.fuse_a is None:
        return ended(f"No fuse worked out{f', {line.fuse_place}' if line.fuse_place else ''}")
    return ended(f"Fuse {fuse_words(line)}{f', {line.fuse_place}' if line.fuse_place else ''}")
