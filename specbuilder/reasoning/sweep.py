"""Sweeping: change a whole crowd of builds at one stroke, every build in its own way.

The crowd is a matrix, a row a build. One variable over all rows is one whole number, a *column*, with a byte a row; so
a clause is checked for all rows at once, and mended for just the rows it breaks in: make one of its literals true
there, see what that breaks in turn. No row is ever changed in the same variable twice: a row that needs it falls out. What is left when nothing is broken any more are builds again, limits apart.

Rows fall out that a search would have saved. So this only finds builds, quickly and many; it proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.reasoning.builds import Cover, Kept, variables_of
from specbuilder.reasoning.wiring import Wiring

EVENTS_MAX = 4_000


class Sweep:
    """One sweep over the rows of a matrix, below what the engine's trail says."""

    def __init__(self, wiring: Wiring, matrix: bytes | bytearray, rows: Iterable[int], cover: Cover) -> None:
        """``matrix``: a row of ``count + 1`` bytes a build; ``rows``: those to change; ``cover``: of the trail."""
        self._wiring = wiring
        self._matrix, self._stride = matrix, wiring.engine.count + 1
        height = len(matrix) // self._stride
        self._every = int.from_bytes(b"\1" * height, "little")
        member = bytearray(height)
        for row in rows:
            member[row] = 1
        self.alive = self._began = int.from_bytes(member, "little")
        self._cover = cover
        self._columns: dict[int, int] = {}
        self._pinned: dict[int, int] = {}
        self._due: dict[int, int] = {}
        self._fallen = 0
        self.changed: dict[int, int] = {}
        """By literal: the rows it was made true in, the trail's own literals apart."""

    def column(self, lit: int) -> int:
        """Byte i is 1 where the literal holds in row i."""
        found = self._columns.get(lit)
        if found is None:
            known = self._wiring.engine.value[lit]
            if known:
                return self._every if known > 0 else 0
            if lit > 0:
                found = int.from_bytes(self._matrix[lit :: self._stride], "little")
            else:
                found = self._every ^ int.from_bytes(self._matrix[-lit :: self._stride], "little")
            self._columns[lit] = found
            self._columns[-lit] = self._every ^ found
        return found

    def lay(self, changed: int) -> None:
        """Lay the trail over the rows. ``changed``: the variables (a mask) in which some row differs from it.

        The trail is closed under propagation: it can break no pair and no set, only a longer clause none of whose
        literals it makes true itself.
        """
        want, value = self._cover.want, self._wiring.engine.value
        crowded, touched = self._wiring.crowded, self._wiring.touched
        seen: set[int] = set()
        for v in variables_of(changed & self._cover.care):
            false = -v if want >> v & 1 else v
            for clause in self._unsated(false, self.alive) if false in crowded else touched[false]:
                if id(clause) not in seen:
                    seen.add(id(clause))
                    for lit in clause:
                        if value[lit] > 0:
                            break
                    else:
                        self._check(clause, self.alive)

    def force(self, lit: int, rows: int) -> None:
        """Make a literal true in some rows; those in which it cannot be fall out."""
        rows &= self.alive
        known = self._wiring.engine.value[lit]
        if known:
            if known < 0:
                self.alive &= ~rows
            return
        stuck = rows & self._pinned.get(-lit, 0)
        if stuck:
            self.alive &= ~stuck
            rows &= ~stuck
        self._pinned[lit] = self._pinned.get(lit, 0) | rows
        column = self.column(lit)
        rows &= ~column
        if rows:
            self._columns[lit] = column | rows
            self._columns[-lit] &= ~rows
            self.changed[lit] = self.changed.get(lit, 0) | rows
            self._due[lit] = self._due.get(lit, 0) | rows

    def run(self) -> None:
        """Mend until nothing is broken in the rows still alive."""
        engine, due = self._wiring.engine, self._due
        implies, sets, touched = engine.implies, engine.sets, self._wiring.touched
        crowded = self._wiring.crowded
        events = 0
        while due and self.alive:
            lit = next(iter(due))
            rows = due.pop(lit) & self.alive
            if not rows:
                continue
            events += 1
            if events > EVENTS_MAX:
                self.alive = 0
            for other in implies[lit]:
                short = rows & ~self.column(other)
                if short:
                    self.force(other, short)
            for members in sets[lit]:
                for member in members:
                    if member != lit:
                        short = rows & self.column(member)
                        if short:
                            self.force(-member, short)
            for clause in self._unsated(-lit, rows) if -lit in crowded else touched[-lit]:
                self._check(clause, rows)
        self._fallen = self._began & ~self.alive

    def _check(self, clause: tuple[int, ...], rows: int) -> None:
        columns, value = self._columns, self._wiring.engine.value
        broken = rows
        for lit in clause:
            column = columns.get(lit)
            if column is None:
                known = value[lit]
                if known < 0:
                    continue
                if known > 0:
                    return
                column = self.column(lit)
            broken &= ~column
            if not broken:
                return
        self._mend(clause, broken)

    def _unsated(self, false: int, rows: int) -> list[tuple[int, ...]]:
        """The clauses of a crowded literal that no other one satisfies in all of some rows."""
        clauses = self._wiring.crowded[false]
        for lit, sated in self._wiring.sating:
            if clauses & sated and not rows & ~self.column(lit):
                clauses &= ~sated
                if not clauses:
                    break
        return self._wiring.clauses_of(clauses)

    def _mend(self, clause: tuple[int, ...], broken: int) -> None:
        value, pinned = self._wiring.engine.value, self._pinned
        for lit in clause:
            if value[lit] == 0:
                rows = broken & ~pinned.get(-lit, 0)
                if rows:
                    self.force(lit, rows)
                    broken &= ~rows
                    if not broken:
                        return
        self.alive &= ~broken

    def rows_having(self, lit: int) -> list[int]:
        """The rows alive in which a literal holds, the last first."""
        found = (self.alive & self.column(lit)).to_bytes(len(self._matrix) // self._stride, "little")
        rows: list[int] = []
        at = found.rfind(1)
        while at >= 0:
            rows.append(at)
            at = found.rfind(1, 0, at)
        return rows

    def drop(self, row: int) -> None:
        """A row is no longer wanted."""
        self.alive &= ~(1 << 8 * row)

    def is_fallen(self, row: int) -> bool:
        """Whether a row fell out."""
        return bool(self._fallen >> 8 * row & 1)

    def result(self, row: int, kept: Kept) -> Kept:
        """What has become of a build that stood in a row. It may break limits."""
        shifts = self._wiring.shifts
        sums = list(kept.sums)
        mask = kept.mask
        place = 8 * row
        change = (mask ^ self._cover.want) & self._cover.care
        lits = [v if self._cover.want >> v & 1 else -v for v in variables_of(change)]
        lits += [lit for lit, rows in self.changed.items() if rows >> place & 1]
        for lit in lits:
            mask ^= 1 << abs(lit)
            for index, weight in shifts[lit]:
                sums[index] += weight
        return Kept(mask, tuple(sums))
