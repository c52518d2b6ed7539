"""The guided job has a folder of its own: what is tried there never lies among the jobs of the house."""

from __future__ import annotations

import shutil
from collections.abc import Sequence

from specbuilder.wording.guide import cannot_practise

from .counter import Counter
from .guide import Guide
from .opening import Opening
from .practice_folder import practice_folder
from .start import Start


class Practice:
    """A counter on a folder that is thrown away; the jobs of the house come back when it ends."""

    def __init__(self, counter: Counter) -> None:
        """Lay the jobs of the house aside; what is pressed now waits until ``arrived``.

        Raises:
            OSError: there is no room for a folder.
        """
        self._folder = practice_folder()
        self._counter, self._home = counter, counter.opening
        counter.opening = None

    def load(self) -> Opening | Sequence[str]:
        """The demo catalogue and an empty folder of jobs. Slow: for a worker."""
        return Start(self._folder / "jobs", None, "").load(self._counter)

    def arrived(self, found: Opening | Sequence[str]) -> bool:
        """Begin the first lesson; False when there is nothing to practise on, and that is said."""
        if isinstance(found, Sequence):
            self.end()
            self._counter.say(cannot_practise(found[0]))
            return False
        self._counter.guide = Guide()
        self._counter.loaded(found)
        return True

    def end(self) -> None:
        """The jobs of the house again. The folder goes, with all that was tried."""
        counter = self._counter
        if counter.opening is not None:
            counter.opening.leave()
        counter.guide = None
        counter.opening = None
        shutil.rmtree(self._folder, ignore_errors=True)
        if self._home is not None:
            counter.loaded(self._home)
