"""The circuits on screen: reached from the ledgers, the check and by key; a row for each run, and more below one."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.circuits import CircuitCode
from specbuilder.tui.clicks import click
from specbuilder.tui.items import OnCircuit, OnOption, OnText, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import width
from specbuilder.tui.screens.circuits import CIRCUITS
from specbuilder.tui.screens.heading import hints
from specbuilder.wording.mains import TITLE

from .bench import counter_on, press
from .circuit_scene import a_job, opened, squeezed, texts, to_circuit, where
from .stage import WINDOWS, on_stage

# --- on the screen


@WINDOWS
async def test_from_the_ledgers_to_a_run_and_back(tmp_path: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(a_job(tmp_path / "jobs", "winter-walkers"), size, plain=plain) as stage:
        screen = await stage.press("enter", "l", "end")
        assert "Circuits: 32 runs, 1 to settle, 10 to mind" in screen
        screen = await stage.press("enter")
        assert "CIRCUITS: 32 runs, 1 to settle, 10 to mind" in screen
        assert "! to settle   * to mind   e: ESTIMATE" in screen
        assert "12 V: 22 runs" in screen
        column = screen.splitlines()[5].index("|") + 1 if size[0] > 100 else 0
        for _ in range(40):
            if "battery-twin-c3)" in (screen := await stage.press("down")):
                break
        cursor = ">" if plain else "►"
        row = next(line for line in screen.splitlines() if f"{cursor}*e" in line[column:])
        assert [part for part in ("400 A", "2 x 95", "0.5 %") if part not in row] == []
        told = squeezed(screen, column)
        assert "(battery-twin-c3): from both main fuses to isolator, 0.6 m one way." in told
        assert "ESTIMATE: cable 2 x 95 mm², carries 528 A; loses 0.06 V (0.5 %) of 1 % at most; computed." in told
        assert "No fuse worked out, the main fuses of both packs protect it." in told
        assert "Mind: no single cable keeps load" in told
        alone = await stage.press("enter")
        assert "combined run of both packs (battery-twin-c3)" in alone
        assert "Enter go back" in alone
        assert f"{cursor}*e" in await stage.press("escape")
        assert "LEDGERS, worst first" in await stage.press("escape")
        assert "Who travels" in await stage.press("escape")


@WINDOWS
async def test_a_run_to_settle_is_marked_by_a_sign_and_says_what(
    tmp_path: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(a_job(tmp_path / "jobs", "half-done-family"), size, plain=plain) as stage:
        screen = await stage.press("enter", *["right"] * 8, "end", "up")
        assert "Circuits: 13 runs, 8 to settle, 0 to mind" in screen
        screen = await stage.press("enter", "down", "down", "down")
        assert f"{'>' if plain else '►'}!e" in screen
        column = screen.splitlines()[5].index("|") + 1 if size[0] > 100 else 0
        assert "To settle: what the fuse must break is not known, because no leisure battery" in squeezed(
            screen, column
        )


@WINDOWS
async def test_what_protects_the_230_v_side_stands_at_the_end(
    tmp_path: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(a_job(tmp_path / "jobs", "kettle-on-small-pack"), size, plain=plain) as stage:
        await stage.press("enter", "i")
        seen = "\n".join(await stage.read_through())
        assert TITLE.upper() in seen
        told = squeezed(seen, stage.screen().splitlines()[5].index("|") + 1 if size[0] > 100 else 0)
        assert "! To settle: 30 mA two-pole residual-current switch (RCD), type A" in told
        assert "* Mind: bonding of 4 mm²" in told
        assert "= Holds: two-pole breaker for every circuit" in told
        assert "inspects and tests" in told


def test_what_is_true_of_nearly_every_run_marks_no_row_and_is_said_once(tmp_path: Path) -> None:
    counter = opened(tmp_path, "winter-walkers")
    press(counter, "i")
    backed = [c for c in counter.report.circuits if any(p.code is CircuitCode.BREAKING_BACKED_UP for p in c.problems)]
    assert len(backed) > 5
    minded = [row.text for row in counter.top.shown if row.text.startswith(f" {counter.marks.mind}e")]
    assert 0 < len(minded) < len(backed)
    assert texts(counter).count("Mind, of all rows:") == 1
    assert f"{len(backed)} runs have fuses that break less" in texts(counter)
    to_circuit(counter, backed[0].label)
    assert "breaks the rest, if the electrician confirms" in texts(counter), "its own figures stand with the run"


@pytest.mark.parametrize("size", [(60, 18), (80, 24), (140, 40)])
async def test_every_row_can_be_stood_on_and_its_first_lines_stay_in_view(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with on_stage(a_job(tmp_path / "jobs", "vanload-on-hushwain"), size) as stage:
        screen = await stage.press("enter", "i")
        labels = [line.label for line in stage.report().circuits if not line.is_mains]
        for label in labels:
            screen = await stage.press("down")
            assert f"({label})" in screen.replace("\n", " "), label
            assert "Fuse " in screen or "No fuse" in screen


@pytest.mark.parametrize(("size", "least"), [((100, 30), 34), ((120, 30), 58), ((140, 40), 78), ((200, 60), 78)])
async def test_a_page_that_is_opened_has_room_to_be_read(tmp_path: Path, size: tuple[int, int], least: int) -> None:
    async with on_stage(a_job(tmp_path / "jobs", "vanload-on-hushwain"), size) as stage:
        await stage.press("enter", "l")
        counter = stage.app.counter
        assert counter.side_cells >= least
        assert counter.main_cells >= 55, "the walk beside it can still be read"
        narrow = counter.side_cells
        await stage.press("escape", "l", "enter", "w", "escape", "escape")
        assert counter.side_cells <= narrow
        assert not [row.text for row in counter.main.shown if width(row.text) > counter.main_cells]


# --- keys, clicks, widths


def test_the_key_opens_them_from_the_walk_and_the_ledgers_key_leads_back(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    for way in (("i",), ("right", "i"), ("l", "i"), ("l", "enter", "i"), ("o", "i"), (*["right"] * 8, "i")):
        press(counter, *way)
        assert where(counter) is Where.CIRCUITS, way
        press(counter, "l")
        assert where(counter) is Where.LEDGERS
        counter.close_all()


def test_enter_on_the_part_goes_to_its_row(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "i")
    to_circuit(counter, "side-galley-c1")
    press(counter, "enter", "end")
    assert counter.top.at == OnOption(next(c.option for c in counter.report.circuits if c.label == "side-galley-c1"))
    press(counter, "enter")
    assert not counter.sides
    assert counter.walk is not None
    assert counter.walk.step.value == "kitchen"


def test_a_click_stands_on_a_row_and_a_second_one_opens_it(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "l")
    for _ in range(2):
        click(counter, None, CIRCUITS, side=True)
    assert where(counter) is Where.CIRCUITS
    row = OnCircuit("side-galley-c1")
    click(counter, None, row, side=True)
    assert counter.top.at == row
    assert "Water pump (side-galley-c1): from 12 V panel" in texts(counter)
    click(counter, None, row, side=True)
    assert where(counter) is Where.CIRCUIT


def test_only_the_row_under_the_cursor_is_unfolded(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "i")
    folded = len(counter.top.shown)
    press(counter, "down")
    assert len(counter.top.shown) == folded + counter.top.kept()
    assert counter.top.kept() >= 3
    press(counter, "end")
    assert len(counter.top.shown) == folded
    assert counter.top.kept() == 0


def test_what_goes_away_under_the_page_leaves_the_cursor_on_a_line(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "/", *"television", "enter", "enter")
    known = {line.label for line in counter.report.circuits}
    assert "television-c1" in known
    press(counter, "i")
    to_circuit(counter, "television-c1")
    press(counter, "enter")
    assert where(counter) is Where.CIRCUIT
    counter.do(Act.UNDO)
    counter.lay()
    counter.close()
    assert "television-c1" not in {line.label for line in counter.report.circuits}
    press(counter, "i")
    assert counter.top.at in counter.top.items()


def test_without_a_cable_there_is_no_line_and_the_page_is_empty_of_rows(tmp_path: Path) -> None:
    counter = counter_on(tmp_path)
    press(counter, "n", "2", "l")
    assert CIRCUITS not in counter.top.items()
    press(counter, "escape", "i")
    assert where(counter) is Where.CIRCUITS
    assert not [item for item in counter.top.items() if isinstance(item, OnCircuit)]
    press(counter, "enter", "down", "end")


@pytest.mark.parametrize("cells", [38, 48, 58, 69, 78, 118, 160])
def test_every_line_fits(tmp_path: Path, cells: int) -> None:
    counter = opened(tmp_path, "vanload-on-hushwain")
    press(counter, "i")
    counter.side_cells = cells
    counter.lay()
    for _ in range(len(counter.top.items())):
        seen = [*counter.top.shown, *counter.top.head(cells), *counter.top.foot(cells)]
        assert not [row.text for row in seen if width(row.text) > cells]
        rows = [row.text for row in counter.top.shown if isinstance(row.item, OnCircuit)]
        assert len(rows) == len(counter.report.circuits)
        assert all("A" in row for row in rows)
        press(counter, "down")
    items = counter.top.items()
    assert len(items) == len(set(items)), "the cursor never stands on two lines at once"


def test_where_there_is_room_a_row_says_all_of_it(tmp_path: Path) -> None:
    counter = opened(tmp_path, "vanload-on-hushwain")
    press(counter, "i")
    counter.side_cells = 150
    counter.lay()
    (row,) = (row.text for row in counter.top.shown if row.item == OnCircuit("inverter-3000-c1"))
    for cell in ("inverter-3000-c1", "inverter feed", "284.1 A", "120 mm², 105 °C", "400 A class T, 125 V", "0.08 V"):
        assert cell in row


def test_enter_is_hinted_where_it_does_something(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "i")
    assert isinstance(counter.top.at, OnWord)
    assert "Enter" not in hints(counter.top, 200).text
    press(counter, "down")
    assert "Enter open" in hints(counter.top, 200).text
    press(counter, "end")
    assert isinstance(counter.top.at, OnText)
    assert "Enter" not in hints(counter.top, 200).text


# --- the details of an option


def test_the_details_of_a_choice_tell_its_cables(tmp_path: Path) -> None:
    counter = opened(tmp_path, "winter-walkers")
    press(counter, *["right"] * 6)
    for option, said in (
        ("battery-twin", "Cable, combined run of both packs: 2 x 95 mm², no fuse of its own (ESTIMATE)."),
        ("battery-twin", "Cable, battery main, first pack: 95 mm², fuse 250 A class T, 125 V (ESTIMATE)."),
        ("hook-up-bundle", "Cable, bonding: 4 mm², no fuse of its own."),
    ):
        counter.go_to(next(OnOption(c.option) for c in counter.report.spec.choices if c.option == option))
        press(counter, "d")
        counter.side_cells = 120
        counter.lay()
        assert said in texts(counter)
        press(counter, "escape")


def test_the_details_of_a_choice_with_something_to_settle_say_so(tmp_path: Path) -> None:
    counter = opened(tmp_path, "half-done-family")
    counter.go_to(next(OnOption(c.option) for c in counter.report.spec.choices if c.option == "side-galley"))
    press(counter, "d")
    counter.side_cells = 120
    counter.lay()
    assert "Cable, water pump: 2.5 mm², fuse 7.5 A blade (ESTIMATE); to settle, see the circuits." in texts(counter)
