"""Why: a reason leads to the line it is about, and Enter does what the hint line says."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.model.kinds import OptionState
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import OnAnswer, OnFinding, OnGroup, OnOption, OnReading, OnText, OnWay
from specbuilder.tui.keys import Where
from specbuilder.tui.screens.foresight import would_break
from specbuilder.tui.screens.heading import hints

from .bench import counter_on, press, spec
from .conftest import EXAMPLES


def opened(folder: Path, name: str) -> Counter:
    shutil.copy(EXAMPLES / f"{name}.toml", folder / "0152-r1.toml")
    counter = counter_on(folder)
    press(counter, "enter")
    return counter


def hint_line(counter: Counter) -> str:
    return hints(counter.top, 200).text


def to_reason(counter: Counter) -> None:
    """From the first line down to one that leads somewhere."""
    press(counter, "home")
    for _ in range(40):
        if not isinstance(counter.top.at, OnText | OnWay):
            return
        press(counter, "down")
    raise AssertionError("nothing to go to")


def test_enter_on_a_reason_goes_to_its_row_and_opens_its_group(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    press(counter, "/", *"pod galley", "enter", "enter")
    assert counter.top.where is Where.WHY
    before = spec(counter)
    to_reason(counter)
    assert "Enter go there" in hint_line(counter)
    target = counter.top.at
    press(counter, "enter")
    assert spec(counter) == before
    if isinstance(target, OnReading):
        assert counter.top.where is Where.LEDGER
    else:
        assert not counter.sides
        assert counter.main.at == target or isinstance(target, OnGroup)
        assert isinstance(counter.main.at, OnOption | OnAnswer | OnGroup)


def test_every_reason_of_every_blocked_option_leads_somewhere(tmp_path: Path) -> None:
    counter = opened(tmp_path, "saturday-family")
    for option, status in counter.report.options.items():
        if status.state is not OptionState.BLOCKED:
            continue
        counter.why(option)
        counter.lay()
        for target in [item for item in counter.top.items() if not isinstance(item, OnText | OnWay)]:
            counter.why(option)
            counter.lay()
            counter.top.at = target
            press(counter, "enter")
            assert counter.top.where is not Where.WHY, (option, target)
            counter.close_all()


def test_what_the_house_can_do_is_read_and_not_stood_on(tmp_path: Path) -> None:
    counter = opened(tmp_path, "wide-bench-wrong-roof")
    press(counter, *["right"] * 8, "home", "enter")
    assert counter.top.where is Where.WHY
    texts = [row.text for row in counter.top.shown]
    head = texts.index(next(text for text in texts if "WHAT WE CAN DO" in text))
    assert counter.top.shown[head + 1].item is None
    assert "e take it anyway" not in hint_line(counter)


def test_enter_takes_an_open_option_when_nothing_is_in_its_way(tmp_path: Path) -> None:
    counter = opened(tmp_path, "half-done-family")
    opens = [o for o, s in counter.report.options.items() if s.state is OptionState.OPEN]
    option = next(o for o in opens if not would_break(counter, o))
    counter.why(option)
    counter.lay()
    assert "Enter take " in hint_line(counter)
    assert "take it anyway" not in hint_line(counter)
    press(counter, "enter")
    assert spec(counter).has(option)
    assert not counter.sides


@pytest.mark.parametrize("cells", [38, 58, 78])
def test_every_line_of_why_can_be_scrolled_to(tmp_path: Path, cells: int) -> None:
    counter = opened(tmp_path, "wide-bench-wrong-roof")
    for finding in counter.report.findings:
        assert counter.walk is not None
        counter.side_cells = cells
        counter.show(counter.walk.page_of(OnFinding(finding.rule)))
        rows = [row.item is None for row in counter.top.shown if row.text.strip()]
        longest = max(len(run) for run in "".join("x" if empty else " " for empty in rows).split(" "))
        assert longest <= 12
        items = counter.top.items()
        assert len(items) == len(set(items)), "the cursor never stands on two lines at once"
