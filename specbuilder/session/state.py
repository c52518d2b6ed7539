"""One counter session: the spec, what was done to it, and what was undone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.ids import OptionId
from specbuilder.model.outcome import Outcome
from specbuilder.model.spec import Spec

from .apply import apply


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
    past: tuple[Done, ...] = ()
    future: tuple[Done, ...] = ()


def do(session: Session, edit: Edit) -> tuple[Session, Outcome]:
    """Apply an edit; a refused one leaves the session as it is, undone steps included."""
    outcome = apply(session.catalogue, session.spec, edit)
    if outcome.refused is not None:
        return session, outcome
    done = Done(edit=edit, before=session.spec, after=outcome.spec, brought=outcome.brought, left=outcome.left)
    return replace(session, spec=outcome.spec, past=(*session.past, done), future=()), outcome


def undo(session: Session) -> tuple[Session, Done | None]:
    """Take the last edit back; None when nothing is left in this revision."""
    if not session.past:
        return session, None
    *past, done = session.past
    return replace(session, spec=done.before, past=tuple(past), future=(done, *session.future)), done


def redo(session: Session) -> tuple[Session, Done | None]:
    """Put the last undone edit back; None when there is none."""
    if not session.future:
        return session, None
    done, *future = session.future
    return replace(session, spec=done.after, past=(*session.past, done), future=tuple(future)), done
