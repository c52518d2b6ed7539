"""Where a value was read."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Origin:
    """A place in a file of the catalogue."""

    file: str
    """Path below the rules folder, e.g. ``options/roof.toml``."""
    line: int
    """Counted from 1."""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}"


NOWHERE = Origin("", 0)
"""Origin of values made in code (tests, derived options)."""
