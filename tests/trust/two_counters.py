"""Two processes on one job at the same moment: one holds it, the other is told who, nothing is lost or doubled."""

from __future__ import annotations

import json
import os
import time
from collections.abc import Callable
from pathlib import Path

from specbuilder.model.edits import WriteNote
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.lock import LockHolder
from specbuilder.storage.open_job import OpenJob

from .child import Child, child
from .disk_faults import set_up
from .lines import SIGN, leftovers, said, snapshot, states
from .once import worked_out_once
from .scene import SMALL_RULES, catalogue, desk_of
from .tally import Run
from .words import says_cure

PAIRS: tuple[tuple[str, tuple[str, ...], str], ...] = (
    ("draft", ("quote", "1"), '"kind": "quoted"'),
    ("quoted", ("order", "1", *SIGN), '"kind": "signed"'),
    ("ordered", ("change", "1"), ""),
    ("ordered", ("record", "1", "deposit", "2441", "--by", "the counter"), '"kind": "deposit"'),
    ("draft", ("set", "1", "adults=3"), ""),
    ("draft", ("new", "adults=2"), ""),
)
"""State, and what both type at once."""


def tries(run: Run) -> None:
    """Folders and locks in many rounds, then whole commands."""
    catalogue(SMALL_RULES)
    _rounds(run.share(0.25), _open_at_once)
    _rounds(run.share(0.3), _take_over_at_once)
    _rounds(run.share(0.4), _begin_at_once)
    with worked_out_once():
        made = states(run.folder / "states")
        number = 0
        while run.more and number < (3 if run.small else 10**6):
            state, words, _ = PAIRS[number % len(PAIRS)]
            number += 1
            with run.counted(f"two times {' '.join(words[:2])}"):
                _command_at_once(run, made / state, words)
        run.tally.note("commands typed at two counters at once", number)


def _rounds(run: Run, one: Callable[[Run, Path], None]) -> None:
    done = 0
    while run.more and done < (5 if run.small else 10**6):
        done += 1
        with run.counted(one.__name__):
            one(run, run.fresh("two"))
    run.tally.note(f"rounds of {one.__name__.strip('_').replace('_', ' ')}", done)


def _both(work: Callable[[int, Callable[[str], None]], None], after_s: float = 0.01) -> list[list[str]]:
    """Two processes that begin at the same moment; what each of them said."""
    start = time.monotonic() + after_s

    def begins(number: int) -> Child:
        def waits(acknowledge: Callable[[str], None]) -> None:
            while time.monotonic() < start:
                pass
            work(number, acknowledge)

        return child(waits)

    running = [begins(number) for number in (1, 2)]
    ended = [one.ended() for one in running]
    assert all(whole for whole, _ in ended), "a child came to no end of its own"
    return [told for _, told in ended]


def _open(jobs: Path, number: int) -> OpenJob:
    return JobsFolder(jobs).open("0001", f"counter {number}", catalogue(SMALL_RULES))


def _open_at_once(run: Run, jobs: Path) -> None:
    """A job that is free."""
    desk = desk_of(jobs, SMALL_RULES)
    desk.begin()
    desk.edit(WriteNote(note="first"))
    desk.leave(None)
    _write_if_held(run, jobs, before=1)


def _take_over_at_once(run: Run, jobs: Path) -> None:
    """A job that a process left which has ended."""

    def left(acknowledge: Callable[[str], None]) -> None:
        job = JobsFolder(jobs).create("counter 0")
        job.append(WriteNote(note="first"))
        acknowledge(str(os.getpid()))

    child(left).ended()
    _write_if_held(run, jobs, before=1)


