"""Runs line commands in this process, on a small firm with one van and seven parts."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from specbuilder.cli.main import main

RULES = Path(__file__).parent / "rules"
GLANCE = "£984 to £3,792 VAT in, van not included; 522 to 614 kg left (ESTIMATE); 2 undecided; 2 not known; 0 broken."
"""The last line on the job of the fixture ``job`` as it stands there."""


@dataclass(frozen=True, slots=True)
class Said:
    """What a command left behind."""

    code: int
    out: tuple[str, ...]
    err: tuple[str, ...]


class Counter:
    """A command line with its own jobs folder."""

    def __init__(self, folder: Path, capture: pytest.CaptureFixture[str], rules: Path = RULES) -> None:
        self.folder = folder
        self.jobs = folder / "jobs"
        self.rules = rules
        self._capture = capture

    def __call__(self, *words: str) -> Said:
        self._capture.readouterr()
        code = main(["--jobs", str(self.jobs), "--rules", str(self.rules), *words])
        out, err = self._capture.readouterr()
        return Said(code, tuple(out.splitlines()), tuple(err.splitlines()))
