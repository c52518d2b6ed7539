"""One counter session: the spec, what was done to it, and what was undone."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Together, Write
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.model.ids import OptionId
from specbuilder.model.outcome import Outcome
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand

from .apply import apply
from .change_order import settled


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """One step of undo."""

    edit: Edit
    before: Spec
    after: Spec
    brought: tuple[OptionId, ...] = ()
    left: tuple[OptionId, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """A frozen value: every action makes a new one."""

    catalogue: Catalogue
    spec: Spec
    base: Stand | None = None
    """The signed revision that this one changes; None for any other."""
    past: tuple[Done, ...] = ()
    future: tuple[Done, ...] = ()


def do(session: Session, edit: Edit) -> tuple[Session, Outcome]:
    """Apply an edit; a refused one leaves the session as it is, undone steps included."""
    outcome = apply(session.catalogue, session.spec, edit)
    if outcome.refused is not None:
        return session, outcome
    if session.base is not None:
        outcome = replace(outcome, spec=settled(session.base, outcome.spec))
    done = Done(edit=edit, before=session.spec, after=outcome.spec, brought=outcome.brought, left=outcome.left)
    return replace(session, spec=outcome.spec, past=(*session.past, done), future=()), outcome


def undo(session: Session) -> tuple[Session, Done | None]:
    """Take the last edit back; None when nothing is left in this revision."""
    if not session.past or isinstance(session.past[-1].edit, Write):
        return session, None  # what is written down stays
    *past, done = session.past
    return replace(session, spec=done.before, past=tuple(past), future=(done, *session.future)), done


def replay(session: Session, entries: Iterable[Entry]) -> Session:
    """The session after everything that was written down of it.

    A step back or forward that is not at hand any more (its edits were made on other rules, or before the file was last
    taken as the start) still leads to the spec it led to then.
    """
    for entry in entries:
        match entry:
            case Undo(to):
                session = _led_to(session, undo(session)[0], to)
            case Redo(to):
                session = _led_to(session, redo(session)[0], to)
            case _:
                session = do(session, entry)[0]
    return session


def _led_to(before: Session, after: Session, to: Spec | None) -> Session:
    if to is None or after.spec == to:
        return after
    done = Done(edit=Together(edits=()), before=before.spec, after=to)
    return replace(before, spec=to, past=(*before.past, done), future=())


def redo(session: Session) -> tuple[Session, Done | None]:
    """Put the last undone edit back; None when there is none."""
    if not session.future:
        return session, None
    done, *future = session.future
    return replace(session, spec=done.after, past=(*session.past, done), future=tuple(future)), done
