"""Every calculation is listed, every formula shows its example, and nothing of the catalogue is named in code."""

from __future__ import annotations

import doctest
import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType

import pytest

from specbuilder import calc
from specbuilder.calc import CALCULATIONS, formulas, made, missing_settings, told_beside
from specbuilder.calc.formulas import validity
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import LedgerKind
from specbuilder.storage.rules_files import read_rules, rules_folder

WORDS_OF_A_FORMULA = "Equation:", "Valid for:", "Source:", "Confidence:", ">>>"


def _modules(package: ModuleType) -> Iterator[ModuleType]:
    for found in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        yield importlib.import_module(found.name)


EQUATIONS = [module for module in _modules(formulas) if module is not validity]


@pytest.fixture(scope="module")
def rules() -> Catalogue:
    return read_rules(rules_folder())


def test_every_calculation_is_listed_once() -> None:
    found = {
        id(thing)
        for module in _modules(calc)
        for thing in vars(module).values()
        if not isinstance(thing, type) and callable(getattr(thing, "read", None)) and hasattr(thing, "touches")
    }
    assert found == {id(c) for c in CALCULATIONS}
    assert len({c.id for c in CALCULATIONS}) == len(CALCULATIONS)


def test_every_one_has_its_table_and_its_settings(rules: Catalogue) -> None:
    beside = told_beside(rules)
    assert [*made(rules), *beside] == [*(c for c in CALCULATIONS if c not in beside), *beside]
    assert all(rules.ledgers[c.id].part_of in {one.id for one in made(rules)} for c in beside)
    assert missing_settings(rules) == ()
    for calculation in CALCULATIONS:
        unused = set(rules.ledgers[calculation.id].settings) - set(calculation.settings)
        assert not unused, calculation.id
        assert rules.ledgers[calculation.id].kind in LedgerKind


@pytest.mark.parametrize("module", EQUATIONS, ids=lambda module: module.__name__.rsplit(".", 1)[-1])
def test_every_formula_shows_a_true_example(module: ModuleType) -> None:
    offered = {name: thing for name, thing in vars(module).items() if callable(thing) and not name.startswith("_")}
    functions = [f for f in offered.values() if getattr(f, "__module__", "") == module.__name__]
    for function in functions:
        words = function.__doc__ or ""
        assert all(part in words for part in WORDS_OF_A_FORMULA), function.__name__
    result = doctest.testmod(module)
    assert result.attempted >= len(functions)
    assert result.failed == 0


def test_no_option_of_the_catalogue_is_named(rules: Catalogue) -> None:
    code = "\n".join(p.read_text(encoding="utf-8") for p in Path(calc.__file__).parent.rglob("*.py"))
    assert not [o for o in rules.options if f'"{o}"' in code]
