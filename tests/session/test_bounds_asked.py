"""A bound is told as broken where a rule asks for it, and only there: the head and the ledgers say the same."""

from __future__ import annotations

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.span import point
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.test_examples import EXAMPLES, ROOT

FUEL_LINES = LedgerId("fuel-pickups")


def test_fuel_lines_are_not_told_as_broken_where_no_rule_asks_for_a_take_off(catalogue: Catalogue) -> None:
    spec = read_spec_file(ROOT / "examples" / "right-door-muddle.toml", catalogue).spec
    report = evaluate(catalogue, spec)
    reading = report.readings[FUEL_LINES]
    assert (reading.value, reading.bound) == (point(1), point(0))
    assert not reading.applies
    assert FUEL_LINES not in {finding.reading for finding in report.broken(*Level)}


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_broken_reading_a_rule_judges_has_its_finding(catalogue: Catalogue, path: object) -> None:
    report = evaluate(catalogue, read_spec_file(path, catalogue).spec)  # type: ignore[arg-type]
    broken = {finding.reading for finding in report.findings if finding.verdict is Verdict.BROKEN}
    judged = {finding.reading for finding in report.findings if finding.reading is not None}
    loud = {r.id for r in report.readings.values() if r.applies and r.verdict is Verdict.BROKEN and r.id in judged}
    assert loud <= broken
