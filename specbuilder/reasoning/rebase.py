"""Rebasing: carry a whole crowd of old builds over to what is held now, at one stroke.

After an edit most old builds break just one or two of the literals held. Lay the trail over them: every variable it has
a value for takes that value. The trail is closed under propagation, so pairs and at-most-one sets keep standing. A
longer clause can break only where the trail makes one of its literals false that some old build had true, and none
true: those few clauses are checked, each for all builds at once by the columns of the store. Limits are checked last.
"""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.reasoning.builds import Cover, Kept, Store, variables_of
from specbuilder.reasoning.patch import Wiring


class Crowd:
    """Old builds that break a few of the literals held, and are not carried over yet."""

    def __init__(self, wiring: Wiring, store: Store, numbers: Sequence[int]) -> None:
        """``numbers``: of the builds in the store, oldest first. The store may grow meanwhile, but not be thinned."""
        self._wiring, self._store = wiring, store
        self._numbers = list(numbers)
        self._kept = [store.kept[at] for at in numbers]

    def __len__(self) -> int:
        return len(self._numbers)

    def having(self, lit: int) -> Kept | None:
        """The newest build of the crowd that has a literal."""
        at = abs(lit)
        for kept in reversed(self._kept):
            if (kept.mask >> at & 1) == (lit > 0):
                return kept
        return None

    def carried(self, cover: Cover) -> list[Kept]:
        """The builds that stand with the trail laid over them, newest first; they leave the crowd.

        ``cover`` is of the whole trail as it is now.
        """
        care, want = cover.care, cover.want
        changed = 0
        for kept in self._kept:
            changed |= kept.mask ^ want
        good = self._standing(variables_of(changed & care), cover)
        found: list[Kept] = []
        shifted: dict[int, list[int]] = {}
        stay: list[int] = []
        for at in range(len(self._kept) - 1, -1, -1):
            kept = self._kept[at]
            if good[self._numbers[at]]:
                change = (kept.mask ^ want) & care
                shift = shifted.get(change)
                if shift is None:
                    shift = shifted[change] = self._shift(change, want)
                sums = tuple(map(int.__add__, kept.sums, shift))
                if all(map(int.__le__, sums, self._wiring.engine.bound)):
                    found.append(Kept(kept.mask ^ change, sums))
                    continue
            stay.append(at)
        stay.reverse()
        self._numbers = [self._numbers[at] for at in stay]
        self._kept = [self._kept[at] for at in stay]
        return found

    def _standing(self, changed: Sequence[int], cover: Cover) -> bytes:
        """By number of the build: 1 where no clause breaks."""
        rows = len(self._store)
        every = int.from_bytes(b"\1" * rows, "little")
        member = bytearray(rows)
        for at in self._numbers:
            member[at] = 1
        good = int.from_bytes(member, "little")
        value, touched, store = self._wiring.engine.value, self._wiring.touched, self._store
        columns: dict[int, int] = {}
        want = cover.want
        seen: set[int] = set()
        for v in changed:
            for clause in touched[-v if want >> v & 1 else v]:
                if id(clause) in seen:
                    continue
                seen.add(id(clause))
                rest: list[int] = []
                for lit in clause:
                    known = value[lit]
                    if known > 0:
                        break
                    if known == 0:
                        rest.append(lit)
                else:
                    stands = 0
                    for lit in rest:
                        column = columns.get(lit)
                        if column is None:
                            column = store.column(abs(lit))
                            if lit < 0:
                                column ^= every
                            columns[lit] = column
                        stands |= column
                    good &= stands
                    if not good:
                        return bytes(rows)
        return good.to_bytes(rows, "little")

    def _shift(self, change: int, want: int) -> list[int]:
        """How far the sums move when some variables take the values of the trail."""
        moved = [0] * len(self._wiring.engine.bound)
        for v in variables_of(change):
            for index, weight in self._wiring.shifts[v if want >> v & 1 else -v]:
                moved[index] += weight
        return moved
