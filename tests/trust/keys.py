"""Random keys at the counter and the laws: nothing said is lost, undo leads back, no line too wide, nothing private."""

from __future__ import annotations

import asyncio
import os
import random
import shutil
from itertools import islice
from pathlib import Path

from specbuilder.model.spec import Spec
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import TABLE, Act, Where
from specbuilder.wording.last_line import own_mistake
from tests.journeys.bench import edits, press, spec, to_jobs, too_wide
from tests.journeys.stage import on_stage

from .lines import snapshot, states
from .once import worked_out_once
from .strokes import at_hand, counter, opening_of, strokes
from .tally import Run

PRIVATE = ("zqxprivate", "zqxmargin")
"""Words of the house that no customer may read."""
_STATES = ("empty", "draft", "draft", "quoted", "ordered", "changing", "changed")
_MISTAKE = own_mistake("")[:20]


def tries(run: Run) -> None:
    """Rounds on the counter without the toolkit, and some in the app."""
    with worked_out_once():
        made = states(run.folder / "states")
        _plant(made)
        part = run.share(0.75)
        done = 0
        while part.more and done < (3 if run.small else 10**6):
            seed, state = run.dice.randrange(10**9), run.dice.choice(_STATES)
            with run.counted(f"keys {seed} on {state}"):
                _round(run, made / state, seed)
            run.tally.tried -= 1
            done += 1
        run.tally.note("rounds of keys", done)
        _every_act(run)
        done = 0
        while run.more and done < (1 if run.small else 10**6):
            seed, state = run.dice.randrange(10**9), run.dice.choice(_STATES)
            with run.counted(f"keys {seed} in the app on {state}"):
                asyncio.run(_in_the_app(run, made / state, seed))
            run.tally.tried -= 1
            done += 1
        run.tally.note("rounds of keys in the app", done)


def _plant(made: Path) -> None:
    """Private words in every draft: the note of the house, and what was written down of calls and promises."""
    from .lines import said

    for state in ("draft", "quoted", "ordered", "changing", "changed"):
        done = said(made / state, "set", "1", f"note={PRIVATE[0]} {PRIVATE[1]}")
        assert not done.own_mistake, done
        said(made / state, "record", "1", "promised", PRIVATE[0], "--by", PRIVATE[1])


def _round(run: Run, state: Path, seed: int) -> None:
    """Some eighty keys; the laws hold on the way and at the end."""
    dice = random.Random(seed)
    work = run.folder / "work"
    shutil.rmtree(work, ignore_errors=True)
    shutil.copytree(state, work)
    made = counter(work)
    cells = dice.choice((59, 79, 88, 120))
    latest: dict[str, str] = {}
    pressed = ["n"] if state.name == "empty" else ["enter"]
    press(made, *pressed)
    for key in islice(strokes(dice), dice.randrange(8, 80)):
        pressed.append(key)
        press(made, key)
        run.tally.tried += 1
        if (now := at_hand(made)) is not None:
            latest[now[0]] = now[1]
        what = f"keys {seed} on {state.name}, after {len(pressed)}, {pressed[-6:]}"
        if dice.random() < 0.4 and (wide := too_wide(made, cells)):
            run.tally.lose(f"{what}: wider than {cells}: {wide[:2]}")
        _nothing_private(run, made, cells, what)
        if made.message.startswith(_MISTAKE):
            run.tally.mistake(f"{what}: {made.message}")
    what = f"keys {seed} on {state.name}"
    _undo_leads_back(run, made, what)
    if (now := at_hand(made)) is not None:
        latest[now[0]] = now[1]
    to_jobs(made)
    left = snapshot(work)
    for name, sign in latest.items():
        if left.get(name) != sign:
            run.tally.lose(f"{what}: {name} is not as it was left: {left.get(name)}")


def _nothing_private(run: Run, made: Counter, cells: int, what: str) -> None:
    """The customer's view has the screen for itself."""
    if not made.sides or made.top.where is not Where.CUSTOMER:
        return
    top = made.top
    text = " ".join(line.text for line in (*top.head(cells), *top.shown, *top.foot(cells)))
    run.tally.note("looks at the customer's view")
    if found := [word for word in PRIVATE if word in text]:
        run.tally.lose(f"{what}: {found} stands on the customer's view")


def _undo_leads_back(run: Run, made: Counter, what: str) -> None:
    """As many steps back as there were edits give the first spec, and as many forward the last."""
    desk = opening_of(made).desk
    if at_hand(made) is None or not desk.may_write():
        return
    if desk.trying and made.walk is not None:
        made.close_all()
        made.walk.doing.back_to_job()
    for _ in range(8):
        if not made.sides:
            break
        press(made, "escape", *(["enter"] if made.top.shut else []))
    made.main.stop_typing()
    if made.walk is None or made.sides:
        return
    last, count = spec(made), edits(made)
    if not count:
        return
    first: Spec = desk.session.past[0].before
    press(made, *(["f4"] * count))
    if spec(made) != first and spec(made).number == first.number and not edits(made):
        run.tally.lose(f"{what}: {count} steps back do not lead to the first spec")
    if edits(made):
        return  # something written down is in the way: that stays done
    press(made, *(["f5"] * count))
    if spec(made) != last:
        run.tally.lose(f"{what}: {count} steps forward do not lead to the last spec")
    run.tally.note("steps back and forward again", count)


def _every_act(run: Run) -> None:
    """Every act of the table of keys has a key among those that are pressed here."""
    from tests.journeys.bench import KEYS

    for entry in TABLE:
        keys = {*entry.keys, *entry.always}
        if entry.act is not Act.LEAVE and keys and not keys & set(KEYS):
            run.tally.lose(f"no key for {entry.act} is ever pressed")


async def _in_the_app(run: Run, state: Path, seed: int) -> None:
    """The same in the app itself: its workers, its screen, its way of leaving."""
    dice = random.Random(seed)
    work = run.fresh("app")
    shutil.rmtree(work)
    shutil.copytree(state, work)
    latest: dict[str, str] = {}
    os.environ["SPECBUILDER_TRACE"] = "1"
    size = dice.choice(((80, 24), (140, 40), (60, 18)))
    try:
        async with on_stage(work, size) as stage:
            for key in ("n" if state.name == "empty" else "enter", *islice(strokes(dice), 40)):
                screen = await stage.press(key)
                run.tally.tried += 1
                run.tally.note("keys in the app")
                if wide := [line for line in screen.splitlines() if len(line) > size[0]]:
                    run.tally.lose(f"keys {seed} in the app: wider than {size[0]}: {wide[:2]}")
                at = stage.app.counter
                if at.sides and at.top.where is Where.CUSTOMER and any(word in screen for word in PRIVATE):
                    run.tally.lose(f"keys {seed} in the app: private words stand on the customer's view")
                if at.opening is not None and (now := at_hand(at)) is not None:
                    latest[now[0]] = now[1]
    finally:
        del os.environ["SPECBUILDER_TRACE"]
    left = snapshot(work)
    for name, sign in latest.items():
        if left.get(name) != sign:
            run.tally.lose(f"keys {seed} in the app on {state.name}: {name} is not as it was left")
    shutil.rmtree(work)
