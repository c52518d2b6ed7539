"""Jobs for journeys through the life of a job: made by what the office offers, under a clock that stands still."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit, LeaveOut
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Level
from specbuilder.model.report import Report
from specbuilder.office.house import House
from specbuilder.storage.rules_files import read_rules
from tests.conftest import RULES
from tests.office.scene import Scene

from .stage import Stage

FABRIC = OptionId("fabric-moss-weave")
THREE_OPEN: tuple[Edit, ...] = (
    LeaveOut(option=FABRIC),
    AnswerLine(key=BriefKey("parking_limit_mm"), value=None),
    AnswerLine(key=BriefKey("weeks_wanted"), value=None),
)
"""A choice and two answers of the Saturday family's job, taken back."""
OLD_NAME, NEW_NAME = "Diesel air heater, 2 kW", "Air heater, diesel, 2 kW"
OLD_PENCE, NEW_PENCE = 91000, 98000


def set_clock(scene: Scene, monkeypatch: pytest.MonkeyPatch) -> None:
    """The screens have the time of the scene."""
    monkeypatch.setattr("specbuilder.storage.jobs.local_time", scene.clock)


async def opened(stage: Stage) -> Stage:
    """The first job of the list."""
    await stage.press("enter")
    await stage.found()
    stage.presses = 0
    return stage


def old_rules(folder: Path) -> tuple[Path, Catalogue]:
    """The rules of a year ago: another version, a heater that was cheaper and was called otherwise."""
    rules = folder / "old-rules"
    shutil.copytree(RULES, rules)
    firm, heating = rules / "firm.toml", rules / "options" / "heating.toml"
    _swap(firm, f'"{read_rules(RULES).firm.catalogue_version}"', '"2030-03"')
    _swap(heating, f'name = "{NEW_NAME}"', f'name = "{OLD_NAME}"')
    _swap(heating, f"price_net_pence = {NEW_PENCE}", f"price_net_pence = {OLD_PENCE}")
    return rules, read_rules(rules)


def scene_of_old(folder: Path, tmp_path: Path) -> Scene:
    """A house that still works with those."""
    rules, catalogue = old_rules(tmp_path)
    scene = Scene(folder, catalogue)
    scene.house = House(scene.house.jobs, catalogue, rules)
    return scene


def loud(report: Report) -> set[str]:
    """What is broken at STOP or SIGN and not accepted."""
    return {finding.rule for finding in report.broken(Level.STOP, Level.SIGN)}


def _swap(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text, (path, old)
    path.write_text(text.replace(old, new, 1), "utf-8")
