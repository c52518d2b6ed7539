"""Laws of every screen: nothing wider than its window, nothing told by colour alone, no empty page that is mute."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Sequence
from datetime import datetime
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from rich.style import Style

from specbuilder.tui.counter import Counter
from specbuilder.tui.ink import COLOURLESS, DARK, LIGHT, SIXTEEN, Ink, Look
from specbuilder.tui.line import EMPTY, Line
from specbuilder.tui.marks import SHAPES
from specbuilder.tui.screen import CounterScreen
from tests.journeys.bench import catalogue, counter_on, lines, press, too_wide
from tests.journeys.stage import on_stage
from tests.pictures.houses import half_done
from tests.pictures.scenes import SCENES, Scene
from tests.pictures.stretched import stretched

WIDTHS = (59, 78, 87, 139, 199)
"""What a page may have in windows of 60, 80, 140 and 200 columns."""
TOLD = (
    "chosen", "follows", "open", "blocked", "checking", "decided", "known", "cannot tell", "needs ", "broken", "clash",
    "holds", "note", "STOP", "SIGN", "NOTE", "theirs", "not taken", "passed", "fitted", "settle", "Nothing", "looking",
    "is lacking", "Wait", "read", "cannot", "working",
)  # fmt: skip
"""Words that say what an ink says."""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Callable[[Path], datetime]], Path]:
    """Folders of jobs, each made once."""

    @cache
    def make(house: Callable[[Path], datetime]) -> Path:
        folder = tmp_path_factory.mktemp("houses") / "jobs"
        house(folder)
        return folder

    return make


def opened(scene: Scene, folder: Path, tmp: Path, *, long: bool = False) -> Counter:
    """The scene on a counter without the toolkit; what is searched beside the screens stays away."""
    work = tmp / "jobs"
    shutil.rmtree(work, ignore_errors=True)
    if folder.exists():
        shutil.copytree(folder, work)
    counter = counter_on(work, stretched(catalogue()) if long else None)
    press(counter, *scene.presses)
    return counter


IN_THE_ONE_CHECK = (
    "jobs", "brief", "walk-kitchen", "walk-check", "why-blocked", "ledgers", "circuits", "details", "papers-change",
    "customer-1", "older-rules", "walk-long",
)  # fmt: skip
EVERY = pytest.mark.parametrize(
    "scene",
    [
        pytest.param(scene, id=scene.name, marks=() if scene.name in IN_THE_ONE_CHECK else pytest.mark.long)
        for scene in SCENES
    ],
)
"""Some of the screens are looked at by the one check, all of them by ``-m long``."""


@EVERY
def test_no_line_is_wider_than_its_window_and_no_ink_says_what_neither_mark_nor_word_does(
    scene: Scene, made: Callable[..., Path], tmp_path: Path
) -> None:
    counter = opened(scene, made(scene.house), tmp_path)
    for cells in WIDTHS:
        assert too_wide(counter, cells) == []
    assert _mute(lines(counter, 87)) == []


@pytest.mark.long
@pytest.mark.parametrize("scene", SCENES, ids=lambda scene: scene.name)
def test_names_of_five_hundred_letters_and_prices_of_millions_break_no_line(
    scene: Scene, made: Callable[..., Path], tmp_path: Path
) -> None:
    counter = opened(scene, made(scene.house), tmp_path, long=True)
    for cells in WIDTHS:
        assert too_wide(counter, cells) == []
        if counter.walk is not None and not counter.trying:
            glance = counter.walk.heading(cells)[1].text
            assert "broken" in glance, (cells, glance)


def _mute(rows: Sequence[Line]) -> list[str]:
    """Lines one can stand on of which only the ink says something; what is wrapped under a line is part of it."""
    return [
        row.text for before, row in pairwise((EMPTY, *rows)) if row.item not in (None, before.item) and _is_mute(row)
    ]


def _is_mute(row: Line) -> bool:
    """True where an ink means something, and neither a mark nor a word of the line says what."""
    speaks = any(bit.ink in (Ink.MINE, Ink.DOUBT, Ink.CARE) and bit.text.strip() for bit in row.bits)
    marks = {SHAPES.chosen, SHAPES.open, SHAPES.follows, SHAPES.blocked, SHAPES.doubt, SHAPES.broken, SHAPES.holds}
    return speaks and not marks & set(row.text[:4]) and not any(word in row.text for word in TOLD)


EMPTY_PAGES: tuple[tuple[str, str], ...] = (
    ("jobs-none", "Press n when"),
    ("jobs-find-none", "Esc clears them"),
    ("find-begun", "Type a few letters"),
    ("find-nothing", "Fewer letters find more"),
    ("actions-nothing", "Fewer letters find more"),
    ("circuits-none", "the steps kitchen, heating and power"),
    ("open-none", "p shows the papers"),
    ("side-by-side-one", "n makes a variant"),
    ("usual-none", "n goes to the next open thing"),
    ("revisions-none", "one revision only"),
)


@pytest.mark.parametrize(("name", "words"), EMPTY_PAGES, ids=lambda part: part)
def test_an_empty_page_says_what_to_do_next(name: str, words: str, made: Callable[..., Path], tmp_path: Path) -> None:
    scene = next(scene for scene in SCENES if scene.name == name)
    counter = opened(scene, made(scene.house), tmp_path)
    shown = " ".join(row.text.strip() for row in (*counter.top.head(79), *counter.top.shown, *counter.top.foot(79)))
    assert words in f"{shown} {counter.message}"


LOOKS: tuple[Look, ...] = (DARK, LIGHT, SIXTEEN, COLOURLESS)
LOOKED_AT = ("walk-kitchen", "walk-check", "ledgers", "details", "customer-1")


async def test_every_screen_reads_the_same_in_every_look(made: Callable[..., Path]) -> None:
    """With colours, with sixteen and without: the same text, cell by cell."""
    keys = {scene.name: scene.presses for scene in SCENES}
    async with on_stage(made(half_done)) as stage:
        screen = stage.app.screen
        assert isinstance(screen, CounterScreen)
        for name in LOOKED_AT:
            await stage.press(*keys[name])
            texts, styles = zip(*(_painted(screen, look) for look in LOOKS), strict=True)
            assert len(set(texts)) == 1, name
            assert len(set(styles)) >= len(LOOKS) - 1, (
                "the looks are worn; a page without states needs no sixteen colours"
            )
            await stage.press(*["escape", "enter"] * 3, *["escape"] * 3)
            assert stage.app.counter.walk is None


def _painted(screen: CounterScreen, look: Look) -> tuple[str, frozenset[Style | None]]:
    """All that is painted in a look, and how; nothing else happens meanwhile."""
    screen.wear(look)
    rows = [board.render_line(y) for board in screen.boards.values() for y in range(board.size.height)]
    return "\n".join(row.text for row in rows), frozenset(segment.style for row in rows for segment in row)


async def test_without_shapes_every_screen_is_drawn_in_ascii_but_for_units_and_money(made: Callable[..., Path]) -> None:
    keys = {scene.name: scene.presses for scene in SCENES}
    async with on_stage(made(half_done), plain=True) as stage:
        for name in LOOKED_AT:
            shown = await stage.press(*keys[name])
            assert {sign for sign in shown if not sign.isascii()} <= set("£²³°é"), name
            await stage.press(*["escape", "enter"] * 3, *["escape"] * 3)


async def test_a_large_window_keeps_three_panes_and_a_small_one_shows_one_page(made: Callable[..., Path]) -> None:
    async with on_stage(made(half_done), (200, 60)) as stage:
        await stage.press("enter", *["left"] * 9, "home", "l")  # wherever another test has left the job
        screen = await stage.found()
        assert "UNDECIDED, NOT KNOWN" in screen, "what is open stays in view while a page is read"
        assert "Who travels" in screen
        assert stage.app.counter.side_cells >= 78
        await stage.pilot.resize_terminal(60, 18)
        await stage.pilot.pause()
        screen = stage.screen()
        assert "LEDGERS, worst first" in screen
        assert "grown-ups" not in screen, "a page has the low window to itself"
        assert "broken" in screen.splitlines()[1]
        assert "Water days" in await stage.press("escape", "right"), "the worst ledger stands under the walk"
