"""Propagation: what follows at once from the literals assumed, and back again."""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy

from specbuilder.reasoning.network import IN_CLAUSE, IN_SET, IN_TRIO, WEIGHS, Network, Table
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.trail import Conflict, Core

__all__ = ["Conflict", "Core", "Engine"]


_OWN_LISTS = (
    *("value", "reason", "place", "trail", "levels", "covers", "_saved", "implies", "trios"),
    *("terms", "bound", "slack", "near", "heaviest", "besides", "lightest", "draws"),
)
"""What a copy of an engine changes apart from it."""


class Engine(Network):
    """The state of propagation over one problem. Assume literals, undo back to a mark."""

    def __init__(self, problem: Problem, *, is_bounded: bool = True) -> None:
        super().__init__(problem, is_bounded=is_bounded)
        self._next = 0
        self._awake = tuple(self.gated)
        """Tables of the limits whose gate is not shut."""
        self._saved: list[tuple[int, list[int], tuple[Table, ...]]] = []
        """Places on the trail that can be gone back to, with what the limits had left there and which were awake."""
        self.is_bounding = True
        """False: limits are watched by their slack alone; for attempts that are given up at the first conflict."""
        self.dead: Conflict | None = [] if self.is_void else None
        """Not None: the problem has no build, whatever is assumed."""
        self._start(self.units)
        self.fix()

    def _start(self, units: list[int]) -> None:
        for index, slack in enumerate(self.slack):
            if slack < 0:
                self.dead = []
            elif self.dead is None:
                self._squeeze(index)
        for lit in units:
            if self.dead is None:
                self.dead = self.add_fact(lit)
        if self.dead is None:
            self.dead = self.propagate()

    def copy(self) -> Engine:
        """Another engine that stands where this one does and goes its own way."""
        other = copy(self)
        for name in _OWN_LISTS:
            setattr(other, name, list(getattr(self, name)))
        other.touches = self.touches.copy()
        own: dict[int, list[int]] = {}
        other.watch = [
            [own.setdefault(id(clause), list(clause)) for clause in some] if some else [] for some in self.watch
        ]
        other.bounds = None if self.bounds is None else self.bounds.copy()
        return other

    def lower(self, index: int, less: int) -> Conflict | None:
        """Lower the bound of a limit for good; only while nothing is assumed, and not of a limit behind a gate."""
        self.bound[index] -= less
        self.slack[index] -= less
        if self.slack[index] < 0:
            return self.overdrawn(index)
        self._squeeze(index)
        conflict = self.propagate()
        self.fix()
        return conflict

    def add_fact(self, lit: int) -> Conflict | None:
        """Make a literal true for good; only while nothing is assumed."""
        if self.value[lit] < 0:
            return [-lit]
        if self.value[lit] == 0:
            self.put(lit, 0)
        conflict = self.propagate()
        self.fix()
        return conflict

    def add_limit(self, terms: Sequence[tuple[int, int]], bound: int) -> int:
        """See ``Network``; only while nothing is assumed."""
        index = super().add_limit(terms, bound)
        self.fix()
        return index

    def fix(self) -> None:
        """Nothing is assumed: what is true by now is a fact."""
        self.root = len(self.trail)
        self._saved = []
        self.mark()

    # ---- forwards ------------------------------------------------------------------------------------------------

    def assume(self, lit: int) -> Conflict | None:
        """Assume a literal and propagate; a conflict leaves the trail as far as it came (undo it)."""
        value = self.value[lit]
        if value > 0:
            return None
        if value < 0:
            return [lit, -lit]
        self.levels.append(self.mark())
        self.put(lit, 0)
        return self.propagate() if self.is_bounding else self._propagate()

    def propagate(self) -> Conflict | None:
        """Draw everything that follows from the trail; the first conflict met, or None."""
        while True:
            conflict = self._propagate()
            if conflict is not None or self.bounds is None or not self.is_bounding:
                return conflict
            before = len(self.trail)
            conflict = self._bound()
            if conflict is not None or len(self.trail) == before:
                return conflict

    def _bound(self) -> Conflict | None:
        """Rule out what the bounds on limits rule out; a conflict when one can no longer be kept."""
        bounds, slack, value = self.bounds, self.slack, self.value
        assert bounds is not None
        tight = {at for at, left in enumerate(slack) if left < self.near[at] and left >= self.lightest[at]}
        if not tight:
            return None
        cover = self.cover()
        for index, counted in bounds.least(tight, bounds.active(tight, cover)).items():
            total = sum(weight for weight, _, _ in counted)
            left = slack[index] - total
            if left < 0:
                drawn = self._heaviest(index, self.bound[index] - total, len(self.trail))
                return bounds.because(index, counted, value) + drawn
            reason: list[int] | None = None
            for weight, lit in self.terms[index]:
                if weight <= left:
                    break
                if value[lit] == 0:
                    own = 0
                    if lit > 0:
                        for light, members, _ in counted:
                            if members >> lit & 1:
                                own = light
                                break
                    if weight - own > left:
                        if reason is None:
                            why = bounds.because(index, counted, value)
                            why += [x for _, x in self.terms[index] if value[x] > 0]
                            reason = [-x for x in dict.fromkeys(why)]
                        self.put(-lit, [-lit, *reason])
            if reason is not None:
                break
        return None

    def _propagate(self) -> Conflict | None:
        value, reason, place, trail = self.value, self.reason, self.place, self.trail
        implies, touches, trios, watch, sets = self.implies, self.touches, self.trios, self.watch, self.sets
        draws, slack, sleeps, awake = self.draws, self.slack, self.sleeps, self._awake
        heaviest, besides = self.heaviest, self.besides
        short: list[int] = []  # limits that have less left than one of their terms weighs
        at = self._next
        while at < len(trail):
            lit = trail[at]
            at += 1
            for other in implies[lit]:
                known = value[other]
                if known == 0:
                    value[other] = 1
                    value[-other] = -1
                    reason[other] = lit
                    place[other] = len(trail)
                    trail.append(other)
                elif known < 0:
                    return [lit, -other]
            touched = touches[lit]
            if not touched:
                continue
            if touched & WEIGHS:
                for index, weight in draws[lit]:
                    left = slack[index] = slack[index] - weight
                    if left < heaviest[index]:
                        short.append(index)
                for gate, table in awake:
                    for index, weight in table[lit]:
                        left = slack[index] = slack[index] - weight
                        if left < (besides if value[gate] else heaviest)[index]:
                            short.append(index)
                for index in short:
                    if slack[index] < 0:
                        return self.overdrawn(index)
                if sleeps[lit]:
                    awake = self._sleep(sleeps[lit])
            if touched & IN_SET:
                for variables in sets[lit]:
                    for other in variables:
                        known = value[other]
                        if known == 0:
                            self.put(-other, lit)
                        elif known > 0 and other != lit:
                            return [lit, other]
            false = -lit
            if touched & IN_TRIO:
                for one, two, trio in trios[false]:
                    known = value[one]
                    if known > 0:
                        continue
                    other = value[two]
                    if other > 0 or known == other == 0:
                        continue
                    if known == 0:
                        two = one
                    elif other < 0:
                        return [lit, -one, -two]
                    value[two] = 1
                    value[-two] = -1
                    reason[two] = trio
                    place[two] = len(trail)
                    trail.append(two)
            if touched & IN_CLAUSE and (clauses := watch[false]):
                watch[false] = kept = []
                for clause in clauses:
                    first = clause[0]
                    if first == false:
                        first = clause[0] = clause[1]
                        clause[1] = false
                    known = value[first]
                    if known > 0:
                        kept.append(clause)
                        continue
                    for k in range(2, len(clause)):
                        other = clause[k]
                        if value[other] >= 0:
                            clause[1] = other
                            clause[k] = false
                            watch[other].append(clause)
                            break
                    else:
                        kept.append(clause)
                        if known < 0:
                            done = next(i for i, known_clause in enumerate(clauses) if known_clause is clause)
                            kept.extend(clauses[done + 1 :])
                            return [-x for x in clause]
                        value[first] = 1
                        value[-first] = -1
                        reason[first] = clause
                        place[first] = len(trail)
                        trail.append(first)
            if short:
                for index in short:
                    self._squeeze(index)
                short.clear()
        self._next = at
        return None

    def _sleep(self, gates: tuple[int, ...]) -> tuple[Table, ...]:
        """Watch the limits behind these gates no longer: what comes after them on the trail is not drawn on them."""
        out = [self.gated[gate] for gate in gates]
        self._awake = tuple(pair for pair in self._awake if not any(pair is other for other in out))
        return self._awake

    def _squeeze(self, index: int) -> None:
        """Rule out every open literal that weighs more than a limit has left."""
        left, value = self.slack[index], self.value
        for weight, lit in self.terms[index]:
            if weight <= left:
                break
            if value[lit] == 0:
                self.put(-lit, self.count + 1 + index)

    # ---- backwards -----------------------------------------------------------------------------------------------

    def mark(self) -> int:
        """Where the trail stands, all of it propagated; give it to ``undo``."""
        at = len(self.trail)
        if not self._saved or self._saved[-1][0] < at:
            self._saved.append((at, self.slack.copy(), self._awake))
        return at

    def undo(self, mark: int) -> None:
        """Take back everything after a mark."""
        trail, value, saved, covers, levels = self.trail, self.value, self._saved, self.covers, self.levels
        for lit in trail[mark:]:
            value[lit] = value[-lit] = 0
        del trail[mark:]
        while saved[-1][0] > mark:
            saved.pop()
        _, self.slack[:], self._awake = saved[-1]
        self._next = mark
        while covers[-1].upto > mark:
            covers.pop()
        while levels and levels[-1] >= mark:
            levels.pop()
