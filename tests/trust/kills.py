"""kill -9: of line commands at every step they take on the disk, and at any moment; of the counter at any moment."""

from __future__ import annotations

import json
import os
import random
import shutil
from collections.abc import Callable
from functools import partial
from itertools import chain, islice
from pathlib import Path

from tests.journeys.bench import press

from . import kill_terminal
from .child import child
from .disk_faults import BEGINS, COMMANDS, Scene, again, handed_back, papers_whole, scene, set_up
from .lines import said, snapshot, states
from .once import worked_out_once
from .steps import KILLS, Fault, Steps, faulty
from .strokes import at_hand, counter, strokes
from .tally import Run

SEQUENCE: tuple[tuple[str, ...], ...] = (
    ("set", "1", "adults=3"),
    ("drop", "1", "toilet-portable"),
    ("set", "1", "note=They ring on Monday.", "customer=M. Hale"),
    ("undo", "1"),
    ("record", "1", "promised", "a spare cushion", "--by", "the counter"),
    ("set", "1", "nights_off_grid=3", "toilet-portable"),
    ("new", "adults=2"),
    ("export", "1", "--to", "{out}"),
    ("quote", "1"),
    ("change", "1"),
    ("set", "1", "adults=2"),
    ("redo", "1"),
    ("record", "1", "promised", "to ring", "--by", "the counter"),
)


def tries(run: Run) -> None:
    """All three, each with its share of the time."""
    with worked_out_once():
        made = states(run.folder / "states")
        _at_every_step(run.share(0.35), made)
        _commands_at_any_moment(run.share(0.35), made)
        _counter_at_any_moment(run.share(0.6), made)
    kill_terminal.tries(run)


def _at_every_step(run: Run, made: Path) -> None:
    """A command is killed before, after and half-way through each step it takes on the disk."""
    scenes = [scene(run, made / state, words) for state, words in COMMANDS[:: 6 if run.small else 1]]
    todo = [(one, fault, at) for one in scenes for fault in KILLS for at in range(one.steps)]
    run.tally.note("steps of line commands to be killed at", len(todo))
    run.dice.shuffle(todo)
    for one, fault, at in todo[: 6 if run.small else None]:
        if not run.more:
            break
        with run.counted(f"{one.name}, {fault} step {at}"):
            _step(run, one, fault, at)


def _step(run: Run, one: Scene, fault: Fault, at: int) -> None:
    work, out = run.folder / "work", run.folder / "out"
    older = one.older if run.dice.random() < 0.5 else {}
    set_up(one.state, work, out, older)

    def runs(_: Callable[[str], None]) -> None:
        with faulty(Steps(fault, at, work, (out,))):
            said(work, *one.words)

    whole, _ = child(runs).ended()
    if whole:
        return
    run.tally.note("of them killed")
    what = f"{one.name}, {fault} step {at}"
    left = snapshot(work)
    _nothing_half(run, what, one, left)
    papers_whole(run, what, one, older, out)
    _a_day_later(work, out)
    again(run, what, one, left, work, out)


def _nothing_half(run: Run, what: str, one: Scene, left: dict[str, str]) -> None:
    jobs, before, after = ({n: s for n, s in each.items() if s != "sealed"} for each in (left, one.before, one.after))
    begun = one.words[0] in BEGINS and {n: jobs.get(n) for n in before} == before
    if begun and not any(sign.startswith("cannot") for sign in jobs.values()):
        return  # the new revision may hold its beginning and nothing else yet
    if "--drop" in one.words and handed_back(one, left):
        return  # nothing that was written down is lost, and it can be given up once more
    if jobs not in (before, after):
        run.tally.lose(f"{what}: half done: {jobs}, and neither {before} nor {after}")


def _a_day_later(*folders: Path) -> None:
    """What a kill left half written is old when somebody comes again."""
    for folder in folders:
        for path in (*folder.rglob(".*"), *folder.glob("*.lock")):
            os.utime(path, (1_000_000_000, 1_000_000_000))


