"""Papers are written all or none, and an older paper is lost in no case."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.papers import write_papers

FILES = {"0147-r1-quote.txt": b"quote", "0147-r1-quote.pdf": b"%PDF", "0147-r1-hand-over.txt": b"hand-over"}


def standing(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_all_papers_stand_in_the_folder_and_nothing_else(tmp_path: Path) -> None:
    assert write_papers(tmp_path, FILES) == tuple(tmp_path / name for name in FILES)
    assert standing(tmp_path) == FILES


def test_no_papers_are_no_fault(tmp_path: Path) -> None:
    assert write_papers(tmp_path, {}) == ()
    assert standing(tmp_path) == {}


def test_older_papers_are_replaced_and_other_files_stay(tmp_path: Path) -> None:
    (tmp_path / "0147-r1-quote.txt").write_bytes(b"older")
    (tmp_path / "0147-r1-quote.txt").chmod(0o600)
    (tmp_path / "notes.txt").write_bytes(b"mine")
    write_papers(tmp_path, FILES)
    assert standing(tmp_path) == FILES | {"notes.txt": b"mine"}
    assert (tmp_path / "0147-r1-quote.txt").stat().st_mode & 0o777 == 0o600


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "papers").mkdir()
    (tmp_path / "elsewhere" / "quote.txt").write_bytes(b"older")
    (tmp_path / "papers" / "quote.txt").symlink_to(tmp_path / "elsewhere" / "quote.txt")
    write_papers(tmp_path / "papers", {"quote.txt": b"new"})
    assert (tmp_path / "papers" / "quote.txt").is_symlink()
    assert standing(tmp_path / "elsewhere") == {"quote.txt": b"new"}


def failing(call: Callable[..., object], number: int, time: int) -> Callable[..., object]:
    """The call of the system, which fails at its so-manieth time."""
    times = iter(range(1, 1000))

    def fails(*arguments: object, **more: object) -> object:
        if next(times) == time:
            raise OSError(number, os.strerror(number))
        return call(*arguments, **more)

    return fails


@pytest.mark.parametrize("links", [True, False], ids=["links", "no-links"])
@pytest.mark.parametrize("time", [1, 2, 3])
@pytest.mark.parametrize("call", ["open", "write", "fsync", "replace"])
def test_whatever_fails_the_folder_is_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, time: int, links: bool
) -> None:
    older = dict.fromkeys(list(FILES)[:2], b"older") | {"notes.txt": b"mine"}
    for name, data in older.items():
        (tmp_path / name).write_bytes(data)

    def no_links(*_: object) -> None:
        raise OSError(errno.EPERM, os.strerror(errno.EPERM))

    with monkeypatch.context() as patch:
        patch.setattr(os, call, failing(getattr(os, call), errno.ENOSPC, time))
        if not links:
            patch.setattr(os, "link", no_links)
        with pytest.raises(DiskError) as caught:
            write_papers(tmp_path, FILES)
    assert caught.value.reason is DiskReason.FULL
    assert str(caught.value).endswith(" could not be written, the disk is full: make room and try again.")
    assert str(caught.value).startswith(str(tmp_path))
    assert standing(tmp_path) == older


def test_an_older_paper_survives_a_disk_that_fails_at_every_step_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It may then stand under its other name, but it stands."""
    (tmp_path / "a.txt").write_bytes(b"older")
    real = os.replace
    moved: list[object] = []

    def fails_after_the_first(*arguments: str) -> None:
        moved.append(arguments)
        if len(moved) > 1:
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        real(*arguments)

    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", fails_after_the_first)
        with pytest.raises(DiskError):
            write_papers(tmp_path, {"a.txt": b"new", "b.txt": b"new"})
    assert b"older" in standing(tmp_path).values()


def test_a_folder_that_is_not_there_is_named_with_the_cure(tmp_path: Path) -> None:
    with pytest.raises(DiskError) as caught:
        write_papers(tmp_path / "gone", {"quote.txt": b"quote"})
    assert str(caught.value) == (
        f"{tmp_path / 'gone' / 'quote.txt'} could not be written, it is not there: check the path, and that its drive "
        "is connected."
    )
    assert standing(tmp_path) == {}


def test_a_folder_that_goes_away_between_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "stick"
    folder.mkdir()
    real = os.open
    seen: list[object] = []

    def taken_out(path: Path, *more: int) -> int:
        seen.append(path)
        if len(seen) == 2:
            folder.rename(tmp_path / "taken-out")
        return real(path, *more)

    monkeypatch.setattr(os, "open", taken_out)
    with pytest.raises(DiskError) as caught:
        write_papers(folder, FILES)
    assert caught.value.reason is DiskReason.GONE
    assert not folder.exists()


def test_a_read_only_folder_is_named_with_the_cure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "open", failing(os.open, errno.EROFS, 1))
    with pytest.raises(DiskError) as caught:
        write_papers(tmp_path, FILES)
    assert str(caught.value) == (
        f"{tmp_path / '0147-r1-quote.txt'} could not be written, the folder is read only: unlock it, or use another "
        "folder."
    )
    assert standing(tmp_path) == {}


def test_a_folder_in_the_way_stops_all_of_them(tmp_path: Path) -> None:
    (tmp_path / "0147-r1-hand-over.txt").mkdir()
    with pytest.raises(DiskError) as caught:
        write_papers(tmp_path, FILES)
    assert str(caught.value) == (
        f"{tmp_path / '0147-r1-hand-over.txt'} could not be written, it is a folder: name a file."
    )
    assert [path.name for path in tmp_path.iterdir()] == ["0147-r1-hand-over.txt"]


@pytest.mark.parametrize("name", ["../quote.txt", "deeper/quote.txt", "", "..", "/tmp/quote.txt", "a\0b"])
def test_a_name_that_leads_elsewhere_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(DiskError) as caught:
        write_papers(tmp_path, {"a.txt": b"a", name: b"quote"})
    assert caught.value.reason is DiskReason.NAME
    assert standing(tmp_path) == {}


def test_a_disk_that_is_really_full_leaves_the_folder_as_it_was(tmp_path: Path) -> None:
    """A real limit of the system on the size of a file, in a process of its own."""
    program = f"""
import resource, signal
from pathlib import Path
from specbuilder.storage.papers import write_papers
from specbuilder.storage.disk import DiskError
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
folder = Path({str(tmp_path)!r})
write_papers(folder, {{"a.txt": b"older", "b.pdf": b"older"}})
resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))
try:
    write_papers(folder, {{"a.txt": b"new", "b.pdf": b"x" * 1000, "c.txt": b"new"}})
except DiskError as error:
    print(error.reason)
"""
    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert ran.stdout.split() == ["full"]
    assert standing(tmp_path) == {"a.txt": b"older", "b.pdf": b"older"}


def test_what_a_kill_left_half_written_is_gone_with_the_next_papers(tmp_path: Path) -> None:
    left = [tmp_path / f".0147-r1-quote.txt.99999{ending}" for ending in (".part", ".old")]
    young = tmp_path / ".0147-r1-quote.pdf.99998.part"
    (tmp_path / "0147-r1-quote.txt").write_bytes(b"older")
    for path in (*left, young):
        path.write_bytes(b"half")
    for path in left:
        os.utime(path, (1, 1))
    write_papers(tmp_path, FILES)
    assert standing(tmp_path) == FILES | {young.name: b"half"}, "what another process may be writing stays"
