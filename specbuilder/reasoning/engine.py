"""Propagation: what follows at once from the literals assumed, why, and back again.

Everything is indexed by literal: in a list of ``2 * count + 1`` entries Python's index ``-v`` is the entry of the
literal ``-v``. The *trail* holds the true literals in the order they came; each has a *reason*:

- ``0``: assumed (or, before ``root``, a fact of the problem);
- a literal: that literal forced it through a two-literal clause or an at-most-one set;
- above ``count``: limit number ``reason - count - 1`` forced it;
- a list: that clause forced it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from copy import copy

from specbuilder.reasoning.bounds import TIGHT, Bounds
from specbuilder.reasoning.limits import exactly_one_sets, restated
from specbuilder.reasoning.problem import Problem

Reason = int | list[int]
Conflict = list[int]
"""True literals that cannot stand together."""
Core = frozenset[int]
"""Assumed literals that cannot stand together; empty: the problem has no build."""

PAIRED_SET_SIZE = 40
"""At-most-one sets up to this size are kept as implied pairs, greater ones as sets."""


class Engine:
    """The state of propagation over one problem. Assume literals, undo back to a mark."""

    def __init__(self, problem: Problem) -> None:
        self.count = count = problem.count
        width = 2 * count + 1
        self.value: list[int] = [0] * width
        """By literal: 1 true, -1 false, 0 open."""
        self.reason: list[Reason] = [0] * width
        self.place: list[int] = [0] * width
        """By true literal: where it stands on the trail."""
        self.trail: list[int] = []
        self.levels: list[int] = []
        """Of each assumption that set a literal: where it stands on the trail."""
        self.implies: list[list[int]] = [[] for _ in range(width)]
        self.sets: list[list[tuple[int, ...]]] = [[] for _ in range(width)]
        self.watch: list[list[list[int]]] = [[] for _ in range(width)]
        self.trios: list[list[tuple[int, int, list[int]]]] = [[] for _ in range(width)]
        """By literal: of each clause of three it stands in, the other two, and the clause."""
        self.long: list[tuple[int, ...]] = []
        """Clauses of three literals and more, as the problem states them."""
        self.terms: list[tuple[tuple[int, int], ...]] = []
        """Of each limit, restated (``limits``): weight and literal, the heaviest first."""
        self.bound: list[int] = []
        self.slack: list[int] = []
        """Of each limit: what is left of its bound."""
        self.draws: list[list[tuple[int, int]]] = [[] for _ in range(width)]
        """By literal: the limits it draws on, and how much."""
        self._next = 0
        self._facts: list[int] = []
        self._facts_upto = -1
        self.bounds: Bounds | None = None
        self.is_bounding = True
        """False: limits are watched by their slack alone; for attempts that are given up at the first conflict."""
        self._masked: list[tuple[int, int, int]] = [(0, 0, 0)]
        self.dead: Conflict | None = None
        """Not None: the problem has no build, whatever is assumed."""
        self._read(problem)
        self.root = len(self.trail)
        """Trail entries before this are facts of the problem."""

    # ---- building ------------------------------------------------------------------------------------------------

    def _read(self, problem: Problem) -> None:
        units: list[int] = []
        for clause in problem.clauses:
            match len(clause):
                case 0:
                    self.dead = []
                case 1:
                    units.append(clause[0])
                case 2:
                    self.add_pair(*clause)
                case _:
                    self.long.append(clause)
        # a clause watches its rarest literals, so that no literal is watched by very many clauses
        counts = Counter(lit for clause in self.long for lit in clause)
        for clause in self.long:
            self.add_clause(sorted(clause, key=counts.__getitem__))
        for variables in problem.at_most_one:
            if len(variables) <= PAIRED_SET_SIZE:
                for v in variables:
                    self.implies[v].extend(-other for other in variables if other != v)
            else:
                for v in variables:
                    self.sets[v].append(variables)
        groups = exactly_one_sets(problem) if problem.limits else []
        for index, stated in enumerate(problem.limits):
            limit = restated(stated, groups)
            self.terms.append(tuple(sorted(limit.terms, key=lambda term: -term[0])))
            self.bound.append(limit.bound)
            for weight, lit in limit.terms:
                self.draws[lit].append((index, weight))
        self.slack = list(self.bound)
        self.implies = [list(dict.fromkeys(lits)) for lits in self.implies]
        bounds = Bounds(problem.clauses, self.terms)
        if not bounds.is_idle():
            self.bounds = bounds
        self._start(units)

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
        for name in ("value", "reason", "place", "trail", "levels", "terms", "bound", "slack", "_masked"):
            setattr(other, name, list(getattr(self, name)))
        for name in ("implies", "draws", "trios"):
            setattr(other, name, [list(some) for some in getattr(self, name)])
        own: dict[int, list[int]] = {}
        other.watch = [
            [own.setdefault(id(clause), list(clause)) for clause in some] if some else [] for some in self.watch
        ]
        other.bounds = None if self.bounds is None else self.bounds.copy()
        return other

    def add_pair(self, a: int, b: int) -> None:
        """One of two literals is true."""
        self.implies[-a].append(b)
        self.implies[-b].append(a)

    def add_clause(self, clause: list[int]) -> None:
        """One of three or more literals is true. The engine reorders the list; the first two are watched."""
        if len(clause) == 3:
            one, two, three = clause
            self.trios[one].append((two, three, clause))
            self.trios[two].append((one, three, clause))
            self.trios[three].append((one, two, clause))
        else:
            self.watch[clause[0]].append(clause)
            self.watch[clause[1]].append(clause)

    def drop_clauses(self, dropped: set[int]) -> None:
        """Forget clauses, given by their ``id``; only while nothing is assumed."""
        for clauses in self.watch:
            if clauses:
                clauses[:] = [clause for clause in clauses if id(clause) not in dropped]
        for trios in self.trios:
            if trios:
                trios[:] = [trio for trio in trios if id(trio[2]) not in dropped]

    def add_limit(self, terms: Sequence[tuple[int, int]], bound: int) -> int:
        """Add a limit of weights above nought while the engine runs, everything propagated; give its number.

        It rules nothing out before ``lower`` or the next literal that draws on it.
        """
        index = len(self.terms)
        self.terms.append(tuple(sorted(terms, key=lambda term: -term[0])))
        self.bound.append(bound)
        self.slack.append(bound - sum(weight for weight, lit in terms if self.value[lit] > 0))
        for weight, lit in terms:
            self.draws[lit].append((index, weight))
        if self.bounds is not None:
            self.bounds.add_limit()
        return index

    def lower(self, index: int, less: int) -> Conflict | None:
        """Lower the bound of a limit for good; only while nothing is assumed."""
        self.bound[index] -= less
        self.slack[index] -= less
        if self.slack[index] < 0:
            return self.overdrawn(index)
        self._squeeze(index)
        conflict = self.propagate()
        self.root = len(self.trail)
        return conflict

    def add_fact(self, lit: int) -> Conflict | None:
        """Make a literal true for good; only while nothing is assumed."""
        if self.value[lit] < 0:
            return [-lit]
        if self.value[lit] == 0:
            self.put(lit, 0)
        conflict = self.propagate()
        self.root = len(self.trail)
        return conflict

    # ---- forwards ------------------------------------------------------------------------------------------------

    def put(self, lit: int, reason: Reason) -> None:
        """Make an open literal true; ``propagate`` draws what follows."""
        self.value[lit] = 1
        self.value[-lit] = -1
        self.reason[lit] = reason
        self.place[lit] = len(self.trail)
        self.trail.append(lit)

    def assume(self, lit: int) -> Conflict | None:
        """Assume a literal and propagate; a conflict leaves the trail as far as it came (undo it)."""
        value = self.value[lit]
        if value > 0:
            return None
        if value < 0:
            return [lit, -lit]
        self.levels.append(len(self.trail))
        self.put(lit, 0)
        return self.propagate()

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
        bounds, slack, bound, value = self.bounds, self.slack, self.bound, self.value
        assert bounds is not None
        tight = {at for at, left in enumerate(slack) if left < TIGHT * bound[at]}
        if not tight:
            return None
        true, false = self._masks()
        for index, counted in bounds.least(tight, bounds.active(true, false)).items():
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

    def _masks(self) -> tuple[int, int]:
        """The variables true and false on the trail."""
        stack, trail = self._masked, self.trail
        upto, true, false = stack[-1]
        if upto < len(trail):
            for lit in trail[upto:]:
                if lit > 0:
                    true |= 1 << lit
                else:
                    false |= 1 << -lit
            stack.append((len(trail), true, false))
        return true, false

    def _propagate(self) -> Conflict | None:
        value, reason, place, trail = self.value, self.reason, self.place, self.trail
        implies, trios, watch, sets = self.implies, self.trios, self.watch, self.sets
        draws, slack = self.draws, self.slack
        at = self._next
        while at < len(trail):
            lit = trail[at]
            at += 1
            # slacks are kept for every literal taken up, so that undo can give the same back
            tight = -1
            for index, weight in draws[lit]:
                left = slack[index] = slack[index] - weight
                if left < 0:
                    tight = index
            if tight >= 0:
                self._next = at
                return self.overdrawn(tight)
            for other in implies[lit]:
                known = value[other]
                if known == 0:
                    value[other] = 1
                    value[-other] = -1
                    reason[other] = lit
                    place[other] = len(trail)
                    trail.append(other)
                elif known < 0:
                    self._next = at
                    return [lit, -other]
            for variables in sets[lit]:
                for other in variables:
                    known = value[other]
                    if known == 0:
                        self.put(-other, lit)
                    elif known > 0 and other != lit:
                        self._next = at
                        return [lit, other]
            false = -lit
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
                    self._next = at
                    return [lit, -one, -two]
                value[two] = 1
                value[-two] = -1
                reason[two] = trio
                place[two] = len(trail)
                trail.append(two)
            clauses = watch[false]
            if clauses:
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
                            self._next = at
                            return [-x for x in clause]
                        value[first] = 1
                        value[-first] = -1
                        reason[first] = clause
                        place[first] = len(trail)
                        trail.append(first)
            for index, _ in draws[lit]:
                if self.terms[index][0][0] > slack[index]:
                    self._squeeze(index)
        self._next = at
        return None

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
        """Where the trail stands; give it to ``undo``."""
        return len(self.trail)

    def undo(self, mark: int) -> None:
        """Take back everything after a mark."""
        trail, value, draws, slack, taken = self.trail, self.value, self.draws, self.slack, self._next
        for at in range(len(trail) - 1, mark - 1, -1):
            lit = trail[at]
            value[lit] = value[-lit] = 0
            if at < taken:
                for index, weight in draws[lit]:
                    slack[index] += weight
        del trail[mark:]
        masked = self._masked
        while masked[-1][0] > mark:
            masked.pop()
        levels = self.levels
        while levels and levels[-1] >= mark:
            levels.pop()
        if taken > mark:
            self._next = mark

    def facts(self) -> list[int]:
        """By literal: 1 true, -1 false by the facts of the problem alone, 0 open."""
        if self._facts_upto != self.root:
            self._facts_upto = self.root
            self._facts = [0] * len(self.value)
            for lit in self.trail[: self.root]:
                self._facts[lit], self._facts[-lit] = 1, -1
        return self._facts

    def assumed(self) -> Core:
        """The literals assumed that were not known already."""
        return frozenset(self.trail[at] for at in self.levels)

    # ---- reasons -------------------------------------------------------------------------------------------------

    def because(self, lit: int) -> list[int]:
        """The true literals that forced a true literal; empty: assumed, or a fact."""
        reason = self.reason[lit]
        if isinstance(reason, list):
            return [-x for x in reason if x != lit]
        if reason == 0:
            return []
        if reason <= self.count:
            return [reason]
        index = reason - self.count - 1
        own = next(weight for weight, term in self.terms[index] if term == -lit)
        return self._heaviest(index, self.bound[index] - own, self.place[lit])

    def overdrawn(self, index: int) -> Conflict:
        """True literals that together overdraw a limit."""
        return self._heaviest(index, self.bound[index], len(self.trail))

    def _heaviest(self, index: int, most: int, before: int) -> list[int]:
        """The heaviest true literals of a limit set before a place, as many as weigh more than ``most``."""
        value, place = self.value, self.place
        total = 0
        found: list[int] = []
        if total > most:
            return found
        for weight, lit in self.terms[index]:
            if value[lit] > 0 and place[lit] < before:
                found.append(lit)
                total += weight
                if total > most:
                    break
        return found

    def core(self, conflict: Conflict) -> Core:
        """The assumed literals a conflict (or any list of true literals) rests on.

        A literal that is false (one just refused by ``assume``) stands for itself.
        """
        reason, place, value, root = self.reason, self.place, self.value, self.root
        seen: set[int] = set()
        found: set[int] = set()
        todo = list(conflict)
        while todo:
            lit = todo.pop()
            if lit in seen:
                continue
            seen.add(lit)
            if value[lit] < 0:
                found.add(lit)
            elif place[lit] >= root:
                why = reason[lit]
                if why == 0:
                    found.add(lit)
                elif isinstance(why, list):
                    todo.extend([-x for x in why if x != lit])
                elif why <= self.count:
                    todo.append(why)
                else:
                    todo.extend(self.because(lit))
        return frozenset(found)
