"""The customer's copy: everything told and accepted, everything open, and what the customer brings."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.ids import BriefKey, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import JobState, Level, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.span import point
from specbuilder.model.spec import Acceptance, OpenQuestion, OwnPart
from specbuilder.wording.dates import day_words

from .cases import case, spec_of, the_catalogue
from .customer import EVERY, FAMILY, QUOTED, SIGNED, copy, facts, said, table, ticked, with_own_fridge
from .reading import part

# --- what was told


@EVERY
def test_everything_told_stands_there_with_a_box_to_tick(name: str) -> None:
    found = case(name)
    boxes = ticked(customer_copy(found))
    for finding in found.stand.report.findings:
        because = found.stand.catalogue.rules[finding.rule].because
        if finding.verdict is Verdict.BROKEN and finding.level in (Level.SIGN, Level.NOTE):
            assert any(row.startswith(because.rstrip(".")) for row in boxes), because


@EVERY
def test_what_stops_it_is_said_plainly_and_only_then(name: str) -> None:
    found = case(name)
    text = said(customer_copy(found))
    stops = found.stand.report.broken(Level.STOP)
    assert ("cannot be built as it stands" in text) is bool(stops)
    assert all(found.stand.catalogue.rules[finding.rule].because.rstrip(".") in text for finding in stops)


def test_what_was_accepted_says_by_whom_and_when() -> None:
    rule = RuleId("tell-the-insurer")
    words = "NOTE, to be said: Tell your insurer and the licensing office before you drive. It is about the roof."
    accepted = Acceptance(rule=rule, words=words, by="M. Hale", at="2031-04-14 11:20")
    told = [row for row in ticked(copy(accepted=(accepted,))) if "insurer" in row]
    assert told == [
        "Tell your insurer and the licensing office before you drive. Accepted by M. Hale on 14 April 2031."
    ]


def test_words_that_were_accepted_stay_when_the_rule_says_it_otherwise_today() -> None:
    accepted = Acceptance(rule=RuleId("tell-the-insurer"), words="Ring your insurer.", by="M. Hale", at="2031-04-14")
    told = next(row for row in ticked(copy(accepted=(accepted,))) if "insurer and" in row)
    assert told.endswith('The words then: "Ring your insurer."')


def test_a_word_once_given_is_not_dropped_when_it_is_no_longer_so() -> None:
    accepted = Acceptance(
        rule=RuleId("double-seat-does-not-turn"),
        words="SIGN, broken: A two-person seat has no room to turn.",
        by="M. Hale",
        at="2031-04-14",
    )
    assert ticked(copy(accepted=(accepted,)))[-1] == (
        "A two-person seat has no room to turn. Accepted by M. Hale on 14 April 2031. It is no longer so."
    )


def test_what_is_broken_and_may_be_accepted_asks_for_a_word_in_writing() -> None:
    found = case("right-door-muddle")
    open_yet = [row for row in ticked(customer_copy(found)) if row.endswith("This needs your word in writing.")]
    assert len(open_yet) == len(found.stand.report.broken(Level.SIGN)) > 0


def test_a_promise_stands_there_with_its_day() -> None:
    promise = Record(kind=RecordKind.PROMISED, at="2031-04-14 11:05", by="the counter", words="The exhaust stays right")
    assert "The exhaust stays right. Said on 14 April 2031." in said(copy(records=(promise,)))


@EVERY
def test_the_cautions_of_the_parts_that_belong_on_this_paper_are_on_it(name: str) -> None:
    found = case(name)
    catalogue, text = found.stand.catalogue, said(customer_copy(found))
    for choice in found.stand.spec.choices:
        for key in catalogue.options[choice.option].cautions:
            assert ("customer copy" not in catalogue.cautions[key].shown_where) or catalogue.cautions[key].text in text


def test_more_beds_than_belts_is_said_beside_the_beds_as_well() -> None:
    found = case(FAMILY)
    berths: Reading = replace(found.stand.report.readings[LedgerId("berths")], value=point(6))
    readings = {**found.stand.report.readings, berths.id: berths}
    more = replace(found, stand=replace(found.stand, report=replace(found.stand.report, readings=readings)))
    assert "6 people may sleep in it, only 4 people may travel" in said(customer_copy(more))
    assert "may sleep in it, only" not in said(customer_copy(found))


# --- open questions and own parts


def test_every_open_thing_says_who_finds_out_by_when() -> None:
    found = case("half-done-family")
    rows = {row[0]: row[1:] for row in table(customer_copy(found), "Still open")}
    assert rows["How high is the barrier at the station?"] == ("you", "21 April 2031")
    assert rows["How high is the lowest barrier or garage it must pass?"] == ("to be agreed", "to be agreed")
    for group in found.stand.report.undecided:
        known = found.stand.catalogue.groups[group]
        assert f"{known.name}: {known.question}" in rows


def test_a_question_of_the_brief_that_somebody_was_asked_names_them() -> None:
    ask = the_catalogue().brief[BriefKey("parking_limit_mm")].ask
    asked = (OpenQuestion(text=ask, owner="counter", due="2031-04-25"),)
    rows = table(copy("half-done-family", questions=asked), "Still open")
    assert ("How high is the lowest barrier or garage it must pass?", "we", "25 April 2031") in rows


def test_what_is_not_checked_yet_is_counted_and_not_told_as_good() -> None:
    assert "33 of our checks wait for these answers" in said(copy("half-done-family"))
    assert "of our checks" not in said(copy(FAMILY))


def test_an_own_part_says_by_when_what_is_missing_and_that_we_do_not_warrant_it() -> None:
    found = case(FAMILY, choices=with_own_fridge(OwnPart(mass_kg=18, arrives="2031-05-20")))
    paper = customer_copy(found)
    needed = next(
        step.needed_by for step in found.plan.steps for each in step.arrivals if each.option == "fridge-front-door"
    )
    own = said(part(paper, "What you bring yourself"))
    assert f"here by {day_words(needed)}" in own
    assert "We fit what you bring; we do not warrant it." in own
    rows = table(paper, "Still open")
    assert [row for row in rows if row[0].startswith("Compressor fridge")] == [
        (
            "Compressor fridge with front door, 48 litres: how many watts it draws, the size of its hole, from its "
            "paper and how long its door is",
            "you",
            day_words(needed),
        )
    ]


def test_without_an_own_part_nothing_is_said_of_warranty() -> None:
    assert "warrant it" not in said(copy(FAMILY))


def test_before_signing_the_days_are_said_to_hold_for_an_order_of_today_and_the_first_is_no_date() -> None:
    told = said(part(customer_copy(case(FAMILY)), "If you change your mind"))
    assert "base van and door side (on the day work begins); window positions (about 21 April);" in told
    assert "These days hold if you order today; if you order later, they come later, too." in told
    signed = said(part(copy(state=JobState.ORDERED, records=(QUOTED, SIGNED)), "If you change your mind"))
    assert "if you order" not in signed


def test_of_what_must_run_away_from_the_plug_what_is_lacking_is_named() -> None:
    answers = spec_of(FAMILY).answers
    wanted = replace(answers, given={**answers.given, BriefKey("must_run"): ("laptop", "kettle", "hair-dryer")})
    told = [row for row in ticked(copy(answers=wanted)) if "among the appliances" in row]
    assert told == [
        "You want this to run away from the plug, but it is not among the appliances yet, so its energy is not "
        "counted. It is about: kettle and hair dryer."
    ]
    none = tuple(
        replace(c, option=OptionId("no-inverter")) if c.option == "inverter-600" else c for c in spec_of(FAMILY).choices
    )
    stops = said(copy(answers=wanted, choices=none))
    assert "there is no inverter. It is about: kettle and hair dryer." in stops


def test_every_freeze_point_is_told_with_its_day() -> None:
    found = case(FAMILY)
    told = said(part(customer_copy(found), "If you change your mind"))
    for step in found.plan.steps:
        work = found.stand.catalogue.work[step.step]
        if work.freezes:
            assert all(thing in told for thing in work.freezes)
            day = f"about {day_words(step.last_day).removesuffix(' 2031')}"
            assert (day if step.last_day > found.plan.first_day else "on the day work begins") in told


# --- what is agreed, and what is not sold


def test_what_the_customer_brings_along_is_not_under_what_they_get() -> None:
    found = facts(copy(FAMILY))
    assert found["Yours"] == "Brought along by you, and not in the price: laptop, 60 W."
    assert "aptop, 60 W" not in found["Power"]


def test_no_day_on_which_the_van_comes_in_is_made_up() -> None:
    told = facts(copy(FAMILY))
    assert told["The van comes in"] == (
        "on the day that we agree with you; the days here count from 18 April 2031, if you order today"
    )
    ordered = facts(copy(FAMILY, state=JobState.ORDERED, records=(SIGNED,)))
    assert ordered["The van comes in"] == "on the day that we agree with you; the days here count from 16 April 2031"


def test_a_vat_number_that_nobody_filled_in_is_said_to_be_missing() -> None:
    assert "VAT number: still to be filled in by the firm" in facts(copy(FAMILY))["From"]
