"""Long days: many keys and many jobs in one process. Memory and latency stay where they were after the first hour.

``python -m tests.benchmarks.long_days [KEYS [JOBS]]``; 100,000 keys and 500 jobs without them, about half an hour.
"""

from __future__ import annotations

import random
import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

from .counter import APP, DOWN, ENTER, ESCAPE, LEFT, RIGHT, UP, WIDE, quantile
from .terminal import Terminal

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
BACK = b"\x7f"
"""Escape would be read together with the key behind it."""
KEYS = (
    DOWN,
    DOWN,
    UP,
    RIGHT,
    LEFT,
    ENTER,
    b"-",
    b"u",
    b"u",
    b"r",
    b"l",
    b"w",
    b"o",
    b"i",
    b"d",
    b"n",
    b"p",
    BACK,
    BACK,
)
EARLY, WARM = 0.1, 0.4
"""Parts of the jobs: what is remembered of briefs fills up for about a third of them, and is bounded."""
SAMPLE = 60
ON_THE_LIST = b"new job", b"q to leave"
"""Written when the list comes, or when a key there does nothing: what stands already is not written again."""
LOST_S = 60


def main(keys: int = 100_000, jobs: int = 500) -> None:
    """Open one job after another and work on each."""
    dice = random.Random(11)
    with tempfile.TemporaryDirectory() as folder:
        for number in range(1, jobs + 1):
            shutil.copy(EXAMPLES[number % len(EXAMPLES)], Path(folder) / f"{number:04}-r1.toml")
        with Terminal([*APP, "--jobs", folder], *WIDE) as terminal:
            terminal.until("new job")
            terminal.settle()
            early_kb = warm_kb = 0
            early, late = list[float](), list[float]()
            began = time.perf_counter()
            for number in range(1, jobs + 1):
                _work(terminal, number, dice, keys // jobs)
                if number == max(1, int(EARLY * jobs)):
                    early_kb, early = terminal.rss_kb(), _sample(terminal)
                if number == max(1, int(WARM * jobs)):
                    warm_kb = terminal.rss_kb()
            took = time.perf_counter() - began
            late, end = _sample(terminal), terminal.rss_kb()
    print(
        f"long days     {keys:,} keys, {jobs} jobs in {took / 60:.0f} min: memory {early_kb / 1024:.1f} MB after "
        f"{int(EARLY * jobs)} jobs, {warm_kb / 1024:.1f} after {int(WARM * jobs)}, {end / 1024:.1f} at the end, "
        f"{100 * (end / warm_kb - 1):+.1f} % since then (bound 5)"
    )
    print(
        f"              key to last byte median {median(early) * 1000:.1f} ms then, {median(late) * 1000:.1f} ms at "
        f"the end, p95 {quantile(early, 0.95) * 1000:.1f} and {quantile(late, 0.95) * 1000:.1f} ms   n={len(late)}"
    )


def _work(terminal: Terminal, number: int, dice: random.Random, presses: int) -> None:
    """Find the job, open it, press keys of all sorts, and go back to the list."""
    for key in _found(number):
        terminal.press(key)
    for _ in range(max(presses - 20, 0)):
        terminal.press(dice.choice(KEYS))
    _leave(terminal, number)


def _leave(terminal: Terminal, number: int) -> None:
    deadline = time.perf_counter() + LOST_S
    terminal.seen.clear()
    while not any(word in terminal.seen for word in ON_THE_LIST):
        if time.perf_counter() > deadline:
            raise TimeoutError(f"job {number} is not left; last: {bytes(terminal.seen[-400:])!r}")
        terminal.key(ESCAPE)
    terminal.settle(0.2)


def _found(number: int) -> Iterator[bytes]:
    yield b"/"
    yield from (bytes([digit]) for digit in f"{number:04}".encode())
    yield from (ENTER, ENTER)


def _sample(terminal: Terminal) -> list[float]:
    """Arrow keys in a job, each to its last byte."""
    for key in (*_found(1), RIGHT, RIGHT):
        terminal.press(key)
    terminal.settle()
    frames = [terminal.key(DOWN if i % 8 < 4 else UP) for i in range(SAMPLE)]
    _leave(terminal, 1)
    return [frame.last_byte_s for frame in frames if frame.written]


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:3]))
