"""The list of jobs: one line each, from the head of its file, whatever state the rest is in."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, tzinfo
from pathlib import Path

from specbuilder.model.edits import NameCustomer, Together
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.model.kinds import JobState
from specbuilder.model.plain_text import hidden_character
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec

from .disk import DiskError, reading
from .faults import Fault
from .job_files import JobFiles
from .job_notices import no_start
from .journal import read_journal, recorded
from .lock import LockHolder
from .spec_files import SpecFaultsError, read_spec, read_text

_ENDS = ("\n[brief]", "\n[handed]", "\n[[")
"""What stands after the tables a line of the list is made from."""
_UNSAVED = (b'{"edit":', b'{"undo":', b'{"redo":')


@dataclass(frozen=True, slots=True, kw_only=True)
class JobLine:
    """One job, in its newest revision."""

    number: str
    revision: int
    customer: str = ""
    """Empty while nobody has given a name."""
    state: JobState | None = None
    """None: the file cannot be read."""
    van: str = ""
    """Name of the base van as the file says it; empty while it is not decided."""
    changed: datetime | None = None
    """When something was last done to it."""
    holder: LockHolder | None = None
    """The counter that has it open."""
    unsaved: bool = False
    """Its file lags behind its journal: it was left by a kill. Opening it brings everything back."""
    unread: bool = False
    """Only its number is known yet."""
    faults: tuple[Fault, ...] = ()
    """Why it cannot be read; opening it says what can be done."""


def job_line(files: JobFiles, holder: LockHolder | None, now: datetime) -> JobLine:
    """The line of this job at this time. Fails on nothing: what cannot be read is told in the line."""
    line = JobLine(number=files.number, revision=files.revision, holder=holder, changed=changed_at(files, now.tzinfo))
    try:
        journal = _journal(files)
        if not files.spec.exists():
            return _from_journal(line, files, journal)
        return _from_file(line, files, f"{now:%Y-%m-%d}", unsaved=_is_unsaved(journal))
    except DiskError as error:
        return _faulty(line, Fault(files.spec.name, 0, "", str(error)))
    except SpecFaultsError as error:
        return _faulty(line, *error.faults)


def changed_at(files: JobFiles, zone: tzinfo | None) -> datetime | None:
    """When file or journal was last changed; None when neither is there."""
    times = [time for path in (files.spec, files.journal) if (time := _time_s(path)) is not None]
    return datetime.fromtimestamp(max(times), zone) if times else None


def _from_file(line: JobLine, files: JobFiles, today: str, *, unsaved: bool) -> JobLine:
    text = read_text(files.spec)
    head = _head(text)
    if head is None:
        spec = read_spec(text, files.spec.name, None).spec
        return _line(line, spec.customer.name, _on(spec.state, spec.valid_until, today), "", unsaved=unsaved)
    state, until, name, van = head
    return _line(line, name, _on(state, until, today), van, unsaved=unsaved)


def _on(state: JobState, valid_until: str, today: str) -> JobState:
    """A quote that has run out has expired."""
    return JobState.EXPIRED if state is JobState.QUOTED and valid_until and valid_until < today else state


def _head(text: str) -> tuple[JobState, str, str, str] | None:
    """State, end of the quote, customer and van from the first tables alone; None when they do not stand as written."""
    ends = [end for mark in _ENDS if (end := text.find(mark)) >= 0]
    try:
        table = tomllib.loads(text[: min(ends, default=len(text)) + 1])
    except (ValueError, RecursionError):
        return None
    match table:
        case {
            "format": 1,
            "job": {"state": str(state), **job},
            "customer": dict(customer),
            "vehicle": {"base_van": str(van), **vehicle},
        } if state in tuple(JobState):
            name = customer.get("name", "")
            shown = isinstance(name, str) and hidden_character(name) is None and hidden_character(van) is None
            decided = "base_van_option" in vehicle
            until = job.get("valid_until", "")
            if not isinstance(until, str) or not isinstance(name, str) or not shown:
                return None
            return JobState(state), until, name, van if decided else ""
        case _:
            return None


def _from_journal(line: JobLine, files: JobFiles, data: bytes) -> JobLine:
    """A job whose file was never written, or is gone."""
    record = read_journal(data)
    start = record.start
    if start is None:
        return _faulty(line, no_start(files))
    state = _led_to(start, recorded(record)[len(start.records) :])
    return _line(line, _name(start.customer.name, record.entries), state, "", unsaved=True)


def _led_to(start: Spec, records: Iterable[Record]) -> JobState:
    """The state after what was written down since."""
    state = start.state
    for record in records:
        match record.kind:
            case RecordKind.QUOTED:
                state = JobState.QUOTED
            case RecordKind.SIGNED:
                state = JobState.CHANGED if start.changes_signed else JobState.ORDERED
            case RecordKind.BUILT:
                state = JobState.AS_BUILT
            case _:
                pass
    return state


def _name(name: str, entries: Iterable[Entry]) -> str:
    """The customer's name after all that was done. A step back that does not say where it led leaves it as it was."""
    for entry in entries:
        match entry:
            case NameCustomer():
                name = entry.name
            case Together(edits=edits):
                name = _name(name, edits)
            case Undo(to) | Redo(to) if to is not None:
                name = to.customer.name
            case _:
                pass
    return name


def _line(line: JobLine, customer: str, state: JobState, van: str, *, unsaved: bool) -> JobLine:
    return JobLine(
        number=line.number,
        revision=line.revision,
        customer=customer,
        state=state,
        van=van,
        changed=line.changed,
        holder=line.holder,
        unsaved=unsaved,
    )


def _faulty(line: JobLine, *faults: Fault) -> JobLine:
    return JobLine(
        number=line.number, revision=line.revision, changed=line.changed, holder=line.holder, faults=tuple(faults)
    )


def _is_unsaved(journal: bytes) -> bool:
    """True when something was done after the file was last written."""
    rest = journal[journal.rfind(b'\n{"saved":') + 1 :]
    return any(b"\n" + mark in b"\n" + rest for mark in _UNSAVED)


def _journal(files: JobFiles) -> bytes:
    try:
        with reading(files.journal) as file:
            return file.read()
    except DiskError:
        return b""


def _time_s(path: Path) -> float | None:
    try:
        return path.stat().st_mtime
    except OSError:
        return None
