"""What stands behind the words of a command line: house, rules, jobs folder, the spec to read, the target to change."""

from __future__ import annotations

from argparse import Namespace
from importlib.resources.abc import Traversable
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.stand import Stand
from specbuilder.office.house import House
from specbuilder.session.evaluate import evaluate
from specbuilder.session.ready import gaps
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.places import default_jobs_path
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.wording.jobs import rules_unreadable
from specbuilder.wording.ready import gap_lines

from .change import Target
from .opening import opened
from .output import Exit, StopError


def report_of(arguments: Namespace) -> tuple[Catalogue, Report]:
    """The spec in FILE with all that follows, and what it is held against."""
    stand = stand_of(arguments)
    return stand.catalogue, stand.report


def stand_of(arguments: Namespace, *, as_it_was: bool = False) -> Stand:
    """The same as a stand; ``as_it_was`` under the rules it was written with."""
    was = opened(arguments.file, house_of(arguments), as_it_was=as_it_was)
    return Stand(catalogue=was.catalogue, spec=was.spec, report=evaluate(was.catalogue, was.spec))


def target_of(arguments: Namespace) -> Target:
    """What is changed: FILE, or what is written to OUT instead; or nothing, where it is only tried."""
    to = Path(arguments.to) if arguments.to else None
    return Target(house=house_of(arguments), file=arguments.file, to=to)


def house_of(arguments: Namespace) -> House:
    """Jobs and rules."""
    return House(jobs_of(arguments), catalogue_of(arguments), rules_of(arguments))


def catalogue_of(arguments: Namespace) -> Catalogue:
    """The rules of today.

    Raises:
        StopError: they lack what the sums ask for.
    """
    catalogue = read_rules(rules_of(arguments))
    if missing := gaps(catalogue):
        raise StopError(Exit.UNUSABLE, *rules_unreadable(gap_lines(missing)))
    return catalogue


def rules_of(arguments: Namespace) -> Traversable | Path:
    """The folder of the rules."""
    return Path(arguments.rules) if arguments.rules else rules_folder()


def jobs_of(arguments: Namespace) -> JobsFolder:
    """The folder of the jobs."""
    return JobsFolder(Path(arguments.jobs) if arguments.jobs else default_jobs_path())
