"""Every line of the key table is reached at every place it names, by every one of its keys."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.model.kinds import JobState
from specbuilder.model.spec import Spec
from specbuilder.office.older import Older, Past
from specbuilder.tui.counter import Counter
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import Act, KeyLine, Where
from specbuilder.tui.opening import Opening
from specbuilder.tui.screens.confirm import quoting_again
from specbuilder.tui.screens.jobs import NoticePage
from specbuilder.tui.screens.older_rules import AgainstPage, OlderRulesPage
from specbuilder.tui.screens.page import Page
from specbuilder.tui.screens.revisions import RevisionsPage

from .bench import back, catalogue, counter_on, press, typed
from .conftest import EXAMPLES

pytestmark = pytest.mark.long

WAYS: dict[Where, tuple[str, ...]] = {
    Where.JOBS: (),
    Where.BRIEF: (),
    Where.WALK: ("right", "right"),
    Where.CHECK: (*["right"] * 8,),
    Where.WHY: ("/", *"pod galley", "enter", "enter"),
    Where.LEDGERS: ("l",),
    Where.LEDGER: ("l", "enter"),
    Where.CIRCUITS: ("i",),
    Where.CIRCUIT: ("i", "down", "enter"),
    Where.FIND: ("/",),
    Where.OPEN: ("o",),
    Where.DETAILS: ("/", *"side galley", "enter", "d"),
    Where.USUAL: ("right", "home", "h"),
    Where.SWITCH: ("u", "/", *"fenwain long, tail", "enter", "enter"),
    Where.FINISH: ("f",),
    Where.ACTIONS: ("f9",),
    Where.KEYS: ("f1",),
    Where.WHO: ("o", "enter"),
    Where.ACCEPT: (*["right"] * 8, "a"),
    Where.PAPERS: ("p",),
    Where.PAPER: ("p", "1"),
    Where.SIGN: ("p", "s"),
    Where.CONFIRM: ("p",),
    Where.BUILD: ("p", "b"),
    Where.RECORD: ("p", "b", "enter"),
    Where.REVISIONS: ("p",),
    Where.OLDER_RULES: (),
    Where.AGAINST_TODAY: (),
    Where.CUSTOMER: ("c",),
    Where.SIDE_BY_SIDE: ("v",),
    Where.NOTICE: (),
}
SHOWN: dict[Where, Callable[[Counter], Page]] = {
    Where.NOTICE: lambda counter: NoticePage(counter, ("Something to say.",)),
    Where.CONFIRM: quoting_again,
    Where.REVISIONS: lambda counter: RevisionsPage(counter, opening_of(counter), "0152", (FIRST, FIRST)),
    Where.OLDER_RULES: lambda counter: OlderRulesPage(counter, opening_of(counter), "0152", OLDER),
    Where.AGAINST_TODAY: AgainstPage,
}
"""Pages that a job as it stands does not lead to: they are put there."""
FIRST = Past(revision=1, state=JobState.DRAFT, spec=Spec(number="0152"))
OLDER = Older(spec=Spec(number="0152"), catalogue=catalogue(), state=JobState.DRAFT)


def opening_of(counter: Counter) -> Opening:
    assert counter.opening is not None
    return counter.opening


OUTSIDE = (Where.JOBS, Where.NOTICE, Where.OLDER_RULES)


def job_for(where: Where, folder: Path) -> Counter:
    """One job in a folder: something to accept in it, or something open."""
    name = "saturday-family" if where is Where.ACCEPT else "half-done-family"
    shutil.copy(EXAMPLES / f"{name}.toml", folder / "0152-r1.toml")
    return counter_on(folder)


def go(counter: Counter, where: Where) -> None:
    if where not in OUTSIDE:
        press(counter, "enter", *["left"] * 8)
    press(counter, *WAYS[where])
    if where in SHOWN:
        counter.show(SHOWN[where](counter))
        counter.lay()
    assert counter.top.where is where


@pytest.mark.parametrize("where", Where)
def test_every_key_of_a_place_does_its_act(where: Where, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    counter = job_for(where, tmp_path)
    done: list[Act] = []
    really = Counter.do
    monkeypatch.setattr(Counter, "do", lambda self, act: (done.append(act), really(self, act))[0])
    for entry in Keyboard().lines_of(where):
        for key in (*entry.keys, *entry.always):
            go(counter, where)
            typing = counter.top.entry is not None
            done.clear()
            press(counter, typed(key))
            if not typing or (key in entry.always and entry.act not in (Act.ENTER, Act.BACK)):
                assert done[:1] == [entry.act], (entry, key)
            for _ in range(9):
                back(counter)
            assert counter.walk is None


@pytest.mark.parametrize(
    "entry", [e for e in Keyboard().lines_of(Where.CHECK) if e.act is not Act.ENTER], ids=lambda e: e.act
)
def test_every_act_is_found_among_the_actions_by_its_words(entry: KeyLine, tmp_path: Path) -> None:
    counter = job_for(Where.CHECK, tmp_path)
    go(counter, Where.CHECK)
    press(counter, "f9", *entry.words[:40])
    shown = [line.text for line in counter.top.shown]
    moves = (Act.UP, Act.DOWN, Act.PAGE_UP, Act.PAGE_DOWN, Act.FIRST, Act.LAST, Act.ACTIONS)
    if entry.act not in moves:
        assert any(entry.words in text for text in shown)
        press(counter, "enter")
        assert counter.top.where is not Where.ACTIONS


def test_steps_and_ledgers_are_among_the_actions(tmp_path: Path) -> None:
    counter = job_for(Where.CHECK, tmp_path)
    go(counter, Where.CHECK)
    press(counter, "f9", *"step: kitchen", "enter")
    assert counter.main.shown
    assert counter.walk is not None
    assert counter.walk.step.value == "kitchen"
    press(counter, "f9", *"ledger: weight of", "enter")
    assert counter.top.where is Where.LEDGER
