"""Carrying a change over: what one build had to change, changed in another build too, checked by a few operations.

Two builds differ in some variables. Give those the new values in a third build: does it stay a build? Only constraints
that touch a changed variable can break, and those that the new values meet by themselves cannot. What is left are the
literals that pairs and sets now demand, and a few longer clauses; limits are checked by what is left of each, packed
into one whole number.
"""

from __future__ import annotations

from specbuilder.reasoning.builds import Kept, variables_of
from specbuilder.reasoning.wiring import Wiring


class Rooms:
    """What builds leave of each limit, all limits in one whole number, a field each with a bit to spare on top."""

    def __init__(self, wiring: Wiring) -> None:
        self._bound = wiring.engine.bound
        largest = max((abs(bound) for bound in self._bound), default=0)
        drawn = max((sum(weight for weight, _ in terms) for terms in wiring.engine.terms), default=0)
        self._width = (4 * (largest + drawn) + 4).bit_length()
        self._signs = sum(1 << (self._width * (at + 1) - 1) for at in range(len(self._bound)))

    def of(self, kept: Kept) -> int:
        """What a build leaves. Differences may be added and taken away."""
        width = self._width
        return sum(
            (most - total) << width * at for at, (most, total) in enumerate(zip(self._bound, kept.sums, strict=True))
        )

    def kept(self, mask: int, room: int) -> Kept:
        """The build with these variables true, which leaves so much."""
        width, whole = self._width, (1 << self._width) - 1
        return Kept(mask, tuple(most - (room >> width * at & whole) for at, most in enumerate(self._bound)))

    def are_kept(self, room: int) -> bool:
        """Whether no field is below nought."""
        return room >= 0 and not room & self._signs


class Change:
    """The step from one build to another."""

    def __init__(self, wiring: Wiring, rooms: Rooms, before: Kept, after: Kept) -> None:
        self._wiring = wiring
        self._after = after
        self.changed = before.mask ^ after.mask
        self._before = before
        self.drawn = rooms.of(after) - rooms.of(before)
        self._true = self._false = 0
        self._clauses: list[tuple[int, int]] = []
        self._near = 0
        self._read()

    def _read(self) -> None:
        mask, changed = self._after.mask, self.changed
        engine, touched = self._wiring.engine, self._wiring.touched
        true = false = 0
        for v in variables_of(changed):
            lit = v if mask >> v & 1 else -v
            for other in engine.implies[lit]:
                if other > 0:
                    true |= 1 << other
                else:
                    false |= 1 << -other
            for members in engine.sets[lit]:
                false |= sum(1 << member for member in members if member != lit)
            for clause in touched[-lit]:
                positive = negative = 0
                for other in clause:
                    if (mask >> abs(other) & 1) == (other > 0) and changed >> abs(other) & 1:
                        break
                    if other > 0:
                        positive |= 1 << other
                    else:
                        negative |= 1 << -other
                else:
                    self._clauses.append((positive & ~changed, negative & ~changed))
        self._true, self._false = true & ~changed, false & ~changed
        self._near = self._true | self._false
        for positive, negative in self._clauses:
            self._near |= positive | negative

    def carried(self, mask: int) -> int | None:
        """The build with the change carried over; None when it would break a clause, pair or set."""
        changed, after = self.changed, self._after.mask
        if (mask ^ after) & self._near & ~changed:
            if mask & self._false or ~mask & self._true:
                return None
            for positive, negative in self._clauses:
                if not mask & positive and not ~mask & negative:
                    return None
        return mask & ~changed | after & changed

    def is_like_before(self, mask: int) -> bool:
        """Whether a build has the old values in all that changes, so that what it draws changes by ``drawn``."""
        return not (mask ^ self._before.mask) & self.changed
