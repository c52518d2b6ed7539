"""A disk that is full, short, read only, failing, gone or tidied up by somebody, at every step; and a wrong clock."""

from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

from . import app_faults, clock_faults
from .lines import SIGN, leftovers, said, snapshot, states
from .once import worked_out_once
from .steps import ERRORS, Fault, Steps, faulty
from .tally import Run
from .words import says_cure

COMMANDS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("draft", ("set", "1", "adults=3", "sleepers=3")),
    ("draft", ("drop", "1", "toilet-portable")),
    ("draft", ("new", "adults=2", "customer=M. Hale")),
    ("draft", ("record", "1", "promised", "a spare cushion", "--by", "the counter")),
    ("ordered", ("record", "1", "deposit", "2441", "--by", "the counter")),
    ("ordered", ("change", "1", "--because", "they want more")),
    ("changing", ("change", "1", "--drop")),
    ("recorded", ("change", "1", "--drop")),
    ("draft", ("variant", "1")),
    ("draft", ("ask", "1", "which fabric", "--who", "M. Hale", "--due", "2099-01-31")),
    ("edited", ("undo", "1")),
    ("draft", ("quote", "1")),
    ("quoted", ("order", "1", *SIGN)),
    ("changing", ("order", "1", *SIGN)),
    ("ordered", ("paper", "1", "--to", "{out}")),
    ("ordered", ("export", "1", "--to", "{out}")),
    ("draft", ("set", "1", "adults=3", "--to", "{out}/elsewhere.toml")),
)
"""State to begin with, and what is typed."""
LASTING = (Fault.GONE, Fault.READ_ONLY)
"""Where nothing can be taken back any more."""
NOTHING = ("Nothing was changed", "There is no new job")
DONE = ("is kept in the journal of job", "It stands, and is not kept as it left")
BEGINS = ("new", "variant", "change")
UNSURE = "may be there all the same"


@dataclass(frozen=True, kw_only=True)
class Scene:
    """One command and what it does on a sound disk."""

    state: Path
    words: tuple[str, ...]
    before: dict[str, str]
    after: dict[str, str]
    papers: dict[str, bytes]
    older: dict[str, bytes]
    """What lay in the folder of the papers before."""
    steps: int

    @property
    def name(self) -> str:
        """For people."""
        return f"{self.state.name}: {' '.join(self.words[:3])}"


def tries(run: Run) -> None:
    """The app core, then every command, in an order the dice decide, until the time is over."""
    clock_faults.tries(run.share(0.05))
    with worked_out_once():
        made = states(run.folder / "states")
        app_faults.tries(run.share(0.35), made)
        scenes = [scene(run, made / state, words) for state, words in COMMANDS[:: 5 if run.small else 1]]
        todo = [(one, fault, at) for one in scenes for fault in ERRORS for at in range(one.steps)]
        run.tally.note("steps of line commands with a fault each", len(todo))
        run.dice.shuffle(todo)
        done = 0
        for one, fault, at in todo[: 12 if run.small else None]:
            if not run.more:
                break
            done += 1
            with run.counted(f"{one.name}, {fault} at step {at}"):
                command(run, one, fault, at)
        run.tally.note("of them tried", done)


def scene(run: Run, state: Path, words: tuple[str, ...]) -> Scene:
    """The command on a sound disk."""
    work, out = run.folder / "work", run.folder / "out"
    typed = tuple(word.format(out=out) for word in words)
    set_up(state, work, out, {})
    before = snapshot(work)
    steps = Steps(Fault.RENAMED, 10**9, work, (out,))
    with faulty(steps):
        done = said(work, *typed)
    assert done.code == 0, (words, done)
    papers = files_in(out)
    older = dict.fromkeys(papers, b"an older paper") if words[0] in ("paper", "export") else {}
    return Scene(
        state=state,
        words=typed,
        before=before,
        after=snapshot(work),
        papers=papers,
        older=older,
        steps=steps.taken,
    )


def command(run: Run, one: Scene, fault: Fault, at: int) -> None:
    """Runs the command with a fault at this step, then on a sound disk."""
    work, out = run.folder / "work", run.folder / "out"
    older = one.older if run.dice.random() < 0.5 else {}
    set_up(one.state, work, out, older)
    with faulty(Steps(fault, at, work, (out,))) as steps:
        done = said(work, *one.words)
    what = f"{one.name}, {fault} at step {at} ({steps.names[at] if at < len(steps.names) else ''})"
    if not steps.hit:
        return
    if fault is Fault.GONE and any(folder.with_name(f"{folder.name}.elsewhere").exists() for folder in (work, out)):
        return  # a new folder was made in the place of the one that was gone
    if done.own_mistake:
        run.tally.mistake(f"{what}: {done}")
    if fault is Fault.RENAMED and one.words[0] == "undo" and "Nothing left to undo" in " ".join(done.err):
        return  # whoever takes the journal away takes along what could be undone
    _says_enough(run, what, done.err, done.code, work, out)
    for lock in work.glob("*.lock"):  # of a process that has ended: the next one takes it over
        lock.unlink()
    left = snapshot(work)
    _holds(run, what, one, done.code, " ".join(done.err), left, fault)
    papers = papers_whole(run, what, one, older, out)
    if done.code != 0 and not (fault is Fault.GONE and UNSURE in " ".join(done.err)):
        _papers_as_before(run, what, one, older, papers, fault)
    again(run, what, one, left, work, out)


