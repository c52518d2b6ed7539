"""The keys of the twelve scenarios lead to the same spec in a small window, a wide one and the narrowest."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.spec import Spec
from tests.office.scene import Scene

from .conftest import EXAMPLES
from .house_scene import THREE_OPEN, set_clock
from .stage import SMALL, WIDE, on_stage

pytestmark = pytest.mark.long

NARROW = (60, 18)
FOUND = "..."
"""Not a key: what is searched has come to its end."""

KEYS: dict[str, tuple[str, ...]] = {
    "u1": ("n", "2", "enter", "2", "enter", "'9 6'", "enter", "n", "4", "n", "n", "n", "2"),
    "u2": ("/", "'fra'", "enter", "enter", FOUND, "1"),
    "u3": ("t", "/", "'tor'", "enter", "enter", FOUND, "enter", "escape"),
    "u4": ("/", "'tow'", "enter", "enter", "/", "'laptop'", "enter", "-", "u", "u", "r"),
    "u5": (
        "v",
        "n",
        "/",
        "'pod'",
        "enter",
        "enter",
        FOUND,
        "1",
        "/",
        "'awn'",
        "enter",
        "-",
        "v",
        FOUND,
        "left",
        "enter",
    ),
    "u6": ("/", "'cei'", "enter", "'23500'", "enter", "w", FOUND, "1", FOUND),
    "u7": ("o", *["enter", "1", "enter"] * 3, "escape", "p", "s", "end", "enter", FOUND),
    "u8": ("/", "'lon'", "enter", "enter", FOUND, "enter"),
    "u9": ("/", "'fri'", "enter", "y", "'16'", "enter", "'45'", "enter", "enter", "'0306'", "enter"),
    "u10": ("/", "'ind'", "enter", "enter", FOUND, "1", "p", "s", "enter", FOUND),
    "u11": ("p", "4", FOUND, "/", "'hea'", "enter", "escape", "escape"),
    "u12": ("c", "p", "enter", FOUND, "escape", "enter"),
}


def prepared(name: str, folder: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch) -> None:
    """The jobs a scenario begins with."""
    if name in ("u7", "u10", "u11", "u12"):
        scene = Scene(folder, catalogue)
        steps: dict[str, Callable[[], None]] = {"u7": lambda: scene.edit(*THREE_OPEN), "u10": scene.order}
        steps.get(name, scene.quote)()
        set_clock(scene, monkeypatch)
    elif name != "u1":
        folder.mkdir()
        shutil.copy(EXAMPLES / "saturday-family.toml", folder / "0147-r1.toml")


def timeless(spec: Spec) -> Spec:
    """Without the times of day at which things were done, which no window decides."""
    return replace(
        spec,
        choices=tuple(replace(choice, at="") for choice in spec.choices),
        records=tuple(replace(record, at="") for record in spec.records),
    )


async def made(name: str, folder: Path, size: tuple[int, int]) -> Spec:
    """The spec that the keys of a scenario lead to."""
    async with on_stage(folder, size) as stage:
        if name != "u1":
            await stage.press("enter")
            await stage.found()
        for key in KEYS[name]:
            await (stage.found() if key == FOUND else stage.press(key))
        return timeless(stage.spec())


@pytest.mark.parametrize("name", KEYS)
async def test_the_keys_of_a_scenario_give_the_same_spec_at_every_size(
    name: str, tmp_path: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch
) -> None:
    specs: list[Spec] = []
    for size in (SMALL, WIDE, NARROW):
        folder = tmp_path / f"{size[0]}"
        prepared(name, folder, catalogue, monkeypatch)
        specs.append(await made(name, folder, size))
    assert specs[0] == specs[1]
    assert specs[0] == specs[2]
    assert specs[0].number
