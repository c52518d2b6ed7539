"""The program itself in a terminal of its own, killed while a job is typed into it."""

from __future__ import annotations

import os
import signal
import sys
from pathlib import Path

from tests.benchmarks.terminal import Terminal
from tests.journeys.bench import press

from .lines import snapshot
from .scene import HOUSE
from .strokes import at_hand, counter
from .tally import Run

KEYS = (
    *("n", "2", "2", "9", " ", "6", "enter", "enter", "down", "down", "2", "2"),
    *("u", "r", "right", "h", "enter", "u", "r", "right", "h", "enter", "right", "h", "enter", "u", "u", "r", "r"),
)
_BYTES = {"enter": b"\r", "down": b"\x1b[B", "right": b"\x1b[C"}


def tries(run: Run) -> None:
    """A new job, typed; killed at any key, some keys after the last that was waited for."""
    after = _in_turn(run.fresh("shadow"))
    number = 0
    while run.more and number < (1 if run.small else 10**6):
        number += 1
        with run.counted(f"terminal, kill {number}"):
            _typed(run, run.fresh("terminal"), after)


def _typed(run: Run, jobs: Path, after: list[str]) -> None:
    waited = run.dice.randrange(2, len(KEYS))
    sent = min(len(KEYS), waited + run.dice.randrange(4))
    command = [sys.executable, "-m", "specbuilder", "--jobs", str(jobs), "--counter", "counter 1"]
    with Terminal(command, 100, 30, {"PYTHONPATH": str(HOUSE), "SPECBUILDER_TRACE": "1"}) as terminal:
        terminal.until("JOBS", timeout_s=60)
        terminal.settle(1.0)
        for key in KEYS[:waited]:
            if not terminal.key(_BYTES.get(key, key.encode())).written:
                terminal.settle(5.0)  # a busy machine
        terminal.settle(0.3)
        for key in KEYS[waited:sent]:
            os.write(terminal.fd, _BYTES.get(key, key.encode()))
        if run.dice.random() < 0.5:
            terminal.settle(run.dice.random() * 0.05)
        os.kill(terminal.pid, signal.SIGKILL)
        if b"Traceback" in terminal.seen:
            run.tally.mistake(f"a traceback in the terminal after {KEYS[:sent]}")
    run.tally.note("keys painted in a terminal before a kill", waited)
    left = snapshot(jobs).get("0001-r1", "no job")
    if left not in after[waited : sent + 1]:
        run.tally.lose(f"{waited} keys were painted in the terminal, {sent} sent, and the job is another")


def _in_turn(jobs: Path) -> list[str]:
    """What stands after each key when nothing goes wrong."""
    made = counter(jobs)
    found = ["no job"]
    for key in KEYS:
        press(made, key)
        now = at_hand(made)
        found.append(now[1] if now is not None else "no job")
    return found
