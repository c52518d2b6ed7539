"""U12: the screen turned round. Nothing private on it, no slip that leaves it, and the same paper each time."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from specbuilder.documents.sheets.customer import customer_copy
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import NameCustomer, SetNote, WriteNote
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.tui.clicks import click
from specbuilder.tui.counter import Counter
from specbuilder.tui.ink import DARK, LIGHT
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import width
from specbuilder.wording.quantities import money
from tests.office.scene import Scene

from .bench import KEYS, counter_on, edits, press, spec, too_wide, typed
from .hand_made import at_once
from .house_scene import set_clock
from .stage import WINDOWS, Stage, on_stage

PRIVATE = ("CASH ONLY 4711", "MARGIN IS 41", "07700900123", "BRING THE CAKE", "SLOW PAYER")
GALLEY = OptionId("side-galley")


@pytest.fixture
def scene(empty: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch) -> Scene:
    """A quoted job with private words wherever a seller may write them."""
    made = Scene(empty, catalogue)
    set_clock(made, monkeypatch)
    made.edit(
        WriteNote(note=PRIVATE[0]),
        NameCustomer(name="The Saturday family", contact=PRIVATE[2]),
        SetNote(option=GALLEY, note=PRIVATE[1]),
    )
    made.quote()
    made.record(Record(kind=RecordKind.CALL, at=made.at(), by="the counter", words=PRIVATE[3], due="2031-05-01"))
    made.edit(WriteNote(note=f"{PRIVATE[0]} {PRIVATE[4]}"))
    return made


def paper_of(scene: Scene, suffix: str) -> Path:
    return scene.folder / "papers" / f"{scene.number}-r1" / f"{scene.number}-r1-customer{suffix}"


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
async def test_u12_turned_round_printed_and_back(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    before = scene.spec()
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await stage.press("enter")
        await stage.found()
        stage.presses = 0
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
        assert scene.number not in screen, "no number, no other job"
        await stage.press("p", "enter")
        assert "Your copy is written" in await stage.found()
        first = {suffix: paper_of(scene, suffix).read_bytes() for suffix in (".pdf", ".txt")}
        assert "Quote" in first[".txt"].decode()
        screen = await stage.press("escape")
        assert "Any other key stays" in screen
        assert stage.app.counter.top.where is Where.CUSTOMER, "Escape alone stays"
        screen = await stage.press("enter")
        assert stage.presses == 5
        assert stage.app.counter.top.where is not Where.CUSTOMER
        await stage.press("c", "p", "enter")
        await stage.found()
        assert {suffix: paper_of(scene, suffix).read_bytes() for suffix in first} == first, "two prints are identical"
        for words in PRIVATE:
            assert words not in first[".txt"].decode()
        await stage.press("escape", "enter")
        assert stage.spec() == before
    assert scene.spec() == before


@WINDOWS
async def test_no_private_word_is_on_any_page(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await stage.press("enter")
        await stage.found()
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


@WINDOWS
async def test_twenty_other_keys_stay_and_change_nothing(scene: Scene, size: tuple[int, int], plain: bool) -> None:
    """Whatever is pressed behind Escape, but Enter; F9, F1 and their letters open lists of this place alone."""
    async with on_stage(scene.folder, size, plain=plain) as stage:
        await stage.press("enter")
        await stage.found()
        before, files = stage.spec(), sorted(path.name for path in scene.folder.rglob("*"))
        await stage.press("c")
        pick = random.Random(20311)
        keys = [key for key in KEYS if key not in ("enter", "escape", "f9", "f1", "question_mark", "p")]
        for key in pick.sample(keys, 20):
            await stage.press("escape", typed(key))
            assert stage.app.counter.top.where is Where.CUSTOMER, key
            await stage.press("enter")
            assert stage.app.counter.top.where is Where.CUSTOMER, f"Enter behind {key}"
        assert stage.spec() == before
        assert sorted(path.name for path in scene.folder.rglob("*")) == files


def shut(folder: Path, *keys: str) -> Counter:
    counter = counter_on(folder, runner=at_once)
    press(counter, "enter", *keys, "c")
    assert counter.top.where is Where.CUSTOMER
    return counter


@pytest.mark.parametrize("key", [key for key in KEYS if key not in ("enter", "escape")])
def test_every_other_key_behind_escape_stays(demo: Path, key: str) -> None:
    counter = shut(demo)
    press(counter, "escape", typed(key))
    while counter.top.where in (Where.ACTIONS, Where.KEYS):
        press(counter, "escape")
    assert counter.top.where is Where.CUSTOMER
    press(counter, "enter")
    assert counter.top.where is Where.CUSTOMER
    assert edits(counter) == 0
    press(counter, "escape", "enter")
    assert counter.top.where is not Where.CUSTOMER


@pytest.mark.parametrize(
    "keys", [("l",), ("o",), ("i",), ("p",), ("right", "right", "d"), ("f",), ("l", "enter"), ("t",), ("v",)]
)
def test_it_opens_from_anywhere_in_a_job_and_leads_back_there(demo: Path, keys: tuple[str, ...]) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", *keys)
    was = counter.top
    press(counter, "f8" if was.entry is not None else "c")
    assert counter.top.where is Where.CUSTOMER
    press(counter, "escape", "enter")
    assert counter.top is was


def test_the_mouse_leaves_by_two_clicks_in_two_corners(demo: Path) -> None:
    counter = shut(demo)

    def hot() -> dict[object, range]:
        """What can be clicked on the last line, and in which columns."""
        found, column = dict[object, range](), 0
        for bit in counter.top.shown[-1].bits:
            if bit.hot is not None:
                found[bit.hot] = range(column, column + width(bit.text))
            column += width(bit.text)
        return found

    first = hot()[Act.BACK]
    click(counter, Act.BACK, None, side=True)
    assert counter.top.where is Where.CUSTOMER
    second = hot()[Act.ENTER]
    assert not set(first) & set(second), "a double click on the first one stays"
    click(counter, Act.ENTER, None, side=True)
    assert counter.top.where is not Where.CUSTOMER


def test_a_second_customer_view_is_not_laid_over_the_first(demo: Path) -> None:
    counter = shut(demo)
    press(counter, "f9", "f8")
    assert counter.top.where is Where.CUSTOMER
    assert len(counter.sides) == 1


def test_a_mistake_of_the_program_does_not_show_the_sellers_screens(demo: Path) -> None:
    counter = shut(demo)
    counter.mistaken(ValueError("something"))
    assert counter.top.where is Where.CUSTOMER


async def test_what_was_said_last_is_not_seen_and_f9_turns_the_ground(scene: Scene) -> None:
    async with on_stage(scene.folder) as stage:
        await stage.press("enter")
        await stage.found()
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


def test_what_was_replaced_is_not_given_out_as_a_copy(scene: Scene) -> None:
    scene.begin_next()
    scene.quote()
    counter = counter_on(scene.folder, runner=at_once)
    opening = counter.opening
    assert opening is not None
    opening.look_at(scene.number, 1)
    press(counter, "c", "p", "enter")
    assert not paper_of(scene, ".pdf").exists()
    assert "2" in "".join(line.text for line in counter.top.shown[-1:])


@pytest.mark.parametrize(
    ("state", "words"), [(JobState.DRAFT, "draft, no offer yet"), (JobState.ORDERED, "order, signed")]
)
def test_the_state_of_the_job_stands_on_it(
    empty: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch, state: JobState, words: str
) -> None:
    made = Scene(empty, catalogue)
    set_clock(made, monkeypatch)
    if state is JobState.ORDERED:
        made.order()
    counter = shut(made.folder)
    assert spec(counter).state is state
    assert words in "".join(line.text for line in counter.top.head(79))


def test_a_copy_that_the_disk_does_not_take_says_so_and_stays(demo: Path) -> None:
    counter = shut(demo)
    (demo / "papers").write_text("in the way", "utf-8")
    press(counter, "p", "enter")
    assert "could not be written" in counter.top.shown[-1].text
    assert counter.top.where is Where.CUSTOMER
    assert (demo / "papers").read_text("utf-8") == "in the way"
