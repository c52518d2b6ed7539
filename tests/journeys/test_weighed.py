"""The van on the scales: what counts is said, one axle alone is not taken for both, and what it changed is told."""

from __future__ import annotations

from pathlib import Path

from specbuilder.tui.counter import Counter
from specbuilder.tui.items import Field, OnField
from specbuilder.tui.keys import Where
from specbuilder.wording.glance import weight_words

from .bench import press, spec
from .circuit_scene import opened
from .stage import SMALL, on_stage

FRONT, REAR = OnField(Field.WEIGHED_FRONT), OnField(Field.WEIGHED_REAR)


def found(folder: Path) -> Counter:
    counter = opened(folder, "saturday-family")
    press(counter, "/", *"weigh")
    assert FRONT in counter.top.items()
    while counter.top.at != FRONT:
        press(counter, "down")
    press(counter, "enter")
    assert (counter.top.where, counter.top.at) == (Where.WALK, FRONT)
    return counter


def row(counter: Counter, item: OnField) -> str:
    return next(line.text for line in counter.top.shown if line.item == item)


def left(counter: Counter) -> str:
    return weight_words(counter.catalogue, counter.report, tight=True)


def test_one_axle_alone_says_that_the_other_is_needed(tmp_path: Path) -> None:
    counter = found(tmp_path)
    before = left(counter)
    press(counter, *"1120", "enter")
    assert spec(counter).van_data.weighed_front_kg == 1120
    assert left(counter) == before
    assert counter.message.startswith("Front axle 1,120 kg; the rear axle is needed, too")
    assert "1,120 kg, not counted without the rear axle" in row(counter, FRONT)
    assert "not counted" not in row(counter, REAR)


def test_both_axles_tell_what_was_left_and_what_is(tmp_path: Path) -> None:
    counter = found(tmp_path)
    before = left(counter)
    press(counter, *"1120", "enter", *"830", "enter")
    assert left(counter) != before
    assert counter.message == f"Now {left(counter)}, was {before}: rear axle 830 kg"
    assert row(counter, FRONT).endswith("1,120 kg")
    counter.go_to(REAR)
    press(counter, "-")
    assert left(counter) == before
    assert counter.message.startswith("Rear axle not known yet; the rear axle is needed, too")


async def test_the_field_says_what_counts_in_a_small_window(demo: Path) -> None:
    async with on_stage(demo, SMALL) as stage:
        await stage.press("enter", "right")
        stage.app.counter.go_to(FRONT)
        told = " ".join((await stage.press("up", "down")).split())
        for part in ("empty, before the work, nobody in it", "tank nine tenths full", "75 kg for the driver"):
            assert part in told
        assert "are added." in told
