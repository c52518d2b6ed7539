"""Opening, beginning and leaving jobs."""

from __future__ import annotations

from typing import Protocol

from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_list import JobLine
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.storage.journal import CursorPlace
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.wording.check import handed_over
from specbuilder.wording.jobs import NO_NAME, disk_trouble, read_only, unreadable
from specbuilder.wording.states import job_state_word

from .deeds import TROUBLES, Deeds
from .desk import Desk
from .items import OnJob
from .screens.jobs import JobCells, JobRow, JobsPage, NoticePage
from .screens.page import Host, Page
from .searches import Searches
from .walk import Walk


class Floor(Host, Protocol):
    """What opening needs of the counter beside what every page needs."""

    jobs: JobsPage
    sides: list[Page]


class Opening:
    """The jobs folder, the desk, and the walk of the open job."""

    def __init__(self, floor: Floor, desk: Desk) -> None:
        self.floor = floor
        self.desk = desk
        self.searches = Searches()
        self.walk: Walk | None = None
        self._place: CursorPlace | None = None

    def rows(self) -> tuple[JobRow, ...]:
        """Every job of the folder."""
        try:
            return tuple(self._row(line) for line in self.desk.folder.list())
        except DiskError as error:
            self.floor.say(str(error))
            return ()

    def begin(self) -> None:
        """A new job; it gets its number and its file with the first answer."""
        self.desk.begin()
        self._start(None)

    def open(self, number: str, instead: Instead | None = None) -> None:
        """The job as it was last left; what cannot be read is said, and opened from what is kept, if asked."""
        try:
            job = self.desk.open(number, instead)
        except JobUnreadableError as error:
            self._offer(number, error)
            return
        except (DiskError, RulesFaults) as error:
            self.floor.say(str(error))
            return
        self._start(job.cursor)
        self.floor.say(" ".join((*(notice.words for notice in job.notices), *self._keep_what_left())))

    def _keep_what_left(self) -> tuple[str, ...]:
        """What could not be kept when it left the house is kept now; says why not, if not."""
        try:
            Deeds(self.desk).keep_what_left()
        except TROUBLES as error:
            return (str(error),)
        return ()

    def leave(self) -> None:
        """Back to the list, with only this job in it."""
        if self.walk is None:
            return
        job = self.desk.job
        number = job.number if job is not None else ""
        if not self.desk.leave(self.walk.place()):
            trouble = self.desk.trouble
            self.floor.say(disk_trouble(trouble.reason) if trouble is not None else "")
            return
        self.walk = None
        self.floor.drafts.clear()
        jobs = self.floor.jobs
        jobs.rows = self.rows()
        jobs.at = jobs.alone = OnJob(number) if number else None
        self.floor.say("")

    def remember(self) -> None:
        """Write down where the cursor is and what is half typed, if that has changed."""
        if self.walk is not None and (place := self.walk.place()) != self._place:
            self._place = place
            self.desk.keep_place(place)

    def hand_over(self) -> None:
        """Write the spec for the workshop and say where."""
        if self.desk.job is None:
            return
        if self.walk is not None and self.desk.trying:
            self.walk.doing.back_to_job()
        try:
            self.floor.say(handed_over(str(self.desk.hand_over())))
        except DiskError as error:
            self.floor.say(str(error))

    def _start(self, place: CursorPlace | None) -> None:
        self.floor.drafts.clear()
        self.floor.sides.clear()
        self.floor.say("")
        self.walk = Walk(self.floor, self.desk)
        self.walk.start(place)
        self._place = place

    def _offer(self, number: str, error: JobUnreadableError) -> None:
        sentences = unreadable(tuple(str(f) for f in error.faults), copy_kept=bool(error.others))
        best = error.others[0] if error.others else None
        self.floor.show(_InsteadPage(self.floor, sentences, self, number, best))

    def _row(self, line: JobLine) -> JobRow:
        notice = ""
        if line.faults:
            notice = str(line.faults[0])
        elif line.holder is not None:
            notice = read_only(line.holder.counter, line.holder.since_words(self.desk.clock()))
        state = job_state_word(line.state) if line.state is not None else ""
        changed = f"{line.changed:%Y-%m-%d %H:%M}" if line.changed is not None else ""
        cells = JobCells(number=line.number, name=line.customer or NO_NAME, state=state, van=line.van, changed=changed)
        return JobRow(name=line.number, cells=cells, notice=notice)


class _InsteadPage(NoticePage):
    """A job that cannot be read; Enter opens it from what is kept."""

    def __init__(
        self, host: Host, sentences: tuple[str, ...], opening: Opening, number: str, instead: Instead | None
    ) -> None:
        super().__init__(host, sentences)
        self.opening, self.number, self.instead = opening, number, instead

    def enter(self) -> None:
        """Open it from there; without anything kept, close."""
        self.host.close()
        if self.instead is not None:
            self.opening.open(self.number, self.instead)
