"""The change order: what goes and comes with its price, what is already done, and which revision is built meanwhile."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Facts, Paper, Paragraph, Signatures, Weight
from specbuilder.documents.formats import FORMATS
from specbuilder.documents.sheets.change_order import change_order_paper
from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.change_order import ChangeOrder
from specbuilder.model.comparison import Change, ChangeKind
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level
from specbuilder.model.papers import Case
from specbuilder.model.spec import Choice
from specbuilder.model.ways import Difference
from specbuilder.wording.customer import pounds, pounds_range
from specbuilder.wording.customer_changes import change_cells, change_line
from specbuilder.wording.dates import day_words

from .cases import plain_case, the_catalogue
from .changing import proposed_case, signed_change_case
from .customer import NEVER, facts, price, said, table, ticked
from .reading import part, texts


def order(case: Case) -> ChangeOrder:
    assert case.change_order is not None
    return case.change_order


@pytest.fixture(scope="module")
def paper() -> Paper:
    return change_order_paper(proposed_case())


def test_it_says_which_revision_it_changes_and_what_that_becomes(paper: Paper) -> None:
    assert paper.title == "Change order 1"
    assert facts(paper)["Changes"] == "revision 1, signed on 18 April 2031; it becomes revision 2"
    assert facts(paper)["For"] == "M. and J. Hale"


def test_until_it_is_signed_the_workshop_builds_the_signed_revision(paper: Paper) -> None:
    strong = [block.text for block in paper.blocks if isinstance(block, Paragraph) and block.weight is Weight.STRONG]
    assert strong == ["Until this is signed the workshop builds revision 1."]
    assert any(isinstance(block, Signatures) and len(block.roles) == 2 for block in paper.blocks)


def test_once_signed_it_says_by_whom_and_that_the_old_revision_is_not_built_any_more() -> None:
    paper = change_order_paper(signed_change_case())
    assert "This is signed: the workshop builds revision 2. Revision 1 is not to be built any more." in said(paper)
    assert facts(paper)["Signed on"] == "7 June 2031"
    assert not any(isinstance(block, Signatures) for block in paper.blocks)


def test_the_new_price_is_the_one_of_the_report_beside_the_old_one(paper: Paper) -> None:
    found = proposed_case()
    comparison = order(found).comparison
    assert price(paper).figure == pounds_range(found.stand.report.price.gross, "£")
    [row] = [row for row in table(paper, "Before and after") if row[0].startswith("Price")]
    assert row[1:] == (pounds_range(comparison.gross_before, "£"), pounds_range(comparison.gross_after, "£"))


def test_the_lines_add_up_to_the_sum_which_is_the_change_of_the_price(paper: Paper) -> None:
    comparison = order(proposed_case()).comparison
    found = [_pence(row[2]) for row in table(paper, "What changes") if row[2].lstrip("+-").startswith("£")]
    *lines, last, old, new = found
    assert sum(lines) == last == comparison.gross_after.least - comparison.gross_before.least
    assert (old, new) == (comparison.gross_before.least, comparison.gross_after.least)


def test_every_change_has_its_line_with_what_goes_and_what_comes(paper: Paper) -> None:
    rows = table(paper, "What changes")
    assert len(rows) == len(order(proposed_case()).comparison.changes) + 4
    pairs = {row[:2] for row in rows}
    assert ("Gas kit: hob, sealed store, vents, alarm", "Induction hob, one ring") in pairs
    assert (
        "Wind-out awning on body brackets (on the left)",
        "Wind-out awning on body brackets (on the right)",
    ) in pairs


def test_what_is_already_cut_is_named_with_hours_and_price(paper: Paper) -> None:
    work = order(proposed_case()).undone
    rows = table(paper, "What is already done and has to be undone")
    assert len(rows) == len(work) > 0
    assert [row[0].lower() for row in rows] == [each.words.lower() for each in work]
    assert [_pence(row[2]) for row in rows] == [round(each.net_pence * 1.2) for each in work]


def test_weight_nights_weeks_and_finish_stand_before_and_after(paper: Paper) -> None:
    rows = {row[0]: row[1:] for row in table(paper, "Before and after")}
    assert rows["Weight you may still load"] == ("about 223 kg", "about 223 kg")
    assert rows["Longest wait for a part"] == ("6 weeks", "6 weeks")
    assert rows["Still to pay"] == ("£21,973", "£23,506.60")
    assert rows["Ready, as expected"][1] == f"about {day_words(proposed_case().plan.finish)}"
    assert rows["Ready, as expected"][0] != rows["Ready, as expected"][1]


def test_findings_that_came_are_told_and_those_that_went_are_named(paper: Paper) -> None:
    comparison, rules = order(proposed_case()).comparison, the_catalogue().rules
    boxes = ticked(part(paper, "What we told you about this change"))
    came = [finding for finding in comparison.came if finding.level is not Level.STOP]
    assert len(boxes) == len(came) > 0
    assert all(any(box.startswith(rules[each.rule].because.rstrip(".")) for box in boxes) for each in came)
    gone = said(part(paper, "What we told you before"))
    assert all(rules[finding.rule].because.rstrip(".") in gone for finding in comparison.went)


def test_what_cannot_be_built_is_said_but_not_that_it_still_has_to_be_signed(paper: Paper) -> None:
    stops = said(part(paper, "It cannot be built as it stands"))
    assert "The heater's exhaust is under the awning" in stops
    assert "A change after signing is signed as well" not in said(paper)


def test_every_step_it_touches_says_whether_it_is_passed_and_what_is_done(paper: Paper) -> None:
    rows = {row[0].split()[0]: row for row in table(paper, "How far the build is")}
    for point in order(proposed_case()).freeze:
        if point.touched:
            row = rows[point.step]
            assert all(name in row[2] for name in point.touched)
            assert row[1].startswith("not yet") is not bool(point.passed)
            assert all(done.lower() in row[3].lower() for done in point.done)
    assert rows["B2"][1] == "2 June 2031"
    assert any(isinstance(block, Paragraph) and block.weight is Weight.CAUTION for block in paper.blocks)


def test_nothing_private_and_no_code_of_the_catalogue_stands_on_it(paper: Paper) -> None:
    every = "\n".join(texts(paper))
    catalogue = the_catalogue()
    ids = {i for i in (*catalogue.options, *catalogue.rules, *catalogue.ledgers) if "-" in i}
    assert "PLANTED" not in every
    assert not set(re.findall(r"[\w-]+", every)) & ids
    assert not NEVER.search(every)
    assert all(b"PLANTED" not in form.set(paper) for form in FORMATS)


def test_the_customers_copy_of_the_new_revision_says_what_is_different() -> None:
    told = said(part(customer_copy(signed_change_case()), "What is different from revision 1"))
    assert "Induction hob, one ring, instead of Gas kit: hob, sealed store, vents, alarm: -£624" in told


def test_there_is_none_without_a_signed_revision() -> None:
    with pytest.raises(ValueError, match="needs a signed revision"):
        change_order_paper(plain_case("saturday-family"))


def test_a_note_for_the_workshop_is_no_line_of_a_change_order() -> None:
    found = proposed_case()
    before = Choice(option=OptionId("side-galley"), note="PLANTEDOLD")
    noted = Change(
        kind=ChangeKind.NOTED,
        group=None,
        before=before,
        after=replace(before, note="PLANTEDNEW"),
        name_before="Side galley",
        name_after="Side galley",
        difference=Difference(gross_pence=0, mass_kg=0, hours=0, weeks=0),
    )
    comparison = replace(order(found).comparison, changes=(noted,))
    paper = change_order_paper(replace(found, change_order=replace(order(found), comparison=comparison)))
    assert "Side galley" not in said(part(paper, "What changes"))


@pytest.mark.parametrize(
    ("kind", "words"),
    [(ChangeKind.REPRICED, "at another price"), (ChangeKind.REWEIGHED, "with another weight")],
)
def test_a_line_whose_name_is_the_same_on_both_sides_says_what_is_other(kind: ChangeKind, words: str) -> None:
    choice = Choice(option=OptionId("side-galley"))
    change = Change(
        kind=kind,
        group=None,
        before=choice,
        after=choice,
        name_before="Side galley",
        name_after="Side galley",
        difference=Difference(gross_pence=1_240, mass_kg=0, hours=0, weeks=0),
    )
    assert change_cells(change, "£").in_ == f"Side galley, {words}"
    assert change_line(change, "£") == f"Side galley, {words}, instead of Side galley: +£12.40"


def test_only_facts_and_lines_to_sign_are_left_blank(paper: Paper) -> None:
    blanks = [name for block in paper.blocks if isinstance(block, Facts) for name, value in block.rows if not value]
    assert blanks == ["Why"]


def _pence(text: str) -> int:
    """``+£1,533.60`` in pence."""
    sign = -1 if text.startswith("-") else 1
    number = text.lstrip("+-").removeprefix("£").replace(",", "")
    assert pounds(round(float(number) * 100), "£").removeprefix("£").replace(",", "") == number
    return sign * round(float(number) * 100)


def test_hours_weeks_and_kilograms_are_marked_as_estimates(paper: Paper) -> None:
    said = list(texts(paper.blocks))
    assert (
        "Hours, weeks and kg: ESTIMATE. Weeks: how much longer we wait for that part; together, for the slowest of all."
        in said
    )
    assert "Hours of undoing: ESTIMATE; the price is what we ask for it." in said
