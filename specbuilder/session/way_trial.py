"""Trying ways out: from choices that must change to edits, and from edits to a spec evaluated in full."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from heapq import heappop, heappush
from itertools import islice

from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take, Together
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, Pick
from specbuilder.model.outcome import Refusal
from specbuilder.model.report import Judged
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import LetIn, RankBy, WayOut
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Build
from specbuilder.reasoning.repairs import Repair
from specbuilder.rulegraph.clauses import placements_of

from .apply import apply
from .difference import choices_cost, difference, option_cost
from .evaluate import evaluate, judged
from .moves import Alternative, alternatives, order_of, overfull, place_of, takes, takes_of_extras
from .way_goal import Quest

BIG = 10**10
"""One change more outweighs every cost."""
RELUCTANT = 20 * BIG
"""What keeps people safe is changed only where nothing else is a way."""
SIGNED = 10**8
"""One finding more to be signed outweighs every cost as well, but no change."""
FEW = 3
"""Up to so many changes every combination is tried in the order of its cost."""
SECONDS = 1.0
"""Time for the cheapest combination of many changes."""
MOST_TRIED = 12
"""Sets of edits tried for one set of choices to change, the cheapest first."""


@dataclass(slots=True)
class Candidate:
    """A set of edits, with the spec they lead to."""

    edits: tuple[Edit, ...]
    spec: Spec
    key: int
    """Its rank; before it is evaluated, no more than that."""
    signs: int
    """Findings more to be signed, as far as the key counts them."""
    brought: tuple[OptionId, ...]
    left: tuple[OptionId, ...]
    wanted: OptionId | None = None
    """What must stand in the spec after it."""
    report: Judged | None = field(default=None)


class Trials:
    """What was tried for one quest."""

    def __init__(self, quest: Quest, rank_by: RankBy, is_over: Callable[[], bool]) -> None:
        self._quest, self._rank_by, self._is_over = quest, rank_by, is_over
        self._before = choices_cost(quest.catalogue, quest.spec.choices, rank_by)
        self._soft, self._absent = quest.soft(), quest.absent
        self._signs = {f.rule for f in quest.report.broken(Level.SIGN)}
        self.slack = self._before if rank_by is RankBy.WEEKS else 0
        """By how much a way may cost less than its floor says."""
        self.was_cut = False
        """Whether some set of choices to change was given up with edits left to try."""
        self._verdicts: dict[tuple[Choice, ...], Judged | None] = {}

    def weights(self) -> Mapping[int, int]:
        """What each change costs at least: one change, and the cheapest that could come of it.

        An extra that may come along by itself is no change of the seller's.
        """
        options, followers = self._quest.catalogue.options, self._quest.may_follow
        found = {
            lit: max((RELUCTANT if options[choice.option].safety else BIG) + self._least(choice), 1)
            for lit, choice in self._soft.items()
        }
        for lit, option in self._absent.items():
            cost = option_cost(self._quest.catalogue, options[option], self._rank_by)
            found[lit] = max(cost + (0 if option in followers else BIG), 1)
        return found | dict.fromkeys(self._quest.signs, SIGNED)

    def _least(self, choice: Choice) -> int:
        if self._rank_by is RankBy.WEEKS:
            return 0
        spec = self._quest.spec
        with_it = [c for c in spec.choices if c == choice or choice.option in c.came_with]
        now = choices_cost(self._quest.catalogue, tuple(with_it), self._rank_by)
        instead = [self._cost(a) for a in alternatives(self._quest.machine.compiled, choice)]
        return min(instead, default=0) - now

    def _cost(self, alternative: Alternative) -> int:
        option = alternative.option
        return option_cost(self._quest.catalogue, option, self._rank_by) * alternative.count if option else 0

    def candidates(self, repair: Repair) -> Iterator[Candidate]:
        """Sets of edits for what a repair drops, the cheapest first."""
        changed = list(dict.fromkeys(self._soft[lit] for lit in repair.dropped if lit in self._soft))
        extras = [self._absent[lit] for lit in repair.dropped if lit in self._absent]
        kept = [lit for lit, choice in self._soft.items() if choice not in changed]
        kept += [lit for lit, option in self._absent.items() if option not in extras]
        kept += [lit for lit in self._quest.signs if lit not in repair.dropped]
        signs = sum(1 for lit in repair.dropped if lit in self._quest.signs)
        ground = [*self._quest.given(self._quest.phase), *kept]
        most = MOST_TRIED if len(changed) <= FEW else FEW
        for number, combination in enumerate(islice(self._combinations(changed, ground), most), 1):
            self.was_cut = self.was_cut or number == most
            edits = self._in_order(sorted((a.edit for a in combination), key=order_of))
            lits = [lit for a in combination for lit in a.literals]
            taken = takes_of_extras(self._quest.machine, extras, [*ground, *lits])
            yield from self._applied(edits, taken, signs)

    def _in_order(self, edits: Sequence[Edit]) -> tuple[Edit, ...]:
        """What something else still brings along is left out after that."""
        spec, done, waiting = self._quest.spec, list[Edit](), list(edits)
        while any(isinstance(edit, LeaveOut) for edit in waiting):  # nothing else is brought along
            outcomes = ((edit, apply(self._quest.catalogue, spec, edit)) for edit in waiting)
            edit, spec = next(
                ((e, o.spec) for e, o in outcomes if o.refused is not Refusal.COMES_WITH), (waiting[0], spec)
            )
            waiting.remove(edit)
            done.append(edit)
        return (*done, *waiting)

    def _combinations(self, changed: Sequence[Choice], ground: Sequence[int]) -> Iterator[tuple[Alternative, ...]]:
        """What could stand instead of each changed choice, all together, the cheapest first."""
        wants = [sorted(ways, key=self._cost) for ways in self._wants(changed)]
        if len(wants) <= FEW:
            return self._by_cost(wants, ground)
        return self._by_search(wants, ground)

    def _wants(self, changed: Sequence[Choice]) -> Iterator[list[Alternative]]:
        """For each thing that changes what could be done with it."""
        quest = self._quest
        if isinstance(quest.goal, LetIn):
            ways = takes(quest.machine.compiled, quest.catalogue.options[quest.goal.option])
            yield [way for way in ways if quest.goal.place in (None, place_of(way.edit))]
        if quest.phase:
            yield [way for van in quest.catalogue.vans for way in takes(quest.machine.compiled, van)]
        for choice in changed:
            yield list(alternatives(quest.machine.compiled, choice))

    def _by_cost(self, wants: list[list[Alternative]], ground: Sequence[int]) -> Iterator[tuple[Alternative, ...]]:
        """Best-first over the few that change."""
        reasoner = self._quest.machine.reasoner
        ahead = [0]
        for ways in reversed(wants):
            ahead.append(ahead[-1] + (self._cost(ways[0]) if ways else 0))
        ahead.reverse()
        queue: list[tuple[int, int, tuple[Alternative, ...]]] = [(ahead[0], 0, ())]
        pushed = 0
        while queue:
            floor, _, chosen = heappop(queue)
            lits = [lit for way in chosen for lit in way.literals]
            if isinstance(reasoner.consistent([*ground, *lits]), frozenset):
                continue
            at = len(chosen)
            if at == len(wants):
                yield chosen
                continue
            for way in wants[at]:
                pushed += 1
                cost = floor - ahead[at] + self._cost(way) + ahead[at + 1]
                heappush(queue, (cost, pushed, (*chosen, way)))

    def _by_search(self, wants: list[list[Alternative]], ground: Sequence[int]) -> Iterator[tuple[Alternative, ...]]:
        """The cheapest completion, then the next that differs: many changes would be too many to try one by one."""
        costs = {lit: self._cost(way) for ways in wants for way in ways for lit in way.literals[:1]}
        seen: list[tuple[int, ...]] = []
        while True:
            found = self._quest.machine.completer.best(
                ground,
                costs,
                budget=Budget(seconds=SECONDS, cancelled=self._is_over),
                judge=lambda build, _cost: self._barred(build, wants, seen),
            )
            if found.build is None:
                return
            build = found.build
            chosen = tuple(next(way for way in ways if all(build[lit] for lit in way.literals)) for ways in wants)
            yield chosen
            taken = tuple(lit for way in chosen for lit in way.literals)
            if not taken:
                return
            seen.append(taken)

    def _barred(
        self, build: Build, wants: Sequence[Sequence[Alternative]], seen: Sequence[tuple[int, ...]]
    ) -> tuple[int, ...] | None:
        """What may not stand together in a build: what was tried already, or an answer that is no alternative."""
        for lits in seen:
            if all(build[lit] for lit in lits):
                return lits
        for ways in wants:
            if not any(all(build[lit] for lit in way.literals) for way in ways):
                return self._standing(build, ways)
        return None

    def _standing(self, build: Build, ways: Sequence[Alternative]) -> tuple[int, ...]:
        """What a build has where one of some alternatives should stand."""
        compiled = self._quest.machine.compiled
        options = compiled.catalogue.options
        about = {options[way.edit.option].id for way in ways if isinstance(way.edit, Take | LeaveOut | SetCount | Move)}
        groups = {options[o].group for o in about if compiled.catalogue.groups[options[o].group].pick is Pick.ONE}
        members = [o for o in options.values() if o.id in about or o.group in groups]
        literals = [lit for option in members for p in placements_of(option) for lit in compiled.counts[p]]
        return tuple(lit for lit in literals if build[lit])

    def _applied(
        self, edits: tuple[Edit, ...], extras: Sequence[Take], signs: int, wanted: OptionId | None = None
    ) -> Iterator[Candidate]:
        """The edits applied; extras that did not come along by themselves are edits of their own."""
        quest = self._quest
        edits = (*edits, *extras)
        for extra in sorted(extras, key=lambda extra: extra.option not in quest.may_follow):
            others = tuple(e for e in edits if e != extra)
            if others and apply(quest.catalogue, quest.spec, Together(edits=others)).spec.has(extra.option):
                edits = others
        if not edits:
            return
        outcome = apply(quest.catalogue, quest.spec, Together(edits=edits))
        if outcome.refused is None:
            cost = choices_cost(quest.catalogue, outcome.spec.choices, self._rank_by) - self._before
            safe = sum(
                quest.catalogue.options[c.option].safety for c in set(self._soft.values()) - set(outcome.spec.choices)
            )
            key = len(edits) * BIG + safe * (RELUCTANT - BIG) + signs * SIGNED + cost
            brought, left = outcome.brought, outcome.left
            yield Candidate(edits, outcome.spec, key, signs, brought, left, wanted or quest.wanted)

    def instead(self) -> Iterator[Candidate]:
        """Taking what may serve in place of a wanted extra; only where it breaks nothing more."""
        for option in self._quest.instead:
            for candidate in self._applied((Take(option=option),), (), 0, option):
                if self.holds(candidate) and candidate.report is not None and not self._breaks(candidate.report):
                    yield candidate

    def _breaks(self, report: Judged) -> bool:
        """Whether something more is to be signed."""
        return not {f.rule for f in report.broken(Level.SIGN)} <= self._signs

    def holds(self, candidate: Candidate) -> bool:
        """Judge the spec after it by every rule and sum: the goal is reached, and nothing more is broken at STOP."""
        known = candidate.spec.choices
        if known not in self._verdicts:
            report = self.look(candidate)
            self._verdicts[known] = report if self._reached(report, candidate.wanted) else None
        candidate.report = self._verdicts[known]
        if candidate.report is None:
            return False
        signs = len({f.rule for f in candidate.report.broken(Level.SIGN)} - self._signs)
        candidate.key += max(signs - candidate.signs, 0) * SIGNED
        candidate.signs = max(signs, candidate.signs)
        return True

    def look(self, candidate: Candidate) -> Judged:
        """The spec after it, all its rules and sums."""
        return judged(self._quest.catalogue, candidate.spec)

    def tried(self, edits: tuple[Edit, ...]) -> Iterator[Candidate]:
        """Some edits applied, where nothing refuses them."""
        yield from self._applied(edits, (), 0)

    def _reached(self, report: Judged, wanted: OptionId | None) -> bool:
        quest = self._quest
        before = {f.rule for f in quest.report.broken(Level.STOP)} | quest.may_break
        broken = {f.rule for f in report.broken(Level.STOP, Level.SIGN)}
        if not {f.rule for f in report.broken(Level.STOP)} <= before or not broken.isdisjoint(quest.targets):
            return False
        if not overfull(quest.catalogue, report.spec) <= overfull(quest.catalogue, quest.spec):
            return False
        return wanted is None or report.spec.has(wanted)

    def way(self, candidate: Candidate) -> WayOut:
        """A candidate that holds, as it is shown."""
        assert candidate.report is not None, "only what was evaluated is shown"
        report = self._exact(candidate.report)
        before = {f.rule for f in self._quest.report.broken(Level.STOP, Level.SIGN)}
        after = {f.rule for f in report.broken(Level.STOP, Level.SIGN)}
        targets = self._quest.targets
        return WayOut(
            edits=candidate.edits,
            spec=candidate.spec,
            difference=difference(self._quest.report, report),
            clears=tuple(sorted(before - after, key=lambda rule: rule not in targets)),
            breaks=tuple(f.rule for f in report.findings if f.rule in after - before),
            brought=candidate.brought,
            left=candidate.left,
        )

    def _exact(self, report: Judged) -> Judged:
        """While questions are undecided low ends rest on what is still open: both of a difference must know that."""
        return evaluate(self._quest.catalogue, report.spec) if self._quest.report.undecided else report
