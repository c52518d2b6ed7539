"""A job and its variant laid side by side, and what stands in their files."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where

from .bench import catalogue as shipped
from .bench import counter_on, press
from .hand_made import at_once

AWNING, TOW_BAR = OptionId("awning-body-rail"), OptionId("tow-bar")


def stored(folder: Path, number: str) -> Spec:
    """The spec as it stands in the job's file."""
    return read_spec_file(JobsFolder(folder).files(number).spec, shipped()).spec


def options(one: Spec) -> set[str]:
    return {choice.option for choice in one.choices}


def counter_at(folder: Path) -> Counter:
    """A counter whose searches come at once, with the only job open."""
    counter = counter_on(folder, runner=at_once)
    press(counter, "enter")
    return counter


def with_variant(folder: Path, *keys: str) -> Counter:
    """A job and its variant, which is open and changed by these keys; both side by side."""
    counter = counter_at(folder)
    press(counter, "v", "n", *keys, "v")
    assert counter.top.where is Where.SIDE_BY_SIDE
    counter.painted()
    return counter


def said(counter: Counter) -> str:
    return "\n".join(line.text for line in (*counter.top.head(79), *counter.top.shown))
