"""``quote``, ``order``, ``change`` and ``record``: the steps of a job as a whole. None of them is undone."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable
from datetime import datetime
from typing import TypeAlias

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
    next_session,
    quoting,
    recording,
    signing,
)
from specbuilder.session.life import PLACES, state_on
from specbuilder.session.state import Session, do
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.faults import quotable
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.open_job import OpenJob
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.wording import life as words
from specbuilder.wording.job_lines import may_be_given_up, not_given_up, out_of_sight
from specbuilder.wording.records import record_name
from specbuilder.wording.spoken import standing_line

from .answers import Answer
from .holding import COUNTER, ChangingJob, folder_of, keep_whole, stands_now
from .opening import held_job, refuse_altered, unreadable
from .output import Exit, StopError
from .recording import needs_signed, record_typed, typed_text
from .undisturbed import undisturbed

_MINUTE = "%Y-%m-%d %H:%M"
_NOTHING = "Nothing was changed."
_Told: TypeAlias = Callable[[Session], tuple[str, ...]]
"""What is said of a step that was taken."""


def quote(house: House, arguments: Namespace, now: datetime) -> Answer:
    """A quote goes out; one that has run out is quoted anew as the next revision.

    Raises:
        StopError: something stands in the way, or the job cannot be had; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    by = typed_text("--by", _counter(house) if arguments.by is None else arguments.by)
    at, step = f"{now:{_MINUTE}}", LifeStep.QUOTE
    with held(house, arguments.file) as changing:
        job, session = changing.job, changing.session
        anew = state_on(session.spec, now.date()) is JobState.EXPIRED
        wanted = next_session(house, session) if anew else session
        _refuse(session, step, in_the_way(wanted, step, at))
        if anew:
            job, session = next_held(house, changing)

        def told(done: Session) -> tuple[str, ...]:
            before = (words.begun(session.spec),) if anew else ()
            return (*before, words.quoted(done.spec, house.catalogue.firm.currency))

        return _taken(house, job, session, quoting(session, at, by), told, begun=anew)


