"""What the calling shell learns: one case for each exit code, and what stands in the table of them."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from specbuilder.cli import way_in as entry
from specbuilder.cli.output import EXITS, Exit
from specbuilder.storage import open_job

from .counter import Counter

ROOT = Path(__file__).parents[2]
HOLDS = ("hushwain", "no-galley", "parking_limit_mm=0")


@pytest.fixture(autouse=True)
def heard() -> Iterator[None]:
    """Ctrl-C is heard, also where a shell started the tests behind its back and let them ignore it."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


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


STOPS_AT = """
import importlib.abc, os, signal, sys

AT = sys.argv.pop(1)

class CtrlC(importlib.abc.MetaPathFinder):
    def find_spec(self, name, path, target=None):
        if name == AT:
            os.kill(os.getpid(), signal.SIGINT)
            os.getpid()  # the signal is heard here

sys.meta_path.insert(0, CtrlC())
from specbuilder.cli.main import main
sys.exit(main())
"""
"""The program with a Ctrl-C at the moment it asks for a module."""


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
@pytest.mark.parametrize(
    ("module", "told"),
    [
        ("specbuilder.cli.way_in", ""),
        ("specbuilder.cli.output", ""),
        ("specbuilder.cli.line.parser", "Stopped.\n"),
        ("specbuilder.cli.commands", "Stopped.\n"),
        ("specbuilder.model.kinds", "Stopped.\n"),
        ("specbuilder.session.evaluate", "Stopped.\n"),
        ("specbuilder.cli.open_things", "Stopped.\n"),
    ],
)
def test_130_stopped_while_the_program_is_loaded(job: Counter, module: str, told: str) -> None:
    line = [sys.executable, "-c", STOPS_AT, module, "--jobs", str(job.jobs), "--rules", str(job.rules), "open", "1"]
    done = subprocess.run(line, cwd=ROOT, capture_output=True, text=True, check=False, timeout=60)
    assert (done.returncode, done.stdout, done.stderr) == (Exit.STOPPED, "", told)


def test_130_stopped_while_a_class_is_made(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    class Stops:
        def __set_name__(self, *_: object) -> None:
            raise KeyboardInterrupt

    def makes(*_: object) -> None:
        type("Made", (), {"at": Stops()})

    monkeypatch.setattr(entry, "_run", makes)
    said = job("check", "1")
    assert (said.code, said.out, said.err) == (Exit.STOPPED, (), ("Stopped.",))


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
def test_a_program_told_to_run_on_through_ctrl_c_runs_on(job: Counter) -> None:
    line = [sys.executable, "-c", STOPS_AT, "specbuilder.cli.commands", "--jobs", str(job.jobs), "open", "--help"]
    ignored = lambda: signal.signal(signal.SIGINT, signal.SIG_IGN)  # noqa: E731
    done = subprocess.run(line, cwd=ROOT, capture_output=True, check=False, timeout=60, preexec_fn=ignored)
    assert (done.returncode, done.stderr) == (Exit.FINE, b"")


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
def test_what_is_being_written_when_ctrl_c_comes_is_written_and_said(
    job: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    write = open_job.write_whole

    def stopped(*words: object, **more: object) -> None:
        os.kill(os.getpid(), signal.SIGINT)
        write(*words, **more)  # type: ignore[arg-type]

    with monkeypatch.context() as pressed:
        pressed.setattr(open_job, "write_whole", stopped)
        said = job("set", "1", "adults=3")
    assert (said.code, said.err) == (Exit.FINE, ())
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler
    assert job("brief", "1").out[0].startswith("1 Who travels: 3 grown-ups;")
    assert not list(job.jobs.glob("*.lock"))


@pytest.mark.skipif(sys.platform == "win32", reason="needs signals")
def test_a_second_ctrl_c_stops_a_disk_that_hangs(job: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    def hangs(*_: object, **__: object) -> None:
        for _ in range(2):
            os.kill(os.getpid(), signal.SIGINT)
        time.sleep(60)

    with monkeypatch.context() as pressed:
        pressed.setattr(open_job, "write_whole", hangs)
        said = job("set", "1", "adults=3")
    kept = "What was asked for is kept in the journal of job 0001: it is written with the next change."
    assert (said.code, said.err) == (Exit.STOPPED, ("Stopped.", kept))
    assert job("brief", "1").out[0].startswith("1 Who travels: 3 grown-ups;")
    assert job("set", "1", "adults=2").code == Exit.FINE


def test_141_whoever_read_the_answer_went_away(job: Counter) -> None:
    read, write = os.pipe()
    os.close(read)
    running = program(job, "show", "1", stdout=write)
    os.close(write)
    assert (running.wait(), running.stderr.read() if running.stderr else b"") == (Exit.NOBODY_READS, b"")
