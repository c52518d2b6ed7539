"""What the calling shell learns: one case for each exit code, and what stands in the table of them."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from specbuilder.cli import main as entry
from specbuilder.cli.output import EXITS, Exit

from .counter import Counter

ROOT = Path(__file__).parents[2]
HOLDS = ("hushwain", "no-galley", "parking_limit_mm=0")


def program(counter: Counter, *words: str, **more: object) -> subprocess.Popen[bytes]:
    """The program in a process of its own."""
    line = [sys.executable, "-m", "specbuilder", "--jobs", str(counter.jobs), "--rules", str(counter.rules), *words]
    return subprocess.Popen(line, cwd=ROOT, stderr=subprocess.PIPE, **more)  # type: ignore[call-overload,no-any-return]


def test_each_code_is_told_in_the_one_table() -> None:
    assert {code.value for code in EXITS} == {0, 1, 2, 3, 70, 74, 130, 141}
    assert set(EXITS) == set(Exit)


def test_0_what_holds_at_stop(job: Counter) -> None:
    job("set", "1", *HOLDS)
    assert job("check", "1").code == Exit.FINE


def test_1_what_is_broken_at_stop_or_could_not_be_done(job: Counter) -> None:
    job("set", "1", *HOLDS, "gas=no")
    assert job("check", "1").code == Exit.BROKEN
    assert job("redo", "1").code == Exit.BROKEN


def test_2_what_cannot_be_used(job: Counter) -> None:
    assert job("check", "nowhere.toml").code == Exit.UNUSABLE
    assert job("check").code == Exit.UNUSABLE
    assert job("check", "1", "--rules", "nowhere").code == Exit.UNUSABLE


def test_3_what_cannot_be_told_yet(job: Counter) -> None:
    assert job("check", "1").code == Exit.CANNOT_TELL


def test_70_a_mistake_of_the_program(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(entry, "_run", fails)
    said = job("check", "1")
    assert (said.code, said.out) == (Exit.OWN_MISTAKE, ())
    assert not any("Traceback" in line for line in said.err)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_74_an_answer_that_could_not_be_written(job: Counter) -> None:
    with open("/dev/full", "wb") as full:
        assert program(job, "check", "1", stdout=full).wait() == Exit.ANSWER_LOST


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
def test_130_stopped_by_the_keyboard(counter: Counter) -> None:
    """A reader that reads nothing keeps the command writing until it is interrupted; what is left is thrown away."""
    family = ROOT / "examples" / "saturday-family.toml"
    house = Counter(counter.folder, counter._capture, ROOT / "rules")
    running = program(house, "check", str(family), "--json", stdout=subprocess.PIPE)
    assert running.stdout is not None
    assert running.stderr is not None
    read = running.stdout.read(1)
    time.sleep(0.3)
    running.send_signal(signal.SIGINT)
    assert running.wait(timeout=60) == Exit.STOPPED
    assert (read, running.stderr.read().splitlines()[-1]) == (b"{", b"Stopped.")


def test_141_whoever_read_the_answer_went_away(job: Counter) -> None:
    read, write = os.pipe()
    os.close(read)
    running = program(job, "show", "1", stdout=write)
    os.close(write)
    assert (running.wait(), running.stderr.read() if running.stderr else b"") == (Exit.NOBODY_READS, b"")
