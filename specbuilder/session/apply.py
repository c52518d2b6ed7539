"""An edit applied to a spec: one arm for each action. What follows from the change comes along with it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import assert_never

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.edits import (
    Accept,
    AnswerLine,
    CloseQuestion,
    Edit,
    FillVanData,
    GiveReason,
    LeaveOut,
    Move,
    NameCustomer,
    PutQuestion,
    SetCount,
    SetNote,
    SetOwner,
    Take,
    TakeUsual,
    Together,
    Withdraw,
    Write,
    WriteNote,
)
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import AnswerType, Pick, Place
from specbuilder.model.outcome import Outcome, Refusal
from specbuilder.model.own_parts import owner_of
from specbuilder.model.spec import Acceptance, Choice, Customer, Spec
from specbuilder.rulegraph.runs import Run
from specbuilder.rulegraph.states import forced

from .facts import facts_of
from .life import frozen, written
from .own_parts import without_answered
from .rulebooks import rulebook_of
from .same import as_before, remembered
from .situate import lay, run_of
from .usual import usual_takes


def apply(catalogue: Catalogue, spec: Spec, edit: Edit) -> Outcome:
    """The spec after an edit. A refused edit changes nothing and says why."""
    if frozen(catalogue, spec, edit):
        return _refuse(spec, Refusal.FROZEN)
    outcome = _applied(catalogue, spec, edit)
    tidy = without_answered(catalogue, outcome.spec)
    return outcome if tidy is outcome.spec else replace(outcome, spec=tidy)


def _applied(catalogue: Catalogue, spec: Spec, edit: Edit) -> Outcome:
    match edit:
        case Take():
            return _take(catalogue, spec, edit)
        case LeaveOut(option=option, place=place):
            return _leave_out(catalogue, spec, option, place)
        case SetCount():
            return _set_count(catalogue, spec, edit)
        case Move():
            return _move(catalogue, spec, edit)
        case SetOwner(owner=owner, own_part=own_part):
            return _on_choice(spec, edit, lambda c: replace(c, owner=owner, own_part=own_part))
        case SetNote(note=note):
            return _on_choice(spec, edit, lambda c: replace(c, note=note))
        case AnswerLine():
            return _answer(catalogue, spec, edit)
        case NameCustomer(name=name, contact=contact):
            return _changed(spec, replace(spec, customer=Customer(name=name, contact=contact)))
        case FillVanData(van_data=van_data):
            return _changed(spec, replace(spec, van_data=van_data))
        case Accept(rule=rule, words=words, by=by, at=at):
            others = tuple(a for a in spec.accepted if a.rule != rule)
            return _changed(spec, replace(spec, accepted=(*others, Acceptance(rule=rule, words=words, by=by, at=at))))
        case Withdraw(rule=rule):
            return _changed(spec, replace(spec, accepted=tuple(a for a in spec.accepted if a.rule != rule)))
        case PutQuestion(question=question):
            kept = tuple(q for q in spec.questions if q.text != question.text)
            return _changed(spec, replace(spec, questions=(*kept, question)))
        case CloseQuestion(text=text):
            return _changed(spec, replace(spec, questions=tuple(q for q in spec.questions if q.text != text)))
        case WriteNote(note=note):
            return _changed(spec, replace(spec, note=note))
        case GiveReason(reason=reason):
            return _changed(spec, replace(spec, reason=reason))
        case Write(record=record):
            return _changed(spec, written(catalogue, spec, record))
        case TakeUsual(step=step, at=at):
            takes = usual_takes(catalogue, spec, step)
            return _together(catalogue, spec, tuple(replace(take, at=at) for take in takes))
        case Together(edits=edits):
            return _together(catalogue, spec, edits)
        case _:
            assert_never(edit)


def _changed(before: Spec, after: Spec) -> Outcome:
    if before == after:
        return Outcome(spec=before, refused=Refusal.NOTHING_TO_DO)
    return Outcome(spec=after)


def _refuse(spec: Spec, why: Refusal, by: tuple[OptionId, ...] = ()) -> Outcome:
    return Outcome(spec=spec, refused=why, refused_by=by)


def _together(catalogue: Catalogue, spec: Spec, edits: tuple[Edit, ...]) -> Outcome:
    """One after the other; the whole is refused when nothing of it could be done."""
    now, brought, left, last = spec, list[OptionId](), list[OptionId](), Refusal.NOTHING_TO_DO
    for edit in edits:
        outcome = apply(catalogue, now, edit)
        now = outcome.spec
        brought += outcome.brought
        left += outcome.left
        last = outcome.refused or last
    if now == spec:
        return _refuse(spec, last)
    return Outcome(spec=now, brought=tuple(dict.fromkeys(brought)), left=tuple(dict.fromkeys(left)))


def _take(catalogue: Catalogue, spec: Spec, edit: Take) -> Outcome:
    option = catalogue.options.get(edit.option)
    if option is None:
        return _refuse(spec, Refusal.UNKNOWN_OPTION)
    if edit.place is not None and edit.place not in option.places:
        return _refuse(spec, Refusal.PLACE_NOT_ALLOWED)
    group = catalogue.groups[option.group]
    standing = spec.chosen(option.id)
    if standing and (edit.place is None or group.pick is Pick.ONE or any(c.place is edit.place for c in standing)):
        return _refuse(spec, Refusal.IN_ALREADY)
    count = edit.count or 1
    if _too_many(catalogue, spec, option, count):
        return _refuse(spec, Refusal.TOO_MANY)
    place = edit.place or _usual_place(catalogue, spec, option)
    new = as_before(Choice(option=option.id, count=count, place=place, owner=owner_of(option), at=edit.at))
    beside = (c for c in spec.choices if not _replaced(catalogue, c, option))
    return _settled(catalogue, spec, spec.with_choices((*beside, new)))


def _replaced(catalogue: Catalogue, choice: Choice, option: Option) -> bool:
    """In a pick-one group the new answer takes the place of the old one."""
    one = catalogue.groups[option.group].pick is Pick.ONE
    old = catalogue.options.get(choice.option)
    return one and old is not None and old.group == option.group


def _too_many(catalogue: Catalogue, spec: Spec, option: Option, more: int) -> bool:
    group = catalogue.groups[option.group]
    mine = sum(c.count for c in spec.chosen(option.id))
    if group.pick is Pick.ONE:
        return mine + more > option.max_count
    all_ = sum(c.count for c in spec.choices if (o := catalogue.options.get(c.option)) and o.group == group.id)
    return mine + more > option.max_count or all_ + more > group.max_choices


def _usual_place(catalogue: Catalogue, spec: Spec, option: Option) -> Place | None:
    """The first of its places where nothing blocks it, else the first."""
    if len(option.places) < 2:
        return option.places[0] if option.places else None
    return lay(catalogue, spec).stands[option.id].place


def _leave_out(catalogue: Catalogue, spec: Spec, option: OptionId, place: Place | None) -> Outcome:
    gone = tuple(c for c in spec.chosen(option) if place is None or c.place is place)
    if not gone:
        return _refuse(spec, Refusal.NOT_CHOSEN)
    if any(c.came_with for c in gone):
        return _refuse(spec, Refusal.COMES_WITH, gone[0].came_with)
    outcome = _settled(catalogue, spec, spec.with_choices(tuple(c for c in spec.choices if c not in gone)))
    back = outcome.spec.chosen(option)
    if any(c.came_with for c in back):
        return _refuse(spec, Refusal.COMES_WITH, back[0].came_with)  # asked for or not, it would come again
    return outcome


def _set_count(catalogue: Catalogue, spec: Spec, edit: SetCount) -> Outcome:
    if edit.count <= 0:
        return _leave_out(catalogue, spec, edit.option, edit.place)
    option = catalogue.options.get(edit.option)
    if option is None:
        return _refuse(spec, Refusal.UNKNOWN_OPTION)
    now = next((c for c in spec.chosen(edit.option) if edit.place in (None, c.place)), None)
    if now is None:
        return _refuse(spec, Refusal.NOT_CHOSEN)
    if edit.count > now.count and _too_many(catalogue, spec, option, edit.count - now.count):
        return _refuse(spec, Refusal.TOO_MANY)
    counted = as_before(replace(now, count=edit.count))
    after = spec.with_choices(tuple(counted if c is now else c for c in spec.choices))
    return _changed(spec, after)


def _move(catalogue: Catalogue, spec: Spec, edit: Move) -> Outcome:
    option = catalogue.options.get(edit.option)
    now = next((c for c in spec.chosen(edit.option) if edit.place in (None, c.place)), None)
    if option is None or now is None:
        return _refuse(spec, Refusal.NOT_CHOSEN)
    if edit.to not in option.places:
        return _refuse(spec, Refusal.PLACE_NOT_ALLOWED)
    if any(c.place is edit.to for c in spec.chosen(edit.option)):
        return _refuse(spec, Refusal.IN_ALREADY)
    moved = as_before(replace(now, place=edit.to))
    return _settled(catalogue, spec, spec.with_choices(tuple(moved if c is now else c for c in spec.choices)))


def _settled(catalogue: Catalogue, before: Spec, after: Spec) -> Outcome:
    """Bring what the change makes follow; let go of followers that follow no longer.

    Only what follows *newly* is brought: what an older file leaves out stays a finding until somebody takes it.
    """
    old = {c.option for c in _followers(catalogue, before)}
    recorded = {c.option for c in before.choices if c.came_with}
    now = {c.option: c for c in _followers(catalogue, after)}
    asked_for = tuple(c for c in after.choices if not c.came_with)
    kept = tuple(
        as_before(replace(c, came_with=now[c.option].came_with))
        for c in after.choices
        if c.came_with and c.option in now
    )
    known = {c.option for c in (*asked_for, *kept)}
    new = tuple(c for o, c in now.items() if o not in known and (o not in old or o in recorded))
    spec = after.with_choices((*asked_for, *kept, *new))
    names = {c.option for c in spec.choices}
    return Outcome(
        spec=spec,
        brought=tuple(c.option for c in new),
        left=tuple(dict.fromkeys(c.option for c in before.choices if c.option not in names)),
    )


def _followers(catalogue: Catalogue, spec: Spec) -> tuple[Choice, ...]:
    """What every completion of the asked-for choices holds because of one of them."""
    asked_for = tuple(c for c in spec.choices if not c.came_with)
    return _following(run_of(rulebook_of(catalogue), asked_for, facts_of(catalogue, spec)))


@remembered(32)
def _following(run_: Run) -> tuple[Choice, ...]:
    """What follows from a run; an edit ends where the next one begins."""
    variables = run_.rulebook.clauses.option
    found: list[Choice] = []
    for placement in forced(run_):
        mask = run_.trail.mask[variables[placement.option]]
        if mask:
            came_with = tuple(dict.fromkeys(c.option for c in run_.culprits(mask)))
            found.append(Choice(option=placement.option, place=placement.place, came_with=came_with))
    return tuple(found)


def _on_choice(spec: Spec, edit: SetOwner | SetNote, change: Callable[[Choice], Choice]) -> Outcome:
    meant = tuple(c for c in spec.chosen(edit.option) if edit.place in (None, c.place))
    if not meant:
        return _refuse(spec, Refusal.NOT_CHOSEN)
    return _changed(spec, spec.with_choices(tuple(change(c) if c in meant else c for c in spec.choices)))


def _answer(catalogue: Catalogue, spec: Spec, edit: AnswerLine) -> Outcome:
    line = catalogue.brief.get(edit.key)
    if line is None or (edit.value is not None and not fits(line, edit.value)):
        return _refuse(spec, Refusal.NOT_AN_ANSWER)
    if spec.answers.get(edit.key) == edit.value:
        return _refuse(spec, Refusal.NOTHING_TO_DO)
    return _settled(catalogue, spec, replace(spec, answers=spec.answers.with_answer(edit.key, edit.value)))


def fits(line: BriefLine, value: Answer) -> bool:
    """Whether a value may answer a line."""
    match line.type:
        case AnswerType.WHOLE:
            return isinstance(value, int) and not isinstance(value, bool) and line.least <= value <= line.most
        case AnswerType.DECIMAL:
            return isinstance(value, int | float) and not isinstance(value, bool) and line.least <= value <= line.most
        case AnswerType.ONE_OF:
            return isinstance(value, str) and value in line.values
        case AnswerType.LIST:
            return isinstance(value, tuple) and bool(value) and all(v in line.values for v in value)
        case AnswerType.AGES:
            return isinstance(value, tuple) and all(isinstance(v, int) and line.least <= v <= line.most for v in value)
        case _:
            assert_never(line.type)
