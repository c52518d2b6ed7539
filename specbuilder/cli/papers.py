"""``paper`` and ``verify``: what leaves the house on paper, and whether a spec is still what left it."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path

from specbuilder.documents.formats import FORMATS, Format
from specbuilder.documents.sheets import SHEETS
from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.model.papers import Case
from specbuilder.office.house import House, stand_of
from specbuilder.office.paperwork import GIVEN_OUT, called_for, possible, pressed
from specbuilder.office.verify import verify
from specbuilder.storage.disk import make_folder
from specbuilder.storage.faults import quotable
from specbuilder.storage.job_recovery import JobUnreadableError
from specbuilder.storage.papers import write_papers
from specbuilder.wording.job_lines import how_read_out, paper_line
from specbuilder.wording.life import replaced_on_paper
from specbuilder.wording.papers import about, called
from specbuilder.wording.standing import standing_lines

from . import output
from .answers import Answer
from .asjson_reading import standing_json
from .opening import job_of, opened, unreadable
from .output import Exit, StopError
from .undisturbed import undisturbed

SPOKEN, PDF = "spoken", ".pdf"
"""The format a paper is read out in; the suffix of the one that cannot be."""


def paper(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Lists the papers of a job, reads them out, or writes those that its state calls for, all, or those named.

    Raises:
        StopError: a paper or a format is unknown, or the job cannot be read; nothing was written.
        DiskError: they could not be written; none of them stands there half.
    """
    was = opened(arguments.file, house)
    try:
        case = house.case(stand_of(was.catalogue, was.spec), now.date())
    except JobUnreadableError as error:
        if was.job is None:
            raise
        raise unreadable(was.job, error) from error
    if case.replaced_by is not None:
        output.message((replaced_on_paper(was.spec.revision, case.replaced_by),))
    if arguments.to is None and not arguments.all and not arguments.sheets:
        return _listed(house, case, arguments.file, now)
    sheets = _sheets(case, arguments)
    if arguments.to is None:
        return _read_out(case, sheets, arguments.formats)
    files = pressed(case, sheets, _formats(arguments.formats))
    make_folder(Path(arguments.to))
    with undisturbed():
        written = write_papers(Path(arguments.to), files)
    return Answer(tuple(str(path) for path in written), stands="The papers were written all the same.")


def verified(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Whether the spec in FILE is whole, current and unaltered.

    Raises:
        DiskError: it cannot be read at all.
        RulesFaults: the rules it was agreed on were altered.
    """
    job = job_of(arguments.file, house.jobs)
    path = job.spec if job is not None else Path(arguments.file)
    standing = verify(house, path, now.date())
    lines = (standing_json(standing),) if arguments.json else standing_lines(standing)
    return Answer(lines, Exit.FINE if standing.good else Exit.BROKEN)


def _listed(house: House, case: Case, file: str, now: datetime) -> Answer:
    """Where the job stands, what comes next and what is in its way, and every paper that can be made."""
    from .next_step import standing_of

    lines = [
        paper_line(sheet.title, about(sheet.about, sheet.private), called(sheet.called_for(case)), sheet.name)
        for sheet in possible(case)
    ]
    return Answer((*standing_of(house, case, now), *lines, how_read_out(file)))


def _read_out(case: Case, sheets: Iterable[Sheet], formats: str | None) -> Answer:
    """One fact a line, or in another format that is text."""
    forms = _formats(formats or SPOKEN)
    if any(form.suffix == PDF for form in forms):
        raise StopError(Exit.UNUSABLE, "A PDF cannot be read out: name the folder it is written to with --to DIR.")
    texts = (form.set(sheet.make(case)).decode() for sheet in sheets for form in forms)
    return Answer(tuple(line for text in texts for line in text.rstrip("\n").split("\n")))


def _sheets(case: Case, arguments: Namespace) -> tuple[Sheet, ...]:
    if arguments.all:
        return possible(case)
    if not arguments.sheets:
        return called_for(case)
    known = {sheet.name: sheet for sheet in SHEETS}
    for name in arguments.sheets:
        if name not in known:
            raise StopError(Exit.UNUSABLE, f'"{quotable(name)}" is no paper: use one of {", ".join(known)}.')
        if not known[name].possible(case):
            raise StopError(Exit.BROKEN, f"There is no {known[name].title.lower()}: nothing signed is being changed.")
    return tuple(known[name] for name in arguments.sheets)


def _formats(text: str | None) -> tuple[Format, ...]:
    names = tuple(name.strip().lower() for name in text.split(",")) if text else tuple(n.lower() for n in GIVEN_OUT)
    known = {form.name.lower(): form for form in FORMATS}
    for name in names:
        if name not in known:
            raise StopError(Exit.UNUSABLE, f'--as: "{quotable(name)}" is no format: use {", ".join(known)}.')
    return tuple(known[name] for name in names)
