"""The list of jobs, whatever state their files are in."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

from specbuilder.model.edits import NameCustomer, Together
from specbuilder.model.history import Undo
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.spec import Choice, Customer
from specbuilder.storage.job_list import JobLine
from tests.storage.jobs_scene import GALLEY, NOW, Days, left, saved
from tests.storage.scene import CATALOGUE


def test_the_list_tells_number_name_state_van_and_change(tmp_path: Path) -> None:
    clock = Days()
    jobs = left(tmp_path, clock=clock)
    van = Choice(option=OptionId("fenwain-short"))
    job = jobs.create("counter 1")
    job.append(GALLEY)
    saved(job, replace(job.start, state=JobState.QUOTED, choices=(van,), customer=Customer(name='Z "[/]" Zoë')))
    job.close()
    os.utime(job.files.journal, (0, 0))
    os.utime(jobs.files("0001").journal, (0, 0))
    for other in (
        "notes.txt",
        ".hidden.toml",
        "0003-r1.toml.bak",
        "0004-r0.toml",
        "x-r1.toml",
        "0001-r1.yesterday.toml",
    ):
        (jobs.path / other).write_text("format = 1", encoding="utf-8")
    assert jobs.list() == (
        JobLine(number="0001", revision=1, customer="M. Ash", state=JobState.DRAFT, changed=NOW),
        JobLine(
            number="0002",
            revision=1,
            customer='Z "[/]" Zoë',
            state=JobState.QUOTED,
            van="Fenwain Short",
            changed=NOW,
        ),
    )


def test_unreadable_jobs_stand_in_the_list_with_their_faults(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    (jobs.path / "0002-r1.toml").write_text("format = ", encoding="utf-8")
    (jobs.path / "0003-r1.toml").mkdir()
    (jobs.path / "0004-r1.toml").write_text("format = 9", encoding="utf-8")
    (jobs.path / "0005-r1.journal").write_text("rubbish\n", encoding="utf-8")
    (jobs.path / "0006-r1.toml").write_bytes(b"\xff")
    (jobs.path / "0007-r1.toml").write_text('[customer]\nname = "handmade"\n[x]\n', encoding="utf-8")
    (jobs.path / "0008-r1.toml").write_text('format = 1\n[customer]\nname = "handmade"\n', encoding="utf-8")
    lines = jobs.list()
    assert [(line.number, line.customer, line.state, [str(f) for f in line.faults]) for line in lines] == [
        ("0001", "M. Ash", JobState.DRAFT, []),
        ("0002", "", None, ["0002-r1.toml:1: this line is not written as TOML (Invalid value): mend it."]),
        (
            "0003",
            "",
            None,
            [f"0003-r1.toml: {jobs.path}/0003-r1.toml could not be read, it is a folder: name a file."],
        ),
        (
            "0004",
            "",
            None,
            ["0004-r1.toml:1: format: this is format 9 and this program reads format 1: open it with a newer program."],
        ),
        (
            "0005",
            "",
            None,
            [
                "0005-r1.journal:1: the first line cannot be read, and there is no 0005-r1.toml: put a copy of "
                "one of the two there."
            ],
        ),
        (
            "0006",
            "",
            None,
            ["0006-r1.toml:1: this is no UTF-8 text: save the file as UTF-8, or take yesterday's copy."],
        ),
        (
            "0007",
            "",
            None,
            [
                "0007-r1.toml:1: format: is missing: add it (a whole number).",
            ],
        ),
        ("0008", "handmade", JobState.DRAFT, []),
    ]


def test_a_job_without_its_file_is_listed_by_what_its_journal_says(tmp_path: Path) -> None:
    jobs = left(tmp_path)
    jobs.files("0001").spec.unlink()
    assert [(line.customer, line.unsaved) for line in jobs.list()] == [("M. Ash", True)]
    job = jobs.open("0001", "counter 1", CATALOGUE)
    job.append(Together(edits=(GALLEY, NameCustomer(name="The other Ash", contact=""))))
    assert [line.customer for line in jobs.list()] == ["The other Ash"]
    job.append(Undo(replace(job.start, customer=Customer(name="M. Ash"))))
    assert [line.customer for line in jobs.list()] == ["M. Ash"]
    job.abandon()
