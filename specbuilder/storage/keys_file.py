"""A house's own keys: a TOML file with one table ``[keys]``, a line for each act, its key or a list of them.

What acts there are is not known here; the file and line of each is handed on, so that it can be told.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from .disk import reading
from .faults import Fault, FaultList, Source
from .fields import table_of, text_of
from .toml_lines import TomlLines
from .toml_text import toml_table, utf8_text

TABLE = "keys"
_LARGEST_BYTES = 100_000
_LONGEST_KEY = 20


class KeysFaultsError(Exception):
    """The file cannot be used; with every fault."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults


@dataclass(frozen=True, slots=True)
class OwnKeys:
    """What stands in the file."""

    file: str
    chosen: Mapping[str, tuple[str, ...]]
    """Keys by act, as written."""
    lines: Mapping[str, int]
    """The line of each act, counted from 1."""


def read_own_keys(path: Path) -> OwnKeys:
    """The keys in this file.

    Raises:
        KeysFaultsError: it is no such file, with every fault.
        DiskError: it cannot be read at all.
    """
    with reading(path) as file:
        data = file.read(_LARGEST_BYTES + 1)
    name, faults = str(path), FaultList()
    if len(data) > _LARGEST_BYTES:
        faults.add(name, f"more than {_LARGEST_BYTES:,} bytes are no list of keys: this is another file.")
    text = utf8_text(data, name, faults, "this line is not UTF-8 text: save the file as UTF-8.")
    if text is None or len(faults):
        raise KeysFaultsError(faults.in_order())
    source = Source(name, TomlLines(text), faults)
    chosen = _chosen(toml_table(text, source) or {}, source)
    if len(faults):
        raise KeysFaultsError(faults.in_order())
    return OwnKeys(name, chosen, {act: source.lines.line((TABLE, act)) for act in chosen})


def _chosen(document: Mapping[str, object], source: Source) -> Mapping[str, tuple[str, ...]]:
    for key in document:
        if key != TABLE:
            source.top.at(key).fault(f"this file has one table, [{TABLE}]: write the line below it.")
    spot = source.top.at(TABLE)
    found: dict[str, tuple[str, ...]] = {}
    for act, value in (table_of(document.get(TABLE, {}), spot) or {}).items():
        items = value if isinstance(value, list) else [value]
        keys = (text_of(item, spot.at(act), longest=_LONGEST_KEY) for item in items)
        found[act] = tuple(key for key in keys if key is not None)
    return found
