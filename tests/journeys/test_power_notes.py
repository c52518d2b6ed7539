"""A ledger of the electrics on screen: its seasons, its months, and what cannot run together stand in its detail."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.model.ids import LedgerId
from specbuilder.session.power_notes import power_notes
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import OnReading
from specbuilder.tui.keys import Where
from specbuilder.wording.power import power_lines

from .bench import catalogue, counter_on, lines, press, spec, too_wide
from .conftest import EXAMPLES


def opened(folder: Path, name: str, ledger: str) -> Counter:
    shutil.copy(EXAMPLES / f"{name}.toml", folder / "0152-r1.toml")
    counter = counter_on(folder)
    press(counter, "enter", "l")
    for _ in range(80):
        if counter.top.at == OnReading(LedgerId(ledger)):
            break
        press(counter, "down")
    press(counter, "enter")
    assert counter.top.where is Where.LEDGER
    return counter


def shown(counter: Counter, cells: int) -> list[str]:
    return [" ".join(line.text.split()) for line in counter.top.lines(cells)]


def told(counter: Counter, ledger: str) -> list[str]:
    found = power_lines(catalogue(), power_notes(catalogue(), spec(counter), LedgerId(ledger)))
    return [" ".join(text.split()) for text in found]


def test_three_seasons_beside_the_days_energy_and_the_nights(tmp_path: Path) -> None:
    for number, ledger in enumerate(("daily-energy", "battery-nights")):
        folder = tmp_path / str(number)
        folder.mkdir()
        counter = opened(folder, "winter-walkers", ledger)
        page = shown(counter, 400)
        assert [text for text in page if text.startswith(("summer ", "three-season ", "winter "))] == [
            "summer 1,702 Wh a day, 6.2 nights with sun and driving counted in",
            "three-season 1,857 Wh a day, 4.2 nights with sun and driving counted in",
            "winter 2,012 Wh a day, 3.1 nights with sun and driving counted in",
        ]
        assert set(told(counter, ledger)) <= set(page)


def test_what_cannot_run_together_is_named(tmp_path: Path) -> None:
    counter = opened(tmp_path, "winter-walkers", "battery-current")
    page = shown(counter, 400)
    assert "- Induction hob, one ring, with Low-watt kettle, 900 W: together 2,700 W, over by 700 W" in page


def test_it_fits_a_narrow_window(tmp_path: Path) -> None:
    counter = opened(tmp_path, "winter-walkers", "battery-nights")
    assert lines(counter, 40)
    assert not too_wide(counter, 40)
