"""The program in a real terminal: it starts, opens a job, is left, and paints only what the terminal takes."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

from tests.benchmarks.terminal import Terminal

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
