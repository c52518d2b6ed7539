"""The life of a job: only legal steps, each with what it needs, and nothing of it undone."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import (
    Accept,
    AnswerLine,
    Edit,
    LeaveOut,
    PutQuestion,
    SetNote,
    Take,
    Together,
    Write,
    WriteNote,
)
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import JobState
from specbuilder.model.life import HindranceCode, LifeStep
from specbuilder.model.outcome import Refusal
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import OpenQuestion, Spec
from specbuilder.office.steps import Signature, in_the_way
from specbuilder.session.apply import apply
from specbuilder.session.life import SIGNED_STATES, hindrances, state_on, written
from specbuilder.session.state import Session, do, undo
from specbuilder.wording.life import hindrance_lines

from .scene import BOTH, Scene, codes

NOW = "2031-04-14 10:00"
TOILET = OptionId("toilet-portable")


def record(kind: RecordKind, **fields: object) -> Record:
    return Record(kind=kind, at=NOW, by="somebody", **fields)  # type: ignore[arg-type]


# -- states ------------------------------------------------------------------------------------------------------------


def test_a_job_goes_from_draft_over_quoted_to_ordered(scene: Scene) -> None:
    assert scene.spec().state is JobState.DRAFT
    scene.quote()
    assert scene.spec().state is JobState.QUOTED
    assert scene.spec().valid_until == "2031-05-14"
    scene.sign()
    spec = scene.spec()
    assert spec.state is JobState.ORDERED
    assert spec.signed_on == "2031-04-14"
    assert spec.answers.get(BriefKey("contract_place")) == "premises"


def test_what_replaces_a_signed_revision_is_changed_and_not_ordered(ordered: Scene) -> None:
    ordered.begin_next()
    assert (ordered.spec().state, ordered.spec().replaces) == (JobState.DRAFT, 1)
    ordered.edit(LeaveOut(option=TOILET))
    ordered.sign()
    assert ordered.spec().state is JobState.CHANGED
    assert ordered.spec(1).state is JobState.ORDERED


def test_a_quote_runs_out_the_day_after_its_last(scene: Scene) -> None:
    scene.quote()
    spec = scene.spec()
    scene.days_later(30)
    assert state_on(spec, scene.now.date()) is JobState.QUOTED
    scene.days_later(1)
    assert state_on(spec, scene.now.date()) is JobState.EXPIRED
    assert scene.house.jobs.list()[0].state is JobState.EXPIRED
    session = scene.session()
    found = in_the_way(session, LifeStep.ORDER, f"{scene.now:%Y-%m-%d %H:%M}", signature=BOTH)
    assert HindranceCode.QUOTE_RAN_OUT in codes(found)


@settings(max_examples=60, deadline=None)
@given(kinds=st.lists(st.sampled_from(RecordKind), max_size=8), signed_before=st.booleans())
def test_the_state_is_that_of_the_last_record_that_moves_it(
    catalogue: Catalogue, kinds: list[RecordKind], signed_before: bool
) -> None:
    earlier = (record(RecordKind.SIGNED, about="premises", revision=1),) if signed_before else ()
    spec = Spec(number="0147", revision=2 if signed_before else 1, records=earlier)
    for kind in kinds:
        spec = written(catalogue, spec, record(kind, about="premises", revision=spec.revision))
    moved = [kind for kind in kinds if kind in (RecordKind.QUOTED, RecordKind.SIGNED, RecordKind.BUILT)]
    signed = JobState.CHANGED if signed_before else JobState.ORDERED
    states = {
        RecordKind.QUOTED: JobState.QUOTED,
        RecordKind.SIGNED: signed,
        RecordKind.BUILT: JobState.AS_BUILT,
    }
    assert spec.state is (states[moved[-1]] if moved else JobState.DRAFT)
    assert [r.kind for r in spec.records] == [r.kind for r in earlier] + kinds


# -- frozen ------------------------------------------------------------------------------------------------------------

_CONTENT: tuple[Edit, ...] = (
    Take(option=OptionId("heated-seats")),
    LeaveOut(option=TOILET),
    AnswerLine(key=BriefKey("adults"), value=3),
    SetNote(option=TOILET, note="grey"),
    Together(edits=(WriteNote(note="x"), LeaveOut(option=TOILET))),
)
_FOR_SIGNING: tuple[Edit, ...] = (
    Accept(rule=RuleId("price-under-ceiling"), words="so be it", by="M. Hale", at=NOW),
    PutQuestion(question=OpenQuestion(text="Colour of the cloth")),
    AnswerLine(key=BriefKey("contract_place"), value="home"),
)


@pytest.mark.parametrize("edit", _CONTENT)
@pytest.mark.parametrize("state", [s for s in JobState if s is not JobState.DRAFT])
def test_choices_and_brief_of_what_left_the_house_stay(catalogue: Catalogue, state: JobState, edit: Edit) -> None:
    assert apply(catalogue, Spec(state=state), edit).refused is Refusal.FROZEN


@pytest.mark.parametrize("edit", _FOR_SIGNING)
def test_what_prepares_a_signature_may_still_be_said_of_a_quote_but_not_of_an_order(
    catalogue: Catalogue, edit: Edit
) -> None:
    assert apply(catalogue, Spec(state=JobState.QUOTED), edit).refused is None
    for state in SIGNED_STATES:
        assert apply(catalogue, Spec(state=state), edit).refused is Refusal.FROZEN


@pytest.mark.parametrize("state", JobState)
def test_records_and_the_private_note_are_written_in_any_state(catalogue: Catalogue, state: JobState) -> None:
    for edit in (WriteNote(note="rings on Fridays"), Write(record=record(RecordKind.PROMISED, words="exhaust right"))):
        assert apply(catalogue, Spec(state=state), edit).refused is None


def test_undo_reaches_back_to_a_record_and_no_further(catalogue: Catalogue) -> None:
    session = Session(catalogue=catalogue, spec=Spec())
    session, _ = do(session, AnswerLine(key=BriefKey("adults"), value=2))
    session, _ = do(session, Write(record=record(RecordKind.PROMISED, words="galley right")))
    session, _ = do(session, AnswerLine(key=BriefKey("adults"), value=3))
    session, done = undo(session)
    assert done is not None
    assert session.spec.answers.get(BriefKey("adults")) == 2
    session, done = undo(session)
    assert done is None
    assert session.spec.recorded(RecordKind.PROMISED)


# -- what stands in the way --------------------------------------------------------------------------------------------


def test_a_quote_needs_a_name_and_a_choice(catalogue: Catalogue) -> None:
    found = hindrances(catalogue, Spec(), LifeStep.QUOTE, NOW)
    assert codes(found) == {HindranceCode.NAMELESS, HindranceCode.EMPTY}
    assert hindrance_lines(catalogue, LifeStep.QUOTE, found) == (
        "The customer has no name yet: ask for it.",
        "Nothing is chosen yet.",
    )


def test_a_draft_is_not_ordered_and_an_order_is_not_quoted(scene: Scene) -> None:
    session = scene.session()
    found = in_the_way(session, LifeStep.ORDER, NOW, signature=BOTH)
    assert codes(found) == {HindranceCode.WRONG_STATE}
    assert hindrance_lines(session.catalogue, LifeStep.ORDER, found) == (
        "The job is a draft: quote makes a quote of it, and order signs that.",
    )


def test_an_order_needs_the_place_where_it_is_signed(scene: Scene) -> None:
    scene.edit(AnswerLine(key=BriefKey("contract_place"), value="unknown"))
    scene.quote()
    session = scene.session()
    nowhere = Signature(customer="M. Hale", firm="the counter", place="")
    assert {h.rule for h in in_the_way(session, LifeStep.ORDER, NOW.replace("10:00", "23:00"), signature=nowhere)} == {
        "place-of-contract"
    }
    assert in_the_way(session, LifeStep.ORDER, NOW.replace("10:00", "23:00"), signature=BOTH) == ()


def test_an_order_waits_for_unknown_lines_until_a_person_and_a_date_are_named(scene: Scene) -> None:
    scene.edit(AnswerLine(key=BriefKey("gas"), value=None))
    scene.quote()
    session = scene.session()
    at = NOW.replace("10:00", "23:00")
    found = in_the_way(session, LifeStep.ORDER, at, signature=BOTH)
    key = BriefKey("gas")
    assert [h.key for h in found if h.code is HindranceCode.NOBODY_ASKED] == [key]
    text = session.catalogue.brief[key].ask
    named = OpenQuestion(text=text, owner="customer", due="2031-04-28", stops="B6")
    session, _ = do(session, PutQuestion(question=named))
    assert HindranceCode.NOBODY_ASKED not in codes(in_the_way(session, LifeStep.ORDER, at, signature=BOTH))
    session, _ = do(session, PutQuestion(question=replace(named, stops="signing")))
    assert HindranceCode.QUESTION_STOPS in codes(in_the_way(session, LifeStep.ORDER, at, signature=BOTH))


def test_what_clashes_at_stop_is_quoted_but_never_signed(tmp_path: Path, catalogue: Catalogue) -> None:
    scene = Scene(tmp_path, catalogue, "right-door-muddle")
    scene.quote()
    session = scene.session()
    found = in_the_way(session, LifeStep.ORDER, NOW.replace("10:00", "23:00"), signature=BOTH)
    assert HindranceCode.STOP_BROKEN in codes(found)


def test_hold_points_are_passed_in_an_order_in_which_the_work_can_be_done(ordered: Scene) -> None:
    session = ordered.session()
    at = NOW.replace("10:00", "23:00")
    assert codes(in_the_way(session, LifeStep.PASS, at, hold="H2")) == {HindranceCode.HOLD_OPEN}
    assert codes(in_the_way(session, LifeStep.PASS, at, hold="H77")) == {HindranceCode.HOLD_UNKNOWN}
    assert in_the_way(session, LifeStep.PASS, at, hold="H0") == ()
    ordered.pass_holds("H0")
    session = ordered.session()
    assert codes(in_the_way(session, LifeStep.PASS, at, hold="H0")) == {HindranceCode.HOLD_PASSED}
    assert HindranceCode.HOLD_OPEN in codes(in_the_way(session, LifeStep.BUILT, at))


def test_a_hold_point_is_passed_again_after_a_change_is_signed_and_once_only(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    ordered.begin_next()
    ordered.edit(LeaveOut(option=OptionId("window-mid-opening")))
    ordered.sign()
    at = NOW.replace("10:00", "23:00")
    assert in_the_way(ordered.session(), LifeStep.PASS, at, hold="H2") == ()
    ordered.pass_holds("H2")
    assert codes(in_the_way(ordered.session(), LifeStep.PASS, at, hold="H2")) == {HindranceCode.HOLD_PASSED}
    assert [record.revision for record in ordered.spec(2).recorded(RecordKind.PASSED)][-1] == 2


def test_a_clock_that_went_back_writes_nothing_down(ordered: Scene) -> None:
    session = ordered.session()
    found = in_the_way(session, LifeStep.PASS, "2031-04-13 09:00", hold="H0")
    assert codes(found) == {HindranceCode.EARLIER}
