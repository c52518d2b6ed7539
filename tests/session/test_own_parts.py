"""Parts the customer brings: which option stands for one, and the questions that its blanks are."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import CloseQuestion, Edit, LeaveOut, SetOwner, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Owner
from specbuilder.model.own_parts import SheetLine, blanks_of, is_brought
from specbuilder.model.spec import OpenQuestion, OwnPart, Spec
from specbuilder.model.ways import Aim, ClearFindings
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.session.finish import finish
from specbuilder.session.own_parts import bring_edit, own_instead, part_of, sheet_edit
from specbuilder.session.state import Session, do, redo, undo
from specbuilder.session.ways_out import ways_out
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import read_spec_file

EXAMPLES = Path(__file__).parents[2] / "examples"
FRIDGE, BATTERY = OptionId("fridge-own"), OptionId("battery-own")
WHOLE = OwnPart(mass_kg=16, watts_w=45, cut_out_mm="480 x 500", arrives="2031-06-03", door_mm=400)
LABEL = OwnPart(
    mass_kg=14, cut_out_mm="330 x 175", arrives="2031-06-03", continuous_a=100, capacity_ah=100, chemistry="LFP"
)


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return read_rules(rules_folder())


@pytest.fixture(scope="module")
def family(catalogue: Catalogue) -> Spec:
    return read_spec_file(EXAMPLES / "saturday-family.toml", catalogue).spec


def asked(line: SheetLine) -> OpenQuestion:
    return OpenQuestion(text=f"Their part: {line.value}?", owner="customer", due="2031-04-21")


def bring(catalogue: Catalogue, spec: Spec, option: str) -> Spec:
    return apply(catalogue, spec, bring_edit(catalogue, spec, OptionId(option), asked, "2031-04-14 10:00")).spec


def fill(catalogue: Catalogue, spec: Spec, option: OptionId, sheet: OwnPart) -> Spec:
    return apply(catalogue, spec, sheet_edit(catalogue, spec.chosen(option)[0], sheet, asked)).spec


def about(spec: Spec) -> set[str]:
    return {question.part for question in spec.questions}


def test_the_row_for_own_parts_stands_in_only_for_what_gives_as_much(catalogue: Catalogue) -> None:
    for option, meant in (
        ("fridge-front-door", FRIDGE),
        ("fridge-large", FRIDGE),
        ("fridge-own", FRIDGE),
        ("fridge-drawer", None),
        ("battery-kettle", BATTERY),
        ("battery-lantern", None),
        ("bench-two", None),
        ("tow-bar", None),
    ):
        assert own_instead(catalogue, OptionId(option)) == meant, option


def test_a_part_that_is_brought_is_theirs_and_every_blank_is_asked(catalogue: Catalogue, family: Spec) -> None:
    after = bring(catalogue, family, "fridge-front-door")
    (own,) = after.chosen(FRIDGE)
    assert own.owner is Owner.CUSTOMER
    assert not after.has(OptionId("fridge-front-door"))
    assert about(after) == {part_of(FRIDGE, line) for line in blanks_of(catalogue.options[FRIDGE], None)}
    assert all(question.owned for question in after.questions)
    assert evaluate(catalogue, after).facts.get("own_parts") == "missing"  # type: ignore[arg-type]


def test_a_part_with_no_row_of_its_own_is_marked_where_it_stands(catalogue: Catalogue, family: Spec) -> None:
    after = bring(catalogue, family, "bench-two")
    assert after.chosen(OptionId("bench-two"))[0].owner is Owner.CUSTOMER
    assert part_of(OptionId("bench-two"), SheetLine.MASS) in about(after)


def test_what_is_filled_in_closes_its_question_and_what_is_emptied_is_asked_again(
    catalogue: Catalogue, family: Spec
) -> None:
    blank = bring(catalogue, family, "fridge-front-door")
    part = fill(catalogue, blank, FRIDGE, replace(WHOLE, watts_w=None))
    assert about(part) == {part_of(FRIDGE, SheetLine.WATTS)}
    whole = fill(catalogue, part, FRIDGE, WHOLE)
    assert not whole.questions
    assert evaluate(catalogue, whole).facts.get("own_parts") == "complete"  # type: ignore[arg-type]
    assert about(fill(catalogue, whole, FRIDGE, replace(WHOLE, door_mm=None))) == {part_of(FRIDGE, SheetLine.DOOR)}


@pytest.mark.parametrize(
    "edit", [LeaveOut(option=FRIDGE), Take(option=OptionId("fridge-drawer")), Take(option=OptionId("no-fridge"))]
)
def test_a_part_that_goes_takes_its_questions_along_and_no_other(
    catalogue: Catalogue, family: Spec, edit: Edit
) -> None:
    other = OpenQuestion(text="Is there a sunroof?", owner="counter", due="2031-04-21")
    spec = bring(catalogue, replace(family, questions=(other,)), "fridge-front-door")
    assert apply(catalogue, spec, edit).spec.questions == (other,)


def test_a_part_that_is_ours_again_asks_nothing(catalogue: Catalogue, family: Spec) -> None:
    spec = bring(catalogue, family, "bench-two")
    ours = apply(catalogue, spec, SetOwner(option=OptionId("bench-two"), owner=Owner.HOUSE)).spec
    assert not ours.questions


def test_a_question_that_was_closed_by_hand_stays_closed_until_its_line_changes(
    catalogue: Catalogue, family: Spec
) -> None:
    spec = bring(catalogue, family, "fridge-front-door")
    text = f"Their part: {SheetLine.WATTS.value}?"
    spec = apply(catalogue, spec, CloseQuestion(text=text)).spec
    assert part_of(FRIDGE, SheetLine.WATTS) not in about(fill(catalogue, spec, FRIDGE, OwnPart(mass_kg=16)))


def test_bringing_is_one_step_of_undo_with_all_its_questions(catalogue: Catalogue, family: Spec) -> None:
    session = Session(catalogue=catalogue, spec=family)
    edit = bring_edit(catalogue, family, OptionId("fridge-front-door"), asked, "2031-04-14 10:00")
    done, _ = do(session, edit)
    back, _ = undo(done)
    assert back.spec == family
    again, _ = redo(back)
    assert again.spec == done.spec


def test_a_part_taken_from_its_own_row_is_the_customers_by_itself(catalogue: Catalogue, family: Spec) -> None:
    spec = apply(catalogue, family, Take(option=BATTERY)).spec
    assert spec.chosen(BATTERY)[0].owner is Owner.CUSTOMER


def test_an_unread_battery_blocks_no_inverter_and_is_blocked_by_none(catalogue: Catalogue, family: Spec) -> None:
    """The catalogue's 50 A for a battery nobody has seen prove nothing."""
    big = OptionId("inverter-2000")
    spec = bring(catalogue, family, "battery-small")
    assert evaluate(catalogue, spec).options[big].state is not OptionState.BLOCKED
    read = fill(catalogue, spec, BATTERY, LABEL)
    assert evaluate(catalogue, read).options[big].state is OptionState.BLOCKED
    strong = apply(catalogue, family, Take(option=OptionId("battery-kettle"))).spec
    strong = apply(catalogue, strong, Take(option=big)).spec
    assert evaluate(catalogue, strong).options[BATTERY].state is OptionState.OPEN


