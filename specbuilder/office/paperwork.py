"""Papers made: which ones the state of a job calls for, set in every format that is wanted."""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.documents.formats import FORMATS, Format
from specbuilder.documents.sheets import SHEETS
from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.model.papers import Case

GIVEN_OUT = ("PDF", "text")
"""Formats a paper is given out in, by name."""


def called_for(case: Case) -> tuple[Sheet, ...]:
    """The papers that the state of the job calls for."""
    return tuple(sheet for sheet in SHEETS if sheet.called_for(case))


def possible(case: Case) -> tuple[Sheet, ...]:
    """All papers that can be made of it; one that is not called for yet says on every page what it is not."""
    return tuple(sheet for sheet in SHEETS if sheet.possible(case))


def pressed(case: Case, sheets: Iterable[Sheet], formats: Iterable[Format] = ()) -> dict[str, bytes]:
    """Each paper in each format (without any: as papers are given out), by the name of its file."""
    chosen = tuple(formats) or tuple(form for form in FORMATS if form.name in GIVEN_OUT)
    spec = case.stand.spec
    files: dict[str, bytes] = {}
    for sheet in sheets:
        paper = sheet.make(case)
        for form in chosen:
            files[f"{spec.number or 'new'}-r{spec.revision}-{sheet.name}{form.suffix}"] = form.set(paper)
    return files
