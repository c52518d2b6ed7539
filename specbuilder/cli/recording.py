"""What was typed behind ``record FILE``, as a record of the job."""

from __future__ import annotations

from argparse import Namespace
from datetime import date

from specbuilder.model.ids import OptionId
from specbuilder.model.record import Record, RecordKind
from specbuilder.office.house import stand_of
from specbuilder.session.life import SIGNED_STATES
from specbuilder.session.state import Session
from specbuilder.storage.faults import quotable
from specbuilder.storage.text_limits import NAME_LONGEST, NOTE_LONGEST, text_fault
from specbuilder.wording import life as words
from specbuilder.wording import typed
from specbuilder.wording.dates import day_words
from specbuilder.workshop.view import view_of

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
        raise StopError(
            Exit.UNUSABLE, f'"{quotable(arguments.kind)}" is nothing that is recorded so: use one of {kinds}.'
        )
    by = typed_text("--by", arguments.by)
    rest = [typed_text("WORDS", each) for each in arguments.words]
    if rest:
        typed_text("WORDS", " ".join(rest))
    due = typed_day("--due", arguments.due, at) if arguments.due else ""
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
                raise StopError(
                    Exit.UNUSABLE, f'"{quotable(stage)}" is no state of a part: use one of {", ".join(_SUPPLIES)}.'
                )
            return Record(kind=kind, at=at, by=by, about=_option(session, option), words=stage, due=due)
        case RecordKind.PASSED:
            hold, *remarks = rest or [""]
            return Record(kind=kind, at=at, by=by, about=hold.upper(), words=" ".join(remarks))
        case RecordKind.READING:
            about, *read = rest or [""]
            if not read:
                raise StopError(Exit.UNUSABLE, "A reading needs what it is about and what was read: H9 2,710 kg.")
            about = _read_at(session, about)
            return Record(kind=kind, at=at, by=by, about=about, words=" ".join(read), figure=typed.number(read[0]))
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
_MOST_PENCE = 1_000_000_000
_LAST_YEAR = 2100


def needs_signed(session: Session) -> None:
    """Money, parts and readings belong to an order."""
    if session.spec.state not in SIGNED_STATES and session.base is None:
        raise StopError(Exit.BROKEN, words.not_ordered(session.spec), "Nothing was changed.")


def _option(session: Session, text: str) -> OptionId:
    meant = thing(session.catalogue, text)
    if isinstance(meant, OptionThing) and session.spec.has(meant.option):
        return meant.option
    raise StopError(Exit.BROKEN, f'"{quotable(text)}" is no part of this build.', "Nothing was changed.")


def _read_at(session: Session, text: str) -> str:
    """The hold point, part, hole or circuit that was read, by the id its paper looks for."""
    stand = stand_of(session.catalogue, session.spec)
    view = view_of(stand.catalogue, stand.spec, stand.report)
    known = (
        *(work.hold_point for work in session.catalogue.work.values() if work.hold_point),
        *(line.label for line in stand.report.circuits),
        *(line.id for line in stand.report.circuits),
        *(hole.id for one in view.taken for hole in one.holes),
    )
    found = next((each for each in known if each.casefold() == text.casefold()), None)
    if found is not None:
        return found
    meant = thing(session.catalogue, text)
    if isinstance(meant, OptionThing) and session.spec.has(meant.option):
        return meant.option
    words = f'"{quotable(text)}" is nothing of this build that is read'
    raise StopError(
        Exit.BROKEN,
        f"{words}: name a hold point such as H9, or a part, hole or circuit as the workshop pack does.",
        "Nothing was changed.",
    )


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


def typed_day(name: str, text: str, now: str) -> str:
    """A day that is still to come. ``now`` begins with the day of today.

    Raises:
        StopError: it is no day, is over, or lies beyond what anybody plans.
    """
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        raise StopError(Exit.UNUSABLE, f'{name}: "{quotable(text)}" is no day: write it as 2031-04-28.') from None
    if day < date.fromisoformat(now[:10]):
        raise StopError(Exit.UNUSABLE, f"{name}: {day_words(day)} is over: name a day that is still to come.")
    if day.year > _LAST_YEAR:
        raise StopError(Exit.UNUSABLE, f"{name}: {day_words(day)} is too far away: check the year.")
    return day.isoformat()


def _pence(text: str, currency: str) -> int:
    """A sum to the penny, read as on the screens."""
    pence = typed.pence(text.removeprefix(currency)) or 0
    if not 0 < pence < _MOST_PENCE:
        raise StopError(Exit.UNUSABLE, f'"{quotable(text)}" is no sum of pounds: write it as 2430 or 2430.50.')
    return pence
