"""The counter without the toolkit: the same pages and keys, fast enough for laws over many key sequences."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.storage.jobs import JobsFolder, local_time
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.tui.counter import Counter
from specbuilder.tui.desk import Desk
from specbuilder.tui.errands import Errand
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import TABLE, Act
from specbuilder.tui.line import Line, width
from specbuilder.tui.marks import SHAPES
from specbuilder.tui.opening import Opening
from specbuilder.tui.searches import Searches

from .stage import NAMES


@cache
def catalogue() -> Catalogue:
    """The house catalogue, read once."""
    return read_rules(rules_folder())


def counter_on(
    folder: Path,
    known: Catalogue | None = None,
    *,
    searches: Searches | None = None,
    runner: Callable[[Errand[object]], None] | None = None,
    keyboard: Keyboard | None = None,
) -> Counter:
    """A counter with its catalogue read. Without a runner nothing is searched: pages wait for ever."""
    counter = Counter(SHAPES, (), leave=lambda: None, turn=lambda: None, keyboard=keyboard)
    desk = Desk(House(JobsFolder(folder), known or catalogue(), rules_folder()), local_time, "counter 1")
    opening = Opening(counter, desk)
    opening.searches = searches or opening.searches
    counter.errands.runner = runner or counter.errands.runner
    counter.loaded(opening)
    return counter


def press(counter: Counter, *keys: str) -> None:
    """Keys in order; one character is typed, anything longer is the name of a key."""
    for key in keys:
        counter.painted()
        counter.press(NAMES.get(key, key), key if len(key) == 1 else None)


def spec(counter: Counter) -> Spec:
    """The spec on the counter."""
    assert counter.opening is not None
    return counter.opening.desk.session.spec


def edits(counter: Counter) -> int:
    """How many edits can be undone."""
    assert counter.opening is not None
    return len(counter.opening.desk.session.past)


def to_jobs(counter: Counter) -> None:
    """Escape until the list of jobs."""
    for _ in range(20):
        if counter.walk is None and not counter.sides:
            return
        back(counter)
    raise AssertionError("Escape does not lead to the list of jobs")


def back(counter: Counter) -> None:
    """Escape; what the customer reads asks for Enter behind it."""
    shut = counter.top.shut
    press(counter, "escape", *(["enter"] if shut else []))


def lines(counter: Counter, cells: int) -> list[Line]:
    """Every line that can be seen in so many cells."""
    counter.main_cells = counter.side_cells = cells
    counter.lay()
    seen = [*counter.main.shown, *counter.main.foot(cells), *counter.main.head(cells)]
    if counter.sides:
        seen += [*counter.top.shown, *counter.top.foot(cells), *counter.top.head(cells)]
    if counter.walk is not None:
        walk = counter.walk
        seen += [
            *walk.heading(cells),
            *walk.beside(cells, 20, third=False),
            *walk.third(cells),
            *walk.foot([], cells, 5),
        ]
    return seen


def too_wide(counter: Counter, cells: int) -> list[str]:
    """Lines that do not fit."""
    return [line.text for line in lines(counter, cells) if width(line.text) > cells]


KEYS = sorted(
    {key for entry in TABLE if entry.act is not Act.LEAVE for key in (*entry.keys, *entry.always)}
    | set("0123456789abgz ")
    | {"delete"}
)
"""What the laws press."""
PLAIN_KEYS = {name: character for character, name in NAMES.items()}


def typed(key: str) -> str:
    """The key as ``press`` takes it."""
    return PLAIN_KEYS.get(key, key)
