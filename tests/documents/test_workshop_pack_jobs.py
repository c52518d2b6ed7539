"""The workshop pack of a job on its way: what changed, what is passed and read, what is whose, what is private."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Heading, Items, Paper, Paragraph, Signatures, Table
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Basis, JobState
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Acceptance, Customer, OpenQuestion, OwnPart, Spec

from .cases import NAMES, case, plain_case, spec_of, the_catalogue
from .reading import number, part, rows, tables, texts
from .scenes import BEGUN, changed_pair, half_done_family, ordered_family, own_fridge, signed_pair

_FAMILY = "saturday-family"


def _said(paper: Paper) -> str:
    return "\n".join(texts(paper.blocks))


# --- what changed


def test_a_first_revision_says_that_nothing_changed() -> None:
    assert "Nothing: first revision." in _said(workshop_pack(plain_case(_FAMILY)))


def test_what_changed_stands_before_everything_the_floor_builds_from() -> None:
    heads = [block.text for block in workshop_pack(changed_pair()).blocks if isinstance(block, Heading)]
    assert heads[0] == "What changed"


def test_a_part_that_is_left_out_and_a_window_that_moved_are_told_with_their_hole_and_circuit() -> None:
    changed = part(workshop_pack(changed_pair()), "What changed")
    parts = {(row["What"], row["Was"], row["Is"]) for row in rows(changed, "Was", "Is") if "Label" not in row}
    assert ("Removed", "Buzzer in the cab while the roof is open", "-") in parts
    window = "Opening window at the rear of the side"
    assert ("Moved", f"{window}, left", f"{window}, right") in parts
    pieces = {row["Label"]: row for row in rows(changed, "Was", "Is", "Label")}
    assert pieces["roof-open-buzzer-c1"]["What"] == "Circuit removed"
    hole = pieces["window-rear-opening-hole1"]
    assert hole["What"] == "Hole moved"
    assert "left" in hole["Was"]
    assert "right" in hole["Is"]


def test_a_changed_revision_names_its_change_order_and_what_is_to_be_undone_first() -> None:
    changed = _said(part(workshop_pack(changed_pair()), "What changed"))
    assert "Against revision 1, signed 2 April 2031, by change order 1." in changed
    assert "Change order 1: take the roof-open buzzer out and blank its holes, 1.5 hours (ESTIMATE)." in changed


def test_a_change_after_its_freeze_point_says_what_is_done_already() -> None:
    old = signed_pair()
    passed = tuple(
        Record(kind=RecordKind.PASSED, at="2031-04-15 12:00", by="the foreman", about=hold) for hold in ("H1", "H2")
    )
    old = replace(old, records=(*old.records, *passed))
    found = case(
        "off-grid-pair",
        before=old,
        revision=2,
        replaces=1,
        state=JobState.CHANGED,
        records=old.records,
        choices=tuple(choice for choice in old.choices if choice.option != "window-rear-opening"),
    )
    changed = part(workshop_pack(found), "Changed after its freeze point")
    [late] = [block for block in changed.blocks if isinstance(block, Items)]
    assert any("B2" in row and "15 April 2031" in row and "Opening window at the rear" in row for row in late.rows)


def test_a_revision_whose_forerunner_is_not_at_hand_does_not_say_that_nothing_changed() -> None:
    said = _said(part(workshop_pack(case(_FAMILY, revision=3, replaces=2)), "What changed"))
    assert "Revision 2 is not at hand" in said
    assert "Nothing: first revision." not in said


# --- what is done


def test_a_passed_hold_point_is_printed_with_who_and_when_and_has_no_box_to_sign() -> None:
    pack = workshop_pack(ordered_family())
    passed = part(pack, "Hold point H0")
    assert "PASSED 15 April 2031 by the foreman: seller present, ticket 4711." in _said(passed)
    assert "Read 15 April 2031 by the foreman: 1,948 kg in all." in _said(passed)
    assert not [block for block in passed.blocks if isinstance(block, Signatures)]
    assert [block for block in part(pack, "Hold point H2").blocks if isinstance(block, Signatures)]


def test_what_was_read_of_a_hole_stands_in_its_as_built_cell_and_every_other_one_is_blank() -> None:
    marked = {row["Label"]: row["As built X, Y, Z"] for row in rows(workshop_pack(ordered_family()), "Label", "Size")}
    assert marked.pop("window-mid-opening-hole1") == "X 512"
    assert set(marked.values()) == {""}


def test_every_table_to_fill_in_says_which_of_its_columns_are_blank() -> None:
    """A column that is empty all the way down is one to write in, or it is one too many."""
    for name in NAMES:
        for found in tables(workshop_pack(plain_case(name))):
            for number_, head in enumerate(found.heads):
                cells = {row[number_] for row in found.table.rows}
                assert cells != {""} or number_ in found.table.blank, (name, found.under, head)


# --- parts


def test_the_store_says_what_was_recorded_of_a_part_and_else_that_it_is_to_be_ordered() -> None:
    items = {row["Part"]: row["Store"] for row in rows(workshop_pack(ordered_family()), "Item", "Store")}
    assert items["Larchlid tilting roof, short"] == "ordered Thu 3 Apr 2031, expected Mon 12 May 2031"
    assert items["Opening window beside the living space, left"] == "in store Thu 10 Apr 2031"
    assert items["Fixed window beside the living space, right"].startswith("to be ordered")


def test_a_part_nobody_ordered_in_time_is_not_told_as_if_it_came() -> None:
    items = {row["Part"]: row["Store"] for row in rows(workshop_pack(ordered_family()), "Item", "Store")}
    assert items["Factory fuel tap"] == "to be ordered: the usual wait is over since 9 April 2031"
    assert items["Bench Two, two belts, fixed"] == "to be ordered, here about 7 May 2031: B3 waits for it"


def test_every_step_names_the_day_on_which_its_parts_must_be_there() -> None:
    found = ordered_family()
    pack = part(workshop_pack(found), "Parts, by the step")
    heads = {block.text.split(" ")[0]: block.text for block in pack.blocks if isinstance(block, Heading)}
    for step in found.plan.steps:
        if step.step in heads:
            assert f"{step.needed_by.day} " in heads[step.step].rpartition(". ")[2]


def test_the_customers_own_part_has_its_sheet_its_blanks_and_an_open_question() -> None:
    sheet = OwnPart(mass_kg=18, arrives="2031-05-20")
    pack = workshop_pack(case(_FAMILY, choices=tuple(own_fridge(choice, sheet) for choice in spec_of(_FAMILY).choices)))
    [own] = rows(pack, "Box label")
    assert own["Part"] == "Compressor fridge with front door, 48 litres"
    assert own["As its sheet says"] == (
        "mass 18 kg; draws NOT KNOWN; cut-out NOT KNOWN; arrives Tue 20 May 2031; door swings NOT KNOWN"
    )
    assert (own["Received on"], own["Inspected by"], own["Box label"]) == ("", "", "")
    assert "Blanks on the sheet of the customer's part: Compressor fridge" in _said(part(pack, "Open questions"))


def test_the_customers_own_parts_say_none_where_there_is_none() -> None:
    [table] = [found.table for found in tables(workshop_pack(plain_case(_FAMILY))) if "Box label" in found.heads]
    assert not table.rows
    assert table.empty == "None"


def test_a_note_for_the_workshop_is_printed_with_its_part() -> None:
    choices = tuple(
        replace(choice, note="behind\nthe tap") if choice.option == "water-galley-40" else choice
        for choice in spec_of(_FAMILY).choices
    )
    [tank] = [r for r in rows(workshop_pack(case(_FAMILY, choices=choices)), "Store") if r["Part"].startswith("40-lit")]
    assert tank["What it is"].endswith("Note: behind the tap")


@pytest.mark.parametrize("name", NAMES)
def test_every_mass_that_is_an_estimate_is_marked_and_no_other_is(name: str) -> None:
    options = the_catalogue().options
    chosen = {str(i): choice for i, choice in enumerate(spec_of(name).choices, 1)}
    for row in rows(workshop_pack(plain_case(name)), "Item", "kg each"):
        choice = chosen[row["Item"]]
        option = options.get(choice.option)
        if option is None or row["kg each"] in ("-", "not known"):
            continue
        estimate = option.basis is Basis.ESTIMATE and not is_theirs(option, choice)
        assert row["kg each"].endswith("\N{NO-BREAK SPACE}e") is estimate
        assert number(row["kg each"]) == pytest.approx(option.mass_kg, abs=0.5)


# --- told, asked, private


def test_what_was_accepted_and_promised_is_printed_in_the_words_used() -> None:
    pack = workshop_pack(ordered_family())
    [accepted] = rows(pack, "Words the customer accepted")
    assert accepted["Words the customer accepted"] == "Told, and understood."
    [promise] = rows(pack, "Promise")
    assert promise["Promise"] == "The heater blows to the bed as well."


def test_open_questions_are_printed_with_owner_day_and_the_step_they_stop() -> None:
    [asked] = rows(workshop_pack(ordered_family()), "Question")
    assert (asked["Who finds out"], asked["By"], asked["Stops"]) == ("M. Joiner", "Fri 2 May 2031", "B7")


def test_no_open_question_is_printed_as_none() -> None:
    [found] = [found for found in tables(workshop_pack(plain_case(_FAMILY))) if "Question" in found.heads]
    assert not found.table.rows
    assert found.table.empty == "None"


def test_what_nobody_was_asked_is_not_hidden_behind_an_empty_list_of_questions() -> None:
    said = _said(part(workshop_pack(half_done_family()), "Open questions"))
    report = half_done_family().stand.report
    assert report.undecided
    for group in report.undecided:
        assert the_catalogue().groups[group].name in said


@pytest.mark.parametrize("name", NAMES)
def test_there_is_no_money_on_it(name: str) -> None:
    found = case(name, accepted=_of_money(spec_of(name)))
    assert not [text for text in texts(workshop_pack(found)) if the_catalogue().firm.currency in text]


def _of_money(spec: Spec) -> tuple[Acceptance, ...]:
    """The rule about the ceiling, accepted in words that name a sum."""
    rule = next(r for r in the_catalogue().rules if "ceiling" in r or "price" in r)
    return (*spec.accepted, Acceptance(rule=RuleId(rule), words="£24,414 of £21,000", by="customer", at=""))


def test_the_private_note_and_the_customers_address_are_not_on_it() -> None:
    customer = Customer(name="A. Saturday", contact="12 Ferry Lane")
    said = _said(workshop_pack(case(_FAMILY, customer=customer, note="PRIVATE: friend of the owner")))
    assert "friend of the owner" not in said
    assert "Ferry Lane" not in said


def test_what_somebody_typed_is_one_line_without_hidden_signs() -> None:
    nasty = "one\ntwo\x1b[31m\u202ethree"
    found = case(
        _FAMILY,
        customer=Customer(name=nasty),
        records=tuple(replace(record, by=nasty, words=nasty) for record in BEGUN),
        accepted=(Acceptance(rule=RuleId("tell-the-insurer"), words=nasty, by=nasty, at=nasty),),
        questions=(OpenQuestion(text=nasty, owner=nasty, due=nasty, stops=nasty),),
    )
    pack = workshop_pack(found)
    for text in (*texts(pack.blocks), *texts(pack.running)):
        assert not {"\n", "\x1b", "\u202e"} & set(text), text


def test_a_choice_that_left_the_catalogue_is_named_and_not_built() -> None:
    spec = spec_of(_FAMILY)
    strange = replace(spec.choices[-1], option=OptionId("no-such-part"))
    pack = workshop_pack(case(_FAMILY, choices=(*spec.choices, strange)))
    [row] = [r for r in rows(pack, "Store") if "no-such-part" in r["Part"]]
    assert row["Store"] == "no longer in the catalogue"
    assert "no-such-part" in _said(part(pack, "Do not order or build"))


# --- what must not be done


@pytest.mark.parametrize("name", NAMES)
def test_what_may_not_be_cut_yet_says_so_in_the_do_not_list_and_where_it_is_cut(name: str) -> None:
    pack = workshop_pack(plain_case(name))
    waiting = {row["Label"] for row in rows(pack, "Label", "Edge") if row["Cut from"].startswith("NOT YET")}
    listed = {
        row.partition(",")[0]
        for block in part(pack, "Do not cut yet").blocks
        if isinstance(block, Items)
        for row in block.rows
    }
    told = {
        block.text.partition(": ")[2].partition(",")[0]
        for block in part(pack, "Holes").blocks
        if isinstance(block, Paragraph) and block.text.startswith("NOT TO BE CUT YET")
    }
    assert waiting == listed == told


@pytest.mark.parametrize("name", NAMES)
def test_every_box_that_may_not_be_drilled_is_given_in_figures(name: str) -> None:
    van = plain_case(name).stand.report.van
    body = the_catalogue().options[van].van if van else None
    boxes = rows(workshop_pack(plain_case(name)), "Mark on the floor")
    assert len(boxes) == len(body.no_drill_boxes if body else ())
    for row, box in zip(boxes, body.no_drill_boxes if body else (), strict=True):
        assert (number(row["X from"]), number(row["X to"])) == (box.from_x_mm, box.to_x_mm)
        assert (number(row["Y from"]), number(row["Y to"])) == (box.from_y_mm, box.to_y_mm)


def test_a_table_is_never_wider_than_ten_columns() -> None:
    """More do not fit the width of a page."""
    for name in NAMES:
        for block in workshop_pack(plain_case(name)).blocks:
            assert not isinstance(block, Table) or len(block.columns) < 10
