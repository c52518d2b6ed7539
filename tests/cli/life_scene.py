"""A job under the rules of the house in each state of its life, and ways to spoil a file or a disk."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from specbuilder.cli.output import Exit
from specbuilder.storage.disk import DiskError, DiskReason

from .counter import Said

HOUSE = Path(__file__).parent.parent.parent
RULES, FAMILY = HOUSE / "rules", HOUSE / "examples" / "saturday-family.toml"
SIGN = ("--customer", "M. Hale", "--firm", "the counter", "--place", "premises")
SPOIL: dict[str, Callable[[Path], object]] = {
    "gone": lambda path: path.unlink(),
    "empty": lambda path: path.write_bytes(b""),
    "half": lambda path: path.write_bytes(path.read_bytes()[:999]),
    "noise": lambda path: path.write_bytes(bytes(range(256)) * 9),
    "folder": lambda path: (path.unlink(), path.mkdir()),
}


STATES: tuple[tuple[str, tuple[tuple[str, ...], ...]], ...] = (
    ("draft", (("new", "--from", str(FAMILY)),)),
    ("ordered", (("quote", "1"), ("order", "1", *SIGN))),
    ("changing", (("change", "1"), ("drop", "1", "toilet-portable"))),
    ("changed", (("order", "1", *SIGN),)),
)
"""Job 0001 of the Saturday family under the rules of the house, each state from the one before."""


def told(said: Said) -> str:
    """All that was said, on one line; never a mistake of the program."""
    assert said.code != Exit.OWN_MISTAKE, said.err
    return " ".join((*said.out, *said.err))


def full(path: Path, *_: object, **__: object) -> None:
    """A disk that takes nothing."""
    raise DiskError(DiskReason.FULL, path, writing=True)
