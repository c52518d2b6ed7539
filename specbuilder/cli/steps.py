"""``quote``, ``order``, ``change`` and ``record``: the steps of a job as a whole. None of them is undone."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable
from datetime import datetime

from specbuilder.model.edits import Edit, GiveReason
from specbuilder.model.kinds import JobState
from specbuilder.model.life import Hindrance, LifeStep
from specbuilder.model.record import RecordKind
from specbuilder.office.house import House, stand_of
from specbuilder.office.steps import (
    Signature,
    given_up,
    in_the_way,
    kept,
    may_give_up,
    next_begun,
    quoting,
    recording,
    signing,
)
from specbuilder.session.life import PLACES, state_on
from specbuilder.session.state import Session, do
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.wording import life as words
from specbuilder.wording.glance import glance
from specbuilder.wording.records import record_name

from .answers import Answer
from .opening import COUNTER, ChangingJob, job_of, unreadable
from .output import Exit, StopError
from .recording import needs_signed, record_typed, typed_text

_WIDE = 200
_MINUTE = "%Y-%m-%d %H:%M"


def quote(house: House, arguments: Namespace, now: datetime) -> Answer:
    """A quote goes out; one that has run out, or was changed, is quoted anew as the next revision.

    Raises:
        StopError: something stands in the way, or the job cannot be had; nothing was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    by = typed_text("--by", arguments.by or house.catalogue.firm.ask_for or house.catalogue.firm.name)
    at = f"{now:{_MINUTE}}"
    changing = _held(house, arguments.file)
    lines: tuple[str, ...] = ()
    if state_on(changing.session.spec, now.date()) is JobState.EXPIRED:
        changing, told = _next(house, changing, arguments.file)
        lines = (told,)
    session = _step(house, changing, LifeStep.QUOTE, at, lambda session: quoting(session, at, by))
    spec = session.spec
    return _answer(session, (*lines, words.quoted(spec, house.catalogue.firm.currency)))


def order(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Both sign: an order, or the change order to one.

    Raises:
        StopError: something stands in the way, or the job cannot be had; nothing was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    place = arguments.place or ""
    if place not in PLACES:
        raise StopError(Exit.UNUSABLE, f'--place: "{place}" is no place of signing: use {", ".join(PLACES)}.')
    signature = Signature(
        customer=typed_text("--customer", arguments.customer), firm=typed_text("--firm", arguments.firm), place=place
    )
    at = f"{now:{_MINUTE}}"
    changing = _held(house, arguments.file)
    session = _step(
        house,
        changing,
        LifeStep.ORDER,
        at,
        lambda session: signing(session, at, signature),
        lambda session: in_the_way(session, LifeStep.ORDER, at, signature=signature),
    )
    return _answer(session, (words.signed(session.spec),))


def change(house: House, arguments: Namespace, _now: datetime) -> Answer:
    """Begins the next revision of what left the house, says why there is a draft, or gives one up.

    Raises:
        StopError: there is nothing to begin or to give up; nothing was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    because = typed_text("--because", arguments.because) if arguments.because is not None else ""
    changing = _held(house, arguments.file)
    spec = changing.session.spec
    if arguments.drop:
        return _given_up(house, changing)
    lines: tuple[str, ...] = ()
    if spec.state is not JobState.DRAFT:
        changing, told = _next(house, changing, arguments.file)
        lines = (told,)
    elif not because:
        changing.leave()
        raise StopError(Exit.BROKEN, words.is_draft(spec), "Nothing was changed.")
    session = changing.session
    if because:
        edit = GiveReason(reason=because)
        session, _ = do(session, edit)
        changing.keep(session, (edit,))
        lines = (*lines, words.reason_given(because))
    else:
        changing.leave()
    return _answer(session, lines)


def _given_up(house: House, changing: ChangingJob) -> Answer:
    """A draft is laid aside.

    Raises:
        StopError: it is none, or the first revision.
    """
    spec, files = changing.session.spec, changing.job.files
    stand = stand_of(changing.session.catalogue, spec)
    changing.leave()
    if not may_give_up(stand):
        raise StopError(Exit.BROKEN, words.cannot_give_up(spec), "Nothing was changed.")
    given_up(house, files, COUNTER)
    return Answer((words.given_up(spec),))


def record(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Writes down what happened.

    Raises:
        StopError: it is nothing that can be written down, or not now; nothing was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    at = f"{now:{_MINUTE}}"
    changing = _held(house, arguments.file)
    try:
        line = record_typed(changing.session, arguments, at)
        step = {RecordKind.PASSED: LifeStep.PASS, RecordKind.BUILT: LifeStep.BUILT}.get(line.kind)
        if step is None and line.kind in (RecordKind.DEPOSIT, RecordKind.READING, RecordKind.SUPPLY):
            needs_signed(changing.session)
    except BaseException:
        changing.leave()
        raise
    session = _step(
        house,
        changing,
        step,
        at,
        lambda session: recording(session, line),
        lambda session: in_the_way(session, step, at, hold=line.about) if step else (),
    )
    told = record_name(session.catalogue, session.spec.records[-1])
    return _answer(session, (f"Written down: {told}.",))


def _held(house: House, file: str) -> ChangingJob:
    """The job, held for a step.

    Raises:
        StopError: FILE is no job of the jobs folder, or another counter has it.
    """
    job = job_of(file, house.jobs)
    if job is None:
        raise StopError(
            Exit.UNUSABLE,
            f"{file} is no job of {house.jobs.path}: only a job is quoted, signed or recorded.",
            "Take the file in first, with specbuilder new --from FILE; that prints the number of the job.",
        )
    if job.revision != house.jobs.revisions(job.number)[-1]:
        newest = house.jobs.revisions(job.number)[-1]
        raise StopError(Exit.BROKEN, words.not_newest(job.number, job.revision, newest), "Nothing was changed.")
    return ChangingJob(job, house)


def _next(house: House, changing: ChangingJob, file: str) -> tuple[ChangingJob, str]:
    """The next revision, begun and held."""
    try:
        begun = next_begun(house, changing.job, changing.session, COUNTER)
    except JobUnreadableError as error:
        changing.leave()
        raise unreadable(changing.job.files, error) from error
    except BaseException:
        changing.leave()
        raise
    catalogue = house.catalogue_for(begun.start, changing.session.catalogue.digest)
    begun.save(catalogue, begun.start, stand_of(catalogue, begun.start).report)
    begun.close()
    return _held(house, file), words.begun(begun.start)


def _step(
    house: House,
    changing: ChangingJob,
    step: LifeStep | None,
    at: str,
    edit: Callable[[Session], Edit],
    hindered: Callable[[Session], tuple[Hindrance, ...]] | None = None,
) -> Session:
    """Does it, if nothing stands in the way, and lets go of the job.

    Raises:
        StopError: with everything that stands in the way; nothing was changed.
    """
    session = changing.session
    try:
        found = hindered(session) if hindered else in_the_way(session, step, at) if step else ()
        if found and step:
            lines = words.hindrance_lines(session.catalogue, step, found)
            raise StopError(Exit.BROKEN, words.not_yet(step, len(lines)), *lines, "Nothing was changed.")
        session = kept(house, changing.job, session, edit(session))
    except JobUnreadableError as error:
        raise unreadable(changing.job.files, error) from error
    finally:
        changing.leave()
    return session


def _answer(session: Session, lines: tuple[str, ...]) -> Answer:
    """What was done, and where the spec stands now."""
    now = glance(session.catalogue, stand_of(session.catalogue, session.spec).report, _WIDE)
    return Answer((*lines, now), stands="What was asked for stands in the job all the same.")
