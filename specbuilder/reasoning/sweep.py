"""Sweeping: change a whole crowd of builds at one stroke, every build in its own way.

The crowd is a matrix, a row a build. One variable over all rows is one whole number, a *column*, with a byte a row; so
a clause is checked for all rows at once, and mended for just the rows it breaks in: make one of its literals true
there, see what that breaks in turn. No row is ever changed in the same variable twice: a row that needs it falls out.
Rows that overdraw a limit are lightened by what they can do without.

Rows fall out that a search would have saved. So this finds builds, quickly and many; it proves nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.reasoning.builds import Cover, Kept, row_of, variables_of
from specbuilder.reasoning.wiring import Wiring

EVENTS_MAX = 4_000
MANY_CLAUSES = 100


class Sweep:
    """One sweep over some builds, below what the engine's trail says. A set of rows is a number with a byte a row."""

    def __init__(self, wiring: Wiring, crowd: Sequence[Kept], cover: Cover, value: Sequence[int] | None = None) -> None:
        """``crowd``: where the rows start. ``cover``: of the whole trail, to be laid over them.

        ``value``: by literal, what is fixed in every row; None: what the engine's trail says.
        """
        count = wiring.engine.count
        self._wiring, self._crowd, self._cover = wiring, crowd, cover
        self._matrix, self._stride = b"".join(row_of(kept.mask, count) for kept in crowd), count + 1
        self._every = int.from_bytes(b"\1" * len(crowd), "little")
        self._value = wiring.engine.value if value is None else value
        self.alive = self._every
        self._columns: dict[int, int] = {}
        self._pinned: dict[int, int] = {}
        self._due: dict[int, int] = {}
        self._changed: dict[int, int] = {}
        self._spare: dict[int, list[tuple[int, int, int]]] = {}
        self._sated: int | None = None
        self._sating: set[int] | None = None

    def column(self, lit: int) -> int:
        """The rows in which a literal holds."""
        found = self._columns.get(lit)
        if found is None:
            known = self._value[lit]
            if known:
                return self._every if known > 0 else 0
            found = int.from_bytes(self._matrix[abs(lit) :: self._stride], "little")
            if lit < 0:
                found ^= self._every
            self._columns[lit] = found
            self._columns[-lit] = self._every ^ found
        return found

    def lay(self) -> None:
        """Lay the trail over the rows.

        The trail is closed under propagation: it can break no pair and no set, only a longer clause none of whose
        literals it makes true itself.
        """
        want, care, value = self._cover.want, self._cover.care, self._value
        crowded, touched = self._wiring.crowded, self._wiring.touched
        changed = 0
        for kept in self._crowd:
            changed |= kept.mask ^ want
        seen: set[int] = set()
        for v in variables_of(changed & care):
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
        known = self._value[lit]
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
            if self._sating and -lit in self._sating:
                self._sating.remove(-lit)
                self._sated = None
            self._columns[lit] = column | rows
            self._columns[-lit] &= ~rows
            self._changed[lit] = self._changed.get(lit, 0) | rows
            self._due[lit] = self._due.get(lit, 0) | rows

    def run(self) -> None:
        """Mend until nothing is broken in the rows still alive, limits apart."""
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

    def _check(self, clause: tuple[int, ...], rows: int) -> None:
        columns, value = self._columns, self._value
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
        """The clauses of a crowded literal that no other crowded one satisfies in all of some rows."""
        if self._sated is None:
            self._sated = self._find_sated()
        clauses = self._wiring.crowded[false] & ~self._sated
        if clauses.bit_count() > MANY_CLAUSES:
            for lit, sated in self._wiring.sating:
                if clauses & sated and not rows & ~self.column(lit):
                    clauses &= ~sated
                    if not clauses:
                        break
        return self._wiring.clauses_of(clauses)

    def _find_sated(self) -> int:
        """The clauses that the same crowded literal satisfies in every row, fixed or not changed so far."""
        crowded = self._wiring.crowded
        if self._sating is None:
            always, ever = -1, 0
            for kept in self._crowd:
                always &= kept.mask
                ever |= kept.mask
            always, ever = (mask & ~self._cover.care | self._cover.want for mask in (always, ever))
            self._sating = {
                lit
                for lit in crowded
                if (always >> lit & 1 if lit > 0 else not ever >> -lit & 1) and -lit not in self._changed
            }
        sated = 0
        for lit in self._sating:
            sated |= crowded[lit]
        return sated

    def _mend(self, clause: tuple[int, ...], broken: int) -> None:
        value, pinned = self._value, self._pinned
        for lit in clause:
            if value[lit] == 0:
                rows = broken & ~pinned.get(-lit, 0)
                if rows:
                    self.force(lit, rows)
                    broken &= ~rows
                    if not broken:
                        return
        self.alive &= ~broken

    # ---- what has become of the rows -----------------------------------------------------------------------------

    def harvest(self) -> tuple[dict[int, Kept], list[Kept]]:
        """Run, and tell by row the builds that come of it, some lightened first; and what is left of the other rows."""
        bound = self._wiring.engine.bound
        self.run()
        builds: dict[int, Kept] = {}
        ghosts: list[Kept] = []
        heavy: list[int] = []
        for row, start in enumerate(self._crowd):
            if not self._is_alive(row):
                ghosts.append(start)
                continue
            kept = self._result(row)
            if all(map(int.__le__, kept.sums, bound)):
                builds[row] = kept
            elif self._lighten(row, kept.sums):
                heavy.append(row)
            else:
                ghosts.append(kept)
        self.run()
        for row in heavy:
            kept = self._result(row)
            if self._is_alive(row) and all(map(int.__le__, kept.sums, bound)):
                builds[row] = kept
            else:
                ghosts.append(self._crowd[row])
        return builds, ghosts

    def _is_alive(self, row: int) -> bool:
        return bool(self.alive >> 8 * row & 1)

    def _result(self, row: int) -> Kept:
        """What has become of the build that stood in a row. It may break limits."""
        shifts, cover = self._wiring.shifts, self._cover
        kept, place = self._crowd[row], 8 * row
        sums, mask = list(kept.sums), kept.mask
        lits = [v if cover.want >> v & 1 else -v for v in variables_of((mask ^ cover.want) & cover.care)]
        lits += [lit for lit, rows in self._changed.items() if rows >> place & 1]
        for lit in lits:
            mask ^= 1 << abs(lit)
            for index, weight in shifts[lit]:
                sums[index] += weight
        return Kept(mask, tuple(sums))

    def _lighten(self, row: int, sums: Sequence[int]) -> bool:
        """Force off what a row can do without, until no limit is overdrawn; False if there is not enough of it."""
        engine = self._wiring.engine
        place = 8 * row
        left = list(sums)
        for index, most in enumerate(engine.bound):
            if left[index] > most:
                spare = [(weight, lit) for weight, lit, rows in self._spares(index) if rows >> place & 1]
                while left[index] > most:
                    over = left[index] - most
                    enough = [entry for entry in spare if entry[0] >= over]
                    if not spare:
                        return False
                    drop = enough[-1] if enough else spare[0]
                    spare.remove(drop)
                    self.force(-drop[1], 1 << place)
                    for number, shift in self._wiring.shifts[-drop[1]]:
                        left[number] += shift
        return True

    def _spares(self, index: int) -> list[tuple[int, int, int]]:
        """What draws on a limit and some rows can do without: weight, literal and those rows."""
        found = self._spare.get(index)
        if found is None:
            terms = self._wiring.engine.terms[index]
            every = ((weight, lit, self._can_spare(lit)) for weight, lit in terms if not self._value[lit])
            found = self._spare[index] = [entry for entry in every if entry[2]]
        return found

    def _can_spare(self, lit: int) -> int:
        """The rows in which an open literal holds, is not pinned, and nothing would break without it."""
        rows = self.alive & self.column(lit) & ~self._pinned.get(lit, 0)
        if rows:
            for other in self._wiring.engine.implies[-lit]:
                rows &= self.column(other)
        for clause in self._wiring.touched[lit]:
            if not rows:
                break
            met = 0
            for other in clause:
                if other != lit:
                    met |= self.column(other)
            rows &= met
        return rows
