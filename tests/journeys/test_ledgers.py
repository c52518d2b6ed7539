"""Inside a ledger: what the footer offers works on the line, and a note is not called broken."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import OnGroup, OnOption, OnReading, OnText
from specbuilder.tui.keys import Where
from specbuilder.tui.screens.heading import hints
from specbuilder.tui.screens.ledgers import LedgerPage, LedgersPage
from specbuilder.wording.readings import is_noted

from .bench import press
from .circuit_scene import opened


def hint_line(counter: Counter) -> str:
    return hints(counter.top, 200).text


def test_the_footer_offers_only_what_works_on_the_line(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    for ledger in counter.report.readings:
        counter.show(LedgerPage(counter, ledger))
        for item in counter.top.items():
            counter.top.at = item
            assert ("Enter go there" in hint_line(counter)) == isinstance(item, OnOption | OnGroup)
            if isinstance(item, OnText):
                press(counter, "enter")
                assert (counter.top.where, counter.top.at) == (Where.LEDGER, item), "a line to read leads nowhere"
        offered = "w why" in hint_line(counter)
        press(counter, "w")
        assert (counter.top.where is Where.WHY) == offered
        assert offered or counter.message
        counter.close_all()


def test_why_of_what_holds_says_that_it_holds(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    held = next(r for r in counter.report.readings.values() if r.applies and r.verdict is Verdict.HOLDS)
    for page in (LedgersPage(counter), LedgerPage(counter, held.id)):
        counter.show(page)
        if isinstance(page, LedgersPage):
            page.at = OnReading(held.id)
        press(counter, "w")
        assert counter.top is page
        assert counter.message.endswith("it holds, nothing needs explaining")


@pytest.mark.parametrize("name", ["off-grid-pair", "right-door-muddle", "vanload-on-hushwain", "winter-walkers"])
def test_a_note_has_the_mark_of_minding_and_is_not_called_broken(tmp_path: Path, name: str) -> None:
    counter = opened(tmp_path, name)
    press(counter, "l")
    noted = 0
    for row in counter.top.shown:
        if not isinstance(row.item, OnReading):
            continue
        reading = counter.report.readings[LedgerId(row.item.ledger)]
        loud = reading.verdict is Verdict.BROKEN and counter.catalogue.ledgers[reading.id].level is not Level.NOTE
        assert row.text.startswith(f" {counter.marks.broken}") == loud
        assert ("broken" in row.text) == loud
        if is_noted(counter.catalogue, reading):
            noted += 1
            assert row.text.startswith(f" {counter.marks.mind}")
            assert "note: " in row.text
    assert noted == sum(is_noted(counter.catalogue, r) for r in counter.report.readings.values() if r.applies)
