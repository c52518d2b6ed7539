"""A cable run in a spec's file, with what the circuit schedule made of it."""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.model.catalogue import Option
from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem
from specbuilder.model.parts import Circuit
from specbuilder.workshop.view import Chosen

from .toml_out import Value, figure, item

_SHORT = MappingProxyType(
    {
        CircuitCode.TABLE_MISSING: "not worked out: a table of the rules is missing or cannot be used",
        CircuitCode.RUN_MISSING: "its run is no length: correct the rules",
        CircuitCode.LOAD_MISSING: "its load is none: correct the rules",
        CircuitCode.DROP_LIMIT_MISSING: "no limit of its drop is named: correct the rules",
        CircuitCode.STATED_FIGURE_ABSURD: "its stated section or fuse is none: correct the rules",
        CircuitCode.EARTH_SECTION_MISSING: "the section of a bonding conductor must be stated",
        CircuitCode.NO_CABLE_FITS: "no cable fits, nor do two side by side: a busbar, by the electrician",
        CircuitCode.CABLES_SIDE_BY_SIDE: "cables side by side: equal, same lugs, ends together; electrician decides",
        CircuitCode.OWN_CABLE_NOT_IN_TABLE: "nothing is known of a cable so thin",
        CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED: "the stated cable is thinner than the computed one",
        CircuitCode.OWN_FUSE_ABOVE_CABLE: "the stated fuse does not protect the cable",
        CircuitCode.OWN_FUSE_BELOW_LOAD: "the stated fuse may blow at a steady load",
        CircuitCode.NO_FUSE_IN_WINDOW: "no fuse protects the stated cable and carries the load",
        CircuitCode.DROP_ABOVE_LIMIT: "the stated cable loses more than it may",
        CircuitCode.FUSE_WINDOW_EMPTY_UNTIL: "thinner cable would have no fuse that protects it",
        CircuitCode.HOT_CABLE_TAKEN: "only cable whose insulation bears so much warmth",
        CircuitCode.BREAKING_CAPACITY_TOO_SMALL: "the fuse cannot break what may flow there",
        CircuitCode.BREAKING_BACKED_UP: "the fuse breaks a short circuit only together with that of",
        CircuitCode.FUSE_KIND_MISSING: "no kind of fuse goes up to this rating",
        CircuitCode.SHORT_CIRCUIT_UNKNOWN: "what the fuse must break is not known: no leisure battery with that figure",
        CircuitCode.HEATER_START_VOLTAGE_LOW: "too little voltage at the heater while it lights",
        CircuitCode.OWN_PART_FIGURES: "the customer's part: hold the load against its plate",
        CircuitCode.RUN_BELOW_STRAIGHT_LINE: "shorter than the straight line between its ends: measure first",
        CircuitCode.BREAKER_ABOVE_FEED: "its breaker is larger than that before it: electrician decides",
        CircuitCode.FUSE_FROM_PART: "whether it has a fuse says the paper of the part",
    }
)
"""Each in a few words; ``circuits`` says them in full, with figures."""


def circuit_item(one: Chosen, option: Option, circuit: Circuit, line: CircuitLine | None) -> str:
    """One ``[[circuit]]``: what the catalogue says of it, then what the schedule made of it."""
    values: dict[str, Value | None] = {
        "id": circuit.id,
        "for": option.name,
        "count": one.choice.count if one.choice.count > 1 else None,
        "circuit": circuit.circuit,
        "from": circuit.from_point,
        "to": circuit.to_point,
        "bus": circuit.bus,
        "load_w": figure(circuit.load_w),
        "load_a": figure(circuit.load_a),
        "run_one_way_m": figure(circuit.run_one_way_m),
        "drop_limit_percent": figure(circuit.drop_limit_pct),
        "protection": circuit.protection,
    }
    return item("circuit", values | (_sized(line) if line is not None else {}))


def _sized(line: CircuitLine) -> dict[str, Value | None]:
    """What the schedule says of it; what could not be told says so."""
    return {
        "sized_for_a": figure(line.load_a),
        "area_mm2": figure(line.area_mm2) or "NOT KNOWN",
        "cables_side_by_side": line.side_by_side if line.side_by_side > 1 else None,
        "insulation_bears_c": figure(line.insulation_c),
        "fuse_a": figure(line.fuse_a),
        "fuse_kind": line.fuse_kind,
        "fuse_place": line.fuse_place,
        "drop_v": figure(line.drop_v),
        "drop_pct": figure(line.drop_pct),
        "basis": line.basis.value,
        "estimate": "yes" if line.estimate else None,
        "to_settle": _told(line.serious),
        "mind": _told(tuple(problem for problem in line.problems if not problem.serious)),
    }


def _told(problems: tuple[CircuitProblem, ...]) -> str:
    return "; ".join(dict.fromkeys(_short(problem) for problem in problems))


def _short(problem: CircuitProblem) -> str:
    beside = problem.code is CircuitCode.BREAKING_BACKED_UP
    return f"{_SHORT[problem.code]} {problem.what}" if beside else _SHORT[problem.code]
