"""How long a question may take: seconds, steps of the search, or until somebody calls it off."""

from __future__ import annotations

from collections.abc import Callable
from time import perf_counter


class Spent(Exception):  # noqa: N818 - not an error: the answer is then partial
    """The budget ran out. Raised inside the search only; what is asked from outside answers with what it has."""


class Budget:
    """A purse the search pays from. One purse may pay for several questions in a row."""

    __slots__ = ("_cancelled", "_end", "_steps")

    def __init__(
        self,
        seconds: float | None = None,
        steps: int | None = None,
        cancelled: Callable[[], bool] | None = None,
    ) -> None:
        """The clock starts here. ``steps`` counts decisions and dead ends; None: without end."""
        self._end = None if seconds is None else perf_counter() + seconds
        self._steps = steps
        self._cancelled = cancelled

    def spend(self, steps: int = 1) -> None:
        """Pay for some steps; raises Spent when nothing is left."""
        if self._steps is not None:
            self._steps -= steps
            if self._steps < 0:
                raise Spent
        if self._end is not None and perf_counter() > self._end:
            raise Spent
        if self._cancelled is not None and self._cancelled():
            raise Spent

    def is_spent(self) -> bool:
        """Whether the next step would raise Spent."""
        try:
            self.spend(0)
        except Spent:
            return True
        return self._steps == 0


ENDLESS = Budget()
"""Never runs out."""
