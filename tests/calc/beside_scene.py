"""Figures told beside a ledger, read over a small catalogue with the tables and house settings as shipped."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import product
from types import MappingProxyType

import pytest

from specbuilder.calc import CALCULATIONS
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed
from specbuilder.model.span import Span
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.scene import SHORT, catalogue, situation

SHIPPED = read_rules(rules_folder())
SUMS = {c.id: c for c in CALCULATIONS}


def with_tables(options: Iterable[Option], vans: Iterable[Option] = (SHORT,)) -> Catalogue:
    """These options under the ledgers and tables of the shipped rules."""
    return replace(catalogue(options, vans=vans), ledgers=SHIPPED.ledgers, tables=SHIPPED.tables)


def set_to(rules: Catalogue, id_: str, **changed: float) -> Catalogue:
    """The same rules with other house settings of one ledger."""
    spec = rules.ledgers[LedgerId(id_)]
    other = replace(spec, settings=MappingProxyType({**spec.settings, **changed}))
    return replace(rules, ledgers=MappingProxyType({**rules.ledgers, spec.id: other}))


def without_table(rules: Catalogue, table: str) -> Catalogue:
    """The same rules without one of their tables."""
    return replace(rules, tables=MappingProxyType({k: v for k, v in rules.tables.items() if k != table}))


def told(rules: Catalogue, id_: str, *choices: str | Placed, **how: object) -> Reading:
    """One figure of these choices."""
    return SUMS[LedgerId(id_)].read(situation(rules, *choices, **how))  # type: ignore[arg-type]  # as situation() takes


def number(reading: Reading) -> float:
    """The one number it is told as."""
    assert reading.applies
    assert reading.value is not None, reading.outside
    assert reading.value.settled
    return reading.value.least


def says(rules: Catalogue, id_: str, *choices: str | Placed, **how: object) -> float:
    """The one number of a figure."""
    return number(told(rules, id_, *choices, **how))


def nothing_told(reading: Reading, about: str = "") -> None:
    """No number, and which number of the data is at fault."""
    assert reading.applies
    assert reading.verdict is Verdict.CANNOT_TELL
    assert reading.value is None
    assert reading.outside is not None
    assert about in reading.outside.quantity


def spans_its_completions(rules: Catalogue, id_: str, undecided: dict[str, list[str]], **how: object) -> Reading:
    """The figure over undecided groups is the hull of what it says of every way to decide them."""
    open_ = told(rules, id_, undecided=undecided, **how)
    each = [told(rules, id_, *ways, **how) for ways in product(*undecided.values())]
    found = [one.value for one in each if one.applies]
    if any(one is None for one in found):
        assert open_.value is None
        return open_
    numbers = [end for one in found if one is not None for end in (one.least, one.most)]
    if numbers:
        assert open_.value is not None
        assert (open_.value.least, open_.value.most) == pytest.approx((min(numbers), max(numbers)), abs=1e-5)
    else:
        assert not open_.applies
    return open_


def span(low: float, high: float) -> Span:
    """A span rounded as readings are."""
    return Span(round(low, 6), round(high, 6))
