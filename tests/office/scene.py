"""A house with one job, taken through its life by what the office offers, under a clock that is set by hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec
from specbuilder.office.house import House, stand_of
from specbuilder.office.steps import Signature, kept, next_begun, quoting, recording, signing
from specbuilder.session.life import fresh
from specbuilder.session.state import Session, do, replay
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.open_job import OpenJob
from specbuilder.storage.rules_files import rules_folder
from specbuilder.storage.spec_files import read_spec_file

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
BOTH = Signature(customer="M. Hale", firm="the counter", place="premises")
COUNTER = "counter 1"


class Scene:
    """One job of one house. Every step is taken a minute after the one before."""

    def __init__(self, folder: Path, catalogue: Catalogue, example: str = "saturday-family") -> None:
        self.now = datetime(2031, 4, 14, 10, 0, tzinfo=UTC)
        self.house = House(JobsFolder(folder, clock=self.clock), catalogue, rules_folder())
        spec = fresh(read_spec_file(EXAMPLES / f"{example}.toml", catalogue).spec)
        self.number = self._new(spec)

    def clock(self) -> datetime:
        """The time of the house."""
        return self.now

    @property
    def folder(self) -> Path:
        """The folder of the jobs."""
        return self.house.jobs.path

    def days_later(self, days: int) -> None:
        """Let days go by."""
        self.now += timedelta(days=days)

    def at(self) -> str:
        """A minute later, as it is written down."""
        self.now += timedelta(minutes=1)
        return f"{self.now:%Y-%m-%d %H:%M}"

    def spec(self, revision: int | None = None) -> Spec:
        """The spec as it was last left."""
        return self.house.stand_of(self.house.jobs.files(self.number, revision)).spec

    def path(self, revision: int = 1) -> Path:
        """The file of a revision."""
        return self.house.jobs.files(self.number, revision).spec

    def quote(self) -> None:
        """A quote goes out."""
        self._step(lambda session: quoting(session, self.at(), "the counter"))

    def sign(self) -> None:
        """Both sign."""
        self._step(lambda session: signing(session, self.at(), BOTH))

    def order(self) -> None:
        """Quoted and signed."""
        self.quote()
        self.sign()

    def pass_holds(self, *holds: str) -> None:
        """Hold points are passed."""
        for hold in holds:
            self.record(Record(kind=RecordKind.PASSED, at=self.at(), by="foreman", about=hold))

    def record(self, record: Record) -> None:
        """Something is written down."""
        self._step(lambda session: recording(session, record))

    def edit(self, *edits: Edit) -> None:
        """What is done at the counter, in the newest revision."""
        job, session = self.open()
        for edit in edits:
            session, outcome = do(session, edit)
            assert outcome.refused is None, outcome.refused
            job.append(edit)
        self._leave(job, session)

    def begin_next(self) -> None:
        """The next revision is begun."""
        job, session = self.open()
        begun = next_begun(self.house, job, session, COUNTER)
        base = self.house.base_of(begun.start)
        self._leave(begun, Session(catalogue=session.catalogue, spec=begun.start, base=base))

    def open(self) -> tuple[OpenJob, Session]:
        """The newest revision, held."""
        found, catalogue = self.house.found(self.house.jobs.files(self.number))
        job = self.house.jobs.open(self.number, COUNTER, catalogue)
        base = self.house.base_of(found.start)
        return job, replay(Session(catalogue=catalogue, spec=job.start, base=base), job.entries)

    def session(self) -> Session:
        """The newest revision, to look at."""
        job, session = self.open()
        job.close()
        return session

    def _step(self, edit: object) -> None:
        job, session = self.open()
        kept(self.house, job, session, edit(session))  # type: ignore[operator]
        job.close()

    def _new(self, spec: Spec) -> str:
        job = self.house.jobs.create(COUNTER, spec)
        catalogue = self.house.catalogue
        self._leave(job, Session(catalogue=catalogue, spec=replace(spec, number=job.number)))
        return job.number

    def _leave(self, job: OpenJob, session: Session) -> None:
        job.save(session.catalogue, session.spec, stand_of(session.catalogue, session.spec).report)
        job.close()


def codes(points: Iterable[object]) -> set[str]:
    """Codes of what was found."""
    return {str(point.code) for point in points}  # type: ignore[attr-defined]
