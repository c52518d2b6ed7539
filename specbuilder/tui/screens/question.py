"""A question that a search answers beside the screens, and which of its answers somebody has seen."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from functools import partial
from typing import Generic, TypeVar

from specbuilder.tui.errands import Errand, Stop

from .page import Host

T = TypeVar("T")


class Question(Generic[T]):
    """Asked once for each spec and subject. What comes for another spec is dropped.

    A key may take only what was painted before it was pressed: an answer that arrives under a falling finger is not
    taken unseen.
    """

    def __init__(self, host: Host, size: Callable[[T], int] | None = None) -> None:
        """``size``: of how many parts an answer consists that appear one after the other; None: it is one."""
        self.host = host
        self.answer: T | None = None
        self._size = size
        self._asked: Hashable = None
        self._errand: Errand[T] | None = None
        self._painted_at: list[float] = []

    def ask(self, subject: Hashable, work: Callable[[Stop], Iterator[T]]) -> None:
        """Send for the answer; nothing happens while subject and spec are those of the last time."""
        spec = self.host.report.spec
        if self._asked == (spec, subject):
            return
        self.drop()
        self._asked = spec, subject
        self._errand = Errand(spec=spec, work=work, take=partial(self._take, self._asked))
        self.host.send(self._errand)

    def drop(self) -> None:
        """Nobody waits for it any more."""
        if self._errand is not None:
            self._errand.call_back()
        self._errand, self._asked, self.answer = None, None, None
        self._painted_at.clear()

    def _take(self, asked: Hashable, found: T) -> None:
        if asked == self._asked and asked[0] == self.host.report.spec:  # type: ignore[index]
            self.answer = found

    # -- who has seen it -------------------------------------------------------------------------------------------

    @property
    def parts(self) -> int:
        """How many parts are there."""
        if self.answer is None:
            return 0
        return 1 if self._size is None else self._size(self.answer)

    @property
    def unseen(self) -> bool:
        """True while a part is there that was not painted yet."""
        return len(self._painted_at) < self.parts

    def painted(self, at_s: float) -> None:
        """All that is there stands on the screen since then (the clock of the keys)."""
        self._painted_at += [at_s] * (self.parts - len(self._painted_at))

    def seen(self, part: int = 1) -> bool:
        """True when this part, counted from 1, stood on the screen before the key was pressed that is at work now."""
        return len(self._painted_at) >= part and self._painted_at[part - 1] <= self.host.pressed_at_s
