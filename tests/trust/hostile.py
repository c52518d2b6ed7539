"""Hostile text in every field of catalogue and job, through every sheet, format, line command and screen."""

from __future__ import annotations

import dataclasses
import os
import shutil
import unicodedata
from collections.abc import Iterator, Mapping
from datetime import date
from enum import StrEnum
from itertools import cycle, repeat
from types import MappingProxyType
from typing import Any

from specbuilder.documents.formats import FORMATS
from specbuilder.documents.sheets import SHEETS
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Step
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec
from specbuilder.office.house import House, stand_of
from specbuilder.office.paperwork import possible
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.spec_files import spec_text
from specbuilder.tui.counter import Counter
from specbuilder.tui.desk import Desk
from specbuilder.tui.line import width
from specbuilder.tui.marks import SHAPES
from specbuilder.tui.opening import Opening
from tests.journeys.bench import lines, press, too_wide
from tests.journeys.hand_made import ALL, at_once
from tests.office.scene import Scene

from .lines import Said, said
from .mutate import HOSTILE
from .scene import RULES, catalogue, clock
from .strokes import PHRASES
from .tally import Run

TEXTS = (*HOSTILE, "\ud800half\udfff", " ", "x" * 5000, "-" * 200, "|a|b|\n---\n# c", "%PDF-1.4 endstream", "1" * 400)
_WRITTEN = """
name description needs_because source zero_note colour handover question seller_note text shown_where
who_must_do_or_sign signed_by what must_be work hours_basis hold_text freezes address ask_for vat_number not_included
terms cancelling bound paper_foot town edge_treatment check_behind measure because fixes asks ask short formula contact
damage registration vin_tail paint_code note words by reason owner cut_out_mm circuit from_point to_point label surface
cut_from
"""
_TEXTS = frozenset(_WRITTEN.split())
"""Fields that hold what people write; all others hold words of the program."""
COMMANDS: tuple[tuple[str, ...], ...] = (
    ("show", "1"),
    *(("show", "1", step.value) for step in Step),
    ("brief", "1"),
    ("check", "1"),
    ("check", "1", "--json"),
    ("open", "1"),
    ("find", "1", "gas"),
    ("ledgers", "1"),
    ("circuits", "1"),
    ("customer", "1"),
    ("build", "1"),
    ("paper", "1"),
    ("jobs",),
    ("compare", "1", "1@1"),
    ("why", "1", "total-mass"),
    ("verify", "1"),
)
TYPED: tuple[tuple[str, ...], ...] = (
    ("set", "1", "customer={}"),
    ("set", "1", "contact={}"),
    ("set", "1", "note={}"),
    ("set", "1", "vin_tail={}"),
    ("set", "1", "damage={}"),
    ("set", "1", "adults={}"),
    ("set", "1", "{}"),
    ("drop", "1", "{}"),
    ("find", "1", "{}"),
    ("why", "1", "{}"),
    ("show", "1", "{}"),
    ("show", "{}"),
    ("ask", "1", "{}", "--who", "{}"),
    ("record", "1", "promised", "{}", "--by", "{}"),
    ("record", "1", "reading", "H0", "{}", "--by", "x"),
    ("quote", "1", "--by", "{}"),
    ("order", "1", "--customer", "{}", "--firm", "{}", "--place", "home"),
    ("change", "1", "--because", "{}"),
    ("accept", "1", "{}", "--by", "{}"),
    ("{}",),
    ("--counter", "{}", "jobs"),
)


def tries(run: Run) -> None:
    """Round after round, each field with another text; what came out is looked at character by character."""
    _read_back(run)
    texts = list(TEXTS)
    run.dice.shuffle(texts)
    rounds = 0
    while run.more and rounds < (1 if run.small else 10**6):
        rounds += 1
        _papers(run, cycle(texts))
        _screens(run.share(0.6), cycle(texts[3:] + texts[:3]))
        _typed(run.share(0.5), texts)
        run.dice.shuffle(texts)
    run.tally.note("rounds", rounds)
    run.tally.note("hostile texts in each", len(texts))


def planted(value: Any, texts: Iterator[str]) -> Any:
    """The same record with the next of these texts in every field that holds text of people."""
    if not dataclasses.is_dataclass(value) or isinstance(value, type):
        return value
    changes: dict[str, Any] = {}
    for field in dataclasses.fields(value):
        now = getattr(value, field.name)
        if isinstance(now, StrEnum) or not field.init:
            continue
        if isinstance(now, str) and field.name in _TEXTS:
            changes[field.name] = next(texts)
        elif isinstance(now, tuple) and now and isinstance(now[0], str) and field.name in _TEXTS:
            changes[field.name] = tuple(next(texts) for _ in now)
        elif dataclasses.is_dataclass(now):
            changes[field.name] = planted(now, texts)
        elif isinstance(now, Mapping):
            changes[field.name] = MappingProxyType({key: planted(each, texts) for key, each in now.items()})
        elif isinstance(now, tuple) and now and dataclasses.is_dataclass(now[0]):
            changes[field.name] = tuple(planted(each, texts) for each in now)
    return dataclasses.replace(value, **changes)


def hostile_catalogue(texts: Iterator[str]) -> Catalogue:
    """The house catalogue, as if no reader had looked at it."""
    known = catalogue()
    names = ("questions", "brief", "groups", "options", "rules", "ledgers", "work", "cautions", "papers", "collection")
    changes = {
        name: MappingProxyType({key: planted(each, texts) for key, each in getattr(known, name).items()})
        for name in names
    }
    return dataclasses.replace(known, firm=planted(known.firm, texts), **changes)


