"""Rules and spec files changed by the thousand: told in one sentence each with file, place and cure, or read."""

from __future__ import annotations

import os
import random
import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

from specbuilder.storage import rules_files
from specbuilder.tui.errands import Errand
from specbuilder.tui.start import Start
from tests.journeys.bench import press

from .lines import Said, said
from .mutate import mutated
from .once import worked_out_once
from .scene import EXAMPLES, RULES, SMALL_RULES, desk_of
from .strokes import counter
from .tally import Run
from .words import says_cure

_PLACE = re.compile(r"^(?P<file>[^:]+\.(?:toml|journal|zip)|[^:]+)(?::(?P<line>\d+))?: ")
_WHOLE_FILE = re.compile(
    r"is missing|no rule file|far more than any|is a folder|cannot be read|holds no|no spec|deep|there is no|asks for"
)
"""Said of a file as a whole: there is no line to name."""
_COMPUTED = re.compile(rb"\[\[?(?:hole|seat|circuit|ledger|step|finding|caution|mass_budget|hours)\b")
WALK = ("enter", "right", "down", "enter", "l", "escape", "end", "up", "right", "o", "escape", "escape", "escape")


def tries(run: Run) -> None:
    """Small rules, the rules of the house, spec files, and jobs with their journal."""
    with parsed_once():
        _rules(run.share(0.22), SMALL_RULES, "small rules")
        _rules(run.share(0.4), RULES, "rules of the house")
    with worked_out_once():
        _specs(run.share(0.6))
        _jobs(run)


@contextmanager
def parsed_once() -> Iterator[None]:
    """A file of rules that was not changed is parsed once."""
    loads = cache(rules_files.tomllib.loads)

    class Loads:
        def __init__(self) -> None:
            self.loads = loads

    with patch.object(rules_files, "tomllib", Loads()):
        yield
    loads.cache_clear()


def _rules(run: Run, base: Path, name: str) -> None:
    """One file of the folder changed."""
    folder = run.fresh("rules")
    shutil.rmtree(folder)
    shutil.copytree(base, folder)
    files = sorted(folder.rglob("*.toml"))
    spec = _spec_of(base, run)
    count = readable = 0
    while run.more and count < (5 if run.small else 10**6):
        count += 1
        path = run.dice.choice(files)
        sound = path.read_bytes()
        what, spoilt = mutated(run.dice, sound)
        what = f"{name}, {path.relative_to(folder)}: {what}"
        path.write_bytes(spoilt)
        with run.counted(what):
            done = _told(run, what, "audit", str(folder))
            if done.code == 2:
                _faults(run, what, done, folder)
            else:
                readable += 1
                if base is SMALL_RULES or run.dice.random() < 0.12:
                    _used(run, what, folder, spec)
        path.write_bytes(sound)
    run.tally.note(f"mutants of {name}", count)
    run.tally.note(f"of {name} that could still be read", readable)


def _used(run: Run, what: str, folder: Path, spec: Path) -> None:
    """What can be read is reasoned with."""
    for words in (("check", str(spec)), ("show", str(spec), "kitchen")):
        done = _told(run, what, *words, rules=folder)
        if done.code not in (0, 1, 2, 3):
            run.tally.mistake(f"{what}: {words[0]} ends with {done.code}")
        if done.code == 2:
            _faults(run, what, done, folder, spec)
    jobs = run.folder / "opened"
    shutil.rmtree(jobs, ignore_errors=True)
    jobs.mkdir()
    shutil.copy(spec, jobs / "0001-r1.toml")
    floor = counter(jobs)
    found = Start(jobs, folder, "counter 1").load(floor)
    if isinstance(found, (tuple, list)):
        floor.failed(found)
        return
    floor.errands.runner = _nobody
    floor.loaded(found)
    _walk(floor)


def _nobody(_: Errand[object]) -> None:
    """Searches are tried elsewhere."""


def _walk(floor: Any) -> None:
    for key in WALK:
        press(floor, key)
        for cells in (59, 100):
            floor.main_cells = floor.side_cells = cells
            floor.lay()


def _specs(run: Run) -> None:
    """A spec file on its own."""
    texts = [path.read_bytes() for path in sorted(EXAMPLES.glob("*.toml"))]
    folder = run.fresh("specs")
    path = folder / "spec.toml"
    count = read = 0
    while run.more and count < (8 if run.small else 10**6):
        count += 1
        what, spoilt = mutated(run.dice, _front_first(run.dice, run.dice.choice(texts)))
        path.write_bytes(spoilt)
        command = run.dice.choice((("check",), ("show",), ("brief",), ("verify",), ("circuits",), ("check", "--json")))
        words = (command[0], str(path), *command[1:])
        with run.counted(f"spec: {what}"):
            done = _told(run, f"spec: {what}", *words, jobs=folder / "jobs")
            read += done.code != 2
            if done.code not in (0, 1, 2, 3):
                run.tally.mistake(f"spec: {what}: {words[0]} ends with {done.code}")
            if done.code == 2:
                _faults(run, f"spec: {what}", done, folder, path)
    run.tally.note("mutants of spec files", count)
    run.tally.note("of spec files that could still be read", read)


