"""The screen turned round to the customer, and the private words that must never stand on it."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.ids import OptionId
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where
from tests.office.scene import Scene

from .bench import counter_on, press
from .hand_made import at_once

PRIVATE = ("CASH ONLY 4711", "MARGIN IS 41", "07700900123", "BRING THE CAKE", "SLOW PAYER")
GALLEY = OptionId("side-galley")


def paper_of(scene: Scene, suffix: str) -> Path:
    return scene.folder / "papers" / f"{scene.number}-r1" / f"{scene.number}-r1-customer{suffix}"


def shut(folder: Path, *keys: str) -> Counter:
    counter = counter_on(folder, runner=at_once)
    press(counter, "enter", *keys, "c")
    assert counter.top.where is Where.CUSTOMER
    return counter
