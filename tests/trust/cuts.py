"""A journal cut at every byte, and with every byte spoilt: what was whole before the fault is there, and it is said."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate
from pathlib import Path

from specbuilder.model.edits import AnswerLine, Edit, NameCustomer, Take, WriteNote
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Step
from specbuilder.model.spec import Spec
from specbuilder.office.house import House
from specbuilder.storage.job_files import JobFiles
from specbuilder.storage.job_notices import NoticeKind
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.journal import CursorPlace
from specbuilder.tui.desk import Desk

from .scene import RULES, SMALL_RULES, desk_of, house_of, stands
from .tally import Run
from .words import lacks

MASKS = (0x01, 0x20, 0x80)
_EDITS: tuple[Edit, ...] = (
    AnswerLine(key=BriefKey("adults"), value=2),
    NameCustomer(name="M. Hale", contact="by the bridge"),
    AnswerLine(key=BriefKey("ages"), value=(9, 6)),
    WriteNote(note="They ring on Monday; ask for the long awning # 2."),
    AnswerLine(key=BriefKey("nights_off_grid"), value=2),
)


@dataclass(frozen=True, kw_only=True)
class Written:
    """A journal, and the spec after each whole line of it."""

    rules: Path
    files: JobFiles
    journal: bytes
    text: bytes | None
    """The file beside it; None: it was never written."""
    saved_line: int
    """How many lines there were when the file was written."""
    after: tuple[Spec, ...]
    """``after[n]``: the spec when n lines are whole."""

    @property
    def ends(self) -> list[int]:
        """Where each line ends."""
        return list(accumulate(len(line) for line in self.journal.splitlines(keepends=True)))

    def expected(self, whole: int) -> Spec:
        """The spec when so many lines are whole: what the file holds is never less."""
        return self.after[max(whole, self.saved_line)]


def tries(run: Run) -> None:
    """Every byte of three journals, cut there and spoilt."""
    step = 263 if run.small else 1
    written = [unsaved(run, SMALL_RULES), saved(run, SMALL_RULES)]
    if not run.small:
        written.append(unsaved(run, RULES))
    for number, one in enumerate(written):
        part = run.share(1 / (len(written) - number))
        house = house_of(one.files.folder, one.rules)
        for what, data, whole in faults(one, step):
            if not part.more:
                run.tally.note(f"left out of journal {number + 1} for want of time")
                break
            with run.counted(f"{what} of {one.files.journal.name} ({number + 1})"):
                read_back(run, house, one, data, whole, what)
    for one in written:
        _go_on(run, one, 4000 if run.small else 41)


def faults(one: Written, step: int) -> Iterator[tuple[str, bytes, int]]:
    """What happened, the bytes it left, and how many lines are whole before it.

    Every byte is where it is cut, and is spoilt; every seventh in three ways.
    """
    data, ends = one.journal, one.ends
    for place in range(0, len(data), step):
        whole = sum(end <= place for end in ends)
        yield f"cut at byte {place}", data[:place], whole
        for mask in MASKS if place % 7 == 0 else MASKS[place % 3 : place % 3 + 1]:
            spoilt = data[:place] + bytes([data[place] ^ mask]) + data[place + 1 :]
            yield f"byte {place} ^ {mask:#x}", spoilt, whole


def read_back(run: Run, house: House, one: Written, data: bytes, whole: int, what: str) -> None:
    """Reads the job from what the fault left."""
    one.files.journal.write_bytes(data)
    if one.text is not None and not one.files.spec.exists():
        one.files.spec.write_bytes(one.text)
    try:
        found, known = house.found(one.files)
    except JobUnreadableError as error:
        if whole or one.text is not None:
            run.tally.lose(f"{what}: {whole} lines were whole, and the job cannot be read: {error}")
        for fault in error.faults:
            if missing := lacks(str(fault), files=(one.files.journal.name,), line=True):
                run.tally.dim(f"{what}: no {missing}: {fault}")
        return
    spec = house.session(found, known).spec
    if spec != one.expected(whole):
        run.tally.lose(f"{what}: {whole} lines were whole before it, and the spec is another")
    cut_between = data == one.journal[: len(data)] and len(data) in (0, *one.ends)
    if not found.notices and not cut_between:
        run.tally.dim(f"{what}: nothing is said of it")
    for notice in found.notices:
        about_journal = notice.kind in (NoticeKind.TORN, NoticeKind.JOURNAL_BROKEN)
        if about_journal and (missing := lacks(notice.words, files=(one.files.journal.name,), line=False)):
            run.tally.dim(f"{what}: no {missing}: {notice.words}")


def _go_on(run: Run, one: Written, step: int) -> None:
    """Opens what the fault left, does one thing more, and leaves: all of it is there the next time."""
    more = WriteNote(note="after the fault")
    for what, data, whole in faults(one, step):
        if one.text is None and not whole:
            continue
        with run.counted(f"{what}, and going on"):
            one.files.spec.unlink(missing_ok=True)
            if one.text is not None:
                one.files.spec.write_bytes(one.text)
            one.files.journal.write_bytes(data)
            desk = desk_of(one.files.folder, one.rules)
            desk.open(one.files.number)
            desk.edit(more)
            spec = desk.session.spec
            if not desk.leave(None) or stands(house_of(one.files.folder, one.rules), one.files) != spec:
                run.tally.lose(f"{what}: what was done after it is not there")
            kept = [path.read_bytes() for path in one.files.folder.glob("*.set-aside-*.journal")]
            if whole < len(one.ends) and data.count(b"\n") > whole and data not in kept:
                run.tally.lose(f"{what}: the spoilt journal was not kept aside")
            for path in one.files.folder.glob("*.set-aside-*"):
                path.unlink()


def unsaved(run: Run, rules: Path) -> Written:
    """A job of which only the journal was ever written."""
    desk = desk_of(run.fresh("cuts"), rules)
    desk.begin()
    after = [desk.session.spec]
    _do(desk, after)
    assert desk.job is not None
    files = desk.job.files
    desk.job.abandon()
    journal = files.journal.read_bytes()
    return Written(rules=rules, files=files, journal=journal, text=None, saved_line=0, after=tuple(after))


def saved(run: Run, rules: Path) -> Written:
    """A job that was left once, and then gone on with."""
    desk = desk_of(run.fresh("cuts"), rules)
    desk.begin()
    after = [desk.session.spec]
    _do(desk, after)
    assert desk.job is not None
    files = desk.job.files
    desk.leave(None)
    after.append(after[-1])
    saved_line = len(after) - 1
    desk.open(files.number)
    assert desk.job is not None
    _do(desk, after)
    journal, text = files.journal.read_bytes(), files.spec.read_bytes()
    desk.job.abandon()
    return Written(rules=rules, files=files, journal=journal, text=text, saved_line=saved_line, after=tuple(after))


def _do(desk: Desk, after: list[Spec]) -> None:
    """Edits, places, steps back and forward; ``after`` gets the spec after each line."""
    first = desk.job is None
    options = [OptionId(name) for name in desk.catalogue.options][:6]
    takes = tuple(Take(option=option) for option in options)
    for number, edit in enumerate((*_EDITS, *takes)):
        done, _ = desk.edit(edit)
        if done is None:
            continue
        if first:
            assert desk.job is not None
            after.append(desk.job.start)
            first = False
        after.append(desk.session.spec)
        if number % 3 == 1:
            desk.keep_place(CursorPlace(step=Step.BRIEF, typed="hal"))
            after.append(desk.session.spec)
        if number % 4 == 3:
            for turn in (desk.undo, desk.redo):
                turn()
                after.append(desk.session.spec)
