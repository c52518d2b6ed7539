"""What the seller feels: first paint, keys, bytes and memory of the real app, each beside its floor."""

from __future__ import annotations

import random
import sys
import tempfile
from pathlib import Path
from statistics import median

from .terminal import Frame, Terminal

HERE = Path(__file__).parent
APP = [sys.executable, "-m", "specbuilder"]
DOWN, UP, ENTER, ESCAPE, RIGHT, LEFT = b"\x1b[B", b"\x1b[A", b"\r", b"\x1b", b"\x1b[C", b"\x1b[D"
WIDE = (140, 40)


def quantile(values: list[float], share: float) -> float:
    """The value below which this share lies."""
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]


def first_paint(runs: int = 9) -> None:
    """Start of the process to the first text, program and hello-world in turns."""
    ours, hello = list[float](), list[float]()
    with tempfile.TemporaryDirectory() as jobs:
        for _ in range(runs + 1):
            with Terminal([sys.executable, str(HERE / "hello.py")], *WIDE) as terminal:
                hello.append(terminal.until("hello there"))
            with Terminal([*APP, "--jobs", jobs], *WIDE) as terminal:
                ours.append(terminal.until("JOBS"))
    del hello[0], ours[0]  # the first of each may compile
    print(
        f"first paint   {median(ours) * 1000:5.0f} ms, hello-world {median(hello) * 1000:5.0f} ms,"
        f" ratio {median(ours) / median(hello):4.2f} (bound 1.5)   n={runs},"
        f" ours {min(ours) * 1000:.0f}-{max(ours) * 1000:.0f} ms"
    )


def jobs_list(few: int = 5, many: int = 5_000, runs: int = 5) -> None:
    """Start of the process to the first rows, and to what each job is about, with few jobs and with many."""
    rows: dict[int, list[float]] = {few: [], many: []}
    told: dict[int, list[float]] = {few: [], many: []}
    example = (HERE.parents[1] / "examples" / "saturday-family.toml").read_bytes()
    with tempfile.TemporaryDirectory() as folder:
        for jobs in rows:
            (Path(folder) / str(jobs)).mkdir()
            for number in range(1, jobs + 1):
                (Path(folder) / str(jobs) / f"{number:04}-r1.toml").write_bytes(example)
        for _ in range(runs):
            for jobs in rows:
                with Terminal([*APP, "--jobs", str(Path(folder) / str(jobs))], *WIDE) as terminal:
                    rows[jobs].append(terminal.until("0005"))
                    told[jobs].append(terminal.until("The Saturday family"))
    for name, times, bound in (("jobs list", rows, "bound 1.5"), ("  what about", told, "no bound")):
        print(
            f"{name:13} {median(times[many]) * 1000:5.0f} ms with {many:,} jobs, {median(times[few]) * 1000:.0f} ms"
            f" with {few}, ratio {median(times[many]) / median(times[few]):4.2f} ({bound})   n={runs},"
            f" {min(times[many]) * 1000:.0f}-{max(times[many]) * 1000:.0f} ms"
        )


def open_job(terminal: Terminal) -> None:
    """From the jobs list into the walk of the only job there."""
    terminal.until("JOBS")
    terminal.settle()
    terminal.key(ENTER)
    terminal.settle(1.0)


def keys(jobs: Path, presses: int = 200) -> None:
    """Arrows that do not scroll, and edits with their evaluation, at 140x40."""
    with Terminal([sys.executable, str(HERE / "plain_list.py")], *WIDE) as terminal:
        terminal.settle()
        floor = [terminal.key(DOWN if i % 16 < 8 else UP) for i in range(presses)]
    with Terminal([*APP, "--jobs", str(jobs)], *WIDE) as terminal:
        open_job(terminal)
        for _ in range(4):
            terminal.key(RIGHT)
        terminal.settle()
        arrows = [terminal.key(DOWN if i % 8 < 4 else UP) for i in range(presses)]
        for key in (b"/", *(bytes([letter]) for letter in b"tow bar"), ENTER, ENTER):
            terminal.key(key)  # takes the tow bar: one edit to undo and to redo
        edits = [terminal.key(key) for _ in range(presses // 4) for key in (b"u", b"r")]
    _line("arrow key", arrows, floor)
    _line("undo, redo", edits, floor)
    for name, frames, bound in (("an arrow", arrows, "2,500 without scrolling"), ("an edit", edits, "9,000")):
        written = [f.written for f in frames if f.written]
        print(f"bytes         {median(written):5.0f} {name}, most {max(written):,} (bound {bound})   n={len(written)}")


def _line(name: str, frames: list[Frame], floor: list[Frame]) -> None:
    times = [f.last_byte_s for f in frames if f.written]
    floors = [f.last_byte_s for f in floor if f.written]
    ratio = median(times) / median(floors)
    print(
        f"{name:13} median {median(times) * 1000:5.1f} ms, p95 {quantile(times, 0.95) * 1000:5.1f} ms (bound 35),"
        f" ratio to a plain list {ratio:4.2f}   n={len(times)}, most {max(times) * 1000:.1f} ms"
    )


def memory(jobs: Path, presses: int = 2000) -> None:
    """Resident memory before and after many keys of all sorts that edit nothing for good."""
    rng = random.Random(7)
    sequences = [DOWN, UP, DOWN, UP, RIGHT, LEFT, b"u", b"r", b"l", ESCAPE, b"w", ESCAPE]
    with Terminal([*APP, "--jobs", str(jobs)], *WIDE) as terminal:
        open_job(terminal)
        for _ in range(100):
            terminal.key(rng.choice(sequences))
        before = terminal.rss_kb()
        for _ in range(presses):
            terminal.press(rng.choice(sequences))
        terminal.settle()
        after = terminal.rss_kb()
    print(f"memory        {before / 1024:5.1f} MB, after {presses} keys {after / 1024:5.1f} MB (bound 70, flat)")
