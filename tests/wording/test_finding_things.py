"""What Find says of a rule cannot be taken for what is the case."""

from __future__ import annotations

import pytest

from specbuilder.model.kinds import Verdict
from specbuilder.wording.finding_things import hit_words
from specbuilder.wording.why import why_finding_title
from tests.wording.scene import CATALOGUE, finding, report, spec

SAID = "By the second evening the fridge is off."


@pytest.mark.parametrize(
    ("verdict", "words"),
    [
        (Verdict.HOLDS, ("holds", f'kept; said if broken: "{SAID}"')),
        (Verdict.CANNOT_TELL, ("cannot tell", f'at stake: "{SAID}"')),
        (Verdict.BROKEN, ("broken", SAID)),
    ],
)
def test_only_what_is_broken_is_said_as_if_it_were_so(verdict: Verdict, words: tuple[str, str]) -> None:
    told = report(spec(), findings=(finding("nights-short", verdict),))
    assert hit_words(CATALOGUE, told, "rule", "nights-short") == words


def test_a_rule_nobody_asked_says_so_as_well() -> None:
    assert hit_words(CATALOGUE, report(spec()), "rule", "nights-short") == ("rule", f'said if broken: "{SAID}"')


@pytest.mark.parametrize(
    ("verdict", "title"),
    [
        (Verdict.HOLDS, "WHY it holds"),
        (Verdict.BROKEN, "WHY it is broken   SIGN: can be accepted in writing"),
    ],
)
def test_what_holds_has_no_words_of_stopping(verdict: Verdict, title: str) -> None:
    assert why_finding_title(CATALOGUE, finding("nights-short", verdict)) == title
