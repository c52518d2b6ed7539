"""``restore``: a job whose file cannot be read, opened from what is kept of it, and written whole again."""

from __future__ import annotations

from argparse import Namespace

from specbuilder.office.house import House
from specbuilder.session.state import Session, replay
from specbuilder.storage.disk import DiskError
from specbuilder.storage.faults import quotable
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.wording.job_lines import can_be_read, no_such_copy, only_a_job_stands, restored

from .answers import Answer
from .change import standing
from .holding import COUNTER, keep_whole, refuse_held, stands_now
from .opening import held_job, unreadable
from .output import Exit, StopError


def restore(house: House, arguments: Namespace) -> Answer:
    """Opens it from the copy that was named, else from the better one; what cannot be read is set aside.

    Raises:
        StopError: it can be read, nothing of it is kept, or another counter has it; it says what was changed.
        DiskError, RulesFaults: a file could not be read or written.
    """
    files = held_job(arguments.file, house, only_a_job_stands())
    instead = _instead(house, files, arguments.instead)
    found, catalogue = house.found(files, instead)
    base = house.base_of(found.start)
    job = house.jobs.open(files.number, COUNTER, catalogue, revision=files.revision, instead=instead)
    refuse_held(job, files)
    session = replay(Session(catalogue=catalogue, spec=job.start, base=base), job.entries)
    try:
        keep_whole(job, catalogue, session.spec, ())
    except DiskError as error:
        job.abandon()
        raise StopError(Exit.UNUSABLE, str(error), stands_now(job, False, "")) from error
    notices = (notice.words for notice in job.notices)
    return standing(catalogue, session, (restored(files.number, instead.value), *notices))


def _instead(house: House, files: JobFiles, text: str | None) -> Instead:
    """What it is opened from.

    Raises:
        StopError: nothing is to be restored, or there is no such copy.
    """
    try:
        house.found(files)
    except JobUnreadableError as error:
        kept = error.others
        if not kept:
            raise unreadable(files, error) from error
        found = kept[0] if text is None else next((one for one in kept if one.value == text), None)
        if found is None:
            words = no_such_copy(quotable(text or ""), [one.value for one in kept])
            raise StopError(Exit.UNUSABLE, words, "Nothing was changed.") from error
        return found
    raise StopError(Exit.BROKEN, can_be_read(files.number), "Nothing was changed.")
