"""TOML text to its outermost table, with one sentence when it is no TOML."""

from __future__ import annotations

import re
import tomllib

from .faults import Source, quotable

_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


def toml_table(text: str, source: Source) -> dict[str, object] | None:
    """The table; None after the fault was noted with its line."""
    try:
        return tomllib.loads(text)
    except ValueError as error:
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
