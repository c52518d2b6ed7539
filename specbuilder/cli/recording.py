"""What was typed behind ``record FILE``, as a record of the job."""

from __future__ import annotations

from argparse import Namespace
from datetime import date

from specbuilder.model.ids import OptionId
from specbuilder.model.record import Record, RecordKind
from specbuilder.session.life import SIGNED_STATES
from specbuilder.session.state import Session
from specbuilder.storage.text_limits import NAME_LONGEST, NOTE_LONGEST, text_fault
from specbuilder.wording import life as words

from .output import Exit, StopError
from .things import OptionThing, thing


def record_typed(session: Session, arguments: Namespace, at: str) -> Record:
    """What was typed behind ``record FILE``.

    Raises:
        StopError: it is nothing that can be written down.
    """
    kind = next((kind for kind in _BY_HAND if kind.value == arguments.kind), None)
    if kind is None:
        kinds = ", ".join(each.value for each in _BY_HAND)
        raise StopError(Exit.UNUSABLE, f'"{arguments.kind}" is nothing that is recorded so: use one of {kinds}.')
    by = typed_text("--by", arguments.by)
    rest = [typed_text("WORDS", each) for each in arguments.words]
    due = _day(arguments.due) if arguments.due else ""
    match kind:
        case RecordKind.DEPOSIT:
            return Record(
                kind=kind,
                at=at,
                by=by,
                pence=_pence(_one(rest, "the pounds that came in"), session.catalogue.firm.currency),
            )
        case RecordKind.SUPPLY:
            option, *state = rest or [""]
            stage = " ".join(state) or "ordered"
            if stage not in _SUPPLIES:
                raise StopError(Exit.UNUSABLE, f'"{stage}" is no state of a part: use one of {", ".join(_SUPPLIES)}.')
            return Record(kind=kind, at=at, by=by, about=_option(session, option), words=stage, due=due)
        case RecordKind.PASSED:
            hold, *remarks = rest or [""]
            return Record(kind=kind, at=at, by=by, about=hold.upper(), words=" ".join(remarks))
        case RecordKind.READING:
            about, *read = rest or [""]
            if not read:
                raise StopError(Exit.UNUSABLE, "A reading needs what it is about and what was read: H9 2,710 kg.")
            return Record(kind=kind, at=at, by=by, about=about, words=" ".join(read), figure=_number(read[0]))
        case RecordKind.BUILT:
            return Record(kind=kind, at=at, by=_one(rest, "the customer's name"), words=by)
        case RecordKind.CALL:
            if not due:
                raise StopError(Exit.UNUSABLE, "A call needs its day: add --due YYYY-MM-DD.")
            return Record(kind=kind, at=at, by=by, words=_one(rest, "what it is about"), due=due)
        case _:
            return Record(kind=kind, at=at, by=by, words=_one(rest, "the promise, in words"))


_BY_HAND = (
    RecordKind.DEPOSIT,
    RecordKind.SUPPLY,
    RecordKind.PASSED,
    RecordKind.READING,
    RecordKind.BUILT,
    RecordKind.PROMISED,
    RecordKind.CALL,
)
_SUPPLIES = ("ordered", "due", "in store", "received")


def needs_signed(session: Session) -> None:
    """Money, parts and readings belong to an order."""
    if session.spec.state not in SIGNED_STATES and session.base is None:
        raise StopError(Exit.BROKEN, words.not_ordered(session.spec), "Nothing was changed.")


def _option(session: Session, text: str) -> OptionId:
    meant = thing(session.catalogue, text)
    if isinstance(meant, OptionThing) and session.spec.has(meant.option):
        return meant.option
    raise StopError(Exit.BROKEN, f'"{text[:60]}" is no part of this build.', "Nothing was changed.")


def typed_text(name: str, text: str | None) -> str:
    """A text that may be written down.

    Raises:
        StopError: it is empty or holds what nobody can see.
    """
    if not text or not text.strip():
        raise StopError(Exit.UNUSABLE, f"{name} is empty: say who, or what.")
    fault = text_fault(text, NOTE_LONGEST if name == "WORDS" else NAME_LONGEST, lines=False)
    if fault is not None:
        raise StopError(Exit.UNUSABLE, f"{name}: {fault}")
    return text.strip()


def _one(rest: list[str], what: str) -> str:
    if not rest:
        raise StopError(Exit.UNUSABLE, f"Something is missing: {what}.")
    return " ".join(rest)


def _day(text: str) -> str:
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError:
        raise StopError(Exit.UNUSABLE, f'--due: "{text[:40]}" is no day: write it as 2031-04-28.') from None


def _pence(text: str, currency: str) -> int:
    number = _number(text.removeprefix(currency))
    if number is None or not 0 < number < 10_000_000:
        raise StopError(Exit.UNUSABLE, f'"{text[:40]}" is no sum of pounds: write it as 2430 or 2430.50.')
    return round(number * 100)


def _number(text: str) -> float | None:
    try:
        number = float(text.replace(",", ""))
    except ValueError:
        return None
    return number if abs(number) < 1e12 else None
