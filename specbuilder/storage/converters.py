"""From a TOML value to a value of the model: one converter for each kind of annotation that holds no record.

A converter answers None after noting a fault. It is given the words of the catalogue and looks at those it needs.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import TypeAlias

from specbuilder.model.ids import Tag
from specbuilder.model.parts import Need
from specbuilder.model.rules import AnyOf

from .expressions import parse_expression
from .faults import Spot, quotable
from .fields import LARGEST, list_of, number_of, table_of, text_of, whole_of, word_of, yes_no_of
from .vocabulary import Names, Vocabulary

Convert: TypeAlias = Callable[[object, Spot, Vocabulary], object]
"""A TOML value to the value of a field; None after a fault was noted."""

FREE_NAME = re.compile(r"[a-z][a-z0-9_]*")
"""How keys of the brief and names of settings are written."""
_PLACED = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*(?:@(?:side|left|right|rear))?")


def text(value: object, spot: Spot, words: Vocabulary) -> str | None:
    """A text on one line."""
    return text_of(value, spot)


def whole(value: object, spot: Spot, words: Vocabulary) -> int | None:
    """A whole number."""
    return whole_of(value, spot)


def number(value: object, spot: Spot, words: Vocabulary) -> float | None:
    """A number that can be counted with."""
    found = number_of(value, spot)
    if found is None or abs(found) <= LARGEST:
        return found
    spot.fault("the number is larger than anything counted here: check it.")
    return None


def yes_no(value: object, spot: Spot, words: Vocabulary) -> bool | None:
    """``true`` or ``false``."""
    return yes_no_of(value, spot)


def placed(value: object, spot: Spot, words: Vocabulary) -> str | None:
    """A tag or a zone, which the table itself makes."""
    text = text_of(value, spot)
    if text is None or _PLACED.fullmatch(text):
        return text
    form = "small letters, digits and hyphens, and at most one @side, @left, @right or @rear at the end"
    spot.fault(f'"{quotable(text)}" is not written as tags and zones are: use {form}.')
    return None


def named(names_of: Callable[[Vocabulary], Names]) -> Convert:
    """An id that another table must bear. Empty stands for none, where the model takes that."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> str | None:
        text = text_of(value, spot)
        return text if not text or known(text, names_of(words), spot) else None

    return convert


def known(word: str, names: Names, spot: Spot) -> bool:
    """True for a word of this catalogue; any other is noted."""
    unknown = names.unknown(word)
    if unknown is not None:
        spot.fault(unknown)
    return unknown is None


def expression(value: object, spot: Spot, words: Vocabulary) -> AnyOf | None:
    """A written rule, or one half of it."""
    text = text_of(value, spot)
    if text is None:
        return None
    parsed = parse_expression(text, words)
    for fault in parsed.faults:
        spot.fault(f"at column {fault.column}: {fault.words}")
    return None if parsed.faults else parsed.expression


def need(value: object, spot: Spot, words: Vocabulary) -> Need | None:
    """``a | b``: tags of which one must be given."""
    text = text_of(value, spot)
    if text is None:
        return None
    tags = tuple(tag.strip() for tag in text.split("|"))
    if not all(_PLACED.fullmatch(tag) for tag in tags):
        spot.fault(f'"{quotable(text)}" is not written as a need is: write tags without #, with | between them.')
        return None
    met = [known(tag, words.tags, spot) for tag in tags]
    return Need(any_of=tuple(Tag(tag) for tag in tags)) if all(met) else None


def word(kind: type[StrEnum]) -> Convert:
    """A word of this closed set."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> StrEnum | None:
        return word_of(value, spot, kind)

    return convert


def listed(item: Convert) -> Convert:
    """A list of such values."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> tuple[object, ...] | None:
        values = list_of(value, spot)
        if values is None:
            return None
        read = tuple(item(each, spot.at(number), words) for number, each in enumerate(values))
        return None if None in read else read

    return convert


def keyed(item: Convert) -> Convert:
    """A table whose keys are free names, such as the settings of a ledger."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> Mapping[str, object] | None:
        table = table_of(value, spot)
        if table is None:
            return None
        read: dict[str, object] = {}
        for key, each in table.items():
            read[key] = item(each, spot.at(key), words)
            if not FREE_NAME.fullmatch(key):
                spot.at(key).fault("the name may hold small letters, digits and _ only: rename it.")
                read[key] = None
        return None if None in read.values() else MappingProxyType(read)

    return convert
