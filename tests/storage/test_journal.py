"""A journal gives back what was put in, and no broken one makes it fail."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.edits import AnswerLine, FillVanData, NameCustomer, Take, Together, WriteNote
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Step
from specbuilder.model.spec import Spec, VanData
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.journal import (
    CursorPlace,
    Entry,
    JournalRecord,
    Redo,
    Saved,
    Undo,
    entry_line,
    read_journal,
    saved_line,
    start_line,
)
from specbuilder.storage.journal_file import JournalFile
from tests.storage.specs import edits, hostile_specs, specs

START = start_line(Spec(number="0147"))
TAKE = Take(option=OptionId("side-galley"))


@given(st.lists(edits(), max_size=3))
@settings(max_examples=150, deadline=None)
def test_every_edit_comes_back_equal(done: list[Any]) -> None:
    record = read_journal(START + b"".join(entry_line(edit) for edit in done))
    assert record.entries == tuple(done)
    assert [repr(edit) for edit in record.entries] == [repr(edit) for edit in done]
    assert not record.torn
    assert not record.broken_line


@given(st.one_of(specs(), specs(strange_answers=True), hostile_specs()))
@settings(max_examples=60, deadline=None)
def test_every_start_comes_back_equal(spec: Spec) -> None:
    assert read_journal(start_line(spec)).start == spec


def test_half_characters_and_kinds_of_numbers_come_back() -> None:
    done: tuple[Entry, ...] = (
        NameCustomer(name="a\udc80\x1b\u202e\n", contact=""),
        AnswerLine(key=BriefKey("drive_h_per_day"), value=3.0),
        AnswerLine(key=BriefKey("adults"), value=3),
        AnswerLine(key=BriefKey("ages"), value=()),
        AnswerLine(key=BriefKey("adults"), value=None),
        FillVanData(van_data=VanData(year=2031)),
        Together(edits=(TAKE, Together(edits=(WriteNote(note=""),)))),
    )
    record = read_journal(START + b"".join(entry_line(edit) for edit in done))
    assert [repr(edit) for edit in record.entries] == [repr(edit) for edit in done]


def test_everything_a_journal_can_hold() -> None:
    place = CursorPlace(step=Step.KITCHEN, row="side-galley", typed="12")
    lines = (
        START,
        entry_line(TAKE),
        entry_line(CursorPlace(step=Step.BRIEF)),
        entry_line(Undo()),
        saved_line("abc"),
        entry_line(Redo()),
        entry_line(place),
    )
    record = read_journal(b"".join(lines))
    assert record == JournalRecord(
        start=Spec(number="0147"),
        entries=(TAKE, Undo(), Redo()),
        cursor=place,
        saves=(Saved(entries=2, digest="abc"),),
        good_bytes=sum(map(len, lines)),
    )


def test_a_line_is_short_and_readable() -> None:
    assert entry_line(TAKE) == b'{"edit":{"is":"Take","option":"side-galley"}}#73a84e7a\n'


@given(st.integers(0, 10_000))
@settings(max_examples=100, deadline=None)
def test_cut_anywhere_it_loses_at_most_the_line_that_was_cut(cut: int) -> None:
    whole = START + entry_line(TAKE) * 5
    record = read_journal(whole[: cut % len(whole)])
    lines = whole[: cut % len(whole)].count(b"\n")
    assert len(record.entries) == max(lines - 1, 0)
    assert record.good_bytes == len(START) * (lines > 0) + len(entry_line(TAKE)) * max(lines - 1, 0)


@given(st.binary(max_size=60), st.integers(0, 3))
@settings(max_examples=150, deadline=None)
def test_nothing_makes_reading_fail(rubbish: bytes, line: int) -> None:
    lines = [START, entry_line(TAKE), entry_line(Undo()), saved_line("a")]
    lines[line] = rubbish + b"\n"
    read_journal(b"".join(lines))


def test_no_spoilt_byte_is_taken_for_what_was_said() -> None:
    lines = (START, entry_line(TAKE), saved_line("abc"), entry_line(CursorPlace(step=Step.KITCHEN)), entry_line(Undo()))
    whole = b"".join(lines)
    sound = read_journal(whole)
    for place in range(len(whole)):
        for mask in (0x01, 0x20, 0x80):
            record = read_journal(whole[:place] + bytes([whole[place] ^ mask]) + whole[place + 1 :])
            assert record.broken_line or record.torn, (place, mask)
            assert record.entries == sound.entries[: len(record.entries)]


def test_a_journal_without_checksums_is_read_and_goes_on_with_them() -> None:
    bare = [line[:-10] + b"\n" for line in (START, entry_line(TAKE), saved_line("abc"))]
    first = bare[0].replace(b'"journal":2', b'"journal":1')
    record = read_journal(first + b"".join(bare[1:]) + entry_line(Undo()))
    assert (record.entries, record.saves[0].entries, record.broken_line) == ((TAKE, Undo()), 1, 0)
    assert read_journal(START + bare[1]).broken_line == 2, "a journal that has checksums has them on every line"


def test_a_torn_last_line_is_left_out_and_known() -> None:
    record = read_journal(START + entry_line(TAKE) + b'{"edit":{"is":"Ta')
    assert record.entries == (TAKE,)
    assert record.torn
    assert not record.broken_line


@pytest.mark.parametrize(
    "line",
    [
        b"nonsense",
        b'{"edit":{"is":"Tak","option":"a"}}',
        b'{"edit":{"is":"Take"}}',
        b'{"edit":{"is":"Take","option":3}}',
        b'{"edit":{"is":"Take","option":"a","place":"nearside"}}',
        b'{"edit":{"is":"Take","option":"a","colour":"red"}}',
        b'{"edit":{"is":"Spec"}}',
        b'{"edit":[]}',
        b'{"undo":1}',
        b'{"journal":1,"start":{"is":"Spec"}}',
        b"[" * 100_000,
        b"\xff",
    ],
)
def test_a_broken_line_ends_what_is_read_and_is_known(line: bytes) -> None:
    record = read_journal(START + entry_line(TAKE) + line + b"\n" + entry_line(Undo()))
    assert record.entries == (TAKE,)
    assert record.broken_line == 3
    assert not record.torn
    assert record.good_bytes == len(START + entry_line(TAKE))


def test_a_later_format_is_known_and_nothing_is_guessed() -> None:
    record = read_journal(b'{"journal":7,"start":"of another kind"}\n' + entry_line(TAKE))
    assert record.newer_format == 7
    assert record.start is None
    assert record.entries == ()


def test_a_place_that_cannot_be_read_is_none() -> None:
    assert read_journal(START + b'{"cursor":{"is":"CursorPlace","step":"attic"}}\n').cursor is None


# --- the journal on disk


def journal(tmp_path: Path) -> JournalFile:
    return JournalFile.new(tmp_path / "a.journal", START)


def on_disk(tmp_path: Path) -> bytes:
    return (tmp_path / "a.journal").read_bytes()


def test_an_appended_line_is_there_at_once(tmp_path: Path) -> None:
    file = journal(tmp_path)
    file.append(entry_line(TAKE))
    assert on_disk(tmp_path) == START + entry_line(TAKE)
    file.sync()
    file.close()


def test_opening_cuts_off_what_cannot_be_read(tmp_path: Path) -> None:
    journal(tmp_path).close()
    (tmp_path / "a.journal").write_bytes(START + b'{"ed')
    file = JournalFile(tmp_path / "a.journal", START)
    file.append(entry_line(TAKE))
    assert on_disk(tmp_path) == START + entry_line(TAKE)


def test_a_full_disk_keeps_everything_in_order(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = journal(tmp_path)
    real = os.write
    room = [7]

    def nearly_full(handle: int, data: bytes) -> int:
        if not room[0]:
            raise OSError(errno.ENOSPC, "full")
        written = real(handle, bytes(data[: room[0]]))
        room[0] -= written
        return written

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", nearly_full)
        for line in (entry_line(TAKE), entry_line(Undo())):
            with pytest.raises(DiskError) as caught:
                file.append(line)
            assert caught.value.reason is DiskReason.FULL
    assert read_journal(on_disk(tmp_path)).torn
    assert file.waiting == len(entry_line(TAKE) + entry_line(Undo())) - 7
    file.append(entry_line(Redo()))
    assert file.waiting == 0
    assert on_disk(tmp_path) == START + entry_line(TAKE) + entry_line(Undo()) + entry_line(Redo())


def test_a_removed_journal_is_written_again_whole(tmp_path: Path) -> None:
    file = journal(tmp_path)
    file.append(entry_line(TAKE))
    (tmp_path / "a.journal").unlink()
    file.append(entry_line(Undo()))
    assert on_disk(tmp_path) == START + entry_line(TAKE) + entry_line(Undo())


def test_a_renamed_journal_is_written_again_whole_under_its_name(tmp_path: Path) -> None:
    file = journal(tmp_path)
    file.append(entry_line(TAKE))
    (tmp_path / "a.journal").rename(tmp_path / "b.journal")
    file.append(entry_line(Undo()))
    assert on_disk(tmp_path) == START + entry_line(TAKE) + entry_line(Undo())


def test_what_a_disk_may_have_dropped_is_written_once_more(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = journal(tmp_path)
    file.append(entry_line(TAKE))

    def fails(_: int) -> None:
        raise OSError(errno.EIO, "gone")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", fails)
        with pytest.raises(DiskError):
            file.sync()
        assert file.waiting
        with pytest.raises(DiskError):
            file.retry()
    (tmp_path / "a.journal").write_bytes(START)  # the system dropped the line that it could not bring to the disk
    file.retry()
    assert not file.waiting
    file.append(entry_line(Undo()))
    file.sync()
    assert on_disk(tmp_path) == START + entry_line(TAKE) + entry_line(Undo())


def test_a_journal_that_was_moved_after_it_was_read_is_written_again_and_holds_no_hole(tmp_path: Path) -> None:
    file = JournalFile(tmp_path / "a.journal", START + entry_line(TAKE))
    file.append(entry_line(Undo()))
    assert on_disk(tmp_path) == START + entry_line(TAKE) + entry_line(Undo())


def test_a_removed_folder_costs_nothing_once_it_is_back(tmp_path: Path) -> None:
    folder = tmp_path / "jobs"
    folder.mkdir()
    file = JournalFile.new(folder / "a.journal", START)
    (folder / "a.journal").unlink()
    folder.rmdir()
    with pytest.raises(DiskError) as caught:
        file.append(entry_line(TAKE))
    assert caught.value.reason is DiskReason.GONE
    folder.mkdir()
    file.retry()
    assert (folder / "a.journal").read_bytes() == START + entry_line(TAKE)
