"""The job list, notices, and the sentences for what goes wrong with files, disk and window."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.kinds import JobState


@dataclass(frozen=True, slots=True, kw_only=True)
class JobWords:
    """The cells of one line of the job list."""

    number: str
    name: str
    state: str
    price: str
    van: str


def job_words(*, number: str, customer: str, state: JobState, price: str, van: str) -> JobWords:
    """One line of the list; what is missing says so (``no name yet``, ``cannot tell``, ``van not known``)."""
    raise NotImplementedError


def no_jobs() -> str:
    """``No jobs yet. Press n when the customer's first sentence begins.``"""
    raise NotImplementedError


def read_only(counter: str, since: str) -> str:
    """``Read only: counter 1 has this job since 10:02``."""
    raise NotImplementedError


def taken_over(counter: str, since: str) -> str:
    """``counter 1 left this job without closing it at 10:02; it is yours now. Nothing was lost``."""
    raise NotImplementedError


def yesterday_copy(number: str) -> str:
    """What is said after opening yesterday's copy."""
    raise NotImplementedError


def unreadable(number: str, faults: tuple[str, ...]) -> tuple[str, ...]:
    """``This job cannot be read: line 14 of 0147.toml, ... Nothing was changed. ...``, one line a fault."""
    raise NotImplementedError


def rules_unreadable(faults: tuple[str, ...]) -> tuple[str, ...]:
    """``Rules: 3 faults. The program starts when they are mended.``, then the faults."""
    raise NotImplementedError


def disk_trouble(reason: str) -> str:
    """``Could not write to the disk (full). What you typed is still here. Enter tries again``."""
    raise NotImplementedError


def window_too_small(columns: int, rows: int, number: str = "") -> str:
    """``This window is 52 by 16. The screens need 60 by 18. ...``"""
    raise NotImplementedError


def saved(clock: str) -> str:
    """``saved 10:42``."""
    raise NotImplementedError
