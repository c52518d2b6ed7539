"""Jobs on a disk that refuses: nothing is lost, and one sentence says what to do."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.model.history import Undo
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.lock import LockHolder
from tests.storage.jobs_scene import ASH, GALLEY, files, folder, left, saved, sentences, with_name
from tests.storage.scene import CATALOGUE


def refuse(patch: pytest.MonkeyPatch, call: str, number: int) -> None:
    def fails(*_: object, **__: object) -> int:
        raise OSError(number, os.strerror(number))

    patch.setattr(os, call, fails)


def test_a_full_disk_keeps_what_was_done_and_tries_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    with monkeypatch.context() as patch:
        refuse(patch, "write", errno.ENOSPC)
        writes: tuple[Callable[[], None], ...] = (
            lambda: job.append(GALLEY),
            lambda: job.append(Undo()),
            job.retry,
            job.close,
        )
        for write in writes:
            with pytest.raises(DiskError) as caught:
                write()
            assert str(caught.value) == (
                f"{jobs.path}/0001-r1.journal could not be written, the disk is full: make room and try again."
            )
        assert job.waiting
    job.retry()
    assert not job.waiting
    job.close()
    assert jobs.open("0001", "counter 1", CATALOGUE).entries == (ASH, GALLEY, Undo())


def test_a_full_disk_on_saving_leaves_the_file_and_the_journal_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    jobs = left(tmp_path)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    job.append(GALLEY)
    before = job.files.spec.read_bytes()
    with monkeypatch.context() as patch:
        refuse(patch, "replace", errno.ENOSPC)
        with pytest.raises(DiskError) as caught:
            saved(job, with_name(job.start, "other"))
    assert str(caught.value) == (
        f"{jobs.path}/0001-r1.toml could not be written, the disk is full: make room and try again."
    )
    assert job.files.spec.read_bytes() == before
    saved(job, with_name(job.start, "other"))
    job.close()
    assert jobs.list()[0].customer == "other"


def test_in_a_read_only_folder_a_job_can_be_looked_at(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "open", errno.EROFS)
        job = jobs.open("0001", "counter 1", CATALOGUE)
    assert job.entries == (ASH,)
    assert isinstance(job.read_only_because, DiskError)
    assert sentences(job) == [
        f"Read only: {jobs.path}/0001.lock could not be written, the folder is read only: unlock it, or use "
        "another folder."
    ]
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]


def test_in_a_read_only_folder_there_is_no_new_job(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    refuse(monkeypatch, "open", errno.EACCES)
    with pytest.raises(DiskError) as caught:
        jobs.create("counter 1")
    assert str(caught.value) == (
        f"{jobs.path}/0002.lock could not be written, this user may not: change the rights of file and folder, or use "
        "another folder."
    )


def test_a_disk_full_of_new_jobs_leaves_no_half_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "write", errno.ENOSPC)
        with pytest.raises(DiskError) as caught:
            jobs.create("counter 1")
    assert caught.value.reason is DiskReason.FULL
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]


def test_a_journal_that_cannot_be_opened_frees_the_job_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "ftruncate", errno.EIO)
        job = jobs.open("0001", "counter 1", CATALOGUE)
    assert sentences(job) == [
        f"Read only: {jobs.path}/0001-r1.journal could not be written, the disk reports a fault: check the drive and "
        "try again."
    ]
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]


def test_a_folder_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "jobs").write_text("", encoding="utf-8")
    jobs = folder(tmp_path)
    with pytest.raises(DiskError) as caught:
        jobs.list()
    assert str(caught.value) == (f"{jobs.path} could not be read, it is no folder: use --jobs with a folder.")
    with pytest.raises(DiskError) as caught:
        jobs.create("counter 1")
    assert str(caught.value) == f"{jobs.path} could not be written, it is no folder: use --jobs with a folder."


def test_a_pipe_in_the_place_of_a_jobs_file_is_never_waited_for(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    for name in ("0001.lock", "0002-r1.toml", "0003-r1.journal"):
        os.mkfifo(jobs.path / name)
    assert [[str(fault) for fault in line.faults] for line in jobs.list()] == [
        [],
        [
            f"0002-r1.toml: {jobs.path}/0002-r1.toml could not be read, it is no regular file: use another name.",
        ],
        [
            "0003-r1.journal:1: the first line cannot be read, and there is no 0003-r1.toml: put a copy of "
            "one of the two there."
        ],
    ]
    job = jobs.open("0001", "counter 1", CATALOGUE)
    assert sentences(job) == [
        f"Read only: {jobs.path}/0001.lock could not be read, it is no regular file: use another name."
    ]
    for number, name in (("0002", "0002-r1.toml"), ("0003", "0003-r1.journal")):
        with pytest.raises(DiskError) as caught:
            jobs.open(number, "counter 1", CATALOGUE)
        assert str(caught.value) == (f"{jobs.path}/{name} could not be read, it is no regular file: use another name.")


def test_a_job_whose_lock_could_not_be_written_is_taken_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "write", errno.ENOSPC)
        job = jobs.open("0001", "counter 1", CATALOGUE)
        assert not job.take_again()
    assert str(job.read_only_because) == (
        f"{jobs.path}/0001.lock could not be written, the disk is full: make room and try again."
    )
    assert job.take_again()
    assert job.read_only_because is None
    assert job.take_again()
    job.append(GALLEY)
    job.close()
    assert jobs.open("0001", "counter 1", CATALOGUE).entries == (ASH, GALLEY)


def test_a_job_that_was_changed_meanwhile_is_not_taken_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "write", errno.ENOSPC)
        job = jobs.open("0001", "counter 1", CATALOGUE)
    other = jobs.open("0001", "counter 2", CATALOGUE)
    other.append(GALLEY)
    assert not job.take_again()
    assert isinstance(job.read_only_because, LockHolder)
    other.close()
    assert not job.take_again()
    assert str(job.read_only_because) == (
        f"{jobs.path}/0001-r1.toml could not be written, another counter has taken this job over: open it again."
    )
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]


def test_a_job_that_could_not_be_begun_leaves_no_beginning(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    with monkeypatch.context() as patch:
        refuse(patch, "ftruncate", errno.EIO)
        with pytest.raises(DiskError):
            jobs.create("counter 1")
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]
    assert jobs.create("counter 1").number == "0002"


def test_what_did_not_get_into_the_journal_still_waits_after_the_job_was_let_go_of(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    job = left(tmp_path).open("0001", "counter 1", CATALOGUE)
    with monkeypatch.context() as patch:
        refuse(patch, "write", errno.ENOSPC)
        with pytest.raises(DiskError):
            job.append(GALLEY)
    job.abandon()
    assert job.waiting, "whoever asks must not be told that it is kept"
