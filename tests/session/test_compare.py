"""Two builds side by side: what differs, line by line, whichever side one looks from."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.brief import Answers
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.comparison import ChangeKind, PieceKind
from specbuilder.model.edits import AnswerLine, Edit, LeaveOut, Move, SetCount, SetNote, SetOwner, Take
from specbuilder.model.holes import HoleLine
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.span import point
from specbuilder.model.spec import Choice, OwnPart, Spec, VanData
from specbuilder.model.stand import Stand
from specbuilder.session.compare import compare
from tests.session.compare_scene import (
    AWNING,
    CATALOGUE,
    CURTAINS,
    POD,
    SIDE,
    SOCKET,
    TABLE,
    WANTED,
    against,
    only,
    only_about,
)
from tests.session.edit_runs import done, stand

# --- choices


def test_another_answer_of_one_question_is_one_line() -> None:
    line = only(against(Take(option=POD)))
    assert line.kind is ChangeKind.REPLACED
    assert (line.before and line.before.option, line.after and line.after.option) == (SIDE, POD)
    assert (line.name_before, line.name_after) == (CATALOGUE.options[SIDE].name, CATALOGUE.options[POD].name)
    assert line.group == CATALOGUE.options[POD].group


def test_what_comes_and_what_goes_is_told_alone() -> None:
    gone = only(against(LeaveOut(option=AWNING)))
    assert (gone.kind, gone.after, gone.name_after) == (ChangeKind.REMOVED, None, "")
    curtains = CATALOGUE.options[CURTAINS]
    bare = stand(CATALOGUE, done(CATALOGUE, WANTED.spec, LeaveOut(option=CURTAINS)))
    come = only(compare(bare, WANTED))
    assert come.kind is ChangeKind.ADDED
    assert come.difference.gross_pence == round(curtains.price_net_pence * 1.2)
    assert (come.difference.mass_kg, come.difference.weeks) == (curtains.mass_kg, curtains.lead_weeks)


@pytest.mark.parametrize(
    ("edit", "kind"),
    [
        (Move(option=AWNING, to=Place.RIGHT), ChangeKind.MOVED),
        (SetCount(option=SOCKET, count=4), ChangeKind.RESIZED),
        (SetOwner(option=CURTAINS, owner=Owner.CUSTOMER, own_part=OwnPart()), ChangeKind.RESIZED),
        (SetNote(option=CURTAINS, note="grey"), ChangeKind.NOTED),
    ],
)
def test_the_same_choice_otherwise(edit: Edit, kind: ChangeKind) -> None:
    found = against(edit)
    assert only(found).kind is kind
    assert found.same == len(WANTED.spec.choices) - 1


def test_a_count_is_paid_by_the_piece() -> None:
    line = only(against(SetCount(option=SOCKET, count=5)))
    one = CATALOGUE.options[SOCKET]
    each_h = sum(step.hours_per_circuit for step in CATALOGUE.work.values())
    assert line.difference.gross_pence == round(3 * one.price_net_pence * 1.2)
    assert line.difference.hours == pytest.approx(3 * (one.labour_h + each_h * len(one.circuits)))
    assert line.difference.weeks == 0


def test_at_two_places_the_one_that_stays_is_not_the_one_that_moves() -> None:
    window, fixed = OptionId("window-mid-opening"), OptionId("window-mid-fixed")
    rest = done(CATALOGUE, WANTED.spec, LeaveOut(option=fixed), LeaveOut(option=window))
    left, right = Choice(option=AWNING, place=Place.LEFT), Choice(option=AWNING, place=Place.RIGHT)
    rear = Choice(option=AWNING, place=Place.REAR)

    def placed(*choices: Choice) -> Stand:
        return stand(CATALOGUE, rest.with_choices((*(c for c in rest.choices if c.option != AWNING), *choices)))

    line = only(compare(placed(right, left), placed(rear, right)))
    assert (line.kind, line.before, line.after) == (ChangeKind.MOVED, left, rear)


def test_followers_taken_times_and_causes_make_no_difference() -> None:
    choices = (replace(c, at="2031-04-14 10:00", came_with=(SIDE,)) for c in WANTED.spec.choices)
    assert compare(WANTED, stand(CATALOGUE, WANTED.spec.with_choices(tuple(reversed(tuple(choices)))))).empty


def test_the_price_of_the_van_counts_only_while_the_house_supplies_it() -> None:
    short, long = OptionId("fenwain-short"), OptionId("fenwain-long")
    theirs = only_about(against(Take(option=long)), long)
    assert (theirs.difference.gross_pence, theirs.difference.weeks) == (0, 0)
    ours = stand(CATALOGUE, done(CATALOGUE, WANTED.spec, Take(option=OptionId("van-from-firm"))))
    van = only_about(compare(WANTED, ours), short)
    price = CATALOGUE.options[short].van
    assert price is not None
    assert van.kind is ChangeKind.REPRICED
    assert van.difference.gross_pence == round(price.price_net_supplied_pence * 1.2)
    assert compare(WANTED, ours).rest.gross_pence == 0


def test_what_was_weighed_is_told_with_the_van() -> None:
    weighed = replace(WANTED.spec.van_data, weighed_front_kg=1150.0, weighed_rear_kg=800.0)
    found = compare(WANTED, stand(CATALOGUE, replace(WANTED.spec, van_data=weighed)))
    assert only(found).kind is ChangeKind.REWEIGHED
    assert only(found).difference.mass_kg == pytest.approx(found.difference.mass_kg)
    assert [change.field for change in found.van_data] == ["weighed_front_kg", "weighed_rear_kg"]


def test_a_customers_part_weighs_what_its_sheet_says_and_nothing_for_sure_without_one() -> None:
    mass_kg = CATALOGUE.options[TABLE].mass_kg
    sheet = OwnPart(mass_kg=mass_kg + 3)
    heavier = against(SetOwner(option=TABLE, owner=Owner.CUSTOMER, own_part=sheet))
    assert only(heavier).difference.mass_kg == pytest.approx(3)
    unweighed = against(SetOwner(option=TABLE, owner=Owner.CUSTOMER, own_part=OwnPart()))
    assert only(unweighed).difference.mass_kg == pytest.approx(-mass_kg)
    for found in (heavier, unweighed):
        assert (found.rest.gross_pence, found.rest.mass_kg, found.rest.hours) == (0, 0, 0)


# --- what was said, and what follows


def test_answers_of_the_brief_are_told_and_the_state_of_the_job_is_not() -> None:
    signed = done(CATALOGUE, WANTED.spec, AnswerLine(key=BriefKey("signing"), value="no"))
    assert not compare(WANTED, stand(CATALOGUE, signed)).answers
    (answer,) = against(AnswerLine(key=BriefKey("parking_limit_mm"), value=None)).answers
    assert (answer.key, answer.before, answer.after) == (BriefKey("parking_limit_mm"), 2100, None)


def test_a_bound_that_moves_is_a_figure_that_reads_otherwise() -> None:
    found = against(AnswerLine(key=BriefKey("parking_limit_mm"), value=2200))
    (height,) = (change for change in found.figures if change.bound_after == point(2200))
    assert (height.before, height.bound_before) == (height.after, point(2100))


def test_findings_that_came_went_or_cannot_be_told() -> None:
    low = against(AnswerLine(key=BriefKey("parking_limit_mm"), value=1900))
    (barrier,) = (f for f in low.came if f.level.value == "SIGN")
    assert low.turned.went == low.came
    unknown = against(AnswerLine(key=BriefKey("parking_limit_mm"), value=None))
    assert barrier.rule in {finding.rule for finding in unknown.doubts_came}
    assert barrier.rule not in {finding.rule for finding in unknown.came}


def test_holes_and_cables_of_what_moves_move_with_it() -> None:
    moved_ = against(Move(option=OptionId("hook-up-bundle"), to=Place.LEFT))
    holes = [piece for piece in moved_.pieces if piece.kind is PieceKind.HOLE]
    assert [(hole.change, hole.id) for hole in holes] == [(ChangeKind.MOVED, holes[0].id)]
    before, after = holes[0].before, holes[0].after
    assert isinstance(before, HoleLine)
    assert isinstance(after, HoleLine)
    assert before.y_mm is not None
    assert after.y_mm is not None
    assert before.y_mm < 0 < after.y_mm


def test_one_more_of_a_part_runs_one_more_cable() -> None:
    found = against(SetCount(option=SOCKET, count=3))
    (cable,) = (piece for piece in found.pieces if piece.kind is PieceKind.CIRCUIT)
    assert (cable.change, cable.before) == (ChangeKind.ADDED, None)
    assert isinstance(cable.after, CircuitLine)
    assert cable.after.option == SOCKET


def test_a_stronger_part_of_the_customer_sizes_its_circuit_anew() -> None:
    fridge = OptionId("fridge-front-door")
    sheet = OwnPart(mass_kg=17, watts_w=150, cut_out_mm="400 x 500", arrives="2031-05-01")
    found = against(SetOwner(option=fridge, owner=Owner.CUSTOMER, own_part=sheet))
    cables = [piece for piece in found.pieces if piece.kind is PieceKind.CIRCUIT]
    assert [piece.change for piece in cables] == [ChangeKind.RESIZED]
    before, after = cables[0].before, cables[0].after
    assert isinstance(before, CircuitLine)
    assert isinstance(after, CircuitLine)
    assert after.load_a > before.load_a


def test_data_of_the_real_van_and_nothing_else() -> None:
    found = compare(WANTED, stand(CATALOGUE, replace(WANTED.spec, van_data=VanData(vin_tail="410999", year=2029))))
    assert [(change.field, change.after) for change in found.van_data] == [("vin_tail", "410999")]
    assert not found.empty
    assert not found.changes


def test_an_empty_job_and_a_whole_one() -> None:
    found = compare(stand(CATALOGUE, Spec(answers=Answers())), WANTED)
    assert found.same == 0
    assert {change.kind for change in found.changes} == {ChangeKind.ADDED}
    assert len(found.changes) == len(WANTED.spec.choices)