def hostile_spec(spec: Spec, texts: Iterator[str]) -> Spec:
    """A job with the text in all that people say."""
    at = "2031-04-14 10:00"
    records = (
        *spec.records,
        Record(kind=RecordKind.PROMISED, at=at, by=next(texts), words=next(texts)),
        Record(kind=RecordKind.CALL, at=at, by=next(texts), words=next(texts), due="2031-05-01"),
    )
    said = planted(dataclasses.replace(spec, records=()), texts)
    return dataclasses.replace(said, number=spec.number, state=spec.state, records=records, undone=spec.undone)


def _papers(run: Run, texts: Iterator[str]) -> None:
    """Every sheet in every format, and the spec file."""
    folder = run.fresh("papers")
    scene = Scene(folder, catalogue())
    scene.order()
    known = hostile_catalogue(texts)
    stand = stand_of(known, hostile_spec(scene.spec(), texts))
    house = House(JobsFolder(folder, clock=clock), known, RULES)
    with run.counted("spec file"):
        _clean(run, "spec file", spec_text(known, stand.spec, stand.report).replace("\n", ""))
    case = house.case(stand, date(2031, 4, 14))
    for sheet in (*possible(case), *SHEETS[:1]):
        for form in FORMATS:
            with run.counted(f"{sheet.name} as {form.name}"):
                data = form.set(sheet.make(case))
                if not data.startswith(b"%PDF"):
                    _clean(run, f"{sheet.name} as {form.name}", data.decode().replace("\n", ""))
            run.tally.note("papers set")
    shutil.rmtree(folder)


def _screens(run: Run, texts: Iterator[str]) -> None:
    """Every phrase of keys on a job full of it."""
    folder = run.fresh("screens")
    scene = Scene(folder, catalogue())
    known = hostile_catalogue(texts)
    made = Counter(SHAPES, (), leave=lambda: None, turn=lambda: None)
    opening = Opening(made, Desk(House(JobsFolder(folder, clock=clock), known, RULES), clock, next(texts)))
    opening.searches = ALL
    made.errands.runner = at_once
    made.loaded(opening)
    press(made, "enter")
    for number, phrase in enumerate((("down",), *PHRASES, *_typings(next(texts)))):
        if not run.more and not run.small:
            break
        with run.counted(f"keys {phrase[:4]}"):
            if made.walk is None:
                press(made, "enter")
            press(made, *phrase)
            if phrase[:1] == ("/",):
                made.paste(next(texts))
            for cells in (59, 100):
                for line in lines(made, cells):
                    _clean(run, f"screen after {phrase[:4]}", line.text)
                if wide := too_wide(made, cells):
                    run.tally.lose(f"after {phrase[:4]}: wider than {cells}: {width(wide[0])}")
        run.tally.note("screens looked at", 2)
        if run.small and number > 8:
            break
    del scene
    shutil.rmtree(folder)


def _typings(text: str) -> Iterator[tuple[str, ...]]:
    typed = tuple(text[:12])
    yield ("escape", "escape", "escape", "escape", "/", *typed, "enter", "escape", "escape")
    yield ("n", *typed, "enter", "escape")
    yield ("p", "b", "enter", *typed, "enter", "enter", "escape", "escape")


def _typed(run: Run, texts: list[str]) -> None:
    """Every command, with a text typed wherever something is typed; what it leaves is read by the others."""
    jobs = run.fresh("typed") / "jobs"
    assert said(jobs, "new", "adults=2", "fenwain-short", "gas-bundle").code == 0
    turns = cycle([text for text in texts if _can_be_typed(text)])
    rounds = 0
    while (run.more and rounds < 50) or rounds == 0:
        rounds += 1
        for words in (*TYPED, *COMMANDS)[:: 9 if run.small else 1]:
            if not run.more and not run.small:
                break
            text = next(turns)
            with run.counted(f"{words} with {text[:20]!r}"):
                done = said(jobs, *(word.replace("{}", text) for word in words))
                if done.own_mistake:
                    run.tally.mistake(f"{words} with {text[:20]!r}: {done.err[:1]}")
                _clean_said(run, f"{words} with {text[:20]!r}", done)
            run.tally.note("line commands")
        if run.small:
            break
    shutil.rmtree(jobs.parent)


def _can_be_typed(text: str) -> bool:
    """What a shell can hand to a program."""
    try:
        return b"\0" not in os.fsencode(text)
    except UnicodeEncodeError:
        return False


def _read_back(run: Run) -> None:
    """A job whose file holds what may stand in a text: it is saved, listed and opened as it was."""
    for text in TEXTS:
        with run.counted(f"{text[:20]!r} through the file"):
            jobs = run.fresh("back")
            job = JobsFolder(jobs, clock=clock).create("counter 1")
            spec = hostile_spec(job.start, repeat(text))
            job.save(catalogue(), spec, stand_of(catalogue(), spec).report)
            job.close()
            listed = said(jobs, "jobs")
            if listed.code or not listed.out or "cannot be read" in " ".join(listed.out):
                run.tally.lose(f"{text[:20]!r}: saved, and it cannot be read: {listed}")
            shutil.rmtree(jobs)


def _clean_said(run: Run, what: str, done: Said) -> None:
    for line in (*done.out, *done.err):
        _clean(run, what, line)


def _clean(run: Run, what: str, text: str) -> None:
    """Nothing that steers a terminal or turns what is read comes out."""
    if text.isascii() and text.isprintable():
        return
    wrong = {hex(ord(each)) for each in text if unicodedata.category(each) in ("Cc", "Cf", "Cs", "Zl", "Zp")}
    if wrong:
        run.tally.lose(f"{what}: {sorted(wrong)} comes out")
