"""``set``, ``drop`` and ``new``: things done one after the other, and kept only when all of them could be done."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit
from specbuilder.model.outcome import Refusal
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.session.evaluate import evaluate
from specbuilder.session.state import Session, do
from specbuilder.wording.edits import done
from specbuilder.wording.job_lines import begins_next
from specbuilder.wording.plain import ended
from specbuilder.wording.refusals import refused
from specbuilder.wording.spoken import standing_line

from .aftermath import aftermath
from .answers import Answer
from .changes import drop_edit, set_edit
from .holding import COUNTER, ChangingJob, keep_new
from .opening import job_of, opened, write_spec
from .output import Exit, StopError
from .things import Unclear
from .trying import tried
from .working import Work, Worked

_HARMLESS = (Refusal.IN_ALREADY, Refusal.NOTHING_TO_DO)
"""What was asked for is so already: said, and nothing to stop for."""

Meaning: TypeAlias = Callable[[Spec, str], Edit | Unclear]
"""What a thing that was typed means for a spec."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """What is changed."""

    house: House
    file: str
    """FILE as it was typed."""
    to: Path | None = None
    """Written there instead, and FILE stays as it is."""


def setting(catalogue: Catalogue, now: datetime) -> Meaning:
    """How ``set`` reads a thing."""
    at = f"{now:%Y-%m-%d %H:%M}"
    return lambda spec, text: set_edit(catalogue, spec, text, at)


def dropping(catalogue: Catalogue, now: datetime) -> Meaning:
    """How ``drop`` reads a thing."""
    at = f"{now:%Y-%m-%d %H:%M}"
    return lambda spec, text: drop_edit(catalogue, spec, text, at)


def changed(
    target: Target, things: Iterable[str], meaning: Callable[[Catalogue], Meaning], trying: bool = False
) -> Answer:
    """Does these things one after the other, and says where the spec stands then; or only tries them.

    Raises:
        StopError: a thing is unclear or refused, or the job cannot be had; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """

    def work(begun: Session) -> Worked:
        return _all_done(begun, things, meaning(begun.catalogue))

    if trying:
        return tried(target.house, target.file, work)
    worked = through(target, work)
    catalogue = worked.session.catalogue
    return standing(catalogue, worked.session, (*worked.lines, *aftermath(catalogue, worked.session, worked.edits)))


def through(target: Target, work: Work) -> Worked:
    """Does the work on a job through its journal, on a file in its place, or writes what comes of it elsewhere.

    Raises:
        StopError: the work cannot be done, or the job cannot be had; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """
    job = job_of(target.file, target.house.jobs)
    if job is None or target.to is not None:
        was = opened(target.file, target.house)
        worked = work(Session(catalogue=was.catalogue, spec=was.spec))
        if target.to is not None or worked.session.past:
            write_spec(target.to or was.path, was.catalogue, worked.session.spec)
        return worked
    changing = ChangingJob(job, target.house)
    try:
        worked = work(changing.session)
    except BaseException:
        changing.leave()
        raise
    changing.keep(worked.session, worked.edits)
    return worked


def made_new(house: House, start: Spec, things: Iterable[str], meaning: Meaning) -> Answer:
    """A new job that begins with these things; its number is the first line of the answer.

    Raises:
        StopError: a thing is unclear or refused; there is no new job.
        DiskError: no job could be made.
    """
    catalogue = house.catalogue
    lines = _all_done(Session(catalogue=catalogue, spec=start), things, meaning).lines
    job = house.jobs.create(COUNTER, start)
    worked = _all_done(Session(catalogue=catalogue, spec=job.start), things, meaning)
    keep_new(job, catalogue, worked.session.spec, worked.edits)
    told = standing(catalogue, worked.session, lines)
    return Answer((job.number, *told.lines), stands=f"Job {job.number} was made all the same.")


def _all_done(session: Session, things: Iterable[str], meaning: Meaning) -> Worked:
    """All of it, with a line for each thing.

    Raises:
        StopError: at the first thing that is unclear or refused.
    """
    edits: list[Edit] = []
    lines: list[str] = []
    for text in things:
        edit = meaning(session.spec, text)
        if isinstance(edit, Unclear):
            raise StopError(Exit.BROKEN, edit.words, "Nothing was changed.")
        before = session.spec
        session, outcome = do(session, edit)
        catalogue = session.catalogue
        if outcome.refused is None:
            edits.append(edit)
            lines.append(ended(done(catalogue, edit, before, session.spec, outcome.brought, outcome.left)))
        elif outcome.refused in _HARMLESS:
            lines.append(f"{text}: it is so already.")
        else:
            told = ended(refused(catalogue, edit, outcome))
            named = f"{edit.key}: {told}" if isinstance(edit, AnswerLine) else told
            cure = (begins_next(before.number),) if outcome.refused is Refusal.FROZEN and before.number else ()
            raise StopError(Exit.BROKEN, named, *cure, "Nothing was changed.")
    return Worked(session=session, edits=tuple(edits), lines=tuple(lines))


def standing(catalogue: Catalogue, session: Session, lines: tuple[str, ...]) -> Answer:
    """What was done and where the spec stands now."""
    now = standing_line(catalogue, evaluate(catalogue, session.spec))
    return Answer((*lines, now), stands="What was asked for stands in the spec all the same.")
