"""The trail: what is true by now, in which order it came, and why.

Everything is indexed by literal: in a list of ``2 * count + 1`` entries Python's index ``-v`` is the entry of the
literal ``-v``. Each true literal has a *reason*:

- ``0``: assumed (or, before ``root``, a fact of the problem);
- a literal: that literal forced it through a two-literal clause or an at-most-one set;
- above ``count``: limit number ``reason - count - 1`` forced it;
- a list: that clause forced it.
"""

from __future__ import annotations

from specbuilder.reasoning.builds import Cover, cover_of

Reason = int | list[int]
Conflict = list[int]
"""True literals that cannot stand together."""
Core = frozenset[int]
"""Assumed literals that cannot stand together; empty: the problem has no build."""


class Trail:
    """The true literals and their reasons."""

    def __init__(self, count: int) -> None:
        self.count = count
        width = 2 * count + 1
        self.same: list[int] = [*range(count + 1), *range(-count, 0)]
        """By literal: itself, always as the same object, so that a walk along the trail meets few objects."""
        self.value: list[int] = [0] * width
        """By literal: 1 true, -1 false, 0 open."""
        self.reason: list[Reason] = [0] * width
        self.place: list[int] = [0] * width
        """By true literal: where it stands on the trail."""
        self.trail: list[int] = []
        self.levels: list[int] = []
        """Of each assumption that set a literal: where it stands on the trail."""
        self.root = 0
        """Trail entries before this are facts of the problem."""
        self.terms: list[tuple[tuple[int, int], ...]] = []
        """Of each limit, restated (``limits``): weight and literal, the heaviest first."""
        self.bound: list[int] = []
        self.covers: list[Cover] = [Cover(0, 0)]
        """Of the trail up to some places, each longer than the one before."""
        self._facts: list[int] = []
        self._facts_upto = -1

    def put(self, lit: int, reason: Reason) -> None:
        """Make an open literal true; ``propagate`` draws what follows."""
        self.value[lit] = 1
        self.value[-lit] = -1
        self.reason[lit] = reason
        self.place[lit] = len(self.trail)
        self.trail.append(self.same[lit])

    def cover(self) -> Cover:
        """Of the whole trail."""
        return self.cover_at(len(self.trail))

    def cover_at(self, mark: int) -> Cover:
        """Of so much of the trail at least."""
        cover = self.covers[-1]
        if cover.upto < mark:
            cover = cover_of(self.trail[cover.upto : mark], self.count, cover)
            self.covers.append(cover)
        return cover

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
