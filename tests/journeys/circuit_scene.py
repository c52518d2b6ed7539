"""A job opened from an example, and what its circuits show."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.tui.counter import Counter
from specbuilder.tui.items import OnCircuit
from specbuilder.tui.keys import Where

from .bench import counter_on, press
from .conftest import EXAMPLES


def a_job(folder: Path, example: str) -> Path:
    folder.mkdir(exist_ok=True)
    shutil.copy(EXAMPLES / f"{example}.toml", folder / "0147-r1.toml")
    return folder


def opened(folder: Path, example: str) -> Counter:
    counter = counter_on(a_job(folder, example))
    press(counter, "enter", *["left"] * 8)
    return counter


def to_circuit(counter: Counter, label: str) -> None:
    press(counter, "home")
    for _ in range(60):
        if counter.top.at == OnCircuit(label):
            return
        press(counter, "down")
    raise AssertionError(f"no row for {label}")


def where(counter: Counter) -> Where:
    return counter.top.where


def texts(counter: Counter) -> str:
    return "\n".join(row.text for row in counter.top.shown)


def unwrapped(screen: str, column: int = 0) -> str:
    """The screen from that column on as running text."""
    return " ".join(row[column:] for row in screen.splitlines()).replace("▮", " ").replace(" : ", " ")


def squeezed(screen: str, column: int = 0) -> str:
    return " ".join(unwrapped(screen, column).split())
