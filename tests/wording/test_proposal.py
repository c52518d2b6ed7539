"""A finished build in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.edits import Take
from specbuilder.model.ids import GroupId, OptionId, RuleId
from specbuilder.model.kinds import OptionState
from specbuilder.model.report import Pence
from specbuilder.model.ways import Aim, Difference, Proposal
from specbuilder.wording import proposal as words
from tests.wording.scene import CATALOGUE, choice, report, spec, status

AFTER = report(
    spec(choice("pod-galley"), choice("gas-bundle"), choice("co-alarm")),
    options=(
        status("pod-galley", OptionState.CHOSEN, pence=120_000, kg=41),
        status("gas-bundle", OptionState.CHOSEN, pence=93_600, kg=21),
        status("co-alarm", OptionState.FOLLOWS, pence=4_800, kg=0.4),
    ),
    gross=Pence(least=2_110_800, most=2_110_800),
)
FOUND = Proposal(
    aim=Aim.PRICE,
    edits=(Take(option=OptionId("pod-galley")), Take(option=OptionId("gas-bundle"))),
    spec=AFTER.spec,
    takes=AFTER.spec.choices,
    difference=Difference(gross_pence=218_400, mass_kg=62.4, hours=14, weeks=2),
    proven=True,
)


def test_a_proposal_with_its_totals() -> None:
    assert words.proposal_title(FOUND) == "FINISH IT, cheapest: 3 answers"
    assert words.proposal_lines(CATALOGUE, AFTER, FOUND, 60) == (
        "Galley: Pod galley                          £1,200     41 kg",
        "Cooking: Gas bundle                           £936     21 kg",
        "Extras: CO alarm                               £48    0.4 kg",
    )
    assert words.proposal_total(CATALOGUE, AFTER, FOUND) == (
        "Together +£2,184, +62 kg, +14 hours, +2 weeks. Then £21,108 VAT in, van not included; weight: cannot tell."
    )
    assert words.proposal_taken(CATALOGUE, FOUND) == "Finished, cheapest: took Pod galley, Gas bundle and CO alarm"


def test_lines_that_come_to_more_than_price_and_weight_rise_say_why() -> None:
    """A price of which the least already held the cheapest answer rises by the rest only."""
    found = replace(FOUND, difference=Difference(gross_pence=7_800, mass_kg=2.4, hours=0, weeks=0))
    assert words.proposal_total(CATALOGUE, AFTER, found).startswith(
        "Together +£78, +2.4 kg: the lines come to £2,184 and 62 kg, and what was least before held a part of it. Then"
    )
    told = words.proposal_spoken(CATALOGUE, AFTER, found)
    assert "Their prices and weights come to £2,184 and 62 kg; the least price before held a part of it." in told


def test_a_weight_that_rises_by_more_than_the_lines_is_not_said_to_have_been_counted_before() -> None:
    """Luggage and water come with what is taken: nothing of it was held before."""
    found = replace(FOUND, difference=replace(FOUND.difference, mass_kg=90))
    assert words.proposal_total(CATALOGUE, AFTER, found).startswith(
        "Together +£2,184, +90 kg, +14 hours, +2 weeks. Then"
    )


@pytest.mark.parametrize(
    ("aim", "named", "proved"),
    [
        (Aim.PRICE, "cheapest", "cheaper"),
        (Aim.MASS, "lightest", "lighter"),
        (Aim.WEEKS, "soonest", "sooner"),
        (Aim.USUAL, "nearest to the house usual", "nearer to the house usual"),
    ],
)
def test_what_it_goes_by_and_whether_it_is_proved(aim: Aim, named: str, proved: str) -> None:
    found = replace(FOUND, aim=aim)
    assert named in words.proposal_title(found)
    assert words.proven_words(found) == f"Proved: no other way to answer these questions is {proved}."
    assert words.proven_words(replace(found, proven=False)) == (
        f"Not proved: the search stopped before it knew whether another way is {proved}."
    )


def test_what_stays_broken_and_what_nothing_fits_is_never_left_out() -> None:
    found = replace(FOUND, still_broken=(RuleId("roof-not-too-heavy"),), unanswered=(GroupId("cooking"),))
    told = words.proposal_spoken(CATALOGUE, AFTER, found)
    assert told == (
        "Finished, cheapest: 3 choices would be taken.",
        "Galley: Pod galley.",
        "Cooking: Gas bundle.",
        "Extras: CO alarm.",
        "Together: adds 2,184 pounds, 62 kilograms and 14 hours; parts take 2 weeks longer.",
        "Then: £21,108 VAT in, van not included; weight: cannot tell.",
        "Proved: no other way to answer these questions is cheaper.",
        "Still broken after it: STOP, roof load.",
        "Nothing fits: Cooking (step kitchen).",
    )
