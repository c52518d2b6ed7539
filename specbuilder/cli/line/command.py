"""One line command as it is typed: name, one line of help, an example, and what it takes."""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

Arguments: TypeAlias = Callable[[ArgumentParser], None]
"""Adds what a command takes to its parser."""

FILE = "a spec file, the number of a job, or NUMBER@REVISION to look at that one"
JOB = "the number of a job"
THING = (
    "an option by its id or name (OPTION, OPTION@left, OPTION*2), a line of the brief (adults=2), "
    "customer=NAME, a field of the real van (vin_tail=..., year=...), or of a choice (OPTION.note=..., "
    "OPTION.mass_kg=... of a part the customer brings)"
)
OUT = "write there and leave FILE as it is"
JSON = "for other programs"
TRY = "show what it would do and change nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """One command."""

    name: str
    says: str
    """What it does, in one line of the help and of README."""
    example: str
    """What is typed behind ``specbuilder NAME``."""
    arguments: Arguments
    told: str = ""
    """More of it, for its own help."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Commands that belong together."""

    title: str
    commands: tuple[Command, ...]


def nothing(_: ArgumentParser) -> None:
    """Of a command that takes no more than the two folders."""


def file_and_json(parser: ArgumentParser) -> None:
    """Of a command that reads one spec."""
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("--json", action="store_true", help=JSON)


def job_only(parser: ArgumentParser) -> None:
    """Of a command about a job as a whole."""
    parser.add_argument("file", metavar="JOB", help=JOB)