def _front_first(dice: random.Random, data: bytes) -> bytes:
    """Half of them without what is computed: what was said is a fifth of the file, and is what is read."""
    if dice.random() < 0.5:
        return data
    kept, skip = [], False
    for line in data.split(b"\n"):
        if line.startswith(b"["):
            skip = _COMPUTED.match(line) is not None
        if not skip:
            kept.append(line)
    return b"\n".join(kept)


def _jobs(run: Run) -> None:
    """A job whose file or journal was changed: listed, checked, opened at the counter, gone on with and left."""
    jobs = run.fresh("jobs")
    desk = desk_of(jobs)
    shutil.copy(EXAMPLES / "half-done-family.toml", jobs / "0001-r1.toml")
    desk.open("0001")
    desk.leave(None)
    desk.open("0001")
    desk.undo()
    assert desk.job is not None
    desk.job.abandon()
    sound = {path.name: path.read_bytes() for path in jobs.iterdir()}
    count = 0
    while run.more and count < (6 if run.small else 10**6):
        count += 1
        shutil.rmtree(jobs)
        jobs.mkdir()
        name = run.dice.choice(("0001-r1.toml", "0001-r1.toml", "0001-r1.journal"))
        what, spoilt = mutated(run.dice, _front_first(run.dice, sound[name]) if name.endswith("toml") else sound[name])
        what = f"job, {name}: {what}"
        for other, content in sound.items():
            (jobs / other).write_bytes(spoilt if other == name else content)
        with run.counted(what):
            listed = _told(run, what, "jobs", jobs=jobs)
            if not any(line.startswith("0001") for line in listed.out):
                run.tally.lose(f"{what}: the job is not in the list: {listed}")
            done = _told(run, what, "check", "1", jobs=jobs)
            if done.code == 2:
                _faults(run, what, done, jobs, jobs / "0001-r1.toml", jobs / "0001-r1.journal")
            _opened(run, what, jobs, spoilt, name)
    run.tally.note("mutants of jobs", count)


def _opened(run: Run, what: str, jobs: Path, spoilt: bytes, name: str) -> None:
    floor = counter(jobs)
    press(floor, "enter")
    opened = floor.walk is not None
    _walk(floor)
    for _ in range(6):
        press(floor, "escape")
    if not opened and (jobs / name).read_bytes() != spoilt and not list(jobs.glob("*set-aside*")):
        run.tally.lose(f"{what}: it could not be opened, and the file is another")


def _told(run: Run, what: str, *words: str, jobs: Path | None = None, rules: Path = RULES) -> Said:
    """Runs the command; a mistake of the program is shown with where it happened."""
    jobs = jobs or run.folder / "no-jobs"
    done = said(jobs, *words, rules=rules)
    if done.own_mistake:
        os.environ["SPECBUILDER_TRACE"] = "1"
        try:
            said(jobs, *words, rules=rules)
        finally:
            del os.environ["SPECBUILDER_TRACE"]
        run.tally.mistake(f"{what}: {words[0]}: {done.err}")
    return done


def _faults(run: Run, what: str, done: Said, *places: Path) -> None:
    """Every fault names its file, its line where it has one, and what to do."""
    names = {"vans:", "options:"} | {str(place) for place in places} | {place.name for place in places}
    for place in places:
        if place.is_dir():
            names |= {str(path.relative_to(place)) for path in place.rglob("*.toml")}
    if not done.err:
        run.tally.dim(f"{what}: nothing is said")
    told = [line for line in done.err if not line.startswith(("Rules: ", "This file cannot", "Job 0001 cannot"))]
    for line in told:
        if line.startswith(("It can be opened", "Mend the file", "specbuilder restore")):
            continue
        found = _PLACE.match(line)
        missing = []
        if not any(name in line for name in names):
            missing.append("file")
        if (found is None or found["line"] is None) and not _WHOLE_FILE.search(line):
            missing.append("place")
        if not says_cure(line):
            missing.append("cure")
        if missing:
            run.tally.dim(f"{what}: no {', '.join(missing)}: {line}")


def _spec_of(base: Path, run: Run) -> Path:
    """A spec for these rules."""
    if base is RULES:
        return EXAMPLES / "half-done-family.toml"
    jobs = run.fresh("small-job")
    done = said(jobs, "new", "adults=2", "gas-bundle", "customer=The Saturday family", rules=base)
    assert done.code == 0, done
    return jobs / "0001-r1.toml"
