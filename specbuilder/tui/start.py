"""What is read before a job can be opened: first the names of the jobs, then the catalogue and the reasoning."""

from __future__ import annotations

import os
import platform
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from specbuilder.storage.job_files import job_files
from specbuilder.storage.places import default_jobs_path
from specbuilder.wording.jobs import rules_unreadable

if TYPE_CHECKING:
    from .opening import Floor, Opening


class Start:
    """Where jobs and rules stand, and which counter this is."""

    def __init__(self, jobs: Path | None, rules: Path | None, counter: str) -> None:
        self.jobs = jobs if jobs is not None else default_jobs_path()
        self.rules = rules
        self.counter = counter or platform.node()

    def names(self) -> tuple[str, ...]:
        """Numbers of the jobs, from the names of their files alone: fast, for the first frame."""
        try:
            names = os.listdir(self.jobs)
        except OSError:
            return ()
        return tuple(dict.fromkeys(files.number for files in job_files(self.jobs, names)))

    def last_open(self) -> str:
        """Number of the job that was open last: the one whose journal was written last; empty where there is none."""
        written = dict[float, str]()
        try:
            names = frozenset(os.listdir(self.jobs))
            for files in job_files(self.jobs, names):
                if files.journal_name in names:
                    with suppress(FileNotFoundError):
                        written[files.journal.stat().st_mtime] = files.number
        except OSError:
            pass
        return written[max(written)] if written else ""

    def load(self, floor: Floor) -> Opening | Sequence[str]:
        """Catalogue, folder and desk; or the sentences that say what must be mended. Slow: for a worker."""
        from specbuilder.office.house import House
        from specbuilder.session.ready import gaps
        from specbuilder.storage.jobs import JobsFolder, local_time
        from specbuilder.storage.rules_files import RulesFaults, read_rules, rules_folder
        from specbuilder.wording.ready import gap_lines

        from .desk import Desk
        from .opening import Opening

        try:
            rules = self.rules if self.rules is not None else rules_folder()
            catalogue = read_rules(rules)
        except RulesFaults as error:
            return rules_unreadable(tuple(str(fault) for fault in error.faults))
        if missing := gaps(catalogue):
            return rules_unreadable(gap_lines(missing))
        house = House(JobsFolder(self.jobs, clock=local_time), catalogue, rules)
        return Opening(floor, Desk(house, local_time, self.counter))
