"""What a late change asks for at passed steps stands in the pack: closed by label, cut by figures, passed again."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from specbuilder.documents.blocks import Heading, Paper, Paragraph, Signatures
from specbuilder.documents.sheets.change_order import change_order_paper
from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.documents.sheets.running import running
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.span import Span
from specbuilder.session.papers import case_of
from specbuilder.wording.workshop import told

from .cases import CHECKSUM, NAMES, TODAY, plain_case, stand_of
from .changing import proposed_case, signed, signed_case, signed_change_case
from .reading import number, part, rows, texts

_HEAD = "TO DO BEFORE WORK GOES ON"


@cache
def pack() -> Paper:
    return workshop_pack(signed_change_case())


def redo() -> Paper:
    return part(pack(), _HEAD)


def hole_list() -> Paper:
    """The part of the pack with all holes; a part about changes before it begins with the same word."""
    start = next(i for i, b in enumerate(pack().blocks) if isinstance(b, Heading) and b.text == "Holes")
    return part(replace(pack(), blocks=pack().blocks[start:]), "Holes")


def labels(case: Case) -> set[str]:
    return {label for work in case.stand.spec.undone for label in work.holes}


def test_it_stands_right_behind_what_changed() -> None:
    heads = [block.text for block in pack().blocks if isinstance(block, Heading) and block.level == 2]
    assert heads[:2] == ["What changed", _HEAD]


def test_every_hole_that_is_made_good_is_closed_by_its_label_with_how_and_a_line_for_who() -> None:
    closed = rows(redo(), "Close, label", "How")
    assert {row["Close, label"] for row in closed} == labels(signed_change_case()) != set()
    assert {row["How"] for row in closed} == {"Patch"}
    assert {row["Closed by, on"] for row in closed} == {""}
    vent = next(row for row in closed if row["Close, label"] == "gas-bundle-hole1")
    assert "floor, diameter 125, at X 1,150, Y 585 right" in vent["What was cut, where"]
    said = "\n".join(texts(redo().blocks))
    assert "30 mm overlap all round (ESTIMATE)" in said
    assert "The body maker's repair paper goes first." in said


def test_the_new_holes_stand_there_as_they_stand_in_the_hole_list() -> None:
    new = rows(redo(), "Label", "Size")
    assert [row["Label"] for row in new] == ["awning-body-rail-hole1"]
    assert new == [row for row in rows(hole_list(), "Label", "Size") if row["Label"] == new[0]["Label"]]
    assert len(rows(redo(), "Label", "Edge")) == len(new)


def test_the_hold_point_is_read_and_signed_again_there_and_in_the_sequence() -> None:
    assert "Water for 30 minutes" in {row["Read again"] for row in rows(redo(), "Read again")}
    for blocks in (redo().blocks, part(pack(), "Hold point H2").blocks):
        assert [b.roles for b in blocks if isinstance(b, Signatures)] == [("H2 passed again, signed",)]
    said = "\n".join(texts(part(pack(), "Hold point H2").blocks))
    assert "Passed on 2 June 2031 for revision 1; to be passed again for: 4 holes closed (gas-bundle-hole1" in said
    glance = {row["Step"]: row["Done"] for row in rows(pack(), "Step", "Done")}
    assert glance["B2"].endswith("TO BE PASSED AGAIN")
    assert not glance["B1"].endswith("AGAIN")


def test_once_it_is_passed_again_nobody_is_asked_to_sign_once_more() -> None:
    spec = signed_change_case().stand.spec
    again = Record(kind=RecordKind.PASSED, at="2031-06-09 16:00", by="the foreman", about="H2", revision=2)
    case = case_of(stand_of(replace(spec, records=(*spec.records, again))), TODAY, before=stand_of(signed()))
    made = workshop_pack(case)
    for blocks in (part(made, _HEAD).blocks, part(made, "Hold point H2").blocks):
        assert not [b for b in blocks if isinstance(b, Signatures)]
    assert "H2 passed again 9 June 2031 by the foreman." in "\n".join(texts(part(made, _HEAD).blocks))


@pytest.mark.parametrize("name", NAMES)
def test_where_no_passed_step_is_touched_there_is_no_such_part(name: str) -> None:
    assert not part(workshop_pack(plain_case(name)), _HEAD).blocks


def test_holes_of_a_passed_step_are_not_told_as_still_to_be_cut() -> None:
    heads = [b.text for b in hole_list().blocks if isinstance(b, Heading)]
    cut = next(head for head in heads if "B2" in head)
    assert cut.startswith("Cut at B2")
    assert "new ones: under what is to be done before work goes on" in cut


def test_undoing_is_a_row_of_the_hours_so_that_the_rows_add_up_to_the_whole() -> None:
    plan = signed_change_case().plan
    hours = {row["Work"]: row["Hours"] for row in rows(pack(), "Step", "Work", "Hours")}
    undoing = next(cell for work, cell in hours.items() if work.startswith("Undoing"))
    assert undoing == told(Span(plan.undone_h, plan.undone_h), "h", estimate=True)
    whole = sum(number(cell.replace(" h", "")) for cell in hours.values())
    assert whole == pytest.approx(plan.whole_h.most, abs=0.05 * len(hours))


def test_the_old_pages_are_asked_back() -> None:
    assert any(text.startswith("Old pages of revision 1 returned: by, date") for text in texts(pack().blocks))
    assert not any(text.startswith("Old pages") for text in texts(workshop_pack(signed_case()).blocks))


def test_the_customers_papers_show_no_labels_and_no_sum_of_the_file() -> None:
    case = signed_change_case()
    for paper in (change_order_paper(case), customer_copy(case)):
        said = "\n".join(texts(paper))
        assert not [label for label in labels(case) if label in said]
        assert CHECKSUM not in said
    assert CHECKSUM in running(case, private=True).foot


def test_the_change_order_says_why_undoing_costs_and_that_no_deposit_is_due_again() -> None:
    said = [b.text for b in change_order_paper(proposed_case()).blocks if isinstance(b, Paragraph)]
    assert any(text.startswith("Why this costs: it was built as you had signed it.") for text in said)
    assert (
        "Deposit: £2,441 received on 19 April 2031. This change asks for no further deposit, unless we say so here in "
        "writing."
    ) in said
