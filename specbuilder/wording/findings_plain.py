"""Findings on paper: what a level asks for is said in plain words, not by its name."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Level
from specbuilder.model.report import Report

from .findings import finding_line
from .plain import raised
from .states import to_be_said

_BROKEN = {
    Level.STOP: "Must not be built like this",
    Level.SIGN: "Needs the customer's word in writing",
    Level.NOTE: "Tell the customer",
}
"""What a broken rule of a level asks for."""


def plain_line(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """``Tell the customer: The water will be used up before your nights are over. ...``"""
    line = finding_line(catalogue, report, finding)
    level = finding.level
    for head in _heads(level):
        if line.startswith(head):
            return f"{_BROKEN[level]}: {line.removeprefix(head)}"
    return raised(line.removeprefix(f"{level.value}, ").replace("cannot tell yet", "not known yet", 1))


def without_level(text: str) -> str:
    """Words that were accepted, without the name of the level and the verdict in front of them."""
    for level in Level:
        for head in _heads(level):
            text = text.removeprefix(head)
    return text


def _heads(level: Level) -> tuple[str, str]:
    return f"{level.value}, broken: ", f"{level.value}, {to_be_said()}: "
