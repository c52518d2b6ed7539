"""Learning from dead ends: of a conflict, a clause that would have kept the search out of it; and their store.

A learnt clause follows from the problem alone, never from what happens to be assumed. So it stays true whatever is
asked next, and in whatever order.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable

from specbuilder.reasoning.engine import Conflict, Engine

KEPT_CLAUSES_MAX = 6_000
KEPT_PAIRS_MAX = 40_000


def level_of(engine: Engine, conflict: Conflict) -> int:
    """How many assumptions a conflict needs: everything after that many may be undone and it still stands."""
    place = engine.place
    return bisect_right(engine.levels, max((place[lit] for lit in conflict), default=-1))


def lesson(engine: Engine, conflict: Conflict) -> tuple[list[int], int]:
    """The clause to learn from a conflict of the last level, and how many levels to keep.

    Kept so many levels, all literals of the clause are false but its first, which is open: the one turn that would have
    avoided the conflict. The conflict must need one assumption at least.
    """
    place, trail, levels, root = engine.place, engine.trail, engine.levels, engine.root
    at = max(place[lit] for lit in conflict)
    start = levels[bisect_right(levels, at) - 1]
    seen: set[int] = set()
    earlier: list[int] = []
    open_count = 0
    todo = conflict
    while True:
        for lit in todo:
            if lit not in seen:
                where = place[lit]
                if where >= root:
                    seen.add(lit)
                    if where >= start:
                        open_count += 1
                    else:
                        earlier.append(lit)
        while trail[at] not in seen:
            at -= 1
        turn = trail[at]
        at -= 1
        open_count -= 1
        if open_count == 0:
            break
        todo = engine.because(turn)
    needed = [lit for lit in earlier if not _is_implied_by(engine, lit, seen)]
    needed.sort(key=place.__getitem__, reverse=True)
    keep = bisect_right(levels, place[needed[0]]) if needed else 0
    return [-turn, *(-lit for lit in needed)], keep


def _is_implied_by(engine: Engine, lit: int, seen: set[int]) -> bool:
    why = engine.because(lit)
    if not why:
        return isinstance(engine.reason[lit], list)
    place, root = engine.place, engine.root
    return all(other in seen or place[other] < root for other in why)


class Lessons:
    """The clauses learnt so far, fed into the engine; long ones are forgotten first when there are too many."""

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._clauses: list[list[int]] = []
        self._pairs: set[tuple[int, int]] = set()
        self._facts: list[int] = []
        self.late: list[list[int]] = []
        """Clauses whose first literal was drawn later than it might have been: to be looked at again after an undo."""

    def add(self, clause: list[int]) -> None:
        """Keep a clause whose first two literals are open, or were the last to become false."""
        engine = self._engine
        if len(clause) == 1:
            self._facts.append(clause[0])
        elif len(clause) == 2 and len(self._pairs) < KEPT_PAIRS_MAX:
            pair = (min(clause), max(clause))
            if pair not in self._pairs:
                self._pairs.add(pair)
                engine.add_pair(*clause)
        else:
            self._clauses.append(clause)
            engine.add_clause(clause)

    def add_proof(self, core: Iterable[int]) -> list[int]:
        """Keep a set of literals that cannot stand together; the clause that says so."""
        value, place = self._engine.value, self._engine.place
        clause = sorted(
            (-lit for lit in core), key=lambda lit: place[-lit] if value[lit] < 0 else self._engine.count, reverse=True
        )
        self.add(clause)
        return clause

    def draw(self, lit: int, clause: list[int]) -> Conflict | None:
        """Make the one open literal of a clause true, all others being false, and propagate."""
        self._engine.put(lit, clause)
        return self._engine.propagate()

    def settle(self) -> Conflict | None:
        """Draw again what late clauses still give on the present trail."""
        late, self.late = self.late, []
        value, reason = self._engine.value, self._engine.reason
        for clause in late:
            open_or_true = [lit for lit in clause if value[lit] >= 0]
            if len(open_or_true) != 1:
                continue
            lit = open_or_true[0]
            if value[lit] > 0:
                if reason[lit] is clause:
                    self.late.append(clause)
                continue
            self.late.append(clause)
            conflict = self.draw(lit, clause)
            if conflict is not None:
                return conflict
        return None

    def are_waiting(self) -> bool:
        """Whether lessons have still to be drawn on the present trail."""
        return bool(self.late) or self.is_due()

    def is_due(self) -> bool:
        """Whether there is something to do at the root: facts to add, or too much to forget."""
        return bool(self._facts) or len(self._clauses) > KEPT_CLAUSES_MAX

    def tidy(self) -> Conflict | None:
        """At the root, nothing assumed: make learnt facts facts, and forget the longer half of too many clauses."""
        engine = self._engine
        facts, self._facts = self._facts, []
        self.late = []
        if len(self._clauses) > KEPT_CLAUSES_MAX:
            recent = self._clauses[-KEPT_CLAUSES_MAX // 4 :]
            old = sorted(self._clauses[: -KEPT_CLAUSES_MAX // 4], key=len)
            kept, dropped = old[: KEPT_CLAUSES_MAX // 4], old[KEPT_CLAUSES_MAX // 4 :]
            engine.drop_clauses({id(clause) for clause in dropped})
            self._clauses = kept + recent
        for lit in facts:
            conflict = engine.add_fact(lit)
            if conflict is not None:
                engine.dead = conflict
                return conflict
        return None
