"""A late switch in words."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.edits import Take
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId, RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.model.report import Pence
from specbuilder.model.span import Span, point
from specbuilder.model.ways import Difference, Switch, Unfit
from specbuilder.wording import switch as words
from tests.wording.scene import CATALOGUE, choice, group_status, reading, report, spec

GALLEY, LONG, SOLAR = choice("side-galley"), choice("long-roof"), choice("solar")
BEFORE = report(
    spec(GALLEY, LONG, SOLAR),
    groups=(group_status("galley", GALLEY),),
    readings=(reading("total-mass", point(2752), point(3000), Verdict.HOLDS),),
    gross=Pence(least=2_071_200, most=2_071_200),
)
AFTER = report(
    spec(choice("pod-galley"), choice("usb-pair"), SOLAR),
    readings=(reading("total-mass", Span(2754, 2760), point(3000), Verdict.HOLDS),),
    gross=Pence(least=2_110_800, most=2_200_000),
)
FOUND = Switch(
    take=Take(option=OptionId("pod-galley")),
    edits=(Take(option=OptionId("pod-galley")),),
    spec=AFTER.spec,
    stays=(SOLAR,),
    unfit=(
        Unfit(
            choice=LONG,
            cause=Cause(kind=CauseKind.FITS, option=OptionId("long-roof")),
            instead=(OptionId("usb-pair"),),
        ),
        Unfit(choice=choice("co-alarm"), cause=None),
    ),
    difference=Difference(gross_pence=39_600, mass_kg=2, hours=2, weeks=0),
    came=(RuleId("height-under-barrier"),),
    went=(RuleId("roof-not-too-heavy"),),
    cannot_tell=(RuleId("roof-not-too-heavy"),),
    undecided=(GroupId("cooking"), GroupId("extras")),
    complete=True,
)


def test_the_table_fits_eighty_columns() -> None:
    rows = (words.switch_heads(), *words.switch_rows(CATALOGUE, BEFORE, AFTER, FOUND))
    assert [row.in_columns(80) for row in rows] == [
        "                                                now               then    change",
        "price, VAT in                               £20,712     £21,108-22,000     +£396",
        "weight left                            about 248 kg   about 240-246 kg     -8 kg",
    ]
    assert words.switch_title(CATALOGUE, BEFORE, FOUND) == "CHANGE GALLEY  Side galley to Pod galley"


def test_the_parts_of_the_page() -> None:
    assert words.stays_head(FOUND) == "STAYS  1 of 3 others"
    assert words.unfit_head(FOUND) == "DOES NOT FIT  2"
    assert words.ask_again_head(FOUND) == "ASK AGAIN  2"
    assert words.cannot_tell_head(FOUND) == "CANNOT TELL  1"
    assert words.ask_again_line(CATALOGUE, FOUND) == "cooking and extras"
    assert words.cannot_tell_line(CATALOGUE, FOUND) == "roof load"
    first, second = (words.unfit_words(CATALOGUE, unfit) for unfit in FOUND.unfit)
    assert (first.name, first.why, first.instead) == (
        "Larchlid tilting roof, long",
        'made for "fenwain-long" (not in this catalogue)',
        "USB pair instead",
    )
    assert (second.name, second.why, second.instead) == ("CO alarm", "", "left out")
    assert words.switch_hint(CATALOGUE, BEFORE, FOUND) == (
        "Enter takes it with what is proposed; Esc keeps Side galley."
    )
    assert words.switch_taken(CATALOGUE, FOUND) == "Took Pod galley; with USB pair; left out CO alarm"


def test_the_whole_of_it_line_by_line() -> None:
    assert words.switch_spoken(CATALOGUE, BEFORE, AFTER, replace(FOUND, complete=False)) == (
        "Galley: Pod galley instead of Side galley.",
        "Adds 396 pounds, 2 kilograms and 2 hours; parts take as long as before.",
        "Price now: £20,712 VAT in, van not included.",
        "Price then: £21,108 to £22,000 VAT in, van not included.",
        "Weight now: about 248 kg left.",
        "Weight then: about 240 to 246 kg left.",
        "Stays: 1 of 3 choices.",
        'Does not fit: Larchlid tilting roof, long, made for "fenwain-long" (not in this catalogue): USB pair instead.',
        "Does not fit: CO alarm: left out.",
        "Ask again: Cooking.",
        "Ask again: Extras.",
        "Cannot tell after it: roof load.",
        "SIGN now broken: It would not go under your barrier.",
        "STOP no longer broken: Too heavy and you could not pull the roof shut.",
        "The search stopped before it knew whether a smaller change would do.",
    )