def _holds(run: Run, what: str, one: Scene, code: int, err: str, left: dict[str, str], fault: Fault) -> None:
    """What stands is what stood or what was asked for, and is what was said."""
    if any(words.startswith("cannot be read") for words in left.values()):
        run.tally.lose(f"{what}: a job cannot be read any more: {left}")
    elif code == 0 and left != one.after:
        run.tally.lose(f"{what}: said to be done, and it is not: {_differs(left, one.after)}")
    elif code and any(words in err for words in NOTHING) and _jobs(left) != _jobs(one.before):
        run.tally.lose(f"{what}: said that nothing was changed, and it was: {_differs(left, one.before)}")
    elif code and any(words in err for words in DONE) and _jobs(left) != _jobs(one.after):
        run.tally.lose(f"{what}: said that it stands, and it does not: {_differs(left, one.after)}")
    elif code and one.words[-1] == "--drop" and handed_back(one, left):
        run.tally.note("records handed back before their draft was laid aside, which then stayed")
    elif fault in LASTING and one.words[0] in BEGINS and set(_jobs(left)) == set(_jobs(one.after)):
        run.tally.note("beginnings that a gone or read-only disk did not let be taken away")
    elif _jobs(left) not in (_jobs(one.before), _jobs(one.after)):
        run.tally.lose(f"{what}: half done: {_differs(left, one.before)}; {err}")


def handed_back(one: Scene, left: dict[str, str]) -> bool:
    """Whether what was written down in a draft stands in the revision before it, while the draft is as it was."""
    return _jobs(left) == {**_jobs(one.before), **_jobs(one.after)}


def papers_whole(run: Run, what: str, one: Scene, older: dict[str, bytes], out: Path) -> dict[str, bytes]:
    """Every paper is the old one or the new one; gives those that are there."""
    papers = files_in(out)
    for name, content in papers.items():
        if content not in [known[name] for known in (one.papers, older) if name in known]:
            run.tally.lose(f"{what}: {name} is half a paper")
    return papers


def _papers_as_before(
    run: Run, what: str, one: Scene, older: dict[str, bytes], papers: dict[str, bytes], fault: Fault
) -> None:
    """After a refusal all papers are the old ones.

    A spec is one file: once it stands, and only its folder did not, it is the new one. A disk on which nothing can be
    renamed any more cannot be put as it was.
    """
    wholes = (older, one.papers) if one.words[0] == "export" else (older,)
    if fault is not Fault.READ_ONLY and one.words[0] in ("paper", "export") and papers not in wholes:
        run.tally.lose(f"{what}: it failed, and the papers are others than before")


def again(run: Run, what: str, one: Scene, left: dict[str, str], work: Path, out: Path) -> None:
    """On a sound disk it can be done, once, and nothing is left lying about."""
    if one.words[0] in BEGINS and "--drop" not in one.words and set(_jobs(left)) == set(_jobs(one.after)):
        return  # it was begun: again would be another one
    if _jobs(left) == _jobs(one.after) != _jobs(one.before):
        # It stands, and what is missing is made up for with the next step, whatever that is.
        number = {"new": "2", "variant": "1b"}.get(one.words[0], "1")
        said(work, "record", number, "promised", "to ring", "--by", "the counter")
        now = snapshot(work)
        if set(now) != set(one.after):
            run.tally.lose(f"{what}: not made up for by the next step: {_differs(now, one.after)}")
    else:
        done = said(work, *one.words)
        now = snapshot(work)
        if done.code != 0 or now != one.after:
            run.tally.lose(f"{what}: cannot be done again: {done.err} {_differs(now, one.after)}")
    if rest := [*leftovers(work), *leftovers(out)]:
        run.tally.lose(f"{what}: left lying about: {rest}")


def _says_enough(run: Run, what: str, err: tuple[str, ...], code: int, work: Path, out: Path) -> None:
    if code == 0:
        return
    text = " ".join(err)
    if not any(str(folder) in text for folder in (work, out)):
        run.tally.dim(f"{what}: no file: {text}")
    if not says_cure(text):
        run.tally.dim(f"{what}: no cure: {text}")


def _jobs(found: dict[str, str]) -> dict[str, str]:
    """Without what is under seal."""
    return {name: sign for name, sign in found.items() if sign != "sealed"}


def _differs(one: dict[str, str], other: dict[str, str]) -> str:
    return str({name: (one.get(name), other.get(name)) for name in {*one, *other} if one.get(name) != other.get(name)})


def files_in(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.glob("[!.]*"))} if folder.is_dir() else {}


def set_up(state: Path, work: Path, out: Path, older: dict[str, bytes]) -> None:
    for folder in (work, out, *(each.with_name(f"{each.name}.elsewhere") for each in (work, out))):
        shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(state, work)
    out.mkdir()
    for name, content in older.items():
        (out / name).write_bytes(content)
