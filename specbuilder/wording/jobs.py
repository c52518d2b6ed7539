"""The job list, notices, and the sentences for what goes wrong with files, disk and window."""

from __future__ import annotations

from specbuilder.model.kinds import JobState

from .key_names import pressed
from .plain import ended
from .states import job_state_word

NO_NAME = "no name yet"
JOB_HEADS = ("Job", "Customer", "State", "Base van", "Changed")
"""Over the columns of the list."""
_MOST_FAULTS = 20


def state_and_revision(state: JobState, revision: int) -> str:
    """``quoted 2``; of a first draft the word alone."""
    word = job_state_word(state)
    return word if state is JobState.DRAFT and revision == 1 else f"{word} {revision}"


def no_jobs() -> str:
    """``No jobs yet. Press n when the customer's first sentence begins.``"""
    return f"No jobs yet. Press {pressed('new-job')} when the customer's first sentence begins."


def others_hidden(jobs: int) -> str:
    """``1 of 3 jobs is shown; Down shows the others``: after a job no other name is shown by a slip."""
    return f"1 of {jobs} jobs is shown; Down shows the others"


def no_job_found() -> str:
    """Where no job has the letters typed."""
    return "No job has these letters. Esc clears them."


def leave_hint() -> str:
    """What Escape says on the job list."""
    return f"Press {pressed('leave')} to leave; all is saved."


def read_only(counter: str, since: str) -> str:
    """``Read only: counter 1 has this job since 10:02``."""
    return f"Read only: {counter or 'another counter'} has this job since {since}"


def kept_aside(number: str, file: str) -> str:
    """What is said on leaving a job that another counter has taken over meanwhile."""
    return f"Another counter has taken job {number} over. What stood here is kept in {file}: open the job and compare."


def unreadable(faults: tuple[str, ...], *, copy_kept: bool) -> tuple[str, ...]:
    """``This job cannot be read:``, the faults, and the cure: one line each."""
    cure = "Nothing was changed." + (" Yesterday's copy: Enter" if copy_kept else " No copy of yesterday is kept.")
    return ("This job cannot be read:", *_few(faults), cure)


def rules_unreadable(faults: tuple[str, ...]) -> tuple[str, ...]:
    """``Rules: 3 faults. The program starts when they are mended.``, then the faults."""
    count = "1 fault" if len(faults) == 1 else f"{len(faults)} faults"
    mended = "it is mended" if len(faults) == 1 else "they are mended"
    return (f"Rules: {count}. The program starts when {mended}.", *faults)


def disk_trouble(reason: str) -> str:
    """``Could not write to the disk (full). What you typed is still here. Enter tries again``."""
    return f"Could not write to the disk ({reason}). What you typed is still here. Enter tries again"


def window_too_small(columns: int, rows: int, number: str = "") -> str:
    """``This window is 52 by 16. The screens need 60 by 18. ...``"""
    sentence = f"This window is {columns} by {rows}. The screens need 60 by 18."
    if not number:
        return f"{sentence} Make it larger."
    return f"{sentence} Your job is saved; make it larger or use: specbuilder show {number}"


def saved(clock: str) -> str:
    """``saved 10:42``."""
    return f"saved {clock}"


def newer_format(file: str) -> str:
    """What is said of a job that a newer program wrote."""
    return (
        f"{file} was written by a newer specbuilder: open it there, or bring this one up to date. Nothing was changed."
    )


def _few(faults: tuple[str, ...]) -> tuple[str, ...]:
    """So many as a window holds; the rest is counted, the whole list stands in ``specbuilder check``."""
    shown = tuple(ended(fault) for fault in faults[:_MOST_FAULTS])
    rest = len(faults) - len(shown)
    return (*shown, f"and {rest} more: specbuilder check lists them all.") if rest else shown
