"""TOML text to its outermost table, with one sentence when it is no TOML."""

from __future__ import annotations

import re
import tomllib

from .faults import FaultList, Source, quotable

_LONG_NUMBER = re.compile(r"[0-9][0-9_]{600,}")
_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


LONG_NUMBER = "a number on this line has more digits than anything counted here: check it."


def long_number_line(text: str, error: ValueError) -> int:
    """The line of a number too long to be read, counted from 1; 0 when the text was refused for something else."""
    if _PLACE.search(str(error)) or "digits" not in str(error):
        return 0
    found = _LONG_NUMBER.search(text)
    return text.count("\n", 0, found.start()) + 1 if found else 1


def utf8_text(data: bytes, file: str, faults: FaultList, words: str) -> str | None:
    """The text with the line ends of any system; None after the fault was noted in these words, with its line."""
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        faults.add(file, words, line=data.count(b"\n", 0, error.start) + 1)
        return None


def toml_table(text: str, source: Source) -> dict[str, object] | None:
    """The table; None after the fault was noted with its line."""
    try:
        return tomllib.loads(text)
    except ValueError as error:
        line = long_number_line(text, error)
        if line:
            source.faults.add(source.file, LONG_NUMBER, line=line)
            return None
        message = str(error)
        place = _PLACE.search(message)
        line = int(place[1]) if place and place[1] else text.count("\n") + 1
        told = quotable(_PLACE.sub("", message), 120)
        where = f" at column {place[2]}" if place and place[2] else ""
        words = f"this line is not written as TOML{where} ({told}): mend it."
        source.faults.add(source.file, words, line=line)
    except RecursionError:
        source.faults.add(source.file, "lists or tables stand too deep inside each other: write it flatter.")
    return None
