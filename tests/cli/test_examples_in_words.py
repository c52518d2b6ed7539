"""Every word about every example: nothing fails, nothing is empty, no id and no forbidden word is shown."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specbuilder.cli import answers
from specbuilder.cli.why import why
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Step
from specbuilder.model.report import Report
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.wording import rows
from specbuilder.wording.glance import glance, head
from specbuilder.wording.ledger_detail import detail_texts
from specbuilder.wording.readings import reading_bar
from tests.wording.test_forbidden_words import FORBIDDEN

NEVER = re.compile(rf"\b({FORBIDDEN.replace('valid(?! until)|', '')})\b", re.IGNORECASE)
"""Sources and bounds of the catalogue may say how long a quote or a report is valid."""
EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return read_rules(rules_folder())


@pytest.fixture(scope="module", params=EXAMPLES, ids=lambda path: path.stem)
def report(request: pytest.FixtureRequest, catalogue: Catalogue) -> Report:
    return evaluate(catalogue, read_spec_file(request.param, catalogue).spec)


def _lines(catalogue: Catalogue, report: Report) -> list[str]:
    lines = [*answers.check(catalogue, report, json=False).lines, *answers.show(catalogue, report, None).lines]
    for step in Step:
        lines += answers.show(catalogue, report, step.value).lines
    for reading in report.readings.values():
        bar = reading_bar(catalogue, reading)
        lines += (*detail_texts(catalogue, reading), bar.short, bar.words)
    for option in catalogue.options:
        row = rows.row_words(catalogue, report, option)
        lines += (row.name, row.money, row.mass, row.state)
        assert len(row.note) <= rows.NOTE_WIDTH
    return lines


def test_every_line_about_an_example(catalogue: Catalogue, report: Report) -> None:
    for line in _lines(catalogue, report):
        assert line.strip()
        assert not NEVER.search(line), line
        assert "!" not in line
    for width in (60, 80, 100, 140, 200):
        assert len(glance(catalogue, report, width)) <= width
        assert len(head(catalogue, report, width, "saved 10:42", "counter 1")) <= width


def test_every_reason_about_an_example(catalogue: Catalogue, report: Report) -> None:
    things = [f.rule for f in report.findings][::7] + list(catalogue.options)[::9] + list(catalogue.ledgers)[::3]
    for thing in things:
        for line in why(catalogue, report, thing, json=False).lines:
            assert line.strip()
            assert not NEVER.search(line), line
        assert why(catalogue, report, thing, json=True).lines
