"""Builds of the shipped catalogue as the sums of power see them."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from specbuilder.calc import CALCULATIONS
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.facts import Facts
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.calc.plain_power import PLAIN
from tests.calc.scene import situation

RULES = read_rules(rules_folder())
BRIEF: Mapping[str, tuple[Answer, ...]] = {
    "season": ("summer", "three-season", "winter"),
    "region": ("uk", "south"),
    "drive_h_per_day": (0, 0.5, 2),
    "design_temp_c": (5, 0, -12),
    "nights_off_grid": (0, 2, 6),
    "site_amps": ("6", "10", "16"),
    "must_run": (("none",), ("kettle",), ("laptop", "kettle"), ("microwave", "induction", "medical"), ("e-bike",)),
}
SUMS = {c.id: c for c in CALCULATIONS if c.id in PLAIN}
VAN = RULES.options[OptionId("fenwain-short")]


def _facts(answers: Mapping[str, Answer], unknown: tuple[str, ...] = ()) -> Facts:
    ranges = {line.key: Span(line.least or 0, line.most or 0) for line in RULES.brief.values() if line.most is not None}
    values = {BriefKey(k): v for k, v in answers.items() if k not in unknown}
    return Facts(values=MappingProxyType(values), assumed=frozenset(), ranges=MappingProxyType(ranges))


def build(
    *choices: str | Placed,
    answers: Mapping[str, Answer] | None = None,
    rules: Catalogue = RULES,
    undecided: Mapping[str, tuple[str, ...]] | None = None,
    unknown: tuple[str, ...] = (),
    van: Option | None = VAN,
) -> Situation:
    said = {key: values[0] for key, values in BRIEF.items()} | dict(answers or {})
    return situation(rules, *choices, van=van, undecided=undecided, facts_=_facts(said, unknown))


def read(id_: str, now: Situation) -> Reading:
    return SUMS[LedgerId(id_)].read(now)
