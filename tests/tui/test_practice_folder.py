"""What a guided job leaves behind when the program is ended from outside: nothing, or nothing for long."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pytest

from specbuilder.tui.practice_folder import practice_folder
from tests.benchmarks.terminal import Terminal

HOUSE = Path(__file__).parents[2]
pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs signals and a terminal")


@pytest.fixture
def temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of temporary files, for this process and what it starts."""
    place = tmp_path / "temporary"
    place.mkdir()
    monkeypatch.setenv("TMPDIR", str(place))
    monkeypatch.setattr(tempfile, "tempdir", str(place))
    return place


def practising(jobs: Path) -> Terminal:
    command = [sys.executable, "-m", "specbuilder", "--jobs", str(jobs)]
    path = os.pathsep.join([str(HOUSE), *filter(None, [os.environ.get("PYTHONPATH")])])
    terminal = Terminal(command, 100, 30, {"PYTHONPATH": path})
    terminal.until("JOBS", timeout_s=60)
    terminal.settle(1.0)
    terminal.press(b"g")
    terminal.until("Practice 1", timeout_s=60)
    return terminal


def ended(terminal: Terminal) -> int:
    """The signal it ended by; what it still paints is read, as a terminal does."""
    while os.waitid(os.P_PID, terminal.pid, os.WEXITED | os.WNOWAIT | os.WNOHANG) is None:
        terminal.settle(0.05)
    result = os.waitid(os.P_PID, terminal.pid, os.WEXITED | os.WNOWAIT)
    assert result is not None
    assert result.si_code == os.CLD_KILLED
    return result.si_status


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_practice_that_is_ended_from_outside_takes_its_folder_along(
    tmp_path: Path, temporary: Path, number: signal.Signals
) -> None:
    with practising(tmp_path / "jobs") as terminal:
        assert [path.name.split("-")[:3] for path in temporary.iterdir()] == [
            ["specbuilder", "practice", str(terminal.pid)]
        ]
        os.kill(terminal.pid, number)
        assert ended(terminal) == number
        assert b"Traceback" not in terminal.seen
        if number is signal.SIGTERM:
            assert b"\x1b[?1049l" in terminal.seen, "the terminal is as it was"
    assert list(temporary.iterdir()) == []


def test_what_a_kill_left_goes_with_the_next_practice_and_a_running_one_stays(temporary: Path) -> None:
    ended_process = subprocess.Popen([sys.executable, "-c", ""])
    ended_process.wait()
    killed = temporary / f"specbuilder-practice-{ended_process.pid}-abc"
    running = temporary / f"specbuilder-practice-{os.getppid()}-abc"
    old, new = temporary / "specbuilder-practice-nkns_vri", temporary / "specbuilder-practice-nkns_vrj"
    other = temporary / "specbuilder-practices"
    for folder in (killed, running, old, new, other):
        (folder / "jobs").mkdir(parents=True)
    os.utime(old, (time.time() - 100_000,) * 2)
    made = practice_folder()
    assert sorted(temporary.iterdir()) == sorted((running, new, other, made))
    assert list(made.iterdir()) == []


def test_a_link_of_that_name_leads_nowhere(tmp_path: Path, temporary: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "job.toml").touch()
    (temporary / "specbuilder-practice-999999999-abc").symlink_to(tmp_path / "mine")
    practice_folder()
    assert (tmp_path / "mine" / "job.toml").exists()