def _write_if_held(run: Run, jobs: Path, before: int) -> None:
    """Each opens the job and writes as long as it holds it; a third look tells what stands."""

    def writes(number: int, acknowledge: Callable[[str], None]) -> None:
        job = _open(jobs, number)
        because = job.read_only_because
        if because is not None:
            told = job.notices[0].words if job.notices else ""
            acknowledge(json.dumps(["told", because.counter if isinstance(because, LockHolder) else "", told]))
        else:
            for line in range(3):
                job.append(WriteNote(note=f"{number}.{line}"))
                acknowledge(json.dumps(["wrote", f"{number}.{line}", ""]))
            time.sleep(0.01)
        job.abandon()

    told = [[json.loads(line) for line in lines] for lines in _both(writes)]
    wrote = [[words for kind, words, _ in lines if kind == "wrote"] for lines in told]
    looked = _open(jobs, 3)
    notes = [entry.note for entry in looked.entries if isinstance(entry, WriteNote)]
    looked.abandon()
    if not any(wrote):
        run.tally.lose(f"nobody had the job: {told}")
    for lines in told:
        for kind, holder, words in lines:
            if kind == "told" and not holder.startswith("counter") and "no counter" not in words:
                run.tally.dim(f"it is not said who has the job: {words}")
    inside = notes[before:]
    if sorted(inside) != sorted(wrote[0] + wrote[1]) or inside not in (wrote[0] + wrote[1], wrote[1] + wrote[0]):
        run.tally.lose(f"written {wrote}, and there stands {notes}")
    if any(name.endswith(".lock") for name in leftovers(jobs)):
        run.tally.lose(f"a lock is left: {leftovers(jobs)}")


def _begin_at_once(run: Run, jobs: Path) -> None:
    """Two new jobs: two numbers."""

    def begins(number: int, acknowledge: Callable[[str], None]) -> None:
        job = JobsFolder(jobs).create(f"counter {number}")
        job.append(WriteNote(note=f"of {number}"))
        acknowledge(job.number)
        job.abandon()

    numbers = [lines[0] for lines in _both(begins)]
    if len(set(numbers)) != 2:
        run.tally.lose(f"both were given the number {numbers}")
    for number, name in zip((1, 2), numbers, strict=True):
        job = JobsFolder(jobs).open(name, "counter 3", catalogue(SMALL_RULES))
        if job.entries != (WriteNote(note=f"of {number}"),):
            run.tally.lose(f"job {name} holds {job.entries}")
        job.abandon()


def _command_at_once(run: Run, state: Path, words: tuple[str, ...]) -> None:
    """The same command at two counters: done once or twice, as each of them says."""
    work, out = run.folder / "work", run.folder / "out"
    set_up(state, work, out, {})
    before = snapshot(work)

    def types(_: int, acknowledge: Callable[[str], None]) -> None:
        done = said(work, *words)
        acknowledge(json.dumps([done.code, *done.err]))

    told = [json.loads(lines[0]) for lines in _both(types)]
    codes = sorted(one[0] for one in told)
    after = snapshot(work)
    what = " ".join(words[:3])
    if any(code not in (0, 1, 2) for code in codes):
        run.tally.mistake(f"{what} twice: {told}")
    done = codes.count(0)
    if done == 0 and before != after:
        run.tally.lose(f"{what} twice: neither says it is done, and it is: {told}")
    if done and before == after:
        run.tally.lose(f"{what} twice: said to be done, and it is not: {told}")
    if words[0] == "new" and len(after) != len(before) + done:
        run.tally.lose(f"{what} twice: {done} were made, and there are {sorted(after)}")
    if words[0] == "record":
        log = (work / "0001-r1.toml").read_text("utf-8").count('kind = "deposit"')
        if log != done:
            run.tally.lose(f"{what} twice: {done} were said to be written down, and {log} are")
    if words[0] in ("quote", "order") and done != 1:
        run.tally.lose(f"{what} twice: done {done} times: {told}")
    for code, *err in told:
        if code and not (says_cure(" ".join(err)) or "stands in the way" in " ".join(err)):
            run.tally.dim(f"{what} twice: no cure: {err}")
    if rest := leftovers(work):
        run.tally.lose(f"{what} twice: left lying about: {rest}")
