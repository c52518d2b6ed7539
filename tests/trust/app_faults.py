"""The app core on a disk that refuses: keys are pressed, the disk fails at a step, later it is sound again."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

from specbuilder.tui.counter import Counter
from specbuilder.tui.desk import Trouble
from tests.journeys.bench import press, to_jobs

from .lines import leftovers, snapshot
from .steps import ERRORS, Fault, Steps, faulty
from .strokes import at_hand, counter, opening_of, strokes
from .tally import Run

_STATES = ("empty", "draft", "draft", "ordered", "changing")


def tries(run: Run, states: Path) -> None:
    """Rounds of some forty keys, each with one fault."""
    done = 0
    while run.more and done < (4 if run.small else 100_000):
        seed = run.dice.randrange(10**9)
        state, fault = run.dice.choice(_STATES), run.dice.choice(ERRORS)
        at, lasts = run.dice.randrange(60), run.dice.randrange(1, 25)
        with run.counted(f"keys {seed} on {state}, {fault} at step {at} for {lasts}"):
            _round(
                run,
                states / state,
                random.Random(seed),
                fault,
                at,
                lasts,
                f"keys {seed}, {state}, {fault} at {at} for {lasts}",
            )
        done += 1
    run.tally.note("rounds of keys at the counter with a fault each", done)


def _round(run: Run, state: Path, dice: random.Random, fault: Fault, at: int, lasts: int, what: str) -> None:
    work = run.folder / "work"
    for folder in (work, work.with_name("work.elsewhere")):
        shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(state, work)
    latest: dict[str, str] = {}
    made = counter(work)
    keys = strokes(dice, nonsense=0.2)
    with faulty(Steps(fault, at, work)) as steps:
        _press(made, latest, "n" if state.name == "empty" else "enter", "2", "enter", "2")
        after = 0
        for _ in range(60):
            was = opening_of(made).desk.trouble
            _press(made, latest, next(keys))
            _tick(made, dice)
            _said(run, made, what, was)
            after += steps.hit
            if after > lasts:
                steps.lift()
    _tick(made, dice)
    to_jobs(made)
    found = snapshot(work)
    for name, sign in latest.items():
        if found.get(name) != sign:
            run.tally.lose(f"{what}: {name} is not as it was left: {found.get(name)}")
    if rest := [name for name in leftovers(work) if not name.endswith(".lock")]:
        run.tally.note("rounds that left a half for the next opening", 1 if rest else 0)


def _press(made: Counter, latest: dict[str, str], *keys: str) -> None:
    for key in keys:
        press(made, key)
        if (now := at_hand(made)) is not None:
            latest[now[0]] = now[1]


def _tick(made: Counter, dice: random.Random) -> None:
    """What the app does twice a second."""
    if dice.random() < 0.3:
        opening = opening_of(made)
        opening.remember()
        opening.desk.try_again()
        opening.tell_trouble()
        opening.desk.sync()


def _said(run: Run, made: Counter, what: str, was: Trouble | None) -> None:
    """Once the disk does not take something, that is on the screen at the latest with the next tick."""
    opening = opening_of(made)
    trouble = opening.desk.trouble
    if trouble is None or trouble == was or made.walk is None or "disk" in made.message:
        return
    opening.tell_trouble()
    if "disk" not in made.message:
        run.tally.dim(f"{what}: trouble with the disk ({trouble.reason}) is not on the screen: {made.message}")
