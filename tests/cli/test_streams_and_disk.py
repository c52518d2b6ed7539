"""Where an answer cannot be shown or a change not be written: what is said, the exit code, and what stands then."""

from __future__ import annotations

import errno
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.counter import RULES, Counter

FULL = Path("/dev/full")
LOST = "The answer could not be written to standard output (No space left on device)."
CLOSED = "The answer could not be written to standard output (it is closed)."
NO_SCREEN = (
    "This is not a terminal, so the counter screens cannot open here. "
    "Use the line commands: specbuilder --help lists them."
)

pytestmark = pytest.mark.skipif(not FULL.exists(), reason="needs a device that is always full")


def in_a_shell(counter: Counter, words: str, streams: str) -> tuple[int, str]:
    """Exit code and stderr of a command whose streams the shell has set up so."""
    command = f'"$0" -m specbuilder --jobs "$1" --rules "$2" {words} {streams}'
    done = subprocess.run(
        ["/bin/sh", "-c", command, sys.executable, str(counter.jobs), str(RULES)],
        check=False,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
    )
    return done.returncode, done.stderr.strip()


@pytest.mark.parametrize("words", ["check 1", "check 1 --json", "--help"])
def test_an_answer_nobody_can_get_has_its_own_code(job: Counter, words: str) -> None:
    assert in_a_shell(job, words, ">/dev/full") == (74, LOST)


def test_a_closed_stdout_is_said(job: Counter) -> None:
    assert in_a_shell(job, "check 1", ">&-") == (74, CLOSED)
    assert in_a_shell(job, "check 1", "<&- >&- 2>&-") == (74, "")


def test_a_stderr_that_takes_nothing_leaves_the_exit_code(job: Counter) -> None:
    assert in_a_shell(job, "check nope", "2>&-") == (2, "")
    assert in_a_shell(job, "check nope", "2>/dev/full") == (2, "")
    assert in_a_shell(job, "", "<&- >&-") == (2, NO_SCREEN)


def test_a_change_whose_answer_is_lost_stands_and_is_said_to(job: Counter) -> None:
    assert in_a_shell(job, "set 1 adults=3", ">/dev/full") == (
        74,
        f"{LOST} What was asked for stands in the spec all the same.",
    )
    assert job("brief", "1").out[0].startswith("1 Who travels: 3 grown-ups;")
    assert in_a_shell(job, "new adults=2", ">/dev/full") == (74, f"{LOST} Job 0002 was made all the same.")
    assert job("jobs").out[-1].startswith("0002")


def fill_the_disk(patch: pytest.MonkeyPatch, ending: str) -> None:
    """Lets no file of this ending take its place any more."""
    replace = os.replace

    def fails(source: str | Path, target: str | Path) -> None:
        if str(target).endswith(ending):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        replace(source, target)

    patch.setattr(os, "replace", fails)


def test_a_change_that_could_not_be_written_is_taken_back(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    journal = (job.jobs / "0001-r1.journal").read_bytes()
    before = job("show", "1").out
    with monkeypatch.context() as patch:
        fill_the_disk(patch, ".toml")
        said = job("set", "1", "adults=3")
    assert (said.code, said.out) == (2, ())
    assert said.err == (
        f"{job.jobs}/0001-r1.toml could not be written, the disk is full: make room and try again.",
        "Nothing was changed.",
    )
    assert (job.jobs / "0001-r1.journal").read_bytes() == journal
    assert job("show", "1").out == before
    assert job("set", "1", "adults=3").code == 0


def test_a_change_that_cannot_be_taken_back_is_said_to_stand(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object) -> None:
        raise OSError(errno.EIO, os.strerror(errno.EIO))

    with monkeypatch.context() as patch:
        fill_the_disk(patch, ".toml")
        truncate, calls = os.ftruncate, []
        patch.setattr(
            os, "ftruncate", lambda *words: calls.append(1) or (truncate if len(calls) < 2 else fails)(*words)
        )
        said = job("set", "1", "adults=3")
    assert said.code == 2
    assert said.err[-1] == (
        "What was asked for is kept in the journal of job 0001: it is written with the next change."
    )
    assert job("brief", "1").out[0].startswith("1 Who travels: 3 grown-ups;")


def test_a_new_job_that_could_not_be_written_is_no_job(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as patch:
        fill_the_disk(patch, ".toml")
        said = job("new", "adults=2")
    assert (said.code, said.out) == (2, ())
    assert said.err == (
        f"{job.jobs}/0002-r1.toml could not be written, the disk is full: make room and try again.",
        "There is no new job.",
    )
    assert sorted(path.name for path in job.jobs.iterdir()) == ["0001-r1.journal", "0001-r1.toml"]
    assert job("new", "adults=2").out[0] == "0002"


def test_a_new_job_that_cannot_be_taken_away_is_named(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object, **__: object) -> None:
        raise OSError(errno.EIO, os.strerror(errno.EIO))

    with monkeypatch.context() as patch:
        fill_the_disk(patch, ".toml")
        unlink = Path.unlink
        patch.setattr(
            Path,
            "unlink",
            lambda path, **words: (fails if path.name.endswith("journal") else unlink)(path, **words),
        )
        said = job("new", "adults=2")
    assert said.err[-1].startswith("Job 0002 is there. ")


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo terminal")
@pytest.mark.parametrize("away", ["stdin", "stdout", "stderr"])
def test_no_screen_opens_where_one_of_the_three_is_no_terminal(tmp_path: Path, away: str) -> None:
    ours, theirs = pty.openpty()
    log = tmp_path / "log"
    with log.open("w+b") as file:
        streams = {name: file if name == away else theirs for name in ("stdin", "stdout", "stderr")}
        done = subprocess.run(
            [sys.executable, "-m", "specbuilder", "--jobs", str(tmp_path / "jobs")],
            check=False,
            timeout=20,
            env={**os.environ, "TERM": "xterm"},
            **streams,  # type: ignore[call-overload]
        )
    os.close(theirs)
    said = log.read_bytes() if away == "stderr" else os.read(ours, 1000)
    os.close(ours)
    assert done.returncode == 2
    assert said.decode().strip() == NO_SCREEN
    assert not (tmp_path / "jobs").exists()
