"""Whether the folder of rules is still what was read from it: by names, sizes and times first, by its bytes last."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import TypeAlias

from .rules_files import digest_of

Stamp: TypeAlias = frozenset[tuple[str, int, int]]


def stamp_of(rules: Traversable | Path) -> Stamp:
    """Name, size and time of every file; nothing where it is no folder that can be edited, or cannot be looked at."""
    try:
        stats = [(name, path.stat()) for name, path in _files(rules)]
    except OSError:
        return frozenset()
    return frozenset((name, stat.st_size, stat.st_mtime_ns) for name, stat in stats)


def is_changed(rules: Traversable | Path, digest: str) -> bool:
    """True when the folder holds other rules than those of this digest, or cannot be read any more."""
    try:
        return digest_of((name, path.read_bytes()) for name, path in _files(rules)) != digest
    except OSError:
        return True


def _files(rules: Traversable | Path) -> Iterator[tuple[str, Path]]:
    if not isinstance(rules, Path):
        return
    for path in sorted(rules.rglob("*.toml")):
        inside = path.relative_to(rules)
        if not any(part.startswith(".") for part in inside.parts):
            yield inside.as_posix(), path
