"""Findings in whole sentences."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.ids import BriefKey, LedgerId, OptionId, RuleId, Tag
from specbuilder.model.kinds import Level, Place, Verdict
from specbuilder.model.ledger import Lack
from specbuilder.model.rules import AllOf, AnyOf, FitsVan, NeedsMet, PlacesLegal, WithinBound, ZonesFree
from specbuilder.model.span import point
from specbuilder.model.spec import Acceptance
from specbuilder.wording.findings import (
    FindingWords,
    finding_line,
    finding_words,
    now_broken,
    silent_words,
    strangers_words,
)
from tests.wording.scene import CATALOGUE, choice, finding, reading, report, spec

SPEC = spec(
    choice("side-galley", place=Place.RIGHT, at="2031-04-14 10:31"),
    choice("solar", at="2031-04-14 10:42"),
    gas="any",
)
ROOF = reading("roof-load", point(13), point(8), Verdict.BROKEN)
HEIGHT = reading(
    "closed-height", point(2035), None, Verdict.CANNOT_TELL, lacks=(Lack(key=BriefKey("parking_limit_mm")),)
)
REPORT = report(SPEC, readings=(ROOF, HEIGHT))


def test_a_broken_ledger() -> None:
    told = finding("roof-not-too-heavy", Verdict.BROKEN, subjects=(OptionId("solar"),), reading=LedgerId("roof-load"))
    assert finding_line(CATALOGUE, REPORT, told) == (
        "STOP, broken: Too heavy and you could not pull the roof shut. "
        "Weight on the lifting roof: 13 of 8 kg, over by 5 kg."
    )
    assert finding_words(CATALOGUE, REPORT, told) == FindingWords(
        head="STOP, broken: Too heavy and you could not pull the roof shut.",
        rests_on=(
            "Weight on the lifting roof: 13 of 8 kg, over by 5 kg",
            "Solar 160 W, framed, taken 2031-04-14 10:42",
        ),
        lacks=(),
        fixes=("Light panel", "Strong struts"),
        source="Source: roof maker's sheet.",
    )


def test_what_cannot_be_told_names_what_is_missing_and_the_stake() -> None:
    told = finding(
        "height-under-barrier",
        Verdict.CANNOT_TELL,
        keys=(BriefKey("parking_limit_mm"),),
        reading=LedgerId("closed-height"),
        lacks=(Lack(key=BriefKey("parking_limit_mm")), Lack()),
    )
    assert finding_line(CATALOGUE, REPORT, told) == (
        "SIGN, cannot tell yet, needs barrier height and the data of the base van. "
        'At stake: "It would not go under your barrier."'
    )
    assert finding_words(CATALOGUE, REPORT, told) == FindingWords(
        head="SIGN, cannot tell yet, needs barrier height and the data of the base van. "
        'At stake: "It would not go under your barrier."',
        rests_on=("Height closed: cannot tell: needs barrier height", "barrier height: not known yet"),
        lacks=('needs an answer: barrier height - "parking_limit_mm?"', "needs the data of the base van"),
        fixes=("Do something else",),
        source="Source: test. ESTIMATE",
    )


def test_a_broken_need() -> None:
    told = finding(
        "flame-needs-alarm",
        Verdict.BROKEN,
        subjects=(OptionId("side-galley"), OptionId("gas-bundle")),
        keys=(BriefKey("gas"),),
        wanted=(Tag("alarm"),),
    )
    assert finding_line(CATALOGUE, REPORT, told) == (
        "STOP, broken: You cannot smell it. It is about Side galley, right, Gas bundle and gas (do not mind). "
        "Missing: CO alarm."
    )
    assert finding_words(CATALOGUE, REPORT, told).rests_on == (
        "Side galley, right, taken 2031-04-14 10:31",
        "Gas bundle",
        "gas: do not mind",
        "missing: CO alarm",
    )


def test_what_holds_and_what_was_accepted() -> None:
    holds = finding("nights-short", Verdict.HOLDS)
    assert finding_line(CATALOGUE, REPORT, holds) == (
        'Holds. If it were broken: "By the second evening the fridge is off."'
    )
    assert finding_words(CATALOGUE, REPORT, holds).fixes == ()
    accepted = finding("nights-short", Verdict.BROKEN, accepted=True)
    by = replace(
        SPEC, accepted=(Acceptance(rule=RuleId("nights-short"), words="...", by="the customer", at="2031-04-18"),)
    )
    assert finding_line(CATALOGUE, report(by), accepted) == (
        "SIGN, accepted in writing by the customer on 18 April 2031: By the second evening the fridge is off."
    )
    assert finding_line(CATALOGUE, REPORT, accepted) == (
        "SIGN, accepted in writing: By the second evening the fridge is off."
    )


def _asking(atom: WithinBound | NeedsMet | FitsVan | PlacesLegal | ZonesFree):  # type: ignore[no-untyped-def]
    rule = replace(CATALOGUE.rules[RuleId("roof-not-too-heavy")], then=AnyOf((AllOf((atom,)),)))
    return replace(CATALOGUE, rules={**CATALOGUE.rules, rule.id: rule})


def test_a_stricter_rule_says_what_it_asks() -> None:
    holds = reading("roof-load", point(7), point(8), Verdict.HOLDS)
    told = finding("roof-not-too-heavy", Verdict.BROKEN, reading=LedgerId("roof-load"))
    strict = _asking(WithinBound(LedgerId("roof-load"), factor=0.8))
    assert finding_words(strict, report(SPEC, readings=(holds,)), told).rests_on == (
        "Weight on the lifting roof: 7 of 8 kg",
        "asked here: at most 6.4 kg",
    )


def test_general_rules_speak_of_each_part() -> None:
    told = finding(
        "roof-not-too-heavy",
        Verdict.BROKEN,
        subjects=(OptionId("solar"), OptionId("long-roof"), OptionId("side-galley")),
        wanted=(Tag("high-cap"), Tag("elevating-roof")),
    )
    assert finding_words(_asking(NeedsMet()), REPORT, told).rests_on == (
        "Solar 160 W, framed: It has to be bolted to something.",
        "Larchlid tilting roof, long",
        "Side galley, right, taken 2031-04-14 10:31",
        "missing: high cap or elevating roof",
    )
    assert finding_words(_asking(FitsVan()), REPORT, told).rests_on[1] == (
        'Larchlid tilting roof, long: made for "fenwain-long" (not in this catalogue)'
    )
    assert finding_words(_asking(PlacesLegal()), REPORT, told).rests_on[2] == (
        "Side galley, right: may stand right or left"
    )


def test_silent_and_strange_things_are_named() -> None:
    silent = report(SPEC, silent_ledgers=(LedgerId("nights"),), silent_rules=(RuleId("nights-short"),))
    assert silent_words(CATALOGUE, silent) == (
        "Not summed yet, nothing is known about it: Nights on the battery (1 rule waits for it)."
    )
    assert silent_words(CATALOGUE, REPORT) == ""
    assert strangers_words(report(SPEC, strangers=(OptionId("old-roof"),))) == (
        '"old-roof" is chosen and not in this catalogue: take another option in its place or leave it out.',
    )


def test_a_note_is_to_be_said_not_broken() -> None:
    rule = replace(CATALOGUE.rules[RuleId("nights-short")], level=Level.NOTE)
    note = replace(finding("nights-short", Verdict.BROKEN), level=Level.NOTE)
    catalogue = replace(CATALOGUE, rules={**CATALOGUE.rules, rule.id: rule})
    assert finding_line(catalogue, REPORT, note) == "NOTE, to be said: By the second evening the fridge is off."


def test_a_part_that_now_lacks_another_one_is_named() -> None:
    broken = finding("roof-not-too-heavy", Verdict.BROKEN, subjects=(OptionId("solar"),))
    told = now_broken(_asking(NeedsMet()), report(spec()), report(spec(), findings=(broken,)))
    assert told.endswith("now broken: Solar 160 W, framed: It has to be bolted to something")
