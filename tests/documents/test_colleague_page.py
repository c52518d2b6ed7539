"""The colleague's page: one page that answers what was promised, what is open and what comes next."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from specbuilder.documents.blocks import Paper
from specbuilder.documents.sheets.colleague import colleague_page
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.wording.colleague import is_late, sides

from .cases import NAMES, case, the_catalogue
from .changing import LATER, signed_case
from .customer import QUOTED, facts, pages, said
from .reading import part, texts


@pytest.fixture(scope="module")
def paper() -> Paper:
    return colleague_page(signed_case())


def test_it_is_one_page_and_for_the_house_only(paper: Paper) -> None:
    assert pages(paper) == 1
    assert "For the house only. Not for the customer." in said(paper)
    assert "M. and J. Hale" in paper.running.job


def test_the_next_call_is_the_last_one_agreed(paper: Paper) -> None:
    assert facts(paper)["Next call"] == "10 June 2031, by the counter: the barrier height"
    assert facts(colleague_page(case("saturday-family")))["Next call"] == "none agreed"


def test_price_deposit_weight_and_reach_stand_at_the_top(paper: Paper) -> None:
    rows = facts(paper)
    assert rows["Price, VAT in"] == "£24,414, deposit of £2,441 received"
    assert rows["Weight"] == "about 223 kg left"
    assert rows["Reached at"] == "PLANTEDCONTACT 0123"
    assert rows["Our note"] == "PLANTEDNOTE"


def test_a_quote_says_until_when_it_holds() -> None:
    rows = facts(colleague_page(case("saturday-family", state=JobState.QUOTED, records=(QUOTED,))))
    assert rows["Quote valid until"] == "14 May 2031"
    assert "£2,441 not received yet" in rows["Price, VAT in"]


def test_what_was_promised_about_the_heater_is_found(paper: Paper) -> None:
    promised = said(part(paper, "What we promised"))
    assert "The heater's exhaust stays on the right. The counter, 14 April 2031." in promised
    assert "Heater exhaust: right." in promised
    assert "Galley: right." in promised
    assert "Accepted in writing: They will ring the insurer. M. Hale, 18 April 2031." in promised
    assert "Air heater, diesel, 2 kW (exhaust on the right)" in said(part(paper, "What is in it"))


def test_without_a_promise_it_says_so() -> None:
    assert "No promise is written down." in said(colleague_page(case("saturday-family")))


def test_what_is_late_is_called_late_and_what_is_here_is_not(paper: Paper) -> None:
    rows = facts(paper)
    assert rows["LATE"] == "Larchlid tilting roof, short (expected Wed 28 May 2031)"
    assert rows["Ordered"] == "Moss-green weave (expected Mon 28 Jul 2031)"
    assert "Air heater" not in "".join(value for name, value in rows.items() if name in ("LATE", "Ordered", "In store"))


@pytest.mark.parametrize(
    ("words", "due", "late"),
    [
        ("ordered", "2031-06-05", True),
        ("ordered", "2031-06-06", False),
        ("received", "2031-06-05", False),
        ("ordered", "", False),
        ("ordered", "soon", False),
    ],
)
def test_a_part_is_late_from_the_day_after_it_was_due(words: str, due: str, late: bool) -> None:
    record = Record(kind=RecordKind.SUPPLY, at="2031-04-22 10:00", by="x", about="y", words=words, due=due)
    assert is_late(record, LATER) is late


def test_open_things_say_who_and_by_when() -> None:
    assert "Is the barrier really 2.10 m? Customer, 20 June 2031." in said(colleague_page(signed_case()))
    half = colleague_page(case("half-done-family"))
    opened = said(part(half, "What nobody knows yet"))
    assert "Battery: Which leisure battery? Nobody yet." in opened
    assert "Nothing is open." in said(colleague_page(case("saturday-family")))


def test_the_last_decisions_and_records_come_newest_first(paper: Paper) -> None:
    rows = facts(paper)
    dated = [choice for choice in signed_case().stand.spec.choices if not choice.came_with]
    newest = max(dated, key=lambda choice: choice.at)
    assert the_catalogue().options[newest.option].name in rows["Chosen"].split(";")[0]
    assert rows["Written down"].startswith("5 June 2031: hold point H3 passed; 2 June 2031: hold point H2 passed")


def test_the_latest_word_on_a_part_counts() -> None:
    arrived = Record(kind=RecordKind.SUPPLY, at="2031-06-05 10:00", by="x", about="larchlid-short", words="in store")
    found = signed_case()
    spec = replace(found.stand.spec, records=(*found.stand.spec.records, arrived))
    rows = facts(colleague_page(replace(found, stand=replace(found.stand, spec=spec), today=date(2031, 6, 6))))
    assert "LATE" not in rows
    assert "Larchlid" not in rows["Ordered"]


@pytest.mark.parametrize("name", NAMES)
def test_it_can_be_made_of_any_build_and_hides_no_character(name: str) -> None:
    page = colleague_page(case(name, note="two\nlines\u202e"))
    assert "two lines" in facts(page)["Our note"]
    assert not [text for text in texts(page) if "\u202e" in text or "\n" in text]


def test_sides_are_told_in_small_letters() -> None:
    assert sides("SLIDING DOOR: LEFT. HOOK-UP: RIGHT REAR.") == "Sliding door: left. Hook-up: right rear."
