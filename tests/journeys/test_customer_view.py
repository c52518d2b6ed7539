"""U12: the screen turned round. Nothing private on it, the words of the copy, and the same paper each time."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.kinds import JobState
from specbuilder.tui.ink import DARK, LIGHT
from specbuilder.tui.keys import Where
from specbuilder.tui.line import width
from specbuilder.wording.quantities import money
from tests.office.scene import Scene

from .bench import counter_on, press, spec, too_wide
from .customer_scene import GALLEY, PRIVATE, paper_of, shut
from .hand_made import at_once
from .house_scene import opened
from .stage import WINDOWS, Stage, on_stage


async def all_pages(stage: Stage) -> str:
    """Every line of every page, as it can be read by turning and scrolling; with the prices of the parts as well."""
    seen: list[str] = []
    for keys in (["left"] * 3, ["right"], ["+"], ["right"]):
        await stage.press(*keys)
        while (screen := stage.screen()) not in seen:
            seen.append(screen)
            await stage.press(*["down"] * 8)
    return "\n".join(seen)


@WINDOWS
async def test_u12_turned_round_printed_and_back(quoted: Scene, size: tuple[int, int], plain: bool) -> None:
    before = quoted.spec()
    async with on_stage(quoted.folder, size, plain=plain) as stage:
        await opened(stage)
        screen = await stage.press("c")
        rows = screen.splitlines()
        assert "quote, not signed" in rows[0]
        assert "2031" in rows[0]
        assert "VAT IN" in screen
        assert screen.count("#") > 60, "the price stands in block figures"
        assert "TRAVEL" in screen
        assert "SLEEP" in screen
        assert "YOU MAY STILL LOAD" in screen
        assert "HEIGHT" in screen
        assert "AWAY FROM A PLUG" in screen
        assert quoted.number not in screen, "no number, no other job"
        await stage.press("p", "enter")
        assert "Your copy is written" in await stage.found()
        first = {suffix: paper_of(quoted, suffix).read_bytes() for suffix in (".pdf", ".txt")}
        assert "Quote" in first[".txt"].decode()
        screen = await stage.press("escape")
        assert "Any other key stays" in screen
        assert stage.app.counter.top.where is Where.CUSTOMER, "Escape alone stays"
        screen = await stage.press("enter")
        assert stage.presses == 5
        assert stage.app.counter.top.where is not Where.CUSTOMER
        await stage.press("c", "p", "enter")
        await stage.found()
        assert {suffix: paper_of(quoted, suffix).read_bytes() for suffix in first} == first, "two prints are identical"
        for words in PRIVATE:
            assert words not in first[".txt"].decode()
        await stage.press("escape", "enter")
        assert stage.spec() == before
    assert quoted.spec() == before


@WINDOWS
async def test_no_private_word_is_on_any_page(quoted: Scene, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(quoted.folder, size, plain=plain) as stage:
        await opened(stage)
        await stage.press("c")
        text = await all_pages(stage)
        for words in (*PRIVATE, "undecided", "margin", "Actions"):
            assert words not in text
        assert "What we told you" in text
        assert "Still open" in text
        assert "What works where" in text
        await stage.press("f9")
        assert "walk" not in stage.screen().lower()
        assert not any(words in stage.screen() for words in PRIVATE)


async def test_what_was_said_last_is_not_seen_and_f9_turns_the_ground(quoted: Scene) -> None:
    async with on_stage(quoted.folder) as stage:
        await opened(stage)
        stage.app.counter.say(PRIVATE[0])
        await stage.press("c")
        assert PRIVATE[0] not in stage.screen()
        assert stage.app.look is DARK
        await stage.press("f9")
        assert PRIVATE[0] not in stage.screen()
        await stage.press("'light'", "enter")
        assert stage.app.look is LIGHT
        assert stage.app.counter.top.where is Where.CUSTOMER


def test_prices_of_parts_stand_there_only_after_plus(demo: Path) -> None:
    counter = shut(demo)
    galley = counter.catalogue.options[GALLEY].price_net_pence * 1.2
    told = money(galley, counter.catalogue.firm.currency)

    def page() -> str:
        return "\n".join(line.text for line in counter.top.shown)

    counter.rows_high = 200
    press(counter, "right")
    assert told not in page()
    press(counter, "+")
    assert told in page()
    press(counter, "+")
    assert told not in page()


def test_its_words_are_those_of_the_copy(demo: Path) -> None:
    """Every sentence that was told, every question, and the weight: letter by letter as on the paper."""
    counter = shut(demo)
    deeds = counter.deeds
    paper = customer_copy(deeds.case(deeds.desk.stand, deeds.paper_day))
    counter.rows_high = 400
    seen = ""
    for _ in range(3):
        counter.lay()
        seen += " ".join(" ".join(line.text.split()) for line in counter.top.shown)
        press(counter, "right")
    words = [row for block in paper.blocks if type(block).__name__ == "Items" for row in block.rows]  # type: ignore[union-attr]
    assert words
    for sentence in words[:4]:
        assert " ".join(sentence.split()) in seen.replace("- ", ""), sentence


@pytest.mark.parametrize("cells", [58, 79, 139])
def test_no_line_is_wider_than_the_window(demo: Path, cells: int) -> None:
    counter = shut(demo)
    for _ in range(3):
        assert too_wide(counter, cells) == []
        assert all(width(line.text) <= cells for line in counter.top.head(cells))
        press(counter, "+", "right")


def test_a_what_if_is_shown_as_one_and_cannot_be_taken_along(demo: Path) -> None:
    counter = shut(demo, "t")
    assert "only tried out" in "".join(line.text for line in counter.top.head(79))
    press(counter, "p", "enter")
    assert not (demo / "papers").exists()


def test_what_was_replaced_is_not_given_out_as_a_copy(quoted: Scene) -> None:
    quoted.begin_next()
    quoted.quote()
    counter = counter_on(quoted.folder, runner=at_once)
    opening = counter.opening
    assert opening is not None
    opening.look_at(quoted.number, 1)
    press(counter, "c", "p", "enter")
    assert not paper_of(quoted, ".pdf").exists()
    assert "2" in "".join(line.text for line in counter.top.shown[-1:])


@pytest.mark.parametrize(
    ("state", "words"), [(JobState.DRAFT, "draft, no offer yet"), (JobState.ORDERED, "order, signed")]
)
def test_the_state_of_the_job_stands_on_it(scene: Scene, state: JobState, words: str) -> None:
    if state is JobState.ORDERED:
        scene.order()
    counter = shut(scene.folder)
    assert spec(counter).state is state
    assert words in "".join(line.text for line in counter.top.head(79))


def test_a_copy_that_the_disk_does_not_take_says_so_and_stays(demo: Path) -> None:
    counter = shut(demo)
    (demo / "papers").write_text("in the way", "utf-8")
    press(counter, "p", "enter")
    assert "could not be written" in counter.top.shown[-1].text
    assert counter.top.where is Where.CUSTOMER
    assert (demo / "papers").read_text("utf-8") == "in the way"
