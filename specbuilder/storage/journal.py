"""The journal of a job: one line of JSON for everything that was done, appended before it is painted.

    {"journal": 2, "start": {...}}      first line: the spec all else starts from, and the format of the journal
    {"edit": {"is": "Take", ...}}       something was done
    {"undo": {...}}  {"redo": {...}}    the last thing was undone, or done again; the spec it led to
    {"cursor": {...}}                   where the cursor stood, half-typed text included
    {"saved": "<sha256>"}               up to here everything stands in the job's file, whose text has this hash

Behind each line stands ``#`` and its checksum, so that no byte which a disk spoils is taken for what was said (format 1
had none). A line is there when its line end is: what a power cut leaves of the last one is passed over, and said.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import get_args

from specbuilder.model.edits import Edit, Together, Write
from specbuilder.model.history import Entry, Redo, Undo
from specbuilder.model.kinds import Step
from specbuilder.model.record import Record
from specbuilder.model.spec import Spec

from .json_values import Json, NotReadableError, from_json, one_from_json, to_json

JOURNAL_FORMAT = 2
_UNSUMMED = 1
"""The format whose lines bear no checksum. A journal that began so may go on with lines that do."""
_SUM_BYTES = 9


@dataclass(frozen=True, slots=True, kw_only=True)
class CursorPlace:
    """Where the work stood: its step, the row under the cursor, and what was half typed."""

    step: Step
    row: str = ""
    """Id of the option, group or line of the brief; empty: the first row."""
    typed: str = ""


_EDITS: tuple[type[Edit], ...] = get_args(Edit)


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """The file was written when this many entries had been made."""

    entries: int
    digest: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalRecord:
    """What a journal holds."""

    start: Spec | None = None
    """None: the first line cannot be read, and nothing after it can be replayed."""
    entries: tuple[Entry, ...] = ()
    cursor: CursorPlace | None = None
    saves: tuple[Saved, ...] = ()
    good_bytes: int = 0
    """Length of what could be read; what follows was not taken in."""
    empty: bool = False
    """There is no journal, or nothing in it."""
    torn: bool = False
    """The last line was cut off while it was written."""
    broken_line: int = 0
    """Counted from 1: the first whole line that cannot be read; 0 when there is none."""
    newer_format: int = 0
    """The format it says it has, when this program does not know that one."""


def start_line(start: Spec) -> bytes:
    """The first line."""
    return _line({"journal": JOURNAL_FORMAT, "start": to_json(start)})


def entry_line(entry: Entry | CursorPlace) -> bytes:
    """The line of something done, or of a place."""
    match entry:
        case Undo(to):
            return _line({"undo": True if to is None else to_json(to)})
        case Redo(to):
            return _line({"redo": True if to is None else to_json(to)})
        case CursorPlace():
            return _line({"cursor": to_json(entry)})
        case _:
            return _line({"edit": to_json(entry)})


def saved_line(digest: str) -> bytes:
    """The line that says the file holds everything before it."""
    return _line({"saved": digest})


def recorded(journal: JournalRecord) -> tuple[Record, ...]:
    """All that was written down, as far as the journal can be read. Nothing of it can be undone."""
    start = journal.start.records if journal.start is not None else ()
    return (*start, *_written(journal.entries))


def _written(entries: Iterable[Entry]) -> Iterator[Record]:
    for entry in entries:
        match entry:
            case Write(record=record):
                yield record
            case Together(edits=edits):
                yield from _written(edits)
            case _:
                pass


def read_journal(data: bytes) -> JournalRecord:
    """What stands in a journal, as far as it can be read. Fails on nothing."""
    if not data:
        return JournalRecord(empty=True)
    reading = _Reading()
    for number, line, end in _lines(data):
        try:
            reading.take(number, line)
        except (NotReadableError, ValueError, RecursionError):
            return reading.record(broken_line=number)
        reading.good_bytes = end
        if reading.newer_format:
            break
    return reading.record(torn=reading.good_bytes < len(data) and not reading.newer_format)


class _Reading:
    """Collects the lines of one journal."""

    def __init__(self) -> None:
        self.good_bytes = 0
        self.newer_format = 0
        self._start: Spec | None = None
        self._entries: list[Entry] = []
        self._saves: list[Saved] = []
        self._cursor: bytes | None = None
        self._summed = True

    def take(self, number: int, line: bytes) -> None:
        """Notes what the line says.

        Raises:
            ValueError: it says nothing that is known.
        """
        said = _summed(line, must=self._summed and number > 1)
        if said.startswith(b'{"cursor"'):
            self._cursor = said
            return
        match json.loads(said):
            case {"journal": int(form), "start": start} if number == 1:
                self._begin(form, start)
            case {"edit": edit} if number > 1:
                self._entries.append(one_from_json(_EDITS, edit))
            case {"undo": to} if number > 1:
                self._entries.append(Undo(_led_to(to)))
            case {"redo": to} if number > 1:
                self._entries.append(Redo(_led_to(to)))
            case {"saved": str(digest)} if number > 1:
                self._saves.append(Saved(entries=len(self._entries), digest=digest))
            case _:
                raise NotReadableError("no line of a journal")

    def record(self, *, torn: bool = False, broken_line: int = 0) -> JournalRecord:
        """All that was taken in."""
        return JournalRecord(
            start=self._start,
            entries=tuple(self._entries),
            cursor=_place(self._cursor),
            saves=tuple(self._saves),
            good_bytes=self.good_bytes,
            torn=torn,
            broken_line=broken_line,
            newer_format=self.newer_format,
        )

    def _begin(self, form: int, start: Json) -> None:
        if form > JOURNAL_FORMAT:
            self.newer_format = form
        else:
            self._summed = form > _UNSUMMED
            self._start = from_json(Spec, start)


def _led_to(value: Json) -> Spec | None:
    return None if value is True else from_json(Spec, value)


def _place(line: bytes | None) -> CursorPlace | None:
    """The last place: a comfort, so one that cannot be read is none."""
    if line is None:
        return None
    try:
        return from_json(CursorPlace, json.loads(line)["cursor"])
    except (NotReadableError, ValueError, RecursionError):
        return None


def _lines(data: bytes) -> Iterator[tuple[int, bytes, int]]:
    """Number, text and end of each whole line."""
    begin, number = 0, 0
    while (end := data.find(b"\n", begin)) >= 0:
        number += 1
        yield number, data[begin:end], end + 1
        begin = end + 1


def _line(value: dict[str, Json]) -> bytes:
    line = json.dumps(value, ensure_ascii=True, separators=(",", ":")).encode()
    return line + _sum(line) + b"\n"


def _sum(line: bytes) -> bytes:
    return b"#%08x" % zlib.crc32(line)


def _summed(line: bytes, *, must: bool) -> bytes:
    """The line without its checksum, which it ``must`` bear or may.

    Raises:
        NotReadableError: the line is not what was written.
    """
    said, checksum = line[:-_SUM_BYTES], line[-_SUM_BYTES:]
    if _sum(said) == checksum:
        return said
    if must or checksum.startswith(b"#"):
        raise NotReadableError("a line that was spoilt")
    return line
