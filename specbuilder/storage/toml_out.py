"""TOML text table by table, in the order the tables are given: a writer of whole files would reorder them."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import TypeAlias

import tomli_w

Value: TypeAlias = str | int | float | Sequence[str] | Sequence[int]

_WHOLE_BELOW = 2**53
"""Up to here every whole number is a decimal one and back."""


def table(head: str, values: Mapping[str, Value | None], *, remark: str = "") -> str:
    """``[head]`` with its keys; what is None or empty text is left out. The remark stands above it as a comment."""
    return _written(f"[{head}]", values, remark)


def item(head: str, values: Mapping[str, Value | None], *, always: str = "") -> str:
    """``[[head]]``: one more of a list of tables. The key ``always`` is written even when it is empty."""
    return _written(f"[[{head}]]", values, "", always)


def keys(values: Mapping[str, Value]) -> str:
    """Just the keys, every one of them."""
    return tomli_w.dumps({key: list(v) if isinstance(v, tuple) else v for key, v in values.items()})


def figure(value: float | None) -> float | int | None:
    """A computed number to three decimals, whole when it is; None where there is no number to give."""
    if value is None or not math.isfinite(value):
        return None
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def exact(value: float | None) -> float | int | None:
    """A number that was said, as it is; a whole one is written without its ``.0``."""
    return int(value) if value is not None and abs(value) < _WHOLE_BELOW and value == int(value) else value


def _written(head: str, values: Mapping[str, Value | None], remark: str, always: str = "") -> str:
    said = {key: value for key, value in values.items() if value is not None and (value != "" or key == always)}
    above = f"# {remark}\n" if remark else ""
    return f"\n{above}{head}\n{keys(said)}"
