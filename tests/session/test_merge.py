"""One line of a comparison brought from one build into another."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import Change
from specbuilder.model.edits import AnswerLine, FillVanData, LeaveOut, Move, SetCount, SetNote, SetOwner, Take, Together
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import OptionState, Owner, Place
from specbuilder.model.outcome import Refusal
from specbuilder.model.spec import OwnPart, Spec, VanData
from specbuilder.session.apply import apply
from specbuilder.session.compare import compare
from specbuilder.session.evaluate import evaluate
from specbuilder.session.merge import merge_edits
from specbuilder.session.state import Session, do, undo
from specbuilder.storage.rules_files import read_rules
from tests.conftest import RULES
from tests.session.edit_runs import FEW_RUNS, done, example, runs, stand

CATALOGUE = read_rules(RULES)
AWNING, SIDE, SOCKET = OptionId("awning-body-rail"), OptionId("side-galley"), OptionId("socket-usb-pair")
TABLE = OptionId("table-swing-leg")
WANTED = example(CATALOGUE, "saturday-family")


def brought(before: Spec, after: Spec, *, catalogue: Catalogue = CATALOGUE) -> Spec:
    """``before`` with the one choice that differs as it stands in ``after``."""
    one, other = stand(catalogue, before), stand(catalogue, after)
    changes = compare(one, other).changes
    assert len(changes) == 1
    outcome = apply(catalogue, before, merge_edits(changes[0], one, other))
    assert outcome.refused is None
    return outcome.spec


def test_what_stands_on_one_side_alone_comes_with_place_count_owner_and_note() -> None:
    sheet = OwnPart(mass_kg=18)
    bare = done(CATALOGUE, WANTED.spec, LeaveOut(option=AWNING))
    own = done(
        CATALOGUE,
        bare,
        Take(option=AWNING, place=Place.RIGHT),
        SetOwner(option=AWNING, owner=Owner.CUSTOMER, own_part=sheet),
        SetNote(option=AWNING, note="old holes"),
    )
    (choice,) = brought(bare, own).chosen(AWNING)
    assert (choice.place, choice.owner, choice.own_part, choice.note) == (
        Place.RIGHT,
        Owner.CUSTOMER,
        sheet,
        "old holes",
    )
    assert not brought(own, bare).has(AWNING)


def test_moving_counting_and_noting_touch_the_choice_that_differs() -> None:
    window = OptionId("window-mid-opening")
    both = done(
        CATALOGUE, WANTED.spec, LeaveOut(option=OptionId("window-mid-fixed")), Take(option=window, place=Place.RIGHT)
    )
    noted = done(CATALOGUE, both, SetNote(option=window, note="tinted", place=Place.RIGHT))
    assert {c.place: c.note for c in brought(both, noted).chosen(window)} == {Place.LEFT: "", Place.RIGHT: "tinted"}
    more = done(CATALOGUE, both, SetCount(option=SOCKET, count=4))
    assert brought(both, more).chosen(SOCKET)[0].count == 4
    moved = done(CATALOGUE, both, Move(option=AWNING, to=Place.RIGHT))
    assert brought(both, moved).chosen(AWNING)[0].place is Place.RIGHT


def test_another_answer_brings_its_followers_and_is_one_step_of_undo() -> None:
    warm, cold = OptionId("air-heater-diesel-2"), OptionId("no-heater")
    other = stand(CATALOGUE, done(CATALOGUE, Spec(), Take(option=warm)))
    into = stand(CATALOGUE, done(CATALOGUE, Spec(), Take(option=cold)))
    line = next(c for c in compare(into, other).changes if c.option == warm)
    session = Session(catalogue=CATALOGUE, spec=into.spec)
    after, outcome = do(session, merge_edits(line, into, other, at="2031-04-14 10:42"))
    assert outcome.refused is None
    assert after.spec.has(warm)
    assert not after.spec.has(cold)
    assert [c.at for c in after.spec.chosen(warm)] == ["2031-04-14 10:42"]
    followers = {c.option for c in other.spec.choices if c.came_with == (warm,)}
    assert followers
    assert followers <= {c.option for c in after.spec.choices}
    assert undo(after)[0].spec == into.spec


def test_answers_and_data_of_the_van_come_alone() -> None:
    told = replace(WANTED.spec, van_data=VanData(vin_tail="410999", year=2030, damage="dent"))
    other = stand(CATALOGUE, replace(told, answers=told.answers.with_answer(BriefKey("gas"), "no")))
    into = stand(CATALOGUE, replace(WANTED.spec, van_data=VanData(vin_tail="410107", year=2030)))
    found = compare(into, other)
    (answer,) = found.answers
    assert merge_edits(answer, into, other) == AnswerLine(key=BriefKey("gas"), value="no")
    tail, dent = found.van_data
    assert merge_edits(tail, into, other) == FillVanData(van_data=VanData(vin_tail="410999", year=2030))
    assert merge_edits(dent, into, other) == FillVanData(van_data=VanData(vin_tail="410107", year=2030, damage="dent"))


def test_a_line_that_differs_in_the_catalogue_alone_leaves_nothing_to_do() -> None:
    dearer = replace(CATALOGUE.options[SIDE], price_net_pence=999_000)
    other = stand(replace(CATALOGUE, options={**CATALOGUE.options, SIDE: dearer}), WANTED.spec)
    (line,) = compare(WANTED, other).changes
    edit = merge_edits(line, WANTED, other)
    assert edit == Together(edits=())
    assert apply(CATALOGUE, WANTED.spec, edit).refused is Refusal.NOTHING_TO_DO


def test_an_option_that_has_left_the_catalogue_is_refused_and_nothing_changes() -> None:
    without = {key: option for key, option in CATALOGUE.options.items() if key != TABLE}
    today = replace(CATALOGUE, options=without)
    old = stand(CATALOGUE, done(CATALOGUE, WANTED.spec, Take(option=TABLE)))
    into = stand(today, WANTED.spec)
    line = next(c for c in compare(into, old).changes if c.option == TABLE)
    outcome = apply(today, into.spec, merge_edits(line, into, old))
    assert outcome.refused is Refusal.UNKNOWN_OPTION
    assert outcome.spec == into.spec


def merged(spec: Spec, other: Spec) -> tuple[Spec, tuple[Change, ...]]:
    """Brought over line after line, each on what stands then; and the lines that could not be."""
    goal = stand(CATALOGUE, other)
    for _ in range(200):
        now = stand(CATALOGUE, spec)
        found = compare(now, goal)
        for line in (*found.answers, *found.changes):
            outcome = apply(CATALOGUE, spec, merge_edits(line, now, goal))
            if outcome.refused is None:
                spec = outcome.spec
                break
        else:
            return spec, found.changes
    raise AssertionError("it goes round in a circle")


@FEW_RUNS
@given(st.data())
def test_line_after_line_one_build_becomes_the_other(data: st.DataObject) -> None:
    """But for what follows in the other as well, though nobody ever took it there: it cannot be left out."""
    start = data.draw(st.sampled_from([Spec(), WANTED.spec]))
    one, other = (data.draw(runs(CATALOGUE, start, 9)) for _ in range(2))
    _, left = merged(one, other)
    if left:
        states = evaluate(CATALOGUE, other).options
        for line in left:
            assert line.after is None
            assert line.before is not None
            assert line.before.came_with
            assert states[line.option].state is OptionState.FOLLOWS, line
