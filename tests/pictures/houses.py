"""Jobs folders for pictures: made by what the office offers, under a clock that stands still."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from unittest.mock import patch

from specbuilder.storage.rules_files import read_rules
from tests.conftest import RULES
from tests.journeys.conftest import EXAMPLES, JOBS
from tests.journeys.house_scene import scene_of_old
from tests.office.scene import Scene

NOON = datetime(2031, 4, 14, 12, 0, tzinfo=UTC)
A_YEAR = 370


@contextmanager
def noon(clock: Callable[[], datetime] = lambda: NOON) -> Iterator[None]:
    """The screens have this time."""
    with patch("specbuilder.storage.jobs.local_time", clock):
        yield


def empty(folder: Path) -> datetime:
    """Nobody has used it."""
    return NOON


def demo(folder: Path) -> datetime:
    """Three jobs of the examples."""
    folder.mkdir(parents=True)
    for number, name in JOBS.items():
        shutil.copy(EXAMPLES / f"{name}.toml", folder / f"{number}-r1.toml")
    return NOON


def long_names(folder: Path) -> datetime:
    """Three jobs of people with names as long as a file may have them."""
    demo(folder)
    for path in folder.glob("*.toml"):
        text = path.read_text("utf-8")
        name = re.sub(r'^name = ".*"$', f'name = "{("Long name " * 12).strip()}"', text, count=1, flags=re.MULTILINE)
        path.write_text(name, "utf-8")
    return NOON


def half_done(folder: Path) -> datetime:
    """One job, with much that is open."""
    folder.mkdir(parents=True)
    shutil.copy(EXAMPLES / "half-done-family.toml", folder / "0151-r1.toml")
    return NOON


def unreadable(folder: Path) -> datetime:
    """A job with a slip of the pen in its file."""
    half_done(folder)
    path = folder / "0151-r1.toml"
    path.write_text(path.read_text("utf-8").replace("adults = ", 'adults = "two" # ', 1), "utf-8")
    return NOON


def _scene(folder: Path) -> Scene:
    return Scene(folder, read_rules(RULES))


def draft(folder: Path) -> datetime:
    """One job that can be quoted."""
    return _scene(folder).now


def quoted(folder: Path) -> datetime:
    """It is quoted."""
    scene = _scene(folder)
    scene.quote()
    return scene.now


def ordered(folder: Path) -> datetime:
    """It is signed and building."""
    scene = _scene(folder)
    scene.order()
    scene.pass_holds("H0", "H1", "H2")
    return scene.now


def changed(folder: Path) -> datetime:
    """A change of what was signed is drawn up."""
    scene = _scene(folder)
    scene.order()
    scene.pass_holds("H0", "H1", "H2")
    scene.begin_next()
    return scene.now


def old(folder: Path) -> datetime:
    """A quote of a year ago, under the rules of then."""
    folder.parent.mkdir(parents=True, exist_ok=True)
    scene = scene_of_old(folder, folder.parent)
    scene.quote()
    scene.days_later(A_YEAR)
    return scene.now


def two_variants(folder: Path) -> datetime:
    """A job and a variant of it are made by the keys of the scene."""
    folder.mkdir(parents=True)
    shutil.copy(EXAMPLES / "saturday-family.toml", folder / "0101-r1.toml")
    return NOON
