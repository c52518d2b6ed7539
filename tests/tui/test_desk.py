"""A disk that takes nothing loses nothing: what was done waits, and the job stays open until it is written."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit
from specbuilder.model.ids import BriefKey
from specbuilder.office.house import House
from specbuilder.storage.disk import DiskError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.open_job import OpenJob
from specbuilder.storage.rules_files import rules_folder
from specbuilder.tui.deeds import Deeds
from specbuilder.tui.desk import Desk
from tests.office.scene import Scene


def clock() -> datetime:
    return datetime(2031, 4, 14, 10, 42)


def answer(key: str, value: int) -> Edit:
    return AnswerLine(key=BriefKey(key), value=value)


def full(*_: object, **__: object) -> None:
    from specbuilder.storage.disk import disk

    with disk(Path("jobs"), writing=True):
        raise OSError(28, "No space left on device")


def test_a_job_that_could_not_be_made_is_made_with_all_that_was_done_meanwhile(
    catalogue: Catalogue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(House(JobsFolder(tmp_path), catalogue, rules_folder()), clock, "counter 1")
    desk.begin()
    with monkeypatch.context() as broken:
        broken.setattr(JobsFolder, "create", full)
        desk.edit(answer("adults", 2))
        desk.edit(answer("children", 1))
        assert desk.trouble is not None
        assert not desk.leave(None)
    desk.edit(answer("sleepers", 3))
    assert desk.trouble is None
    assert desk.leave(None)
    again = Desk(House(JobsFolder(tmp_path), catalogue, rules_folder()), clock, "counter 1")
    again.open("0001")
    assert {k: again.session.spec.answers.get(BriefKey(k)) for k in ("adults", "children", "sleepers")} == {
        "adults": 2,
        "children": 1,
        "sleepers": 3,
    }


def test_a_job_stays_open_while_its_file_cannot_be_written(
    catalogue: Catalogue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(House(JobsFolder(tmp_path), catalogue, rules_folder()), clock, "counter 1")
    desk.begin()
    desk.edit(answer("adults", 2))
    with monkeypatch.context() as broken:
        broken.setattr(OpenJob, "save", full)
        assert not desk.leave(None)
        assert desk.job is not None
    assert desk.leave(None)
    with pytest.raises(DiskError):
        JobsFolder(tmp_path).open("0099", "counter 1", catalogue)


def test_a_job_that_a_full_disk_kept_from_us_is_ours_once_there_is_room(
    catalogue: Catalogue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(House(JobsFolder(tmp_path), catalogue, rules_folder()), clock, "counter 1")
    desk.begin()
    desk.edit(answer("adults", 2))
    assert desk.leave(None)
    with monkeypatch.context() as broken:
        broken.setattr("specbuilder.storage.lock.os.open", full)
        desk.open("0001")
        assert desk.read_only
        assert not desk.may_write()
    assert desk.may_write()
    done, _ = desk.edit(answer("adults", 3))
    assert done is not None
    assert desk.leave(None)


def test_a_job_that_another_counter_took_over_can_be_left_and_what_stood_here_is_kept_aside(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    desk = Desk(House(JobsFolder(tmp_path), catalogue, rules_folder()), clock, "counter 1")
    desk.begin()
    desk.edit(answer("adults", 2))
    lock = tmp_path / "0001.lock"
    lock.unlink()
    lock.write_text('{"counter":"counter 2","host":"elsewhere","pid":1,"began":"","since":"2031-04-14T10:00:00"}')
    desk.edit(answer("adults", 3))
    assert desk.leave(None)
    assert desk.job is None
    assert desk.kept_aside is not None
    assert "adults = 3" in desk.kept_aside.read_text("utf-8")
    assert lock.exists(), "the job is that of the other counter"


def test_a_next_revision_that_could_not_be_begun_leaves_the_job_to_be_taken_again(
    catalogue: Catalogue, tmp_path: Path
) -> None:
    scene = Scene(tmp_path / "jobs", catalogue)
    scene.order()
    desk = Desk(scene.house, scene.clock, "counter 1")
    desk.open(scene.number)
    assert desk.job is not None

    def vanish(*_: object) -> OpenJob:
        scene.folder.rename(tmp_path / "elsewhere")
        return full()  # type: ignore[func-returns-value, return-value]

    with pytest.MonkeyPatch.context() as broken:
        broken.setattr(JobsFolder, "begin_revision", vanish)
        with pytest.raises(DiskError):
            Deeds(desk).begin_next()
    assert desk.read_only
    assert not desk.may_write()
    (tmp_path / "elsewhere").rename(scene.folder)
    assert desk.may_write()
    assert desk.leave(None)
