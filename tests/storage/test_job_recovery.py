"""File and journal that do not fit each other: which of them a job goes on from, and what is said."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.model.history import Redo, Undo
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Choice, Customer, Spec
from specbuilder.storage.job_notices import NoticeKind
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.journal import entry_line
from specbuilder.storage.open_job import OpenJob
from tests.storage.jobs_scene import ASH, GALLEY, PLACE, Days, files, left, saved, sentences, with_name
from tests.storage.scene import CATALOGUE


def opened(jobs: JobsFolder, instead: Instead | None = None) -> OpenJob:
    return jobs.open("0001", "counter 1", CATALOGUE, instead=instead)


def edit_file(jobs: JobsFolder, old: str, new: str) -> None:
    path = jobs.files("0001").spec
    path.write_text(path.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")


def unreadable(jobs: JobsFolder) -> JobUnreadableError:
    with pytest.raises(JobUnreadableError) as caught:
        opened(jobs)
    assert not (jobs.path / "0001.lock").exists()
    return caught.value


def test_a_file_changed_outside_is_taken_as_it_stands(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    edit_file(jobs, "M. Ash", "N. Birch")
    job = opened(jobs)
    assert (job.start.customer.name, job.entries) == ("N. Birch", ())
    assert sentences(job) == [
        "0001-r1.toml was changed outside the program and is taken as it stands. Undo reaches back to it and no "
        "further."
    ]
    assert files(jobs) == ["0001-r1.journal", "0001-r1.set-aside-1.journal", "0001-r1.toml", "0001.lock"]
    job.append(GALLEY)
    job.close()
    again = opened(jobs)
    assert (again.start.customer.name, again.entries, again.notices) == ("N. Birch", (GALLEY,), ())


def test_what_the_file_never_held_is_done_on_top_of_it(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    job = opened(jobs)
    job.append(GALLEY)
    job.append(PLACE)
    job.close()
    edit_file(jobs, "M. Ash", "N. Birch")
    job = opened(jobs)
    assert (job.start.customer.name, job.entries, job.cursor) == ("N. Birch", (GALLEY,), PLACE)
    job.abandon()
    again = opened(jobs)
    assert (again.start.customer.name, again.entries, again.notices) == ("N. Birch", (GALLEY,), ())


def test_a_changed_catalogue_keeps_what_was_agreed(tmp_path: Path) -> None:
    """The same edits may bring other followers under other rules: only the file says what was on the screen."""
    jobs = left(tmp_path)
    job = opened(jobs)
    saved(job, replace(job.start, choices=(Choice(option=OptionId("side-galley")),)))
    job.append(Undo())
    job.close()
    later = replace(CATALOGUE, digest="d2")
    job = jobs.open("0001", "counter 1", later)
    assert [choice.option for choice in job.start.choices] == ["side-galley"]
    assert job.entries == (Undo(),)
    assert sentences(job) == [
        "The catalogue has changed since 0001-r1.toml was written. Undo reaches back to it and no further."
    ]


def test_a_vanished_file_is_written_again(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").spec.unlink()
    assert [(line.number, line.unsaved, line.faults) for line in jobs.list()] == [("0001", True, ())]
    job = opened(jobs)
    assert job.entries == (ASH,)
    assert sentences(job) == [
        "0001-r1.toml is gone: the job is open as it was left here last, and its file will be written again."
    ]
    saved(job, with_name(job.start, "M. Ash"))
    job.close()
    assert opened(jobs).notices == ()


def test_a_vanished_journal_leaves_what_the_file_holds(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").journal.unlink()
    job = opened(jobs)
    assert (job.start.customer.name, job.entries, job.notices) == ("M. Ash", (), ())
    job.append(GALLEY)
    job.close()
    assert opened(jobs).entries == (GALLEY,)


def test_a_spec_from_elsewhere_becomes_the_job_of_its_name(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    copy = jobs.path / "0150-r2.toml"
    copy.write_bytes(jobs.files("0001").spec.read_bytes())
    job = jobs.open("0150", "counter 1", CATALOGUE)
    assert (job.start.number, job.start.revision, job.start.customer.name) == ("0150", 2, "M. Ash")
    assert sentences(job) == ["0150-r2.toml calls itself job 0001, revision 1: it goes by its name now."]
    job.append(GALLEY)
    job.close()
    again = jobs.open("0150", "counter 1", CATALOGUE)
    assert (again.start.number, again.entries, again.notices) == ("0150", (GALLEY,), ())
    assert again.saved is not None
    assert again.saved.number == "0150"


def test_a_hand_written_spec_is_opened_and_its_oddities_are_said(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    text = 'format = 1\n[job]\nnumber = "0002"\n[[choice]]\noption = "old-stove"\n'
    (jobs.path / "0002-r1.toml").write_text(text, encoding="utf-8")
    job = jobs.open("0002", "counter 1", CATALOGUE)
    assert sentences(job) == [
        "0002-r1.toml has no checksum: it was not written by this program.",
        '0002-r1.toml: the choice "old-stove" is not in this catalogue any more. It is kept: take another or leave it '
        "out.",
    ]
    assert job.start == Spec(number="0002", choices=(Choice(option=OptionId("old-stove")),))


def test_a_broken_journal_gives_what_stands_before_the_break(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    job = opened(jobs)
    job.append(GALLEY)
    job.append(Undo())
    job.close()
    journal = jobs.files("0001").journal
    broken = journal.read_bytes().replace(b'{"undo":true}', b'{"undo":tr\x00e}') + entry_line(Redo())
    journal.write_bytes(broken)
    job = opened(jobs)
    assert (job.start.customer.name, job.entries) == ("M. Ash", (GALLEY,))
    assert sentences(job) == [
        "0001-r1.journal: line 5 cannot be read. What stands before it holds, the rest is kept aside: look through the "
        "job, and do again what is missing."
    ]
    assert (jobs.path / "0001-r1.set-aside-1.journal").read_bytes() == broken
    job.append(Redo())
    job.close()
    assert opened(jobs).entries == (GALLEY, Redo())


def test_a_broken_journal_never_does_twice_what_the_file_may_hold(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    job = opened(jobs)
    job.append(GALLEY)
    job.append(Undo())
    saved(job, with_name(job.start, "later"))
    job.close()
    journal = jobs.files("0001").journal
    journal.write_bytes(journal.read_bytes().replace(b'{"undo":true}', b"{"))
    job = opened(jobs)
    assert (job.start.customer.name, job.entries) == ("later", ())


def test_a_broken_journal_without_a_file_gives_what_can_be_read(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").spec.unlink()
    journal = jobs.files("0001").journal
    journal.write_bytes(journal.read_bytes() + b"rubbish\n")
    job = opened(jobs)
    assert job.entries == (ASH,)
    assert [notice.kind for notice in job.notices] == [NoticeKind.JOURNAL_BROKEN, NoticeKind.FILE_GONE]


def test_a_journal_whose_first_line_is_broken_leaves_the_file(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").journal.write_bytes(b"\x00" * 40)
    job = opened(jobs)
    assert (job.start.customer.name, job.entries) == ("M. Ash", ())


def test_neither_file_nor_first_line(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").spec.unlink()
    jobs.files("0001").journal.write_bytes(b"rubbish\n")
    error = unreadable(jobs)
    assert str(error) == (
        "0001-r1.journal:1: the first line cannot be read, and there is no 0001-r1.toml: put a copy of one of the two "
        "there."
    )
    assert error.others == ()


def test_a_journal_of_a_later_program_is_left_alone(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    journal = jobs.files("0001").journal
    later = b'{"journal":3,"start":"of another kind"}\n'
    first = journal.read_bytes().split(b"\n", 1)[0] + b"\n"
    journal.write_bytes(journal.read_bytes().replace(first, later))
    error = unreadable(jobs)
    assert str(error) == (
        "0001-r1.journal:1: this is format 3 and this program reads format 2: open it with a newer program."
    )
    assert error.others == ()


def test_an_unreadable_file_offers_the_journal_and_is_kept(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    edit_file(jobs, 'state = "draft"', "state = draft")
    before = files(jobs)
    error = unreadable(jobs)
    assert [fault.line for fault in error.faults] == [11]
    assert error.others == (Instead.JOURNAL,)
    assert files(jobs) == before
    job = opened(jobs, Instead.JOURNAL)
    assert (job.start, job.entries) == (Spec(number="0001"), (ASH,))
    assert sentences(job) == [
        "0001-r1.toml could not be read: the job is open as it was left here last, and that file is kept."
    ]
    saved(job, with_name(job.start, "M. Ash"))
    job.close()
    assert files(jobs) == ["0001-r1.journal", "0001-r1.set-aside-1.toml", "0001-r1.toml"]
    assert opened(jobs).notices == ()


def test_without_a_journal_an_unreadable_file_offers_yesterdays_copy(tmp_path: Path) -> None:
    clock = Days()
    jobs = left(tmp_path, name="yesterday", clock=clock)
    clock.now = clock.now.replace(day=15)
    job = opened(jobs)
    saved(job, replace(job.start, customer=Customer(name="today")))
    job.close()
    jobs.files("0001").spec.write_bytes(b"\xff")
    jobs.files("0001").journal.write_bytes(b"rubbish\n")
    error = unreadable(jobs)
    assert error.others == (Instead.YESTERDAY,)
    job = opened(jobs, Instead.YESTERDAY)
    assert (job.start.customer.name, job.entries) == ("yesterday", ())
    assert sentences(job) == [
        "The job is open from 0001-r1.yesterday.toml: what was done since is kept beside it, and not in it."
    ]
    job.append(GALLEY)
    job.abandon()
    kept = ["0001-r1.set-aside-1.journal", "0001-r1.set-aside-1.toml", "0001-r1.yesterday.toml"]
    assert files(jobs) == ["0001-r1.journal", *kept]
    again = opened(jobs)
    assert (again.start.customer.name, again.entries) == ("yesterday", (GALLEY,))
