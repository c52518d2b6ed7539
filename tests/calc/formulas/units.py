"""The unit of a number read from its name, of an expression from the names in it, of a result from its docstring."""

from __future__ import annotations

import ast
from collections.abc import Mapping

from specbuilder.storage.formula_texts import read_code
from specbuilder.storage.formula_use import FORMULAS

_ENDINGS = (
    "l_per_h m3_per_h g_per_h g_per_m3 kwh_per_l kwh_per_kg kg_per_l kg_per_m3 l_per_min mv_per_a_m ohm_mm2_per_m "
    "mohm_per_m w_per_m2k w_per_mk w_per_k m2k_per_w share_per_c a_per_100ah amps_per_ah per_h mm2 cm2 m2 m3 mm cm m "
    "kg g kwh wh kw w ah ka mohm a mv v n kn nm deg c h min days nights years weeks l pct share pence gbp mph"
)
UNITS = sorted(_ENDINGS.split(), key=len, reverse=True)
"""What a name may end in, the longest first."""
WORDS = {
    "amps": "a",
    "watts": "w",
    "hours": "h",
    "volts": "v",
    "litres": "l",
    "percent": "pct",
    "efficiency": "share",
    "duty": "share",
    "passengers": "persons",
    "share": "share",
    "nights": "nights",
}
"""Whole words that are a unit by themselves, wherever they stand in a name."""
_COUNTS = (
    "adults batteries bench_belts belted_seats bottles cab_belts cables cells children circuits count feet grown_ups "
    "in_series lap_only_places load_index packs panels people seats starts struts three_point_places travellers"
)
COUNTS = frozenset(_COUNTS.split())
"""Numbers of things."""
RATIOS = frozenset({"exponent", "flux_ratio", "over_load", "ribs", "share_to_80", "start_times", "times_weight"})
"""So many times something."""
NO_NUMBERS = frozenset({"areas", "items", "kinds", "open_flame", "sections", "shares"})
"""Yes or no, and rows of a table whose columns the docstring names."""
RESULTS = {
    "A": "a",
    "Ah": "ah",
    "C": "c",
    "L": "l",
    "L/h": "l_per_h",
    "N": "n",
    "N m": "nm",
    "V": "v",
    "W": "w",
    "W/K": "w_per_k",
    "W/m2K": "w_per_m2k",
    "Wh": "wh",
    "cm2": "cm2",
    "days": "days",
    "g/h": "g_per_h",
    "g/m3": "g_per_m3",
    "hours": "h",
    "kA": "ka",
    "kN": "kn",
    "kW": "kw",
    "kg": "kg",
    "m2": "m2",
    "m2K/W": "m2k_per_w",
    "m3/h": "m3_per_h",
    "min": "min",
    "mm": "mm",
    "mm2": "mm2",
    "mohm/m": "mohm_per_m",
    "mph": "mph",
    "nights": "nights",
    "persons": "persons",
    "pounds": "gbp",
    "whole pence": "pence",
    "%": "pct",
    "1/h": "per_h",
    "share of 1": "share",
    "part of one": "share",
    "parts of one": "share",
}
"""Units as the docstrings write them."""
BY_HAND: Mapping[tuple[str, str], str] = {
    ("charging", "share['lead_share']"): "amps_per_ah",
    ("charging", "share['lithium_share']"): "amps_per_ah",
    ("heater_fuel", "litre_kwh"): "kwh_per_l",
    ("load_places", "share"): "kg",
}
"""Numbers of the calculations whose name says another unit than they have: shares of the amp-hours are amps for each,
what a litre holds is counted for each litre, and the room before the least share is one of kilograms."""

CODE = read_code()


def unit_of(name: str) -> str | None:
    """The unit a name ends in, or the word in it that is one."""
    bare = name.lower().strip("_")
    for unit in UNITS:
        if bare == unit or bare.endswith(f"_{unit}"):
            return unit
    return next((WORDS[word] for word in bare.split("_") if word in WORDS), None)


