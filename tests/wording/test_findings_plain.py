"""On paper a finding is told in plain words: no name of a level stands in front of it."""

from __future__ import annotations

import pytest

from specbuilder.model.kinds import Level, Verdict
from specbuilder.wording.dates import written_moment
from specbuilder.wording.findings_plain import plain_line, without_level
from tests.documents.cases import NAMES, plain_case


@pytest.mark.parametrize("name", NAMES)
def test_no_finding_on_paper_begins_with_its_level(name: str) -> None:
    stand = plain_case(name).stand
    open_ = [f for f in stand.report.findings if f.verdict is not Verdict.HOLDS]
    lines = [plain_line(stand.catalogue, stand.report, finding) for finding in open_]
    assert len(lines) == len(open_) > 0
    for line in lines:
        assert not line.upper().startswith(tuple(f"{level.value}, " for level in Level))
        assert line[:1].isupper()


def test_a_note_asks_to_tell_the_customer() -> None:
    stand = plain_case("saturday-family").stand
    notes = [f for f in stand.report.findings if f.level is Level.NOTE and f.verdict is Verdict.BROKEN]
    assert notes
    assert all(plain_line(stand.catalogue, stand.report, f).startswith("Tell the customer: ") for f in notes)


def test_accepted_words_lose_the_level_and_nothing_else() -> None:
    assert without_level("SIGN, broken: It is heavy.") == "It is heavy."
    assert without_level("NOTE, to be said: It is loud.") == "It is loud."
    assert without_level("They will ring the insurer") == "They will ring the insurer"


def test_an_answer_in_the_words_of_its_name_is_said_once() -> None:
    stand = plain_case("saturday-family").stand
    lines = [plain_line(stand.catalogue, stand.report, finding) for finding in stand.report.findings]
    assert any("to count as a motor caravan" in line for line in lines)
    assert not any("to count as a motor caravan (to count" in line for line in lines)


def test_a_moment_is_a_day_with_its_time() -> None:
    assert written_moment("2026-11-27 08:12") == "27 November 2026, 08:12"
    assert written_moment("2026-11-27") == "27 November 2026"
    assert written_moment("last week") == "last week"
