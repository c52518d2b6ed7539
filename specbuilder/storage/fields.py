"""Typed reading of TOML values: a getter per kind, each noting its fault at its own dotted path and going on.

Functions ``..._of`` turn one value; they answer None after noting a fault. ``Fields`` reads a table key by key; where
a fault was noted it answers with a stand-in of the right type, which nobody sees: a reading with faults is refused.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import date, datetime, time
from enum import StrEnum
from typing import TypeVar, cast

from .faults import Spot, meant, quotable
from .text_limits import text_fault

_W = TypeVar("_W", bound=StrEnum)
LARGEST = 2**53
"""Above this a whole number no longer survives as a float, and nothing here is counted that high."""


def text_of(value: object, spot: Spot, *, lines: bool = False, longest: int | None = None) -> str | None:
    """A text without hidden characters and no longer than ``longest``; with ``lines`` it may break into several."""
    if not isinstance(value, str):
        _refuse(value, "a text", "put it in quotes", spot)
        return None
    fault = text_fault(value, len(value) if longest is None else longest, lines=lines)
    if fault is None:
        return value
    spot.fault(fault)
    return None


def whole_of(value: object, spot: Spot) -> int | None:
    """A whole number; ``true`` is none."""
    if not isinstance(value, int) or isinstance(value, bool):
        _refuse(value, "a whole number", _number_cure(value), spot)
        return None
    if abs(value) <= LARGEST:
        return value
    spot.fault("the number is larger than anything counted here: check it.")
    return None


def number_of(value: object, spot: Spot) -> float | None:
    """A finite number, whole or decimal; ``true`` is none."""
    if isinstance(value, int) and not isinstance(value, bool):
        whole = whole_of(value, spot)
        return None if whole is None else float(whole)
    if not isinstance(value, float):
        _refuse(value, "a number", _number_cure(value), spot)
        return None
    if math.isfinite(value):
        return value
    spot.fault("needs a finite number: inf and nan stand for nothing that can be measured.")
    return None


def yes_no_of(value: object, spot: Spot) -> bool | None:
    """``true`` or ``false``."""
    if isinstance(value, bool):
        return value
    _refuse(value, "true or false", "write one of the two words without quotes", spot)
    return None


def word_of(value: object, spot: Spot, kind: type[_W]) -> _W | None:
    """A word of a closed set."""
    text = text_of(value, spot)
    if text is None:
        return None
    try:
        return kind(text)
    except ValueError:
        words = tuple(member.value for member in kind)
    spot.fault(f'"{quotable(text)}" is no word for this; {meant(text, words, "see the other tables.")}')
    return None


def list_of(value: object, spot: Spot) -> tuple[object, ...] | None:
    """A list of anything."""
    if isinstance(value, list):
        return tuple(cast("list[object]", value))
    _refuse(value, "a list", "put it in [ ]", spot)
    return None


def table_of(value: object, spot: Spot) -> Mapping[str, object] | None:
    """A table of anything."""
    if isinstance(value, dict):
        return cast("dict[str, object]", value)
    _refuse(value, "a table", "write key = value pairs under a head of its own", spot)
    return None


def unknown_key(key: str, known: tuple[str, ...], spot: Spot) -> None:
    """Notes that no such key belongs into the table at ``spot``."""
    spot.at(key).fault(f"there is no such key here; {meant(key, known, 'take it out.')}")


class Fields:
    """A table read key by key. ``close`` refuses what nobody asked for."""

    def __init__(self, table: Mapping[str, object], spot: Spot) -> None:
        self.spot = spot
        self._table = table
        self._asked: dict[str, None] = {}

    def has(self, key: str) -> bool:
        """True when the key stands in the table."""
        self._asked[key] = None
        return key in self._table

    def text(self, key: str, default: str | None = None, *, lines: bool = False, longest: int | None = None) -> str:
        """A text of at most so many characters; missing is a fault unless there is a default."""
        if self._lacks(key, default, "a text"):
            return default or ""
        return text_of(self._table[key], self.spot.at(key), lines=lines, longest=longest) or ""

    def whole(self, key: str, default: int | None = None) -> int:
        """A whole number; missing is a fault unless there is a default."""
        if self._lacks(key, default, "a whole number"):
            return default or 0
        return whole_of(self._table[key], self.spot.at(key)) or 0

    def number(self, key: str, default: float | None = None) -> float:
        """A number; missing is a fault unless there is a default."""
        if self._lacks(key, default, "a number"):
            return default or 0
        return number_of(self._table[key], self.spot.at(key)) or 0

    def yes_no(self, key: str, default: bool | None = None) -> bool:
        """``true`` or ``false``; missing is a fault unless there is a default."""
        if self._lacks(key, default, "true or false"):
            return default or False
        return yes_no_of(self._table[key], self.spot.at(key)) or False

    def word(self, key: str, kind: type[_W], default: _W | None = None) -> _W:
        """A word of a closed set; missing is a fault unless there is a default."""
        stand_in = default if default is not None else next(iter(kind))
        if self._lacks(key, default, f"one of {', '.join(kind)}"):
            return stand_in
        return word_of(self._table[key], self.spot.at(key), kind) or stand_in

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """A list of texts; missing is a fault unless there is a default."""
        if self._lacks(key, default, "a list of texts"):
            return default or ()
        spot = self.spot.at(key)
        items = list_of(self._table[key], spot) or ()
        texts = (text_of(item, spot.at(number)) for number, item in enumerate(items))
        return tuple(text for text in texts if text is not None)

    def value(self, key: str) -> object:
        """Whatever stands there, unread; None when nothing does."""
        self._asked[key] = None
        return self._table.get(key)

    def table(self, key: str, *, optional: bool = False) -> Fields:
        """A table in the table; missing is a fault unless it is optional, and reads as an empty one."""
        spot = self.spot.at(key)
        if self._lacks(key, True if optional else None, "a table"):
            return Fields({}, spot)
        return Fields(table_of(self._table[key], spot) or {}, spot)

    def tables(self, key: str) -> tuple[Fields, ...]:
        """A list of tables, ``[[key]]``; missing reads as none."""
        spot = self.spot.at(key)
        if not self.has(key):
            return ()
        items = list_of(self._table[key], spot) or ()
        tables = ((table_of(item, spot.at(number)), spot.at(number)) for number, item in enumerate(items))
        return tuple(Fields(table, inner) for table, inner in tables if table is not None)

    def entries(self) -> tuple[tuple[str, Fields], ...]:
        """The tables of a table whose keys are names: ``[key.NAME]``."""
        found: list[tuple[str, Fields]] = []
        for key, value in self._table.items():
            spot = self.spot.at(key)
            table = table_of(value, spot) if self.has(key) else None
            if table is not None:
                found.append((key, Fields(table, spot)))
        return tuple(found)

    def close(self) -> None:
        """Refuses every key that was not asked for, with the nearest one that was."""
        for key in self._table:
            if key not in self._asked:
                unknown_key(key, tuple(self._asked), self.spot)

    def _lacks(self, key: str, default: object, needs: str) -> bool:
        """True when the key is missing; that is a fault where there is no default."""
        if self.has(key):
            return False
        if default is None:
            self.spot.at(key).fault(f"is missing: add it ({needs}).")
        return True


def _refuse(value: object, needed: str, cure: str, spot: Spot) -> None:
    """Notes a value of the wrong kind."""
    spot.fault(f"needs {needed}, but this is {told(value)}: {cure}.")


def _number_cure(value: object) -> str:
    return "write it without quotes" if isinstance(value, str) else "write a plain figure"


def told(value: object) -> str:
    """A value as it is told to people, with its kind."""
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f'the text "{quotable(value)}"'
        case int() if abs(value) > LARGEST:
            return "a very large number"
        case int() | float():
            return f"the number {value:.12g}"
        case list():
            return "a list"
        case dict():
            return "a table"
        case datetime() | date() | time():
            return "a date or time"
        case _:
            return "something else"
