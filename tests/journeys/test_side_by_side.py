"""U5: two variants side by side, and one line taken from the one into the other."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.edits import NameCustomer, WriteNote
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.tui.line import width
from specbuilder.wording.quantities import money
from tests.office.scene import Scene

from .bench import counter_on, edits, lines, press, spec, to_jobs, too_wide
from .hand_made import at_once
from .stage import WINDOWS, on_stage
from .variants_scene import AWNING, TOW_BAR, counter_at, options, said, stored, with_variant


@WINDOWS
async def test_u5_two_variants_and_one_line_merged(one: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(one, size, plain=plain) as stage:
        await stage.press("enter")
        before, dear = stage.spec(), stage.report().price.gross.most
        stage.presses = 0
        screen = await stage.press("v")
        assert "no other variant" in screen
        screen = await stage.press("n")
        assert "0147b is a copy of 0147" in screen
        await stage.press("/", "'pod'", "enter", "enter")
        await stage.found()
        await stage.press("1")
        assert stage.spec().has(OptionId("pod-galley"))
        await stage.press("/", "'coo'", "enter", "down", "down", "down", "enter")
        await stage.found()
        await stage.press("1")
        await stage.press("/", "'awn'", "enter", "-", "v")
        variant, counted, cheap = stage.spec(), stage.presses, stage.report().price.gross.most
        screen = await stage.found()
        assert cheap < dear
        assert all(money(pence, "£") in screen for pence in (dear, cheap)), "both prices stand beside each other"
        rows = screen.splitlines()
        assert "SIDE BY SIDE" in rows[0]
        assert "A  0147" in rows[0]
        assert "B  0147b" in rows[0]
        assert "price, VAT in" in screen
        found = "\n".join(await stage.read_through())
        assert "The same in both:" in found
        assert "Pod galley" in found
        assert "Side galley" in found
        await stage.press("escape", "v")
        await stage.found()
        stage.presses = counted  # reading it through was no part of the journey
        await stage.press("left")
        await stage.press("enter")
        screen = await stage.found()
        assert stage.presses <= 28
        assert stage.spec() == variant, "B is as it was"
        merged = stored(one, "0147")
        assert options(merged) != options(before)
        assert options(merged) ^ options(before) <= options(before) ^ options(variant)
        screen = await stage.press("escape")
        assert screen.splitlines()[0].startswith(" 0147 "), "the variant last worked on is open"
        assert stage.spec().choices == merged.choices
        await stage.press("u")
        assert options(stage.spec()) == options(before), "it was one step of undo there"


def test_the_table_holds_only_what_differs_and_begins_on_what_can_be_taken(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    text = said(counter)
    assert "price, VAT in" in text
    assert "outside" in text
    assert "galley" not in text
    assert "The same in both" in text
    here = counter.top.cursor()
    assert here is not None
    assert counter.top.shown[here].text.strip().startswith("outside")


@pytest.mark.parametrize(("arrow", "gains"), [("left", False), ("right", True)])
def test_a_line_goes_where_its_arrow_points(one: Path, arrow: str, gains: bool) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    press(counter, arrow)
    counter.painted()
    press(counter, "enter")
    assert spec(counter).has(AWNING) is gains, "right: into the variant, which is open"
    assert counter.message
    assert "Nothing differs" in said(counter)
    to_jobs(counter)
    assert stored(one, "0147").has(AWNING) is gains
    assert stored(one, "0147b").has(AWNING) is gains


def test_undo_of_a_line_taken_into_the_open_one_is_one_step(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    before = spec(counter)
    press(counter, "right")
    counter.painted()
    press(counter, "enter", "escape", "u")
    assert spec(counter) == before


def test_an_answer_of_the_brief_that_differs_can_be_taken_as_well(one: Path) -> None:
    counter = with_variant(one, "/", *"cei", "enter", *"18000", "enter")
    assert "brief: " in said(counter)
    press(counter, "left")
    counter.painted()
    press(counter, "enter")
    to_jobs(counter)
    assert stored(one, "0147").answers == stored(one, "0147b").answers


def test_with_several_to_choose_from_they_are_listed(one: Path) -> None:
    counter = counter_at(one)
    press(counter, "v", "n", "v")
    counter.painted()
    press(counter, "n", "v")
    text = said(counter)
    assert "Lay it beside:" in text
    assert "variant 0147" in text
    assert "variant 0147b" in text
    press(counter, "down", "enter")
    assert "A  0147b" in said(counter)
    assert "B  0147c" in said(counter)


def test_a_what_if_is_laid_beside_the_job_and_gives_it_one_line(one: Path) -> None:
    counter = counter_at(one)
    press(counter, "t", "/", *"awn", "enter", "-", "/", *"tow bar", "enter", "enter", "v")
    assert "what if" in said(counter)
    counter.painted()
    press(counter, "left")
    counter.painted()
    press(counter, "enter")
    assert counter.trying, "the what-if is still on"
    aside = counter.deeds.desk.aside
    assert aside is not None
    now = options(aside.session.spec)
    assert (AWNING in now) is (TOW_BAR in now), "one of the two lines came into the job"
    press(counter, "escape", "escape")
    assert edits(counter) == 1


def test_a_variant_begins_as_a_draft_without_what_left_the_house(scene: Scene) -> None:
    scene.order()
    counter = counter_on(scene.folder, runner=at_once)
    press(counter, "enter", "v", "n")
    made = spec(counter)
    assert (made.number, made.revision, made.state) == (f"{scene.number}b", 1, JobState.DRAFT)
    assert not made.records
    assert made.choices == scene.spec().choices
    assert scene.spec().state is JobState.ORDERED


def test_a_new_job_has_nothing_to_be_copied(empty: Path) -> None:
    counter = counter_on(empty, runner=at_once)
    press(counter, "n", "v", "n")
    assert "nothing to copy" in counter.message
    assert not empty.exists() or not list(empty.glob("*"))


def test_variants_stand_under_their_job_in_the_list(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "v", "n")
    to_jobs(counter)
    press(counter, "down")
    numbers = [line.text.split()[0] for line in counter.jobs.shown if line.item is not None]
    assert numbers == ["0147", "0147b", "0151", "0152"]
    job, variant = (line.text for line in counter.jobs.shown[:2])
    assert variant.index("0147b") > job.index("0147"), "a little to the right"


@pytest.mark.parametrize("cells", [58, 79, 99, 139])
def test_no_line_of_the_table_is_wider_than_the_window(one: Path, cells: int) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-", "/", *"pod", "enter", "enter", "e")
    assert too_wide(counter, cells) == []
    assert all(width(line.text) <= cells for line in lines(counter, cells))


def test_nothing_private_stands_on_the_table(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    note = "ASK FOR CASH 4711"
    counter.edit(WriteNote(note=note))
    counter.edit(NameCustomer(name="A. Person", contact="07700 900123"))
    press(counter, "escape", "v")
    text = said(counter)
    assert note not in text
    assert "07700" not in text
