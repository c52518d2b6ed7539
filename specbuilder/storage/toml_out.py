"""TOML text table by table, in the order the tables are given: a writer of whole files would reorder them."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import TypeAlias

import tomli_w

Value: TypeAlias = str | int | float | Sequence[str] | Sequence[int]
Values: TypeAlias = Mapping[str, Value | None]
"""Keys of a table; what is None or empty text is left out."""

_BARE = re.compile(r"[A-Za-z0-9_-]+")
"""A key that needs no quotes."""
_PLAIN = re.compile(r'[^"\\\x00-\x1f\x7f]*')
"""A text that is its own TOML between quotes."""
_WHOLE_BELOW = 2**53
"""Up to here every whole number is a decimal one and back."""


def table(head: str, values: Values, *, remark: str = "") -> str:
    """``[head]`` with its keys. The remark stands above it as a comment, each of its lines as one."""
    return _written(f"[{head}]", values, remark)


def item(head: str, values: Values, *, always: Sequence[str] = ()) -> str:
    """``[[head]]``: one more of a list of tables. The keys ``always`` are written even when they are empty."""
    return _written(f"[[{head}]]", values, "", always)


def rows(key: str, items: Iterable[Values]) -> str:
    """``key = [{ ... }, ...]``: a list of small tables, each on a line of its own, to be read as a table is."""
    lines = "".join(f"    {{ {', '.join(keys(_said(values)).strip().split(chr(10)))} }},\n" for values in items)
    return f"{key} = [\n{lines}]\n" if lines else f"{key} = []\n"


def keys(values: Mapping[str, Value]) -> str:
    """Just the keys, every one of them."""
    return "".join(_line(key, list(v) if isinstance(v, tuple) else v) for key, v in values.items())


def comment(text: str) -> str:
    """The text as a comment that stands apart."""
    return "".join(f"# {line}\n" for line in text.split("\n"))


def figure(value: float | None) -> float | int | None:
    """A computed number to three decimals, whole when it is; None where there is no number to give."""
    if value is None or not math.isfinite(value):
        return None
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def exact(value: float | None) -> float | int | None:
    """A number that was said, as it is; a whole one is written without its ``.0``."""
    return int(value) if value is not None and abs(value) < _WHOLE_BELOW and value == int(value) else value


def _line(key: str, value: Value) -> str:
    """One key. Most are plain texts, which need nothing escaped; the library looks at each character of each."""
    if isinstance(value, str) and _BARE.fullmatch(key) and _PLAIN.fullmatch(value):
        return f'{key} = "{value}"\n'
    return tomli_w.dumps({key: value})


def _said(values: Values, always: Sequence[str] = ()) -> dict[str, Value]:
    return {key: value for key, value in values.items() if value is not None and (value != "" or key in always)}


def _written(head: str, values: Values, remark: str, always: Sequence[str] = ()) -> str:
    above = comment(remark) if remark else ""
    return f"\n{above}{head}\n{keys(_said(values, always))}"
