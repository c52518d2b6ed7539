"""Units are kept by name: what a formula takes and gives says its unit, and nobody hands millimetres to metres.

What the code says nothing of is not judged, and counted so that it stays little.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest

from specbuilder.model.sources import FormulaText
from specbuilder.session.calculation_names import calculation_names
from specbuilder.storage.formula_texts import read_formulas
from specbuilder.storage.formula_use import FORMULAS
from tests.calc.formulas.units import CODE, COUNTS, NO_NUMBERS, RATIOS, MixedError, Reader, result_unit, unit_of

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
LEAST_READ_SHARE = 0.75
"""So many of all numbers handed over must say their unit; nothing is proven of the others."""
FORMULAS_BY_NAME = {formula.name: formula for formula in read_formulas(calculation_names())}

each_formula = pytest.mark.parametrize("formula", FORMULAS_BY_NAME.values(), ids=lambda f: f.name)


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
    assert unit_of(formula.name) == result_unit(formula.result), formula.result


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


def test_every_call_hands_over_the_unit_that_is_asked_for() -> None:
    wrong: list[str] = []
    read = unread = 0
    for module, call, formula in _calls():
        reader = Reader(module)
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
    assert Reader("mass").unit(ast.parse(text, mode="eval").body) == unit


def test_kilograms_and_millimetres_do_not_add() -> None:
    with pytest.raises(MixedError):
        Reader("mass").unit(ast.parse("mass_kg + x_mm", mode="eval").body)
