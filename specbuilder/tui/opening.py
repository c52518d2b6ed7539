"""Opening, beginning and leaving jobs."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Protocol

from specbuilder.model.kinds import JobState
from specbuilder.office.older import older, pasts
from specbuilder.office.variants import begin_variant
from specbuilder.storage.disk import DiskError
from specbuilder.storage.job_list import JobLine
from specbuilder.storage.job_recovery import Instead, JobUnreadableError
from specbuilder.storage.journal import CursorPlace
from specbuilder.storage.rules_files import RulesFaults
from specbuilder.wording.around import rules_changed, slow_save
from specbuilder.wording.check import handed_over
from specbuilder.wording.jobs import NO_NAME, disk_trouble, kept_aside, read_only, state_and_revision, unreadable
from specbuilder.wording.life import begun, not_current, only_looked_at
from specbuilder.wording.older import one_revision
from specbuilder.wording.variants import no_number, variant_begun, variant_stays

from .deeds import Deeds
from .desk import SLOW_S, Desk, Trouble
from .items import Item, OnJob
from .screens.jobs import JobCells, JobRow, JobsPage, NoticePage
from .screens.older_rules import OlderRulesPage
from .screens.page import Host, Page
from .screens.revisions import RevisionsPage
from .sealing import seal
from .searches import Searches
from .walk import Walk

LIST_S = 0.1
"""As long as the list of jobs may take while somebody waits; the rest is read beside the screens."""


class Floor(Host, Protocol):
    """What opening needs of the counter beside what every page needs."""

    jobs: JobsPage
    sides: list[Page]


class Opening:
    """The jobs folder, the desk, and the walk of the open job."""

    def __init__(self, floor: Floor, desk: Desk) -> None:
        self.floor = floor
        self.desk = desk
        self.deeds = Deeds(desk)
        self.searches = Searches()
        self.walk: Walk | None = None
        self.all_listed = True
        self._place: CursorPlace | None = None
        self._told_trouble: Trouble | None = None

    def rows(self) -> tuple[JobRow, ...]:
        """Every job of the folder; of some only the number, while ``all_listed`` is False."""
        try:
            lines = self.desk.folder.list(LIST_S)
        except DiskError as error:
            self.floor.say(str(error))
            lines = ()
        self.all_listed = not any(line.unread for line in lines)
        return tuple(self._row(line) for line in lines)

    def read_ahead(self) -> None:
        """Read the lines of the list that are not known yet. Slow: for a worker."""
        with contextlib.suppress(DiskError):  # whoever asks for the rows is told
            self.desk.folder.list()

    def begin(self) -> None:
        """A new job; it gets its number and its file with the first answer."""
        self.desk.begin()
        self._start(None)

    def open(self, number: str, instead: Instead | None = None) -> None:
        """The job as it was last left; what cannot be read is said, and opened from what is kept, if asked.

        What other rules than those of today were used for is asked about first.
        """
        with self._told(number):
            found = older(self.desk.house, self.desk.folder.files(number), self.desk.clock().date(), instead)
            if found is not None:
                self.floor.show(OlderRulesPage(self.floor, self, number, found))
                return
            self.take_up(number, instead)

    def take_up(self, number: str, instead: Instead | None = None) -> None:
        """The job, to go on with."""
        with self._told(number):
            job = self.desk.open(number, instead)
            self._start(job.cursor)
            self.floor.say(" ".join((*(notice.words for notice in job.notices), *self._rules_told())))
            seal(self.floor)

    def look_at(self, number: str, revision: int | None = None) -> bool:
        """A revision as it was, to read; whatever job is open is left. False: it cannot be had, and that is said."""
        with self._told(number):
            if self.walk is not None:
                self.leave()
            if self.walk is None:
                self.desk.look_at(number, revision)
                self._start(None)
                self.floor.say(only_looked_at(self.desk.session.spec))
                return True
        return False

    def earlier(self, at: Item | None) -> None:
        """Every revision, to look at, of the job that is open; else of the one at this place of the list."""
        number = self.number or (at.name if isinstance(at, OnJob) else "")
        if not number:
            return
        with self._told(number):
            found = pasts(self.desk.house, number, self.desk.clock().date())
            if len(found) > 1:
                self.floor.show(RevisionsPage(self.floor, self, number, found))
            else:
                self.floor.say(one_revision(number))

    def move_to_today(self, number: str) -> None:
        """The job under the rules of today: a draft as it is, what was quoted as the next revision."""
        self.take_up(number)
        spec = self.desk.session.spec
        if self.walk is None or spec.state is JobState.DRAFT or not self.walk.doing.may_write():
            return
        with self._told(number):
            self.deeds.begin_next()
            self._start(None)
            self.floor.say(begun(self.desk.session.spec, self.desk.catalogue))

    @contextmanager
    def _told(self, number: str) -> Iterator[None]:
        """What keeps a job from being opened is said; from what is kept it can be opened all the same."""
        try:
            yield
        except JobUnreadableError as error:
            self._offer(number, error)
        except (DiskError, RulesFaults) as error:
            self.floor.say(str(error))

    def leave(self) -> None:
        """Back to the list, with only this job in it until the cursor moves."""
        if self.walk is None:
            return
        number = self.number
        if not self.desk.leave(self.walk.place()):
            trouble = self.desk.trouble
            self.floor.say(disk_trouble(trouble.reason) if trouble is not None else "")
            return
        self.walk = None
        self.floor.drafts.clear()
        jobs = self.floor.jobs
        jobs.rows = self.rows()
        jobs.at = jobs.alone = OnJob(number) if number else None
        aside, took_s = self.desk.kept_aside, self.desk.saved_in_s
        told = (kept_aside(number, aside.name),) if aside is not None else self._rules_told()
        slow = (slow_save(number, took_s),) if took_s >= SLOW_S else ()
        self.floor.say(" ".join((*slow, *told)))

    def _rules_told(self) -> tuple[str, ...]:
        """That the rules were edited while the program runs, where they were."""
        house = self.desk.house
        return (rules_changed(str(house.rules)),) if house.rules_changed else ()

    @property
    def number(self) -> str:
        """The number of the job that is open or looked at; empty while there is none."""
        desk = self.desk
        return desk.looked_at.number if desk.looked_at is not None else desk.job.number if desk.job is not None else ""

    def remember(self) -> None:
        """Write down where the cursor is and what is half typed, if that has changed."""
        if self.walk is not None and (place := self.walk.place()) != self._place:
            self._place = place
            self.desk.keep_place(place)

    def tell_trouble(self) -> bool:
        """Say what the disk did not take behind the screens; True when that is news."""
        trouble = self.desk.trouble
        if news := trouble is not None and trouble != self._told_trouble:
            self.floor.say(disk_trouble(trouble.reason))
        self._told_trouble = trouble
        return news

    def begin_variant(self) -> None:
        """A variant of the job, a copy of what is on the screens, open; the job itself is saved and let go of."""
        number, spec = self.number, self.desk.session.spec
        if not number or self.walk is None:
            self.floor.say(no_number())
            return
        place = self.walk.place()
        with self._told(number):
            begun = begin_variant(self.desk.house, spec, self.desk.counter)
            if not self.desk.leave(place):
                stays = () if begun.discard() else (variant_stays(begun.number),)
                trouble = self.desk.trouble
                self.floor.say(". ".join((*stays, disk_trouble(trouble.reason) if trouble is not None else "")))
                return
            self.desk.sit_at(begun, self.desk.house.catalogue, None)
            self._start(place)
            self.floor.say(variant_begun(begun.number, number))

    def go_over(self, number: str) -> None:
        """Leave the open job, as it is always left, and open another one."""
        self.leave()
        if self.walk is None:
            self.open(number)

    def hand_over(self) -> None:
        """Write the spec for the workshop and say where; what was replaced is not handed over any more."""
        if not self.number:
            return
        if self.walk is not None and self.desk.trying:
            self.walk.doing.back_to_job()
        spec = self.desk.session.spec
        try:
            by = self.deeds.replaced_by
            if by is not None:
                told = not_current(spec.number, spec.revision, by)[0]
            else:
                told = handed_over(str(self.deeds.hand_over()))
        except DiskError as error:
            told = str(error)
        self.floor.say(told)

    def anew(self) -> None:
        """Fresh pages for what lies on the desk, with the cursor where it was."""
        if self.walk is not None:
            self._start(self.walk.place())

    def _start(self, place: CursorPlace | None) -> None:
        self.floor.drafts.clear()
        self.floor.sides.clear()
        self.floor.say("")
        self.walk = Walk(self.floor, self.desk)
        self.walk.start(place)
        self._place = None
        self.remember()  # whatever happens next, this is the job that was open last

    def _offer(self, number: str, error: JobUnreadableError) -> None:
        sentences = unreadable(tuple(str(f) for f in error.faults), copy_kept=bool(error.others))
        best = error.others[0] if error.others else None
        self.floor.show(_InsteadPage(self.floor, sentences, self, number, best))

    def _row(self, line: JobLine) -> JobRow:
        if line.unread:
            return JobRow(name=line.number)
        notice = ""
        if line.faults:
            notice = str(line.faults[0])
        elif line.holder is not None:
            notice = read_only(line.holder.counter, line.holder.since_words(self.desk.clock()))
        state = state_and_revision(line.state, line.revision) if line.state is not None else ""
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
