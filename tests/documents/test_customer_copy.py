"""The customer's copy: the price as it is worked out, what is in it, nothing private, and no word that promises."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date

import pytest

from specbuilder.documents.blocks import Signatures
from specbuilder.documents.formats import FORMATS
from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState, Place
from specbuilder.model.record import Record, RecordKind, Undone
from specbuilder.model.spec import Choice, Customer, OpenQuestion
from specbuilder.wording.customer import about_people, pounds, pounds_range
from specbuilder.wording.dates import day_words

from .cases import TODAY, case, spec_of, the_catalogue
from .customer import EVERY, FAMILY, NEVER, QUOTED, SIGNED, copy, facts, pages, price, quoted, said
from .reading import part, texts

# --- the price


@EVERY
def test_the_price_is_the_one_of_the_report_and_comes_first(name: str) -> None:
    found = case(name)
    paper, worked_out = customer_copy(found), found.stand.report.price
    assert paper.blocks[0] == price(paper)
    assert price(paper).figure == pounds_range(worked_out.gross, "£")
    assert price(paper).note.startswith(
        f"{pounds_range(worked_out.net, '£')} without VAT, and {pounds_range(worked_out.vat, '£')} VAT at 20 %."
    )


@EVERY
def test_deposit_and_rest_add_up_to_the_price(name: str) -> None:
    found = case(name)
    gross = found.stand.report.price.gross
    sums = [int(each.replace(",", "")) for each in re.findall(r"£([\d,]+)", facts(customer_copy(found))["Deposit"])]
    if gross.least == gross.most:
        deposit, rest = sums
        assert deposit + rest == gross.least // 100
        assert abs(deposit * 1000 - gross.least) <= 500
    else:
        assert sums[0] + sums[2] == gross.least // 100
        assert sums[1] + sums[3] == gross.most // 100


def test_a_deposit_that_was_received_is_told_with_its_day_and_leaves_the_rest() -> None:
    received = Record(kind=RecordKind.DEPOSIT, at="2031-04-19 09:00", by="the office", pence=244_140)
    told = facts(copy(state=JobState.ORDERED, records=(SIGNED, received)))["Deposit"]
    assert told == "£2,441.40 received on 19 April 2031; the rest: £21,972.60"


def test_pence_are_shown_where_there_are_any_and_nowhere_else() -> None:
    assert pounds(2_441_400, "£") == "£24,414"
    assert pounds(2_441_440, "£") == "£24,414.40"


def test_work_that_is_undone_is_told_in_the_price() -> None:
    undone = (Undone(words="blank the roof vent", hours=1, net_pence=5_200, order=1),)
    assert "£62.40 of it is for undoing work that was already done." in price(copy(undone=undone)).note


# --- by state


@pytest.mark.parametrize(
    ("state", "title"),
    [
        (JobState.DRAFT, "Quote"),
        (JobState.QUOTED, "Quote"),
        (JobState.EXPIRED, "Quote"),
        (JobState.ORDERED, "Your order"),
        (JobState.CHANGED, "Your order"),
        (JobState.AS_BUILT, "What we built"),
    ],
)
def test_its_title_says_what_it_is(state: JobState, title: str) -> None:
    assert copy(state=state, records=(QUOTED, SIGNED)).title == title


def test_a_draft_has_its_banner_and_a_quote_that_holds_has_none() -> None:
    assert "DRAFT" in copy().running.banner.upper()
    assert customer_copy(quoted()).running.banner == ""
    assert copy(state=JobState.EXPIRED, records=(QUOTED,)).running.banner != ""
    assert customer_copy(quoted(replaced_by=2)).running.banner != ""


def test_a_quote_says_until_when_it_holds_and_has_lines_to_sign_on() -> None:
    paper = customer_copy(quoted())
    assert facts(paper)["Valid until"] == "14 May 2031"
    assert any(isinstance(block, Signatures) and len(block.roles) == 2 for block in paper.blocks)


@pytest.mark.parametrize("state", [JobState.DRAFT, JobState.EXPIRED])
def test_what_may_not_be_signed_has_no_line_to_sign_on(state: JobState) -> None:
    paper = copy(state=state, records=(QUOTED,))
    assert not any(isinstance(block, Signatures) for block in paper.blocks)
    assert "not signed" in said(paper)


def test_an_order_says_who_signed_when_and_where() -> None:
    rows = facts(copy(state=JobState.ORDERED, records=(SIGNED,)))
    assert rows["Signed on"] == "16 April 2031"
    assert rows["Customer"] == "M. Hale"
    assert rows["For the firm"] == "the owner"
    assert rows["Where"] == "signed at the customer's home"


def test_what_was_built_says_when_it_was_handed_over_and_no_day_to_come() -> None:
    built = Record(kind=RecordKind.BUILT, at="2031-07-04 15:00", by="M. Hale", words="the foreman")
    paper = copy(state=JobState.AS_BUILT, records=(SIGNED, built), today=date(2031, 7, 4))
    assert facts(paper)["Handed over"] == "4 July 2031, to M. Hale"
    assert "Ready" not in facts(paper)
    assert not part(paper, "If you change your mind").blocks
    assert "cancelling" not in said(paper)
    assert "before you sign" not in said(paper)
    assert "measured when finished" not in said(paper)


# --- what is in it


@EVERY
def test_every_part_is_named_with_its_side(name: str) -> None:
    found = case(name)
    text = said(customer_copy(found))
    for choice in found.stand.spec.choices:
        option = found.stand.catalogue.options[choice.option]
        if option.group != "base-van":
            assert option.name in text
    sides = {Place.LEFT: "on the left", Place.RIGHT: "on the right", Place.REAR: "at the rear"}
    for place in [choice.place for choice in found.stand.spec.choices if choice.place is not None]:
        assert sides[place] in text


@EVERY
def test_what_is_not_included_and_the_terms_of_the_firm_are_there(name: str) -> None:
    text, firm = said(copy(name)), the_catalogue().firm
    for line in (*firm.not_included, *firm.terms):
        assert line.rstrip(".") in text


def test_a_part_that_left_the_catalogue_is_not_told_by_its_id() -> None:
    choices = (*spec_of(FAMILY).choices, Choice(option="gone-long-ago"))  # type: ignore[arg-type]
    text = said(copy(choices=choices))
    assert "gone-long-ago" not in text
    assert "not on our list any more" in text


# --- what the firm has to settle


@pytest.mark.parametrize(("place", "notice"), [("home", True), ("distance", True), ("premises", False)])
def test_away_from_the_premises_the_notice_about_rights_goes_with_it(place: str, notice: bool) -> None:
    answers = spec_of(FAMILY).answers.with_answer(BriefKey("contract_place"), place)
    assert ("our notice about them goes with this paper" in said(copy(answers=answers))) is notice


def test_the_firms_own_words_on_cancelling_take_the_place_of_the_points_to_settle() -> None:
    found = case(FAMILY)
    assert "to be confirmed by the firm before you sign" in said(customer_copy(found))
    catalogue = found.stand.catalogue
    firm = replace(catalogue.firm, cancelling="Cancel within ten days and all of it comes back.")
    settled = replace(found, stand=replace(found.stand, catalogue=replace(catalogue, firm=firm)))
    assert "all of it comes back" in said(customer_copy(settled))
    assert "to be confirmed by the firm" not in said(customer_copy(settled))


def test_relief_from_tax_is_never_promised() -> None:
    assert "needs a declaration of its own: ask before you sign" in said(copy("wheelchair-day-van"))


# --- nothing private, no code, no promise


def test_nothing_private_stands_in_any_format() -> None:
    spec = spec_of(FAMILY)
    paper = copy(
        customer=Customer(name="M. Hale", contact="PLANTEDCONTACT 0123"),
        note="PLANTEDNOTE bad payer",
        choices=tuple(replace(choice, note="PLANTEDCHOICE") for choice in spec.choices),
        records=(
            Record(kind=RecordKind.CALL, at="2031-04-14 11:00", by="x", words="PLANTEDCALL", due="2031-04-20"),
            Record(kind=RecordKind.SUPPLY, at="2031-04-14 11:00", by="x", about="larchlid-long", words="PLANTEDWAIT"),
        ),
    )
    assert "M. Hale" in said(paper)
    assert "PLANTED" not in "\n".join(texts(paper))
    for form in FORMATS:
        assert b"PLANTED" not in form.set(paper), form.name


@EVERY
def test_no_id_of_the_catalogue_is_a_word_on_it(name: str) -> None:
    catalogue = the_catalogue()
    ids = {i for i in (*catalogue.options, *catalogue.rules, *catalogue.ledgers) if "-" in i}
    words = set(re.findall(r"[\w-]+", "\n".join(texts(copy(name).blocks))))
    assert not words & ids


@EVERY
@pytest.mark.parametrize("state", [JobState.DRAFT, JobState.ORDERED])
def test_it_never_promises_what_only_others_can(name: str, state: JobState) -> None:
    assert not NEVER.search("\n".join(texts(copy(name, state=state, records=(SIGNED,)))))


def test_what_people_typed_cannot_hide_or_break_a_line() -> None:
    paper = copy(
        customer=Customer(name="<b>M.</b>\n*Hale*\x1b[31m\u202e"),
        questions=(OpenQuestion(text="Which\tway?\u200b", owner="M.\nHale", due="2031-05-02"),),
    )
    assert not [text for text in texts(paper) if re.search("[\x00-\x1f\u200b\u202e]", text)]
    assert facts(paper)["For"].startswith("<b>M.</b> *Hale*")


# --- how it looks


@pytest.mark.parametrize("name", ["saturday-family", "off-grid-pair", "winter-walkers", "wheelchair-day-van"])
def test_a_full_build_fits_on_three_pages(name: str) -> None:
    assert pages(customer_copy(quoted(name))) <= 3


def test_the_day_of_the_paper_and_the_job_stand_on_it() -> None:
    assert facts(copy())["Job"] == f"0101, revision 1, {day_words(TODAY)}"


@pytest.mark.parametrize(
    ("mass_kg", "told"),
    [(60, "less than one grown-up"), (75, "or one grown-up"), (149, "or one grown-up"), (223, "or 2 grown-ups")],
)
def test_weight_in_people_counts_whole_people_only(mass_kg: float, told: str) -> None:
    assert about_people(mass_kg, 75) == told


def test_weight_left_says_what_is_counted_already() -> None:
    assert facts(copy())["You may still load"] == (
        "about 223 kg (or 2 grown-ups) with all who travel, 89 kg of luggage, water and fuel aboard"
    )
    assert facts(copy("vanload-on-hushwain"))["You may still load"].startswith("nothing: about 327 kg too much")
