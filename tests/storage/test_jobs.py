"""Jobs on disk, at one counter and at two."""

from __future__ import annotations

import os
from datetime import timedelta
from pathlib import Path

import pytest

from specbuilder.model.history import Redo, Undo
from specbuilder.model.spec import Spec
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.job_notices import NoticeKind
from specbuilder.storage.lock import LockHolder, Process, this_process
from specbuilder.storage.spec_files import read_spec_file
from tests.storage.jobs_scene import ASH, GALLEY, NOW, PLACE, Days, files, folder, left, saved, sentences, with_name
from tests.storage.scene import CATALOGUE


def test_a_folder_that_is_not_there_has_no_jobs_and_is_not_made(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    assert jobs.list() == ()
    assert jobs.next_number() == "0001"
    assert not jobs.path.exists()


def test_a_new_job_has_number_and_journal_at_once_and_a_file_when_saved(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    job = jobs.create("counter 1")
    job.append(ASH)
    assert job.start == Spec(number="0001")
    assert files(jobs) == ["0001-r1.journal", "0001.lock"]
    assert jobs.next_number() == "0002"
    saved(job, with_name(job.start, "M. Ash"))
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml", "0001.lock"]
    job.close()
    assert files(jobs) == ["0001-r1.journal", "0001-r1.toml"]


def test_a_job_left_in_order_opens_with_everything_undo_can_reach(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    assert job.start == Spec(number="0001")
    assert job.entries == (ASH,)
    assert job.saved == with_name(job.start, "M. Ash")
    assert job.saved_entries == 1
    assert job.read_only_because is None
    assert job.notices == ()
    for entry in (GALLEY, Undo(), Redo(), PLACE):
        job.append(entry)
    job.close()
    again = jobs.open("0001", "counter 1", CATALOGUE)
    assert again.entries == (ASH, GALLEY, Undo(), Redo())
    assert again.saved_entries == 1
    assert again.cursor == PLACE
    assert again.notices == ()


def test_leaving_a_job_unchanged_leaves_its_file_unchanged(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    before = (jobs.files("0001").spec.read_bytes(), jobs.files("0001").spec.stat().st_mtime_ns)
    job = jobs.open("0001", "counter 1", CATALOGUE)
    saved(job, with_name(job.start, "M. Ash"))
    job.close()
    assert (jobs.files("0001").spec.read_bytes(), jobs.files("0001").spec.stat().st_mtime_ns) == before


def test_the_last_copy_of_an_earlier_day_is_kept(tmp_path: Path) -> None:
    clock = Days()
    jobs = left(tmp_path, name="first day", clock=clock)
    yesterday = jobs.files("0001").yesterday
    job = jobs.open("0001", "counter 1", CATALOGUE)
    clock.now += timedelta(hours=2)
    saved(job, with_name(job.start, "first day, later"))
    assert not yesterday.exists()
    clock.now += timedelta(days=3)
    saved(job, with_name(job.start, "fourth day"))
    saved(job, with_name(job.start, "fourth day, later"))
    assert read_spec_file(yesterday, CATALOGUE).spec.customer.name == "first day, later"
    clock.now += timedelta(days=1)
    saved(job, with_name(job.start, "fifth day"))
    assert read_spec_file(yesterday, CATALOGUE).spec.customer.name == "fourth day, later"
    assert yesterday.stat().st_mtime == (NOW + timedelta(days=3, hours=2)).timestamp()


def test_a_number_that_is_not_there(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    with pytest.raises(DiskError) as caught:
        jobs.open("0147", "counter 1", CATALOGUE)
    assert str(caught.value) == (
        f"{jobs.path}/0147-r1.toml could not be read, it is not there: check the path, and that its drive is connected."
    )
    with pytest.raises(DiskError) as caught:
        jobs.open("../x", "counter 1", CATALOGUE)
    assert str(caught.value) == (
        f"{jobs.path}/../x-r1.toml could not be read, it is not there: check the path, and that its drive is connected."
    )


def test_an_older_revision_stays_readable(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    second = jobs.path / "0001-r2.toml"
    text = jobs.files("0001").spec.read_text(encoding="utf-8").replace("revision = 1", "revision = 2")
    second.write_text(text, encoding="utf-8")
    assert jobs.revisions("0001") == (1, 2)
    assert jobs.open("0001", "counter 1", CATALOGUE).start.revision == 2
    assert jobs.open("0001", "counter 1", CATALOGUE, revision=1).start.revision == 1


def test_the_second_counter_may_look_and_is_told_who_has_it(tmp_path: Path) -> None:
    clock = Days()
    jobs = left(tmp_path, clock=clock)
    first = jobs.open("0001", "counter 1", CATALOGUE)
    first.append(GALLEY)
    clock.now += timedelta(minutes=40)
    second = jobs.open("0001", "counter 2", CATALOGUE)
    assert second.entries == (ASH, GALLEY)
    assert second.read_only_because == LockHolder(counter="counter 1", process=this_process(), since=NOW)
    assert sentences(second) == ["Read only: counter 1 has this job since 10:02."]
    assert [line.holder for line in jobs.list()] == [second.read_only_because]
    with pytest.raises(DiskError) as caught:
        second.append(GALLEY)
    assert str(caught.value) == (
        f"{jobs.path}/0001-r1.toml could not be written, another counter has taken this job over: open it again."
    )
    second.close()
    first.append(Undo())
    first.close()
    assert jobs.open("0001", "counter 2", CATALOGUE).entries == (ASH, GALLEY, Undo())


def test_a_reader_never_changes_what_the_writer_is_writing(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    first = jobs.open("0001", "counter 1", CATALOGUE)
    journal = jobs.files("0001").journal
    journal.write_bytes(journal.read_bytes() + b'{"edit":{"is":"Ta')
    before = journal.read_bytes()
    second = jobs.open("0001", "counter 2", CATALOGUE)
    assert [notice.kind for notice in second.notices] == [NoticeKind.READ_ONLY]
    assert journal.read_bytes() == before
    first.abandon()


def test_two_counters_never_get_one_number(tmp_path: Path) -> None:
    jobs = folder(tmp_path)
    numbers = [jobs.create(f"counter {n}").number for n in range(1, 5)]
    assert numbers == ["0001", "0002", "0003", "0004"]
    (jobs.path / "0009.lock").write_text("{}", encoding="utf-8")
    assert jobs.next_number() == "0005"


def test_a_number_another_counter_is_about_to_use_is_passed_over(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    elsewhere = Process(host="other-machine", pid=1, began="")
    other = folder(tmp_path, process=elsewhere).create("counter 2")
    other.files.journal.unlink()
    assert jobs.create("counter 1").number == "0003"


def test_what_another_machine_took_over_is_not_written_to_any_more(tmp_path: Path) -> None:
    clock = Days()
    asleep = left(tmp_path, clock=clock).open("0001", "counter 1", CATALOGUE)
    elsewhere = folder(tmp_path, clock, Process(host="other-machine", pid=1, began=""))
    assert isinstance(elsewhere.open("0001", "counter 2", CATALOGUE).read_only_because, LockHolder)
    os.utime(asleep.files.journal, (NOW.timestamp(), NOW.timestamp()))
    clock.now += timedelta(days=2)
    awake = elsewhere.open("0001", "counter 2", CATALOGUE)
    assert sentences(awake) == [
        "counter 1 left this job without closing it, open since 2031-04-14 10:02: it is yours now."
    ]
    before = asleep.files.journal.read_bytes()
    for write in (lambda: asleep.append(GALLEY), lambda: saved(asleep, asleep.start)):
        with pytest.raises(DiskError) as caught:
            write()
        assert caught.value.reason is DiskReason.TAKEN
    assert asleep.files.journal.read_bytes() == before
    asleep.close()
    awake.append(GALLEY)
    awake.close()
