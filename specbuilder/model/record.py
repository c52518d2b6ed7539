"""What happened to a job, as written down: recorded once, never altered and never undone."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class RecordKind(StrEnum):
    """What was recorded. What ``about``, ``words``, ``pence``, ``figure`` and ``due`` hold is said for each."""

    QUOTED = "quoted"
    """A quote went out. pence: gross at least; figure: gross at most, in pence; due: valid until."""
    SIGNED = "signed"
    """Order or change order, by the customer (``by``) and the firm (``words``). about: place of signing (premises,
    home or distance); pence: gross."""
    DEPOSIT = "deposit"
    """Received in the account, by whom of the firm (``by``). pence."""
    SUPPLY = "supply"
    """A part. about: its option; words: ordered, due, in store, received; due: date it is expected."""
    PASSED = "passed"
    """A hold point. about: its id (H3); by: who signed it; words: who was present, remarks."""
    READING = "reading"
    """As built. about: a hold point (H9), a circuit, hole or part by its id; words: what was read, with its unit;
    figure: the number, where it is one."""
    BUILT = "built"
    """The build is finished and handed over, to the customer (``by``), by the firm (``words``)."""
    PROMISED = "promised"
    """Said to the customer and relied on. words: the promise; by: who of the firm said it."""
    CALL = "call"
    """What comes next. words: about what; due: when; by: who calls."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One line of the log of a job."""

    kind: RecordKind
    at: str
    """When, as ``YYYY-MM-DD HH:MM``."""
    by: str
    """Who, by name or role."""
    about: str = ""
    words: str = ""
    pence: int | None = None
    figure: float | None = None
    due: str = ""
    """Date, as YYYY-MM-DD."""
    revision: int = 1
    """The revision it was recorded in."""

    @property
    def day(self) -> str:
        """Its date, as YYYY-MM-DD."""
        return self.at[:10]


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone:
    """Work already done that a signed change makes useless: taking out, blanking, putting right."""

    words: str
    hours: float
    net_pence: int
    order: int
    """Number of the change order that brought it."""
    holes: tuple[str, ...] = ()
    """Labels of the holes that are to be closed."""