def _commands_at_any_moment(run: Run, made: Path) -> None:
    """A row of commands, one after the other, killed at any moment."""
    after = _in_turn(run, made / "draft")
    number = 0
    while run.more and number < (2 if run.small else 10**6):
        number += 1
        with run.counted(f"commands, kill {number}"):
            work, out = run.folder / "work", run.folder / "out"
            set_up(made / "draft", work, out, {})

            def runs(acknowledge: Callable[[str], None], work: Path = work, out: Path = out) -> None:
                for place, words in enumerate(SEQUENCE):
                    done = said(work, *(word.format(out=out) for word in words))
                    acknowledge(f"{place} {done.code}")

            running = child(runs)
            acknowledged = running.kill_after(run.dice.expovariate(1 / 0.5))
            done = len(acknowledged)
            left = _jobs(snapshot(work))
            if left not in (after[done], after[min(done + 1, len(SEQUENCE))]) and not _begun(left, after, done):
                run.tally.lose(f"{done} commands were done, and what stands is neither that nor one more: {left}")
            run.tally.note("commands acknowledged before a kill", done)


def _begun(left: dict[str, str], after: list[dict[str, str]], done: int) -> bool:
    """A job or revision may stand at its beginning while it is made."""
    making = done < len(SEQUENCE) and SEQUENCE[done][0] in ("new", "change")
    return making and {name: left.get(name) for name in after[done]} == after[done]


def _in_turn(run: Run, draft: Path) -> list[dict[str, str]]:
    """What stands after each of the commands when nothing goes wrong."""
    work, out = run.folder / "work", run.folder / "out"
    set_up(draft, work, out, {})
    found = [_jobs(snapshot(work))]
    for words in SEQUENCE:
        done = said(work, *(word.format(out=out) for word in words))
        assert not done.own_mistake, done
        found.append(_jobs(snapshot(work)))
    return found


def _jobs(found: dict[str, str]) -> dict[str, str]:
    return {name: sign for name, sign in found.items() if sign != "sealed"}


def _counter_at_any_moment(run: Run, made: Path) -> None:
    """Keys at the counter; what stands when a key has been painted is acknowledged."""
    number = 0
    while run.more and number < (3 if run.small else 10**6):
        number += 1
        seed, state = run.dice.randrange(10**9), run.dice.choice(("empty", "draft", "ordered", "changing"))
        with run.counted(f"counter on {state}, keys {seed}"):
            work = run.folder / "work"
            set_up(made / state, work, run.folder / "out", {})

            types = partial(_types, work, state, seed)
            acknowledged = child(types).kill_after(run.dice.expovariate(1 / 0.6))
            _reopened(run, made / state, work, seed, acknowledged)


def _types(work: Path, state: str, seed: int, acknowledge: Callable[[str], None], most: int = 10**6) -> None:
    """Presses keys without end; after each, which job is at hand and what it says."""
    at = counter(work)
    begin = ("n", "2") if state == "empty" else ("enter",)
    for key in islice(chain(begin, strokes(random.Random(seed), nonsense=0.2)), most):
        press(at, key)
        at.painted()
        acknowledge(json.dumps(at_hand(at)))


def _reopened(run: Run, state: Path, work: Path, seed: int, acknowledged: list[str]) -> None:
    """Everything that was acknowledged stands, and at most one key more."""
    latest: dict[str, str] = {}
    for line in acknowledged:
        if (now := json.loads(line)) is not None:
            latest[now[0]] = now[1]
    run.tally.note("keys acknowledged before a kill", len(acknowledged))
    left = snapshot(work)
    wrong = {name: sign for name, sign in latest.items() if left.get(name) != sign}
    if not wrong:
        return
    shadow = run.fresh("shadow")
    shutil.rmtree(shadow)
    shutil.copytree(state, shadow)
    _types(shadow, state.name, seed, lambda _: None, most=len(acknowledged) + 1)
    one_more = snapshot(shadow)
    if any(left.get(name) != one_more.get(name) for name in wrong):
        what = f"keys {seed} on {state.name}: {len(acknowledged)} were painted"
        run.tally.lose(f"{what}, and {wrong} stands otherwise: {left}")
    shutil.rmtree(shadow)
