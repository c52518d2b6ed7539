"""What pages about earlier revisions and older rules ask of the counter."""

from __future__ import annotations

from typing import Protocol


class Opener(Protocol):
    """Opens jobs."""

    def open(self, number: str) -> None:
        """The job in its newest revision; asks first where older rules were used for it."""
        ...

    def take_up(self, number: str) -> None:
        """The job in its newest revision, to go on with."""
        ...

    def look_at(self, number: str, revision: int | None = None) -> bool:
        """A revision as it was, to read. False: it cannot be had, and that is said."""
        ...

    def move_to_today(self, number: str) -> None:
        """The job under the rules of today."""
        ...
