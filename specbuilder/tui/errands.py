"""Searches run beside the screens: on values, on a thread of their own, called back by the next edit.

An errand knows the spec it was sent for. What it brings is taken in only while that spec is the one on the screen, so
nothing old is ever shown as if it were fresh.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from threading import Event
from typing import TYPE_CHECKING, Generic, TypeAlias, TypeVar

if TYPE_CHECKING:
    from specbuilder.model.spec import Spec

T = TypeVar("T")

Stop: TypeAlias = Callable[[], bool]
"""True once nobody waits for the answer any more."""
Piece: TypeAlias = Callable[[], None]
"""What an errand brought, to be taken in where the screens live."""


@dataclass(eq=False, kw_only=True)
class Errand(Generic[T]):
    """One search and what becomes of each answer it brings."""

    spec: Spec
    """What it looks at."""
    work: Callable[[Stop], Iterator[T]]
    """The search. It must ask ``Stop`` often."""
    take: Callable[[T], None]
    """Called with every answer, where the screens live."""
    _off: Event = field(default_factory=Event)

    @property
    def off(self) -> bool:
        """True when it was called back."""
        return self._off.is_set()

    def call_back(self) -> None:
        """Nobody waits for it any more; what it still brings is dropped."""
        self._off.set()

    def run(self, hand: Callable[[Piece], None]) -> None:
        """Search, and hand over each answer; a mistake of the program is handed over as well."""
        try:
            for found in self.work(self._off.is_set):
                if self.off:
                    return
                hand(partial(self._give, found))
        except Exception as mistake:  # noqa: BLE001  raised again where mistakes are said
            hand(partial(_raise, mistake))

    def _give(self, found: T) -> None:
        if not self.off:
            self.take(found)


class Errands:
    """All that are under way."""

    def __init__(self, runner: Callable[[Errand[object]], None]) -> None:
        self.runner = runner
        """Starts an errand; the app gives it a thread."""
        self.out: list[Errand[object]] = []

    def send(self, errand: Errand[T]) -> None:
        """Start one."""
        self.out = [other for other in self.out if not other.off]
        self.out.append(errand)  # type: ignore[arg-type]  # its answers go to nobody but itself
        self.runner(errand)  # type: ignore[arg-type]

    def only_for(self, spec: Spec | None) -> None:
        """Call back every one that looks at another spec; with None all of them."""
        for errand in self.out:
            if spec is None or errand.spec != spec:
                errand.call_back()
        self.out = [errand for errand in self.out if not errand.off]


def _raise(mistake: Exception) -> None:
    raise mistake
