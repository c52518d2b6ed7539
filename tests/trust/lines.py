"""Line commands in this process: what they said, what they left of every job, and states of one job to begin with."""

from __future__ import annotations

import contextlib
import io
import os
import shutil
from dataclasses import dataclass
from pathlib import Path

from specbuilder.cli.main import main
from specbuilder.cli.output import Exit
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_files import job_files
from specbuilder.storage.job_recovery import JobUnreadableError

from .scene import EXAMPLES, RULES, house_of, stands, told

CODES = frozenset(Exit) - {Exit.OWN_MISTAKE}
SIGN = ("--customer", "M. Hale", "--firm", "the counter", "--place", "premises")
STATES: tuple[tuple[str, tuple[tuple[str, ...], ...]], ...] = (
    ("empty", ()),
    ("draft", (("new", "--from", str(EXAMPLES / "saturday-family.toml")),)),
    ("edited", (("set", "1", "note=They ring on Monday."),)),
    ("quoted", (("quote", "1"),)),
    ("ordered", (("order", "1", *SIGN),)),
    ("changing", (("change", "1"), ("drop", "1", "toilet-portable"))),
    ("recorded", (("record", "1", "promised", "a spare cushion", "--by", "the counter"),)),
    ("changed", (("order", "1", *SIGN),)),
)
"""Job 0001, each state from the one before."""


@dataclass(frozen=True, kw_only=True)
class Said:
    """What a command left behind."""

    code: int
    out: tuple[str, ...]
    err: tuple[str, ...]

    @property
    def own_mistake(self) -> bool:
        """Whether the program met a mistake of its own, or said so with a code it does not document."""
        return self.code not in CODES or any("Traceback" in line for line in (*self.out, *self.err))


def said(jobs: Path, *words: str, rules: Path = RULES) -> Said:
    """Runs one line command."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main(["--jobs", str(jobs), "--rules", str(rules), *words])
    return Said(code=int(code), out=tuple(out.getvalue().splitlines()), err=tuple(err.getvalue().splitlines()))


def states(folder: Path) -> Path:
    """A jobs folder for each state, below this one."""
    jobs = folder / "jobs"
    jobs.mkdir(parents=True)
    for name, steps in STATES:
        for words in steps:
            done = said(jobs, *words)
            assert done.code == 0, (words, done)
        shutil.copytree(jobs, folder / name)
    return folder


def snapshot(jobs: Path) -> dict[str, str]:
    """What every revision of every job would be opened as, and what is kept of it under seal.

    A job that cannot be read stands with its sentence, so that it is never equal to one that can.
    """
    found: dict[str, str] = {}
    house = house_of(jobs)
    if not jobs.is_dir():
        return found
    for files in job_files(jobs, os.listdir(jobs)):
        name = f"{files.number}-r{files.revision}"
        try:
            found[name] = told(stands(house, files))
        except (JobUnreadableError, DiskError) as error:
            found[name] = f"cannot be read: {error}"
    for seal in jobs.glob("*-r*-*/seal.toml"):
        found[seal.parent.name] = "sealed"
    return found


def leftovers(folder: Path) -> list[str]:
    """Names of files that are none of a user's: halves, second names and locks."""
    return sorted(
        str(path.relative_to(folder))
        for path in folder.rglob("*")
        if path.name.endswith((".part", ".old", ".lock")) or path.name.startswith(".")
    )
