"""Schedules of the shipped catalogue and of circuits made by hand, and the tables of the files read once more."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.circuits import CircuitCode, CircuitLine
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.origin import Origin
from specbuilder.model.parts import Circuit
from specbuilder.model.situation import Placed
from tests.calc.scene import situation

ROOT = Path(__file__).parents[2]
KETTLE, LANTERN, SMALL, TWIN = "battery-kettle", "battery-lantern", "battery-small", "battery-twin"
RHO_50 = 0.01989


@cache
def table(file: str, name: str) -> tuple[dict[str, Any], ...]:
    """The rows of one table as the file has them, each by its columns."""
    found = tomllib.loads((ROOT / "rules/tables" / f"{file}.toml").read_text("utf-8"))["table"][name]
    keys = [column["key"] for column in found["columns"]]
    return tuple(dict(zip(keys, row, strict=True)) for row in found["rows"])


def figures(file: str, name: str) -> dict[str, float]:
    return {row["figure"]: row["value"] for row in table(file, name)}


@cache
def starts() -> dict[str, dict[str, Any]]:
    return {row["start"]: row for row in table("cables", "cable-starts")}


def start_of(line: CircuitLine) -> dict[str, Any]:
    found = starts()
    return found.get(line.from_point) or found[f"any {line.bus}"]


def drop_by_hand_v(line: CircuitLine, area_mm2: float) -> float:
    """From the tables of the files: class 5 at 50 degrees or EN 1648-2, the worse; mV/A/m for mains.

    Of equal cables side by side each loses its volts with its part of the load.
    """
    if line.bus == "230":
        row = next(row for row in table("cables", "mains-cords") if row["area_mm2"] == area_mm2)
        return float(row["drop_mv_per_a_m"]) / 1000 * line.load_a * line.run_one_way_m
    row = next(row for row in table("cables", "conductors") if row["area_mm2"] == area_mm2)
    warm_mohm = row["r20_mohm_per_m"] * (1 + 0.00393 * 30)
    each_a = line.load_a / line.side_by_side
    return float(2 * line.run_one_way_m * each_a * max(RHO_50 / area_mm2, warm_mohm / 1000))


def carries_by_hand_a(line: CircuitLine, area_mm2: float, insulation_c: float) -> float:
    """What a section carries where the line lies; equal cables side by side carry it so many times."""
    together = start_of(line)["cables_together"] + line.side_by_side - 1
    bundle = max(
        (row for row in table("cables", "bundle-factors") if row["cables_from"] <= together),
        key=lambda row: row["cables_from"],
    )["share"]
    if line.bus == "230":
        cord = next(row for row in table("cables", "mains-cords") if row["area_mm2"] == area_mm2)
        wall = next(row for row in table("cables", "mains-in-walls") if row["area_mm2"] == area_mm2)
        return float(min(cord["amps"], wall["amps_in_conduit_in_wall"]) * 0.82 * bundle)
    row = next(row for row in table("cables", "conductors") if row["area_mm2"] == area_mm2)
    return float(row[f"amps_{insulation_c:g}c"] * bundle * line.side_by_side)


def areas(line: CircuitLine) -> list[float]:
    name, least = ("mains-cords", 1.5) if line.bus == "230" else ("conductors", 1)
    return [row["area_mm2"] for row in table("cables", name) if row["area_mm2"] >= least]


def ratings(line: CircuitLine) -> list[float]:
    if start_of(line)["fuse"] == "breaker":
        return [row["rating_a"] for row in table("fuses", "breaker-ratings")]
    small = start_of(line)["fuse"] == "by amps"
    return [row["rating_a"] for row in table("fuses", "fuse-ratings") if small or row["kind"] == "bolt-down"]


def over_load(line: CircuitLine) -> float:
    rule = "least breaker over steady load" if start_of(line)["fuse"] == "breaker" else "least fuse over steady load"
    return figures("fuses", "fuse-rules")[rule]


def codes(line: CircuitLine) -> set[CircuitCode]:
    return {problem.code for problem in line.problems}


def schedule(catalogue: Catalogue, *choices: Placed | Option | str) -> tuple[CircuitLine, ...]:
    return circuit_schedule(situation(catalogue, *choices, van=None))


def run(**more: Any) -> Circuit:
    """A pump of 4.2 A, 4.5 m behind the 12 V panel, with some of it changed."""
    usual: dict[str, Any] = {
        "id": "pump-c1",
        "circuit": "pump",
        "from_point": "12 V panel",
        "to_point": "pump",
        "bus": "dc",
        "load_w": 50,
        "load_a": 4.2,
        "run_one_way_m": 4.5,
        "drop_limit_pct": 3,
        "protection": "",
        "origin": Origin("options/kitchen.toml", 12),
    }
    return Circuit(**{**usual, **more})


def part(*circuits: Circuit, **more: Any) -> Option:
    """An option with these circuits."""
    return Option(id=OptionId("pump"), group=GroupId("sink"), name="Pump", circuits=circuits, **more)


def line_of(catalogue: Catalogue, *beside: str, **more: Any) -> CircuitLine:
    """The line of one circuit, with these choices beside it."""
    return next(line for line in schedule(catalogue, part(run(**more)), *beside) if line.id == "pump-c1")


def without_table(catalogue: Catalogue, name: str) -> Catalogue:
    return replace(catalogue, tables=MappingProxyType({k: t for k, t in catalogue.tables.items() if k != name}))