def test_an_older_file_that_calls_such_a_part_ours_is_no_more_sure_of_it(catalogue: Catalogue, family: Spec) -> None:
    taken = apply(catalogue, family, Take(option=BATTERY)).spec
    ours = taken.with_choices(replace(c, owner=Owner.HOUSE) for c in taken.choices)
    for spec in (taken, ours):
        unsure = {finding.rule for finding in evaluate(catalogue, spec).cannot_tell(Level.STOP)}
        assert "battery-carries-inverter" in unsure


def test_a_blank_sheet_stops_signing_and_says_what_cannot_be_told(catalogue: Catalogue, family: Spec) -> None:
    report = evaluate(catalogue, bring(catalogue, family, "battery-small"))
    assert "own-part-sheet-complete" in {finding.rule for finding in report.broken(Level.STOP)}
    unsure = {finding.rule for finding in report.cannot_tell(Level.STOP, Level.SIGN)}
    assert {"battery-carries-inverter", "battery-fits-its-box", "nights-on-the-battery"} <= unsure


def test_nothing_the_house_proposes_is_a_part_the_customer_would_have_to_own(
    catalogue: Catalogue, family: Spec
) -> None:
    """Also where a sheet is blank already, so that one more blank would break nothing new."""
    spec = bring(catalogue, family, "fridge-front-door")
    weak = apply(catalogue, spec, Take(option=OptionId("inverter-2000"))).spec
    broken = tuple(f.rule for f in evaluate(catalogue, weak).broken(Level.STOP) if f.rule.startswith("battery-"))
    assert broken
    *_, found = ways_out(catalogue, weak, ClearFindings(rules=broken))
    for way in found.ways:
        assert not any(is_brought(catalogue.options[c.option]) for c in way.spec.choices if not spec.has(c.option))
    open_ = apply(catalogue, spec, LeaveOut(option=OptionId("battery-small"))).spec
    proposal = finish(catalogue, open_, Aim.PRICE)
    assert proposal is not None
    assert not proposal.spec.has(BATTERY)
