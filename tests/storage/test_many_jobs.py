"""Thousands of jobs: a line is read once while its files stay as they are, and nobody waits for all of them."""

from __future__ import annotations

import os
import shutil
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.storage import known_lines
from specbuilder.storage.job_list import JobLine
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.rules_files import read_rules, rules_folder

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Three jobs that were last changed yesterday."""
    for number, name in enumerate(("saturday-family", "hush-family", "off-grid-pair"), 1):
        path = tmp_path / f"{number:04}-r1.toml"
        shutil.copy(EXAMPLES / f"{name}.toml", path)
        aged(path)
    return tmp_path


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The numbers of the jobs whose files were read, in order."""
    seen: list[str] = []
    whole: Callable[..., JobLine] = known_lines.job_line

    def watched(files: object, *rest: object) -> JobLine:
        seen.append(files.number)  # type: ignore[attr-defined]
        return whole(files, *rest)

    monkeypatch.setattr(known_lines, "job_line", watched)
    return seen


def aged(path: Path) -> None:
    os.utime(path, (time.time() - 86_400, time.time() - 86_400))


def test_a_line_is_read_once(folder: Path, read: list[str]) -> None:
    jobs = JobsFolder(folder)
    first = jobs.list()
    assert jobs.list() == first
    assert read == ["0001", "0002", "0003"]


def test_what_was_changed_is_read_again_and_the_rest_is_not(folder: Path, read: list[str]) -> None:
    jobs = JobsFolder(folder)
    jobs.list()
    shutil.copy(EXAMPLES / "winter-walkers.toml", folder / "0002-r1.toml")
    (folder / "0003-r1.journal").write_text("", "utf-8")
    assert jobs.list()[1].customer == "Two retired walkers"
    assert read == ["0001", "0002", "0003", "0002", "0003"]


def test_a_file_changed_just_now_is_not_trusted_to_look_changed_next_time(folder: Path, read: list[str]) -> None:
    jobs = JobsFolder(folder)
    (folder / "0001-r1.toml").touch()
    jobs.list()
    jobs.list()
    assert read.count("0001") == 2


def test_who_has_a_job_is_looked_up_each_time(folder: Path, read: list[str]) -> None:
    jobs = JobsFolder(folder)
    jobs.list()
    job = JobsFolder(folder).open("0001", "counter 2", read_rules(rules_folder()))
    assert [line.holder is not None for line in jobs.list()] == [True, False, False]
    job.abandon()
    assert [line.holder for line in jobs.list()] == [None, None, None]


def test_when_the_time_is_up_the_rest_is_told_by_number_and_read_later(folder: Path, read: list[str]) -> None:
    jobs = JobsFolder(folder)
    lines = jobs.list(seconds=-1)
    assert [(line.number, line.unread, line.customer) for line in lines] == [
        ("0001", True, ""),
        ("0002", True, ""),
        ("0003", True, ""),
    ]
    assert not read
    jobs.list()
    assert not any(line.unread for line in jobs.list(seconds=-1))
