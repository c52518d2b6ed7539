"""``circuits``: every cable run of a spec with its section, fuse and drop, and what must be settled."""

from __future__ import annotations

from typing import Any

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitLine, CircuitProblem
from specbuilder.model.mains import MainsPoint, MainsStand
from specbuilder.model.report import Report
from specbuilder.wording.circuits import circuit_lines, problem_line
from specbuilder.wording.mains import mains_line, mains_lines

from .answers import Answer
from .asjson import FORMAT, json_text, number
from .output import Exit


def circuits(catalogue: Catalogue, report: Report, *, json: bool) -> Answer:
    """The schedule as a table in words, or with every figure as JSON."""
    lines, mains = report.circuits, report.mains
    settle = any(line.serious for line in lines) or any(point.stand is MainsStand.TO_SETTLE for point in mains)
    code = Exit.BROKEN if settle else Exit.FINE
    if not json:
        return Answer(circuit_lines(lines, mains_lines(catalogue, mains)), code)
    content = {
        "format": FORMAT,
        "number": report.spec.number,
        "revision": report.spec.revision,
        "catalogue": catalogue.firm.catalogue_version,
        "circuits": [_line(line) for line in lines],
        "mains_protection": [_point(catalogue, point) for point in mains],
    }
    return Answer((json_text(content),), code)


def _line(line: CircuitLine) -> dict[str, Any]:
    return {
        "id": line.id,
        "mark": line.label,
        "option": line.option,
        "circuit": line.circuit,
        "from": line.from_point,
        "to": line.to_point,
        "bus": line.bus,
        "load_w": _figure(line.load_w),
        "load_a": _figure(line.load_a),
        "run_one_way_m": _figure(line.run_one_way_m),
        "drop_limit_pct": _figure(line.drop_limit_pct),
        "area_mm2": _figure(line.area_mm2),
        "side_by_side": line.side_by_side,
        "insulation_c": _figure(line.insulation_c),
        "carries_a": _figure(line.carries_a),
        "fuse_a": _figure(line.fuse_a),
        "fuse_kind": line.fuse_kind,
        "fuse_place": line.fuse_place,
        "breaking_needed_ka": _figure(line.breaking_needed_ka),
        "breaking_ka": _figure(line.breaking_ka),
        "drop_v": _figure(line.drop_v),
        "drop_pct": _figure(line.drop_pct),
        "start_v": _figure(line.start_v),
        "basis": line.basis.value,
        "estimate": line.estimate,
        "written_in": str(line.origin) if line.origin.file else None,
        "problems": [_problem(line, problem) for problem in line.problems],
    }


def _problem(line: CircuitLine, problem: CircuitProblem) -> dict[str, Any]:
    return {
        "code": problem.code.value,
        "serious": problem.serious,
        "has": _figure(problem.has),
        "needs": _figure(problem.needs),
        "what": problem.what,
        "words": problem_line(line, problem),
    }


def _point(catalogue: Catalogue, point: MainsPoint) -> dict[str, Any]:
    return {
        "code": point.code.value,
        "stand": point.stand.value,
        "options": list(point.by),
        "circuits": list(point.circuits),
        "has": _figure(point.has),
        "needs": _figure(point.needs),
        "words": mains_line(catalogue, point),
    }


def _figure(value: float | None) -> float | int | None:
    return None if value is None else number(value)
