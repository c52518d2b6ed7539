"""From an empty folder to a signed order of 45 choices and more, in at most 125 keys: every press counts as one."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from specbuilder.model.kinds import JobState, Level
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec

from .bench import catalogue, counter_on, press, spec
from .hand_made import at_once
from .stage import SMALL, WIDE, on_stage

MOST_KEYS, LEAST_CHOICES = 125, 45

BRIEF = (
    *("n", "2", "enter", "2", "enter", *"9 6", "enter", "4", "enter"),  # who travels
    *("4", "enter", "2", "enter", *"60", "enter", "2", "enter"),  # who sleeps, and where
    *("3", "enter", *"2100", "enter", "2", "enter", "2", "enter", "1", "enter"),  # van, height, season, nights, gas
    *("2", "enter", "0", "enter", "0", "enter", "0", "enter", *"16", "enter"),  # what must run, ceiling, loads, date
    *("down", *"Hale", "enter"),
)
VAN = (
    *("f6", "down", "down", "down", "enter", "n", "enter", "n", "enter"),
    *("n", *"012345", "enter", *"2031", "enter"),
)
PICKED = ("f6", "enter", "n", "enter", "n", "n", "enter", "n", "enter", "n", "enter", "n")
"""Roof, bed upstairs, bench, bed downstairs, table; the vents wait until it is known what burns."""
USUAL = ("h", "enter", "n") * 4 + ("h", "enter")
"""Kitchen, heating, power, finish; then what waited in the roof."""
WISHES = ("/", *"awn", "enter", "enter", "/", *"sol", "enter", "enter")
"""An awning; and a panel, which asks for something: its first way out."""
LAST = ("p", "s", "enter", "s", "1", "enter")
"""The quote, then both signatures, given on the premises."""


def assert_signed(done: Spec, report: Report) -> None:
    choices = Counter(catalogue().groups[catalogue().options[c.option].group].step for c in done.choices)
    assert choices.total() >= LEAST_CHOICES
    assert len(choices) == 7, "every step of the walk has its choices"
    assert done.state is JobState.ORDERED
    assert [record.kind for record in done.records] == [RecordKind.QUOTED, RecordKind.SIGNED]
    assert not report.undecided
    assert not report.unknown
    assert not report.broken(Level.STOP, Level.SIGN)


def test_an_empty_folder_becomes_a_signed_order_of_45_choices_within_125_keys(empty: Path) -> None:
    counter = counter_on(empty, runner=at_once)
    keys = (*BRIEF, *VAN, *PICKED, *USUAL, *WISHES, "1", *LAST)
    assert len(keys) <= MOST_KEYS
    press(counter, *keys)
    assert_signed(spec(counter), counter.report)


@pytest.mark.long
@pytest.mark.parametrize("size", [SMALL, WIDE], ids=["80x24", "140x40"])
async def test_the_same_keys_do_it_on_the_screens(empty: Path, size: tuple[int, int]) -> None:
    async with on_stage(empty, size) as stage:
        await stage.press(*BRIEF, *VAN, *PICKED, *USUAL, *WISHES)
        assert "WAYS OUT" in await stage.found()
        await stage.press("1", *LAST)
        await stage.found()
        assert stage.presses <= MOST_KEYS
        assert_signed(stage.spec(), stage.report())
        assert stage.stored("0001").state is JobState.ORDERED
