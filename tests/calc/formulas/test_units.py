"""Units are kept by name: what a formula takes and gives says its unit, and nobody hands millimetres to metres.

What the code says nothing of is not judged, and counted so that it stays little.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping

import pytest

from specbuilder.model.sources import FormulaText
from specbuilder.session.calculation_names import calculation_names
from specbuilder.storage.formula_texts import read_code, read_formulas
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
SAID_IN_WORDS = {
    "carnot": "a ratio",
    "child_seat_needed": "yes or no",
    "kind_by_amps": "a word",
    "kind_that_breaks": "a word",
    "lithium_may_charge": "yes or no",
    "rib_factor": "a ratio",
    "seated": "people, twice two of them",
    "smallest_fused_section": "a section and a fuse",
}
"""Formulas whose name needs no unit, with what they give."""
BY_HAND: Mapping[tuple[str, str], str] = {
    ("charging", "share['lead_share']"): "amps_per_ah",
    ("charging", "share['lithium_share']"): "amps_per_ah",
    ("heater_fuel", "litre_kwh"): "kwh_per_l",
    ("load_places", "share"): "kg",
}
"""Numbers of the calculations whose name says another unit than they have: shares of the amp-hours are amps for each,
what a litre holds is counted for each litre, and the room before the least share is one of kilograms."""
LEAST_READ_SHARE = 0.75
"""So many of all numbers handed over must say their unit; nothing is proven of the others."""

CODE = read_code()
FORMULAS_BY_NAME = {formula.name: formula for formula in read_formulas(calculation_names())}

each_formula = pytest.mark.parametrize("formula", FORMULAS_BY_NAME.values(), ids=lambda f: f.name)


def unit_of(name: str) -> str | None:
    """The unit a name ends in, or the word in it that is one."""
    bare = name.lower().strip("_")
    for unit in UNITS:
        if bare == unit or bare.endswith(f"_{unit}"):
            return unit
    return next((WORDS[word] for word in bare.split("_") if word in WORDS), None)


def test_a_unit_is_read_from_the_end_of_a_name() -> None:
    assert unit_of("run_one_way_m") == "m"
    assert unit_of("burner_l_per_h") == "l_per_h"
    assert unit_of("_LOADED_V") == "v"
    assert unit_of("inverter_efficiency") == "share"
    assert unit_of("beam") is None


@each_formula
def test_a_formula_says_the_unit_of_every_number_it_takes(formula: FormulaText) -> None:
    bare = COUNTS | RATIOS | NO_NUMBERS
    assert not [name for name in formula.parameters if unit_of(name) is None and name not in bare]


@each_formula
def test_the_name_of_a_formula_says_the_unit_of_its_result(formula: FormulaText) -> None:
    if formula.name in SAID_IN_WORDS:
        return
    assert unit_of(formula.name) == _result(formula.result), formula.result


def _result(words: str) -> str:
    """The unit at the beginning of what the docstring says of the result."""
    told = words.removeprefix("a ").removeprefix("an ")
    known = max((unit for unit in RESULTS if told.startswith(unit)), key=len, default=None)
    assert known is not None, words
    assert not told[len(known) :][:1].isalnum(), words
    return RESULTS[known]


def test_what_is_listed_by_hand_is_there() -> None:
    names = {name for formula in FORMULAS_BY_NAME.values() for name in formula.parameters}
    assert set(SAID_IN_WORDS) <= set(FORMULAS_BY_NAME)
    assert names >= RATIOS


# --- the calls


def _calls() -> Iterator[tuple[str, ast.Call, FormulaText]]:
    """Every call of a formula in the calculations and in the formulas themselves."""
    for module, code in CODE.items():
        for node in ast.walk(code.tree):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                formula = FORMULAS_BY_NAME.get(node.func.id)
                made_by = code.foreign.get(node.func.id, ("", ""))[0]
                if formula is not None and (made_by.startswith(FORMULAS) or module == f"{FORMULAS}.{formula.module}"):
                    yield module, node, formula


def _handed(call: ast.Call, formula: FormulaText) -> Iterator[tuple[str, ast.expr]]:
    """Each parameter with what is handed to it, up to several handed over as one."""
    for name, value in zip(formula.parameters, call.args, strict=False):
        yield name, value
        if isinstance(value, ast.Starred):
            return
    yield from ((keyword.arg, keyword.value) for keyword in call.keywords if keyword.arg is not None)


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


class _Reader:
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


def test_every_call_hands_over_the_unit_that_is_asked_for() -> None:
    wrong: list[str] = []
    read = unread = 0
    for module, call, formula in _calls():
        reader = _Reader(module)
        for name, value in _handed(call, formula):
            wanted = unit_of(name)
            if wanted is None:
                continue
            try:
                given = reader.unit(value)
            except MixedError as mixed:
                given = f"different units in one sum ({mixed})"
            read, unread = read + (given is not None), unread + (given is None)
            if given not in (None, "", wanted):
                wrong.append(f"{module}.py:{call.lineno} {formula.name}({name}={ast.unparse(value)}): {given}")
    assert wrong == []
    assert read / (read + unread) >= LEAST_READ_SHARE


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("van.length_mm / 1000", "m"),
        ("van.length_mm", "mm"),
        ("heater_kw * 1000", "w"),
        ("van.length_mm / 10", "mm"),
        ("frame.settings['night_h']", "h"),
        ("power.inverter_w or 0", "w"),
        ("loss_w_per_k + 2", "w_per_k"),
        ("amps / packs", "a"),
        ("things", None),
    ],
)
def test_units_are_read_from_expressions(text: str, unit: str | None) -> None:
    assert _Reader("mass").unit(ast.parse(text, mode="eval").body) == unit


def test_kilograms_and_millimetres_do_not_add() -> None:
    with pytest.raises(MixedError):
        _Reader("mass").unit(ast.parse("mass_kg + x_mm", mode="eval").body)