def result_unit(words: str) -> str:
    """The unit at the beginning of what the docstring says of the result."""
    told = words.removeprefix("a ").removeprefix("an ")
    known = max((unit for unit in RESULTS if told.startswith(unit)), key=len, default=None)
    assert known is not None, words
    assert not told[len(known) :][:1].isalnum(), words
    return RESULTS[known]


class MixedError(Exception):
    """Numbers of different units in one sum."""


def _texts(module: str) -> dict[str, str]:
    """Names of a file that stand for a text: the settings a calculation looks up."""
    found: dict[str, str] = {}
    for node in CODE[module].tree.body:
        if isinstance(node, ast.Assign):
            for target in node.targets:
                many = isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple)
                names, values = (target.elts, node.value.elts) if many else ([target], [node.value])  # type: ignore[attr-defined]
                for name, value in zip(names, values, strict=False):
                    if isinstance(name, ast.Name) and isinstance(value, ast.Constant) and isinstance(value.value, str):
                        found[name.id] = value.value
    return found


class Reader:
    """Reads the unit of an expression in one file."""

    def __init__(self, module: str) -> None:
        self._module = module.removeprefix(f"{FORMULAS}.")
        self._texts = _texts(module)
        for name, (other, there) in CODE[module].foreign.items():
            if other in CODE and (text := _texts(other).get(there)):
                self._texts[name] = text

    def unit(self, node: ast.expr) -> str | None:
        """The unit; ``""`` for a plain number, which is of any; None where none is told."""
        if known := BY_HAND.get((self._module, ast.unparse(node))):
            return known
        match node:
            case ast.Constant():
                return ""
            case ast.Name(id=name):
                return "" if name in COUNTS | RATIOS else unit_of(name)
            case ast.Attribute(value=inner, attr="least" | "most"):
                return self.unit(inner)
            case ast.Attribute(attr=name):
                return unit_of(name)
            case ast.Subscript(slice=ast.Constant(value=str(name))):
                return unit_of(name)
            case ast.Subscript(slice=ast.Name(id=name)):
                return unit_of(self._texts.get(name, name))
            case ast.BinOp(left=left, op=op, right=right):
                return self._of_two(left, op, right)
            case ast.UnaryOp(operand=inner):
                return self.unit(inner)
            case ast.BoolOp(values=values):
                return self._same(values)
            case ast.IfExp(body=body, orelse=other):
                return self._same([body, other])
            case ast.Call(func=ast.Name(id="sum" | "min" | "max" | "round" | "abs" | "float"), args=values):
                return self._same(values[:1] if len(values) < 2 else values)
            case ast.GeneratorExp(elt=inner) | ast.ListComp(elt=inner):
                return self.unit(inner)
            case ast.Call(func=ast.Name(id=name) | ast.Attribute(attr=name)):
                return unit_of(name)
            case _:
                return None

    def _same(self, nodes: list[ast.expr]) -> str | None:
        units = [self.unit(node) for node in nodes]
        found = {unit for unit in units if unit}
        if len(found) > 1:
            raise MixedError(", ".join(ast.unparse(node) for node in nodes))
        return found.pop() if found else None if None in units else ""

    def _of_two(self, left: ast.expr, op: ast.operator, right: ast.expr) -> str | None:
        if isinstance(op, ast.Add | ast.Sub):
            return self._same([left, right])
        of_left, of_right = self.unit(left), self.unit(right)
        if isinstance(right, ast.Constant) and right.value == 1000:
            up, down = {"mm": "m", "w": "kw", "wh": "kwh", "g": "kg"}, {"m": "mm", "kw": "w", "kwh": "wh", "kg": "g"}
            return (up if isinstance(op, ast.Div) else down).get(of_left or "", None)
        if isinstance(op, ast.Mult | ast.Div) and of_right in ("", "share"):
            return of_left
        return of_right if isinstance(op, ast.Mult) and of_left in ("", "share") else None