def order(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Both sign: an order, or the change order to one.

    Raises:
        StopError: something stands in the way, or the job cannot be had; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    place = arguments.place or ""
    if place not in PLACES:
        raise StopError(Exit.UNUSABLE, f'--place: "{quotable(place)}" is no place of signing: use {", ".join(PLACES)}.')
    signature = Signature(
        customer=typed_text("--customer", arguments.customer), firm=typed_text("--firm", arguments.firm), place=place
    )
    at, step = f"{now:{_MINUTE}}", LifeStep.ORDER
    with held(house, arguments.file) as changing:
        session = changing.session
        refuse_altered(house, session.spec, session.catalogue)
        _refuse(session, step, in_the_way(session, step, at, signature=signature))
        edit = signing(session, at, signature)
        return _taken(house, changing.job, session, edit, lambda done: (words.signed(done.spec),))


def change(house: House, arguments: Namespace, _now: datetime) -> Answer:
    """Begins the next revision of what left the house, says why there is a draft, or gives one up.

    Raises:
        StopError: there is nothing to begin or to give up, or it cannot be written; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    because = typed_text("--because", arguments.because) if arguments.because is not None else ""
    edits: tuple[Edit, ...] = (GiveReason(reason=because),) if because else ()
    reason = (words.reason_given(because),) if because else ()
    with held(house, arguments.file) as changing:
        session = changing.session
        if arguments.drop:
            return _given_up(house, changing)
        if session.spec.state is not JobState.DRAFT:
            job, session = next_held(house, changing)
            begun = words.begun(session.spec)
            return _answer(begun_whole(job, session, edits), (begun, *reason))
        if not edits:
            raise StopError(Exit.BROKEN, words.is_draft(session.spec), _NOTHING)
        session = _done(session, edits)
        changing.keep(session, edits)
        return _answer(session, reason)


def record(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Writes down what happened.

    Raises:
        StopError: it is nothing that can be written down, or not now; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    at = f"{now:{_MINUTE}}"
    with held(house, arguments.file) as changing:
        session = changing.session
        line = record_typed(session, arguments, at)
        step = {RecordKind.PASSED: LifeStep.PASS, RecordKind.BUILT: LifeStep.BUILT}.get(line.kind)
        if step is not None:
            _refuse(session, step, in_the_way(session, step, at, hold=line.about))
        elif line.kind in (RecordKind.DEPOSIT, RecordKind.READING, RecordKind.SUPPLY):
            needs_signed(session)

        def told(done: Session) -> tuple[str, ...]:
            return (f"Written down: {record_name(done.catalogue, done.spec.records[-1])}.",)

        return _taken(house, changing.job, session, recording(session, line), told)


def _counter(house: House) -> str:
    """Who quotes when nobody says who."""
    return house.catalogue.firm.ask_for or house.catalogue.firm.name


def _given_up(house: House, changing: ChangingJob) -> Answer:
    """A draft is laid aside.

    Raises:
        StopError: it is none, or the first revision.
        DiskError, RulesFaults: a file could not be read or written.
    """
    spec, files = changing.session.spec, changing.job.files
    if not may_give_up(stand_of(changing.session.catalogue, spec)):
        raise StopError(Exit.BROKEN, words.cannot_give_up(spec), _NOTHING)
    changing.leave()
    try:
        with undisturbed():
            given_up(house, files, COUNTER)
    except JobUnreadableError as error:
        raise unreadable(files, error) from error
    except DiskError as error:
        stands = not_given_up(spec) if error.unsure is None else may_be_given_up(spec, folder_of(files))
        raise StopError(Exit.UNUSABLE, str(error), stands) from error
    return Answer((words.given_up(spec),))


def held(house: House, file: str) -> ChangingJob:
    """The job, held for a step.

    Raises:
        StopError: FILE is no job of the jobs folder, it is not the newest revision, or another counter has it.
        DiskError, RulesFaults: a file could not be read or written.
    """
    job = held_job(file, house, "only a job is quoted, signed or recorded")
    changing = ChangingJob(job, house, elsewhere=False)
    try:
        changing.catch_up()
    except BaseException:
        changing.leave()
        raise
    return changing


def _refuse(session: Session, step: LifeStep, found: tuple[Hindrance, ...]) -> None:
    """Goes on when nothing stands in the way.

    Raises:
        StopError: with everything that does.
    """
    if found:
        lines = words.hindrance_lines(session.catalogue, step, found)
        raise StopError(Exit.BROKEN, words.not_yet(step, len(lines)), *lines, _NOTHING)


def next_held(house: House, changing: ChangingJob) -> tuple[OpenJob, Session]:
    """The next revision, begun and held; it has no file yet.

    Raises:
        StopError, DiskError, RulesFaults: it could not be begun; nothing was changed.
    """
    try:
        session = next_session(house, changing.session)
        with undisturbed():
            return next_begun(house, changing.job, changing.session, COUNTER), session
    except JobUnreadableError as error:
        raise unreadable(changing.job.files, error) from error
    except DiskError as error:
        files = changing.job.files
        stands = _NOTHING if error.unsure is None else out_of_sight(files.number, folder_of(files))
        raise StopError(Exit.UNUSABLE, str(error), stands) from error


def begun_whole(job: OpenJob, session: Session, edits: tuple[Edit, ...]) -> Session:
    """The revision that was begun, with its first edits, written whole and let go of.

    Raises:
        StopError: it could not be written; it says whether there is one.
    """
    session = _done(session, edits)
    try:
        keep_whole(job, session.catalogue, session.spec, edits)
    except DiskError as error:
        stands = stands_now(job, job.discard(), _NOTHING, words.begun(session.spec))
        raise StopError(Exit.UNUSABLE, str(error), stands) from error
    return session


def _taken(house: House, job: OpenJob, session: Session, edit: Edit, told: _Told, *, begun: bool = False) -> Answer:
    """A step is taken, written whole, and kept as it left the house. ``begun``: it is the first of its revision.

    Raises:
        StopError: something could not be written; it says what stands.
        DiskError: another counter has taken the job over.
    """
    try:
        with undisturbed():
            done = kept(house, job, session, edit)
    except (DiskError, RulesFaults, JobUnreadableError) as error:
        if isinstance(error, DiskError) and error.reason is DiskReason.TAKEN:
            raise
        trouble = tuple(str(error).split("\n"))
        if job.written and job.in_sight:
            lines = (*told(_done(session, (edit,))), *trouble, words.not_kept_yet())
        else:
            back = job.discard() if begun else job.take_back()
            lines = (*trouble, stands_now(job, back, _NOTHING))
        raise StopError(Exit.UNUSABLE, *lines) from error
    finally:
        job.abandon()
    return _answer(done, told(done))


def _done(session: Session, edits: tuple[Edit, ...]) -> Session:
    for edit in edits:
        session, _ = do(session, edit)
    return session


def _answer(session: Session, lines: tuple[str, ...]) -> Answer:
    """What was done, and where the spec stands now."""
    now = standing_line(session.catalogue, stand_of(session.catalogue, session.spec).report)
    return Answer((*lines, now), stands="What was asked for stands in the job all the same.")
