"""A folder that goes away or fails after something was written in it: nobody is told more than can be known."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.storage.atomic import write_whole
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.papers import write_papers
from specbuilder.storage.same_folder import SameFolder
from tests.storage.jobs_scene import ASH, GALLEY, files, folder, left, saved, with_name
from tests.storage.scene import CATALOGUE
from tests.trust.steps import Fault, Steps, faulty

PAPERS = {"0147-r1-quote.txt": b"quote", "0147-r1-quote.pdf": b"%PDF"}
OLDER = dict.fromkeys(PAPERS, b"older")


def failing_once(patch: pytest.MonkeyPatch, call: str, which: Callable[[str], bool]) -> None:
    """The call fails for the first path this is true of."""
    real, failed = getattr(os, call), []

    def fails(path: object, *rest: object, **more: object) -> object:
        if not failed and which(str(path)):
            failed.append(path)
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        return real(path, *rest, **more)

    patch.setattr(os, call, fails)


def test_a_file_that_has_its_place_is_not_said_to_be_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "spec.toml"
    path.write_text("older")
    with monkeypatch.context() as patch:
        failing_once(patch, "open", lambda opened: opened == str(tmp_path))
        with pytest.raises(DiskError) as caught:
            write_whole(path, "new")
    assert path.read_text() == "new"
    assert caught.value.unsure == path
    assert str(caught.value) == (
        f"{path} could not be written, the disk reports a fault: check the drive and try again. "
        f"{path} may be there all the same: look at it before this is done again."
    )


def test_a_file_that_never_got_its_place_is_sure_to_be_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "spec.toml"
    path.write_text("older")
    with monkeypatch.context() as patch:
        failing_once(patch, "replace", lambda _: True)
        with pytest.raises(DiskError) as caught:
            write_whole(path, "new")
    assert (path.read_text(), caught.value.unsure) == ("older", None)


def test_a_new_job_in_a_folder_that_went_away_is_not_said_to_be_gone(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    job = jobs.create("counter 1")
    job.append(ASH)
    aside = jobs.path.rename(tmp_path / "elsewhere")
    with pytest.raises(DiskError):
        saved(job, with_name(job.start, "M. Ash"))
    assert not job.in_sight
    assert not job.discard()
    aside.rename(jobs.path)
    for lock in jobs.path.glob("*.lock"):
        lock.unlink()
    assert jobs.open("0001", "counter 2", CATALOGUE).entries == (ASH,)


def test_a_job_of_another_folder_in_its_place_is_left_alone(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    job = jobs.create("counter 1")
    jobs.path.rename(tmp_path / "elsewhere")
    other = left(tmp_path, name="M. Rowan")
    assert not job.discard()
    assert files(other) == ["0001-r1.journal", "0001-r1.toml"]


def test_a_new_job_is_taken_away_where_its_folder_stands(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    job = jobs.create("counter 1")
    assert job.in_sight
    assert job.discard()
    assert files(jobs) == []


def test_what_is_taken_back_stays_so_when_the_power_goes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    jobs = left(tmp_path)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    job.append(GALLEY)
    with monkeypatch.context() as patch:
        synced: list[int] = []
        patch.setattr(os, "fsync", synced.append)
        assert job.take_back()
        assert len(synced) == 1
        patch.undo()
        job.append(GALLEY)

        def fails(_: int) -> None:
            raise OSError(errno.EIO, os.strerror(errno.EIO))

        patch.setattr(os, "fsync", fails)
        assert not job.take_back()
        assert job.waiting


@pytest.mark.parametrize("name", ["0001-r2.journal", "0001-r2.toml"])
def test_a_draft_of_which_a_file_cannot_be_moved_stays_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    jobs = left(tmp_path)
    first = jobs.open("0001", "counter 1", CATALOGUE)
    first.abandon()
    second = jobs.begin_revision(replace(first.start, revision=2), "counter 1")
    second.abandon()
    (jobs.path / "0001-r2.toml").write_text((jobs.path / "0001-r1.toml").read_text())
    before = files(jobs)
    with monkeypatch.context() as patch:
        failing_once(patch, "replace", lambda path: path.endswith(name))
        with pytest.raises(DiskError) as caught:
            jobs.give_up(second.files, "counter 1")
    assert (caught.value.reason, caught.value.unsure) == (DiskReason.FAILED, None)
    assert files(jobs) == before
    jobs.give_up(second.files, "counter 1")
    assert jobs.revisions("0001") == (1,)


@pytest.mark.parametrize("older", [{}, OLDER], ids=["none before", "older ones"])
def test_whenever_the_folder_of_papers_goes_each_is_whole_and_a_doubt_is_said(
    tmp_path: Path, older: dict[str, bytes]
) -> None:
    hit, at, doubts = True, 0, 0
    while hit:
        place = tmp_path / f"papers-{at}"
        place.mkdir()
        for name, content in older.items():
            (place / name).write_bytes(content)
        told: DiskError | None = None
        with faulty(Steps(Fault.GONE, at, place)) as steps:
            try:
                write_papers(place, PAPERS)
            except DiskError as error:
                told = error
        hit = steps.hit
        stand = {path.name: path.read_bytes() for path in place.glob("[!.]*")}
        if told is None:
            assert stand == PAPERS
        elif told.unsure is None:
            assert stand == older
        else:
            doubts += 1
            assert told.unsure.parent == place
            assert all(content in (PAPERS[name], older.get(name)) for name, content in stand.items())
        at += 1
    assert at > 6
    assert doubts


def test_a_folder_made_anew_is_another_one(tmp_path: Path) -> None:
    place = tmp_path / "jobs"
    place.mkdir()
    (place / "one").touch()
    same = SameFolder(place)
    assert same.take_away("one")
    assert same.take_away("never there")
    place.rename(tmp_path / "elsewhere")
    assert not same.stands
    assert not same.take_away("one")
    place.mkdir()
    (place / "one").touch()
    assert not same.take_away("one")
    assert (place / "one").exists()
