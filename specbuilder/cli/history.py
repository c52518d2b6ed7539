"""``undo`` and ``redo``: through the journal of a job, as at the counter."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

from specbuilder.model.edits import Write
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.office.house import House
from specbuilder.session import state
from specbuilder.session.state import Done, Session
from specbuilder.wording import edits as words
from specbuilder.wording.job_lines import only_a_job_is_undone
from specbuilder.wording.plain import ended
from specbuilder.wording.records import stays_done

from .answers import Answer
from .change import standing
from .holding import ChangingJob
from .opening import held_job
from .output import Exit, StopError

_Stepped: TypeAlias = Callable[[Session], tuple[Session, Done | None]]


def undo(house: House, file: str) -> Answer:
    """Takes the last change back and names it.

    Raises:
        StopError: nothing is left, or the job cannot be had; nothing was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    return _stepped(house, file, state.undo, lambda session: Undo(session.spec), words.undone, _nothing_to_undo)


def redo(house: House, file: str) -> Answer:
    """Puts back what was undone last and names it.

    Raises:
        StopError, DiskError, RulesFaults: as ``undo``.
    """
    return _stepped(
        house, file, state.redo, lambda session: Redo(session.spec), words.redone, lambda _: words.nothing_to_redo()
    )


def _stepped(
    house: House,
    file: str,
    step: _Stepped,
    entry: Callable[[Session], Entry],
    told: Callable[..., str],
    nothing: Callable[[Session], str],
) -> Answer:
    job = held_job(file, house, only_a_job_is_undone())
    with ChangingJob(job, house, elsewhere=False) as changing:
        session, done = step(changing.session)
        if done is None:
            raise StopError(Exit.BROKEN, ended(nothing(session)), "Nothing was changed.")
        changing.keep(session, (entry(session),))
    catalogue = session.catalogue
    return standing(catalogue, session, (ended(told(catalogue, done.edit, done.before, done.after)),))


def _nothing_to_undo(session: Session) -> str:
    """What is written down stays done, and says so."""
    last = session.past[-1].edit if session.past else None
    return stays_done(session.catalogue, last.record) if isinstance(last, Write) else words.nothing_to_undo()
