"""Open things: an unknown is never hidden, whatever else is wrong, and every place tells the same numbers."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.tui.items import OnFinding
from specbuilder.wording.glance import counts

from .bench import counter_on, press
from .conftest import EXAMPLES


def test_what_is_broken_hides_nothing_that_is_open(tmp_path: Path) -> None:
    shutil.copy(EXAMPLES / "half-done-family.toml", tmp_path / "0152-r1.toml")
    counter = counter_on(tmp_path)
    press(counter, "enter", "o")
    before = {line.item for line in counter.top.shown}
    assert len(before) > 5
    press(counter, "escape", "/", *"pod galley", "enter", "enter", "e")
    _, _, broken, _ = counts(counter.report)
    assert broken
    press(counter, "o")
    items = {line.item for line in counter.top.shown}
    assert len([item for item in items if isinstance(item, OnFinding)]) == broken
    assert len(items) - broken >= len(before) - broken - 2
    assert "Nothing is open" not in "".join(line.text for line in counter.top.shown)
    undecided, unknown, _, _ = counts(counter.report)
    assert len(items) == undecided + unknown + broken
    assert counter.walk is not None
    assert f"({undecided + unknown})" in counter.walk.third(40)[0].text
