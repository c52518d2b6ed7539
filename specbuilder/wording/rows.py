"""One row of the walk in words: name, money, mass, a short note; and the whole sentence below the list."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.report import Report

NOTE_WIDTH = 23
"""The note of a row is never wider at 80 columns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowWords:
    """The cells of one option row."""

    state: str
    name: str
    money: str
    """``£2,808`` of a choice, ``+936`` of what may come, ``-`` of what is blocked."""
    mass: str
    note: str
    """At most 23 characters."""


def row_words(catalogue: Catalogue, report: Report, option: OptionId) -> RowWords:
    """The cells of this option's row."""
    raise NotImplementedError


def row_note(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """At most 23 characters: the one thing worth knowing about this row."""
    raise NotImplementedError


def row_sentence(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """What stands below the list for the row under the cursor, in whole sentences."""
    raise NotImplementedError
