"""A jobs folder with a clock that is set by hand, and what tests of it say again and again."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta, timezone
from pathlib import Path

from specbuilder.model.edits import NameCustomer, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Step
from specbuilder.model.spec import Customer, Spec
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.journal import CursorPlace
from specbuilder.storage.lock import Process
from specbuilder.storage.open_job import OpenJob
from tests.storage.scene import CATALOGUE, report_of

NOW = datetime(2031, 4, 14, 10, 2, tzinfo=timezone(timedelta(hours=1)))
GALLEY = Take(option=OptionId("side-galley"))
ASH = NameCustomer(name="M. Ash", contact="")
PLACE = CursorPlace(step=Step.KITCHEN, row="side-galley", typed="half")


class Days:
    """A clock that is set by hand."""

    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> datetime:
        return self.now


def folder(path: Path, clock: Days | None = None, process: Process | None = None) -> JobsFolder:
    return JobsFolder(path / "jobs", clock=clock or Days(), process=process)


def saved(job: OpenJob, spec: Spec) -> Spec:
    job.save(CATALOGUE, spec, report_of(spec))
    return spec


def with_name(spec: Spec, name: str) -> Spec:
    return replace(spec, customer=Customer(name=name))


def left(path: Path, *, name: str = "M. Ash", clock: Days | None = None) -> JobsFolder:
    """A folder with one job that was left in order."""
    jobs = folder(path, clock)
    job = jobs.create("counter 1")
    job.append(NameCustomer(name=name, contact=""))
    saved(job, with_name(job.start, name))
    job.close()
    return jobs


def files(jobs: JobsFolder) -> list[str]:
    return sorted(path.name for path in jobs.path.iterdir())


def sentences(job: OpenJob) -> list[str]:
    return [notice.words for notice in job.notices]
