"""What an edit did, what undo took back, and why an edit was not done."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
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
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import SheetLine
from specbuilder.model.spec import OwnPart, Spec

from .brief import answer_words, telling
from .names import chosen_name, key_name, listed, option_name
from .own_parts import line_name, value_words
from .plain import ended, fitted, lowered, raised
from .records import record_name
from .states import NOT_KNOWN, step_name

_FEW = 3
_LONGEST_QUOTE = 40


def done(
    catalogue: Catalogue,
    edit: Edit,
    before: Spec,
    after: Spec,
    brought: tuple[OptionId, ...] = (),
    left: tuple[OptionId, ...] = (),
) -> str:
    """``Took Gas bundle, with CO alarm, instead of Fuel hob``; no full stop, so that a hint may follow."""
    main = _done(catalogue, edit, before, after)
    own = about_options(edit)
    came = listed((option_name(catalogue, o) for o in brought if o not in own), most=_FEW)
    gone = listed((option_name(catalogue, o) for o in left if o not in own), most=_FEW)
    if came:
        main += f", with {came}"
    if gone:
        main += f", instead of {gone}" if _takes(edit) else f", and {gone} left with it"
    return main


def edit_name(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    """What undo names: ``Awning, body rail``, ``Exhaust back to left``, ``grown-ups back to 2 grown-ups``."""
    match edit:
        case Take(option=option):
            return chosen_name(catalogue, after, option)
        case LeaveOut(option=option):
            return f"{chosen_name(catalogue, before, option)} is back"
        case SetCount(option=option):
            return f"{chosen_name(catalogue, before, option)} again"
        case Move(option=option, place=place):
            was = place or next((c.place for c in before.chosen(option) if c not in after.chosen(option)), None)
            return f"{option_name(catalogue, option)} back to {was.value if was else 'its place'}"
        case SetOwner(option=option):
            name = option_name(catalogue, option)
            return f"sheet of {name}" if any(_sheet_said(before, after, option)) else f"whose part {name} is"
        case SetNote(option=option):
            return f"note on {option_name(catalogue, option)}"
        case AnswerLine(key=key):
            return f"{key_name(catalogue, key)} back to {_answer(catalogue, before, edit)}"
        case NameCustomer():
            return "customer"
        case FillVanData():
            return f"van data ({_van_fields(before, after)})"
        case Accept() | Withdraw():
            return "acceptance in writing"
        case PutQuestion(question=question):
            return f'open question "{_quoted(question.text)}"'
        case CloseQuestion(text=text):
            return f'open question "{_quoted(text)}" is back'
        case WriteNote():
            return "note of the job"
        case GiveReason():
            return "reason of this revision"
        case Write(record=record):
            return record_name(catalogue, record)
        case TakeUsual(step=step):
            return f"house usual of step {step_name(step)}"
        case Together():
            return listed(_names(catalogue, edit, before, after), most=_FEW)
        case _:
            assert_never(edit)


def undone(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec, room: int = 0) -> str:
    """``Undone: Awning, body rail``; ``before`` and ``after`` as the edit itself had them.

    In so much room (0: any) the weightiest is named, as many others as there is room for, and the rest is counted.
    """
    start = "Undone: "
    full, short = (_names(catalogue, edit, before, after, short=short) for short in (False, True))
    told = [listed(names, most=most) for most in range(_FEW, 0, -1) for names in (full, short)]
    return start + next((text for text in told if not room or len(start + text) <= room), told[-1])


def _names(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec, *, short: bool = False) -> list[str]:
    """What undo names of each edit, the weightiest first; ``short``: names of options end at their first comma."""
    result = list[str]()
    for one in _weightiest_first(edit):
        name = edit_name(catalogue, one, before, after)
        if short and isinstance(one, Take | LeaveOut):
            name = name.partition(",")[0] + (" is back" if isinstance(one, LeaveOut) and "," in name else "")
        result.append(name)
    return result


def single(edits: tuple[Edit, ...]) -> Iterator[Edit]:
    """The edits, those that stand together one by one."""
    for edit in edits:
        if isinstance(edit, Together):
            yield from single(edit.edits)
        else:
            yield edit


def _weightiest_first(edit: Edit) -> list[Edit]:
    """What is taken, then the rest, last what had to go for it; else in their own order."""
    return sorted(
        single((edit,)), key=lambda one: 0 if isinstance(one, Take) else 2 if isinstance(one, LeaveOut) else 1
    )


def redone(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    """``Again: took Awning, body rail``; ``before`` and ``after`` as the edit itself had them."""
    return f"Again: {lowered(_done(catalogue, edit, before, after))}"


def nothing_to_undo() -> str:
    """``Nothing left to undo in this revision``."""
    return "Nothing left to undo in this revision"


def nothing_to_redo() -> str:
    """``Nothing left to put back``."""
    return "Nothing left to put back"


def _done(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    match edit:
        case Take(option=option):
            return f"Took {chosen_name(catalogue, after, option)}"
        case LeaveOut(option=option):
            return f"Left out {chosen_name(catalogue, before, option)}"
        case SetCount(option=option, count=count):
            return f"{option_name(catalogue, option)}: now {count}"
        case Move(option=option, to=to):
            return f"Moved {option_name(catalogue, option)} to {to.value}"
        case SetOwner(option=option, owner=owner):
            name = option_name(catalogue, option)
            said = listed(_sheet_said(before, after, option))
            return f"{name}: {said}" if said else f"{name} is {_whose(owner)}"
        case SetNote(option=option, note=note):
            return f"{'Noted on' if note else 'Note taken off'} {option_name(catalogue, option)}"
        case AnswerLine(key=key):
            return _answered(catalogue, after, key)
        case NameCustomer(name=name):
            return f"Customer: {_quoted(name) or 'no name yet'}"
        case FillVanData():
            return f"Van data: {_van_fields(before, after)}"
        case Accept(rule=rule):
            return f'Accepted in writing: "{_because(catalogue, rule)}"'
        case Withdraw(rule=rule):
            return f'Acceptance taken back: "{_because(catalogue, rule)}"'
        case PutQuestion(question=question):
            return f'Open question: "{_quoted(question.text)}"'
        case CloseQuestion(text=text):
            return f'Answered: "{_quoted(text)}"'
        case WriteNote(note=note):
            return "Note of the job written" if note else "Note of the job taken off"
        case GiveReason(reason=reason):
            return f'Reason of this revision: "{_quoted(reason)}"' if reason else "Reason of this revision taken off"
        case Write(record=record):
            return f"Written down: {record_name(catalogue, record)}"
        case TakeUsual(step=step):
            came = (
                option_name(catalogue, c.option) for c in after.choices if not before.has(c.option) and not c.came_with
            )
            return f"Took the house usual of step {step_name(step)}: {listed(came, most=_FEW)}"
        case Together():
            return _several(_done(catalogue, e, before, after) for e in _weightiest_first(edit))
        case _:
            assert_never(edit)


def _several(sentences: Iterable[str]) -> str:
    """``Took Pod galley; answered: 2 grown-ups; 3 more``."""
    first, *rest = list(dict.fromkeys(sentences)) or ["Nothing to do"]
    more = [f"{len(rest) - _FEW} more"] if len(rest) > _FEW else []
    return "; ".join((first, *(lowered(sentence) for sentence in rest[:_FEW]), *more))


def _takes(edit: Edit) -> bool:
    """True when something is taken, so that what leaves gives way to it."""
    return isinstance(edit, Take) or (isinstance(edit, Together) and any(_takes(part) for part in edit.edits))


def about_options(edit: Edit) -> tuple[OptionId, ...]:
    """The options an edit names itself."""
    match edit:
        case Take() | LeaveOut() | SetCount() | Move() | SetOwner() | SetNote():
            return (edit.option,)
        case Together(edits=edits):
            return tuple(option for e in edits for option in about_options(e))
        case _:
            return ()


def _answer(catalogue: Catalogue, spec: Spec, edit: AnswerLine) -> str:
    line = catalogue.brief.get(edit.key)
    return answer_words(catalogue, line, spec.answers.get(edit.key)) if line else NOT_KNOWN


def _answered(catalogue: Catalogue, spec: Spec, key: BriefKey) -> str:
    line, value = catalogue.brief.get(key), spec.answers.get(key)
    if line is None or value is None:
        return f"{raised(key_name(catalogue, key))}: {NOT_KNOWN}"
    return f"Answered: {telling(catalogue, line, value)}"


def _whose(owner: Owner) -> str:
    match owner:
        case Owner.CUSTOMER:
            return "theirs: its sheet is asked for"
        case Owner.HOUSE:
            return "ours"
        case _:
            assert_never(owner)


def _sheet_said(before: Spec, after: Spec, option: OptionId) -> Iterator[str]:
    """What was said on the sheet of a part that was the customer's already: ``mass 92.5 kg``."""
    was, now = (next(iter(spec.chosen(option)), None) for spec in (before, after))
    if was is None or now is None or was.owner is not Owner.CUSTOMER or now.owner is not Owner.CUSTOMER:
        return
    sheets = was.own_part or OwnPart(), now.own_part or OwnPart()
    for line in SheetLine:
        if getattr(sheets[0], line.value) != getattr(sheets[1], line.value):
            yield f"{line_name(line)} {value_words(line, sheets[1]) or NOT_KNOWN}"


def _van_fields(before: Spec, after: Spec) -> str:
    """Which data of the real van changed, in words."""
    changed = (
        f.name for f in fields(before.van_data) if getattr(before.van_data, f.name) != getattr(after.van_data, f.name)
    )
    return listed(VAN_FIELDS.get(name, name.replace("_", " ")) for name in changed) or "as before"


VAN_FIELDS = {
    "registration": "registration",
    "vin_tail": "end of the chassis number",
    "year": "year",
    "paint_code": "paint code",
    "mileage_km": "kilometres driven",
    "damage": "existing damage",
    "weighed_front_kg": "weighed front axle",
    "weighed_rear_kg": "weighed rear axle",
}
"""Data of the real van as people call them, by the field of ``VanData``."""


def _because(catalogue: Catalogue, rule: str) -> str:
    known = next((r for r in catalogue.rules.values() if r.id == rule), None)
    return ended(known.because) if known else "a rule that left the catalogue"


def _quoted(text: str) -> str:
    return fitted(text, _LONGEST_QUOTE)
