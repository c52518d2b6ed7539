"""What is said of a spec does not depend on how it came about, on what was asked before, or on rules that are gone."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from types import MappingProxyType

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit, Take
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session, do, redo, undo
from tests.laws.every_build import judge_of
from tests.laws.ledger_worlds import QUICK, WET, answers, few_builds, ledger_worlds, specs, told, worked_out
from tests.laws.test_states_are_exact import states_of


def takes(spec: Spec) -> list[Edit]:
    """The edits that make a spec from nothing."""
    said: list[Edit] = [AnswerLine(key=key, value=value) for key, value in spec.answers.given.items()]
    return [*said, *(Take(option=c.option, place=c.place, count=c.count) for c in spec.choices)]


def answer(world: Catalogue, spec: Spec) -> Report:
    """What is said of a spec. Where a search found an option blocked, which of several reasons its row names first is
    left out: all of them are true.
    """
    report = evaluate(world, spec)
    loose = (CauseKind.TOGETHER, CauseKind.LEDGER)
    told_ = {
        option: status._replace(cause=None) if status.cause and status.cause.kind in loose else status
        for option, status in report.options.items()
    }
    return replace(report, options=told_)


def seats(spec: Spec) -> list[tuple[OptionId, str | None, int]]:
    return sorted((c.option, c.place, c.count) for c in spec.choices if not c.came_with)


@QUICK
@given(ledger_worlds(), st.data(), st.randoms(use_true_random=False))
def test_the_order_of_choices_changes_no_state(world: Catalogue, data: st.DataObject, random: Random) -> None:
    _, spec = worked_out(data, world)
    mixed = list(spec.choices)
    random.shuffle(mixed)
    first, second = evaluate(world, spec), evaluate(world, spec.with_choices(tuple(mixed)))
    for option, status in first.options.items():
        other = second.options[option]
        assert (status.state, status.place) == (other.state, other.place), (option, told(world, spec))
    assert {f.rule: f.verdict for f in first.findings} == {f.rule: f.verdict for f in second.findings}


@QUICK
@given(ledger_worlds(), st.data(), st.randoms(use_true_random=False))
def test_the_order_of_edits_changes_no_state(world: Catalogue, data: st.DataObject, random: Random) -> None:
    """Where every one of them is taken: what came along by itself in one order may have been asked for in another."""
    _, spec = worked_out(data, world)
    edits = takes(spec)
    mixed = list(edits)
    random.shuffle(mixed)
    one, other = Session(catalogue=world, spec=Spec()), Session(catalogue=world, spec=Spec())
    for edit in edits:
        one, _ = do(one, edit)
    for edit in mixed:
        other, _ = do(other, edit)
    if seats(one.spec) == seats(other.spec):
        assert states_of(world, one.spec) == states_of(world, other.spec), (mixed, told(world, spec))


@QUICK
@given(ledger_worlds(), st.data())
def test_undo_is_exact(world: Catalogue, data: st.DataObject) -> None:
    _, spec = worked_out(data, world)
    session, walked = Session(catalogue=world, spec=Spec()), list[tuple[Spec, object]]()
    for edit in takes(spec):
        before = session
        session, outcome = do(session, edit)
        if outcome.refused is None:
            walked.append((before.spec, answer(world, before.spec)))
    last = session.spec
    for was, report in reversed(walked):
        session, _ = undo(session)
        assert session.spec == was
        assert answer(world, session.spec) == report
    for _ in walked:
        session, _ = redo(session)
    assert session.spec == last


@QUICK
@given(ledger_worlds(), st.data())
def test_what_was_asked_before_changes_no_answer(world: Catalogue, data: st.DataObject) -> None:
    every = few_builds(world)
    said = data.draw(answers())
    asked = [data.draw(specs(world, every, said)) for _ in range(3)]
    for spec in asked:
        evaluate(world, spec)
    for spec in asked:
        fresh = replace(world, digest="fresh")  # another catalogue to whoever remembers
        assert answer(world, spec) == answer(fresh, spec), told(world, spec)


@QUICK
@given(ledger_worlds(), st.data())
def test_without_a_rule_nothing_more_is_blocked(world: Catalogue, data: st.DataObject) -> None:
    every, spec = worked_out(data, world)
    judge = judge_of(world, spec)
    if not judge.can_finish(every, spec.choices):
        return
    before = states_of(world, spec)
    gone = data.draw(st.sampled_from(sorted(world.rules)))
    left = MappingProxyType({rule: table for rule, table in world.rules.items() if rule != gone})
    after = states_of(replace(world, rules=left), spec)
    for option, state in after.items():
        if state in (OptionState.BLOCKED, OptionState.FOLLOWS):
            assert before[option] is state, (gone, option, told(world, spec))


@QUICK
@given(ledger_worlds(), st.data())
def test_an_answer_more_never_lets_anything_in(world: Catalogue, data: st.DataObject) -> None:
    every, spec = worked_out(data, world)
    unsaid = replace(spec, answers=spec.answers.with_answer(WET.key, None))
    judge = judge_of(world, spec)
    if judge.can_finish(every, spec.choices):
        before, after = states_of(world, unsaid), states_of(world, spec)
        blocked = {o for o, state in before.items() if state is OptionState.BLOCKED}
        assert all(after[o] is OptionState.BLOCKED for o in blocked), told(world, spec)
