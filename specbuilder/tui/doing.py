"""What is done to the open job, and what the last line says of it."""

from __future__ import annotations

from specbuilder.model.edits import Edit, Together, Write
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level
from specbuilder.model.report import Report
from specbuilder.session.apply import apply
from specbuilder.session.life import frozen
from specbuilder.session.state import Done
from specbuilder.storage.disk import DiskError
from specbuilder.storage.lock import LockHolder
from specbuilder.wording import edits as words
from specbuilder.wording.around import slow_folder
from specbuilder.wording.findings import now_broken
from specbuilder.wording.jobs import disk_trouble, read_only
from specbuilder.wording.last_line import again_hint, back_hint
from specbuilder.wording.life import begun_short, begun_stays, only_looked_at
from specbuilder.wording.papers import papers_later, papers_of_job_only
from specbuilder.wording.records import stays_done
from specbuilder.wording.refusals import refused
from specbuilder.wording.what_if import back_in_job, kept, nothing_tried, trial_again, trial_begun

from .deeds import TROUBLES
from .desk import Desk
from .items import Item
from .screens.page import Host

_MARGIN = 4
"""Blanks beside and between what is said on the last line and the hint."""


class Doing:
    """Edits, steps back and forward, and the what-if."""

    def __init__(self, host: Host, desk: Desk) -> None:
        self.host = host
        self.desk = desk
        self.broke: RuleId | None = None
        """What the last edit broke first: the last line speaks of it, so *why* may ask about it."""
        self._drafts: dict[Item, str] = {}
        """Texts that were not taken in the job itself while a what-if is on."""

    def edit(self, edit: Edit, told: str = "") -> bool:
        """Do it and say it, in the words given or in the edit's own; a refusal is said, too."""
        if not self.may_write():
            return False
        before, tried = self.desk.report, self._try(edit)
        if tried is None:
            return False
        done, begun = tried
        self._say_edit(before, told or self._words_of(done), read=bool(told), begun=begun)
        return True

    def _try(self, edit: Edit) -> tuple[Done, str] | None:
        """Do it, in the next revision where the job has left the house; with what is said of that. None: refused."""
        begun = ""
        if frozen(self.desk.catalogue, self.desk.session.spec, edit):
            begun = self._begin_next(edit)
            if not begun:
                return None
        done, outcome = self.desk.edit(edit)
        if done is None:
            self.host.say(" ".join(filter(None, (begun, refused(self.desk.catalogue, edit, outcome)))))
            return None
        return done, begun

    def _begin_next(self, edit: Edit) -> str:
        """Begins the next revision of what has left the house, where the edit can be done; says so, or why not."""
        catalogue = self.desk.catalogue
        outcome = apply(catalogue, self.desk.editable.spec, edit)
        if outcome.refused is not None:
            self.host.say(refused(catalogue, edit, outcome))
            return ""
        try:
            self.host.deeds.begin_next()
        except TROUBLES as error:
            self.host.say(str(error))
            return ""
        if self.desk.catalogue is catalogue:
            return begun_short(self.desk.session.spec)
        self.host.anew()
        return begun_short(self.desk.session.spec, self.desk.catalogue)

    def undo(self) -> Done | None:
        """Take the last edit back and name it."""
        if not self.may_write():
            return None
        done = self.desk.undo()
        self.broke = None
        if done is None:
            past = self.desk.session.past
            written = past[-1].edit if past and isinstance(past[-1].edit, Write) else None
            stays = stays_done(self.desk.catalogue, written.record) if written else words.nothing_to_undo()
            self.host.say(stays)
        else:
            stays = "" if self.desk.session.past or not self.host.deeds.may_give_up else begun_stays(done.before)
            room = self._room(again_hint()) - len(stays)
            told = words.undone(self.desk.catalogue, done.edit, done.before, done.after, room)
            self._say(f"{stays}{told}", again_hint())
        return done

    def redo(self) -> Done | None:
        """Put it back and name it."""
        if not self.may_write():
            return None
        done = self.desk.redo()
        self.broke = None
        if done is None:
            self.host.say(words.nothing_to_redo())
        else:
            self._say(words.redone(self.desk.catalogue, done.edit, done.before, done.after), back_hint())
        return done

    # -- what if ---------------------------------------------------------------------------------------------------

    def what_if(self) -> None:
        """Turn the what-if on, or go back to the job."""
        if self.desk.trying:
            self.back_to_job()
        else:
            self._drafts = dict(self.host.drafts)
            self.host.say(trial_again() if self.desk.try_out() else trial_begun())

    def back_to_job(self) -> None:
        """The job as it was; what was tried is kept, and what was only half typed in it is not."""
        self.broke = None
        self.desk.back_to_job()
        self.host.drafts.clear()
        self.host.drafts.update(self._drafts)
        self.host.say(back_in_job())

    def edit_job(self, edit: Edit) -> bool:
        """Do it to the job itself; what is tried over it is tried again."""
        if not self.may_write(trying=False):
            return False
        tried = self.desk.session.past
        self.desk.back_to_job()
        done = self.edit(edit)
        self.desk.tried = tuple(each.edit for each in tried)
        self.desk.try_out()
        return done

    def keep(self) -> None:
        """What was tried becomes the job, as one step of undo."""
        aside, past = self.desk.aside, self.desk.session.past
        if aside is None or not past or past[0].before == self.desk.session.spec:
            self.host.say(nothing_tried())
            return
        if not self.may_write(trying=False):
            return
        self.desk.back_to_job()
        tried = self._try(Together(edits=self.desk.tried))
        if tried is None:
            return
        done, begun = tried
        self.desk.tried = ()
        told = kept(self.desk.catalogue, done.before, done.after, self._room(back_hint()))
        self._say_edit(aside.report, told, read=True, begun=begun)

    # -- the last line ---------------------------------------------------------------------------------------------

    def _words_of(self, done: Done) -> str:
        return words.done(self.desk.catalogue, done.edit, done.before, done.after, done.brought, done.left)

    def _say_edit(self, before: Report, told: str, *, read: bool, begun: str = "") -> None:
        """``read``: what it breaks was on the screen before it was done, so that what was done is said first.

        ``begun``: the next revision was begun for it, which goes before everything.
        """
        now = self.desk.report
        was = {finding.rule for finding in before.broken(Level.STOP, Level.SIGN)}
        self.broke = next((f.rule for f in now.broken(Level.STOP, Level.SIGN) if f.rule not in was), None)
        broke = now_broken(self.desk.catalogue, before, now)
        parts = (told, broke) if read else (broke, told)
        said = ". ".join(part for part in parts if part)
        self._say(f"{begun} {said}" if begun else said, back_hint())

    def _room(self, hint: str) -> int:
        """Cells of the last line before a hint."""
        return self.host.window_cells - len(hint) - _MARGIN

    def _say(self, told: str, hint: str) -> None:
        trouble = self.desk.trouble
        if trouble is not None:
            self.host.say(disk_trouble(trouble.reason))
        elif slow_s := self.desk.slow_s():
            self.host.say(slow_folder(slow_s), hint)
        else:
            self.host.say(told, hint)

    def may_write_down(self) -> bool:
        """True where the job can be quoted, signed and recorded; else it is said why not."""
        if self.desk.trying:
            self.host.say(papers_of_job_only())
            return False
        if not self.host.report.spec.number:
            self.host.say(papers_later())
            return False
        return self.may_write()

    def may_write(self, trying: bool | None = None) -> bool:
        """True in a what-if, and where the job is ours to change; else it is said whose it is."""
        if (self.desk.trying if trying is None else trying) or self.desk.may_write():
            return True
        if self.desk.looked_at is not None:
            self.host.say(only_looked_at(self.desk.session.spec))
            return False
        job = self.desk.job
        because = job.read_only_because if job is not None else None
        match because:
            case LockHolder():
                self.host.say(read_only(because.counter, because.since_words(self.desk.clock())))
            case DiskError():
                self.host.say(str(because))
            case None:
                pass
        return False
