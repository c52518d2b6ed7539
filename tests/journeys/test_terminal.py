"""The program in a real terminal: it starts, opens a job, is left, and paints only what the terminal takes."""

from __future__ import annotations

import re
import shutil
import sys
from pathlib import Path

import pytest

from tests.benchmarks.terminal import Terminal

from .stage import on_stage

COLOUR = re.compile(rb"\x1b\[[\d;]*(?:38|48);[25]|\x1b\[(?:\d+;)*(?:3[0-7]|4[0-7]|9[0-7]|10[0-7])m")


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo-terminal")
@pytest.mark.parametrize(
    ("environment", "colours"), [({}, True), ({"NO_COLOR": "1"}, False), ({"NO_COLOR": ""}, True)], ids=str
)
def test_it_opens_a_job_and_is_left_by_its_own_key(demo: Path, environment: dict[str, str], colours: bool) -> None:
    command = [sys.executable, "-m", "specbuilder", "--jobs", str(demo), "--ascii"]
    with Terminal(command, 80, 24, environment) as terminal:
        terminal.until("JOBS")
        terminal.until("The Saturday family")
        terminal.key(b"\r")
        terminal.until("0147 The Saturday family")
        terminal.key(b"\x1b")
        terminal.settle()
        terminal.key(b"q")
        terminal.settle()
        seen = bytes(terminal.seen)
    assert bool(COLOUR.search(seen)) is colours
    assert b"Traceback" not in seen


def click(terminal: Terminal, screen: str, word: str) -> None:
    """One plain click, as a terminal sends it, on a word that stands on this screen."""
    x, y = next((row.index(word) + 1, number) for number, row in enumerate(screen.splitlines(), 1) if word in row)
    terminal.key(b"\x1b[<0;%d;%dM\x1b[<0;%d;%dm" % (x, y, x, y))


@pytest.mark.long
@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo-terminal")
async def test_clicks_of_a_real_terminal_open_a_job_and_lead_to_a_step_and_to_all_actions(
    demo: Path, tmp_path: Path
) -> None:
    shutil.copytree(demo, tmp_path / "same")
    command = [sys.executable, "-m", "specbuilder", "--jobs", str(demo), "--ascii"]
    async with on_stage(tmp_path / "same", plain=True) as stage:
        with Terminal(command, 80, 24) as terminal:
            terminal.until("The Saturday family")
            terminal.settle()
            click(terminal, stage.screen(), "The Saturday family")
            terminal.until("0147 The Saturday family")
            terminal.settle()
            click(terminal, await stage.press("enter"), "kitchen")
            terminal.until("KITCHEN")
            click(terminal, await stage.click("kitchen"), "F9")
            terminal.until("ACTIONS")
            assert b"Traceback" not in bytes(terminal.seen)
