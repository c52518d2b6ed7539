"""Two builds side by side: what differs, line by line, whichever side one looks from."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from types import MappingProxyType

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from specbuilder.model.brief import Answers
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.comparison import Change, ChangeKind, Comparison, PieceKind
from specbuilder.model.edits import AnswerLine, Edit, LeaveOut, Move, SetCount, SetNote, SetOwner, Take
from specbuilder.model.holes import HoleLine
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.span import point
from specbuilder.model.spec import Choice, OwnPart, Spec, VanData
from specbuilder.model.stand import Stand
from specbuilder.session.compare import compare, moved
from specbuilder.storage.rules_files import read_rules
from tests.conftest import RULES
from tests.session.edit_runs import EXAMPLES, done, example, runs, stand

CATALOGUE = read_rules(RULES)
STANDS = {path.stem: example(CATALOGUE, path.stem) for path in sorted(EXAMPLES.glob("*.toml"))}
WANTED = STANDS["saturday-family"]
FINISHED = [
    s for s in STANDS.values() if not s.report.undecided and s.report.readings[LedgerId("total-mass")].value.settled
]
"""Without the build that holds a bench nobody has weighed: its weight is a range."""
AWNING, SIDE, POD = OptionId("awning-body-rail"), OptionId("side-galley"), OptionId("pod-galley")
SOCKET, CURTAINS, TABLE = OptionId("socket-usb-pair"), OptionId("curtains"), OptionId("table-rail")


def against(*edits: Edit) -> Comparison:
    """What these edits make of the example."""
    return compare(WANTED, stand(CATALOGUE, done(CATALOGUE, WANTED.spec, *edits)))


def only(comparison: Comparison) -> Change:
    (change,) = comparison.changes
    return change


def with_options(*options: Option, without: tuple[OptionId, ...] = ()) -> Catalogue:
    """The catalogue of another year."""
    known = {key: option for key, option in CATALOGUE.options.items() if key not in without}
    return replace(CATALOGUE, options=MappingProxyType(known | {option.id: option for option in options}))


# --- laws


def test_a_build_does_not_differ_from_itself() -> None:
    for one in STANDS.values():
        found = compare(one, one)
        assert found.empty
        assert found.same == len(one.spec.choices)


def test_from_the_other_side_all_is_turned_round() -> None:
    for one, other in combinations(STANDS.values(), 2):
        assert compare(one, other).turned == compare(other, one)


MASS = LedgerId("total-mass")


def beside_parts_kg(one: Stand) -> float:
    """People, their luggage and other load; of the water what a fill stop keeps out."""
    lines = {line.label: line.amount.least for line in one.report.readings[MASS].entries if line.label}
    travellers = sum(one.report.facts.number(BriefKey(key)).least for key in ("adults", "children"))
    chosen = [(CATALOGUE.options[choice.option], choice.count) for choice in one.spec.choices]
    tanks_l = sum(option.water.fresh_travel_l * count for option, count in chosen)
    load = lines.get("people", 0) + lines.get("other load", 0)
    return load + 10 * travellers + lines.get("travel water", 0) - tanks_l


def test_between_finished_builds_the_lines_add_up_and_only_people_and_capped_water_are_the_rest() -> None:
    assert len(FINISHED) > 5
    for one, other in combinations(FINISHED, 2):
        rest = compare(one, other).rest
        assert (rest.gross_pence, rest.hours) == (0, 0)
        assert rest.mass_kg == pytest.approx(beside_parts_kg(other) - beside_parts_kg(one), abs=0.02)


@settings(
    max_examples=25,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(st.data())
def test_whatever_was_done_the_comparison_is_turned_round_and_money_adds_up(data: st.DataObject) -> None:
    one, other = (stand(CATALOGUE, data.draw(runs(CATALOGUE, WANTED.spec, 8))) for _ in range(2))
    found = compare(one, other)
    assert found.turned == compare(other, one)
    assert compare(one, one).empty
    if not (one.report.undecided or other.report.undecided):
        assert abs(found.rest.gross_pence) <= len(found.changes)  # a penny of rounding for each line


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


def only_about(found: Comparison, option: OptionId) -> Change:
    (change,) = (c for c in found.changes if c.option == option)
    return change


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


# --- another catalogue


def other_year(change: Callable[[Option], Option], option: OptionId = TABLE) -> Comparison:
    return compare(WANTED, stand(with_options(change(CATALOGUE.options[option])), WANTED.spec))


@pytest.mark.parametrize(
    ("change", "kind"),
    [
        (lambda option: replace(option, name="Table on a rail"), ChangeKind.RENAMED),
        (lambda option: replace(option, price_net_pence=option.price_net_pence + 1000), ChangeKind.REPRICED),
        (lambda option: replace(option, mass_kg=option.mass_kg + 1), ChangeKind.REWEIGHED),
        (lambda option: replace(option, lead_weeks=option.lead_weeks + 1), ChangeKind.RETIMED),
    ],
)
def test_the_same_choice_in_another_year(change: Callable[[Option], Option], kind: ChangeKind) -> None:
    found = other_year(change)
    assert only(found).kind is kind
    assert only(found).turned == only(
        compare(stand(with_options(change(CATALOGUE.options[TABLE])), WANTED.spec), WANTED)
    )
    assert found.rest.gross_pence == 0


def test_an_option_that_is_gone_is_found_and_its_name_is_kept() -> None:
    today = with_options(without=(TABLE,))
    found = compare(WANTED, stand(today, moved(WANTED.spec, today)))
    line = only_about(found, TABLE)
    assert (line.kind, line.name_after) == (ChangeKind.GONE, CATALOGUE.options[TABLE].name)
    assert line.difference.gross_pence == -round(CATALOGUE.options[TABLE].price_net_pence * 1.2)
    back = only_about(compare(stand(today, WANTED.spec), WANTED), TABLE)
    assert back.kind is ChangeKind.BACK


def test_what_neither_catalogue_knows_stands_alike_on_both_sides() -> None:
    strange = WANTED.spec.with_choices((*WANTED.spec.choices, Choice(option=OptionId("old-stove"), note="keep")))
    one, other = stand(CATALOGUE, strange), stand(with_options(), strange)
    assert compare(one, other).empty
    added = only(compare(WANTED, one))
    assert (added.group, added.name_after) == (None, "old-stove")


def test_new_prices_of_all_parts_are_a_line_each() -> None:
    dearer = replace(CATALOGUE, firm=replace(CATALOGUE.firm, vat_percent=25.0))
    found = compare(WANTED, stand(dearer, WANTED.spec))
    assert {change.kind for change in found.changes} == {ChangeKind.REPRICED}
    assert abs(found.rest.gross_pence) <= len(found.changes)


def test_a_rule_of_another_year_that_is_broken_comes() -> None:
    rule = next(r for r in WANTED.report.findings if r.verdict.value == "broken").rule
    fewer = replace(CATALOGUE, rules=MappingProxyType({k: r for k, r in CATALOGUE.rules.items() if k != rule}))
    found = compare(stand(fewer, WANTED.spec), WANTED)
    assert [finding.rule for finding in found.came] == [rule]
    assert not found.changes


def test_moving_keeps_what_is_gone_and_forgets_answers_that_are_none_any_more() -> None:
    line = CATALOGUE.brief[BriefKey("gas")]
    lines = CATALOGUE.brief | {line.key: replace(line, values=("bottle", "no"))}  # type: ignore[operator]
    gone = BriefKey("height_m")
    today = replace(
        with_options(without=(TABLE,)), brief=MappingProxyType({k: v for k, v in lines.items() if k != gone})
    )
    spec = replace(WANTED.spec, answers=WANTED.spec.answers.with_answer(BriefKey("gas"), "yes").with_answer(gone, 300))
    there = moved(spec, today)
    assert there.choices == spec.choices
    assert there.answers.get(BriefKey("gas")) is None
    assert there.answers.get(gone) == 300
    assert moved(spec, CATALOGUE) is spec


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
