"""A clock that goes back and forth by days and years while a job is worked on: nothing rests on what it says."""

from __future__ import annotations

from datetime import datetime, timedelta

from specbuilder.model.edits import WriteNote
from specbuilder.office.house import House
from specbuilder.storage.jobs import JobsFolder
from specbuilder.tui.desk import Desk

from .scene import NOW, SMALL_RULES, catalogue
from .tally import Run


class Jumping:
    """A clock somebody else sets."""

    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> datetime:
        """Whatever it was set to."""
        return self.now


def tries(run: Run) -> None:
    """Jobs that are opened, changed, left or let fall a dozen times, each time on another day."""
    done = 0
    while run.more and done < (2 if run.small else 10**6):
        done += 1
        with run.counted("a clock that goes back"):
            _round(run)
    run.tally.note("jobs worked on under a clock that jumps", done)


def _round(run: Run) -> None:
    clock = Jumping()
    jobs = run.fresh("clock")
    house = House(JobsFolder(jobs, clock=clock), catalogue(SMALL_RULES), SMALL_RULES)
    desk = Desk(house, clock, "counter 1")
    desk.begin()
    for turn in range(12):
        clock.now = NOW + timedelta(minutes=run.dice.choice((1, 60, 1440, 600_000)) * run.dice.randrange(-9, 10))
        desk.edit(WriteNote(note=f"turn {turn}"))
        clock.now -= timedelta(days=run.dice.randrange(3))
        assert desk.job is not None
        number, said = desk.job.number, desk.session.spec
        if run.dice.random() < 0.4:
            desk.job.abandon()
        elif not desk.leave(None):
            run.tally.lose(f"a job could not be left at {clock.now}: {desk.trouble}")
        desk = Desk(house, clock, "counter 1")
        desk.open(number)
        if desk.read_only or desk.session.spec != said:
            run.tally.lose(f"turn {turn} at {clock.now}: the job is not as it was left")
        if not [line for line in house.jobs.list() if line.number == number and not line.faults]:
            run.tally.lose(f"turn {turn} at {clock.now}: the job is not in the list")
