"""Keys as a busy seller presses them, mixed with nonsense; and a counter without the toolkit, whose clock stands."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

from specbuilder.tui.counter import Counter
from specbuilder.tui.opening import Opening
from tests.journeys.bench import KEYS, counter_on, typed
from tests.journeys.hand_made import ALL, at_once

from .scene import catalogue, clock, told

PHRASES: tuple[tuple[str, ...], ...] = (
    ("2", "enter"),
    ("9", " ", "6", "enter"),
    ("down",),
    ("down", "down", "enter"),
    ("enter",),
    ("enter", "enter"),
    ("right",),
    ("left",),
    ("n",),
    ("h", "enter"),
    ("u",),
    ("u", "u"),
    ("r",),
    ("-",),
    ("+",),
    ("d", "1", "escape"),
    ("y", "1", "6", "enter", "escape"),
    ("escape",),
    ("/", *"gas", "enter", "enter"),
    ("/", *"long", "enter", "enter", "enter"),
    ("t",),
    ("t", "enter", "k"),
    ("f", "enter"),
    ("w", "1"),
    ("o", "enter", "1", "enter", "escape"),
    ("a", "enter"),
    ("p", "s", "enter"),
    ("p", "s", "enter", "enter", "1", "enter"),
    ("p", "b", "enter", *"M. Hale", "enter", "enter", "escape", "escape"),
    ("v", "left", "enter", "escape"),
    ("c", "escape", "enter"),
    ("x",),
    ("l", "enter", "escape", "escape"),
    ("i", "escape"),
    ("end", "up", "enter", *"Hale [b]=1+1", "enter"),
)
_PLAIN = [typed(key) for key in KEYS]


def strokes(dice: random.Random, nonsense: float = 0.35) -> Iterator[str]:
    """Keys without end; so much of them is nonsense."""
    while True:
        if dice.random() < nonsense:
            yield dice.choice(_PLAIN)
        else:
            yield from dice.choice(PHRASES)


def counter(folder: Path) -> Counter:
    """A counter on this folder of jobs; what it searches for it finds at once."""
    made = counter_on(folder, catalogue(), searches=ALL, runner=at_once)
    opening = opening_of(made)
    opening.desk.clock = opening.desk.folder._clock = clock
    return made


def opening_of(made: Counter) -> Opening:
    """The jobs of the counter."""
    assert made.opening is not None
    return made.opening


def at_hand(made: Counter) -> tuple[str, str] | None:
    """Number and revision of the job that is open to be changed, and the sign of its spec; a what-if is none of it."""
    opening = opening_of(made)
    desk = opening.desk
    if made.walk is None or desk.looked_at is not None or desk.job is None or desk.read_only:
        return None
    session = desk.aside.session if desk.aside is not None else desk.session
    return f"{desk.job.number}-r{desk.job.files.revision}", told(session.spec)
