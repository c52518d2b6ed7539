"""Finish it for me: the open groups answered at once, cheapest, lightest, soonest or nearest to the house usual."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Take, Together
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Level, Pick
from specbuilder.model.own_parts import is_brought
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Aim, ClearFindings, Proposal, RankBy
from specbuilder.reasoning.best import Completion, SmallestWorst
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.builds import Build
from specbuilder.rulegraph.clauses import placements_of

from .apply import apply
from .difference import difference, option_cost
from .evaluate import evaluate, judged
from .moves import takes
from .way_goal import Quest, ground_of, make_quest

SECONDS = 3.0
"""Time for the proof that nothing is better."""
SIGNED = 10**11
"""One finding to be signed outweighs every cost."""
EXTRA = 10**9
"""One extra nobody asked for: it is taken only where something needs it."""
UNUSUAL = 10**7
"""One answer that is not the house usual outweighs every price."""


def finish(catalogue: Catalogue, spec: Spec, aim: Aim, stop: Callable[[], bool] | None = None) -> Proposal | None:
    """What would answer every open group under all limits; None when nothing is open, or nothing fits.

    Nothing that stands is changed, and nothing more is broken at STOP. A finding more to be signed is taken into the
    bargain only where it cannot be avoided.
    """
    quest = make_quest(catalogue, spec, ClearFindings(rules=()))
    if not quest.report.undecided:
        return None
    search = _Finish(quest, aim)
    budget = Budget(seconds=SECONDS, cancelled=stop)
    with quest.machine.lock:
        return search.run(budget)


@dataclass(slots=True)
class _Finish:
    """One search for a finished build."""

    quest: Quest
    aim: Aim
    mended: tuple[RuleId, ...] = ()
    """Rules at STOP that are broken now and that answering what is open can mend."""

    def run(self, budget: Budget) -> Proposal | None:
        """The proposal."""
        quest = self.quest
        self.mended = self._mendable()
        held = [*ground_of(quest, self.mended), *quest.choices, *quest.idle, *self._not_ours()]
        completer = quest.machine.completer
        found: Completion | SmallestWorst
        if self.aim is Aim.WEEKS:
            found = completer.smallest_worst(
                held, self._weeks(), self._costs(RankBy.PRICE), budget=budget, judge=self._judge
            )
        else:
            found = completer.best(held, self._costs(_RANKS[self.aim]), budget=budget, judge=self._judge)
        if found.build is None:
            return None
        return self._proposal(found.build, proven=found.is_proved)

    def _not_ours(self) -> list[int]:
        """That no part comes into it which only the customer could bring."""
        compiled, standing = self.quest.machine.compiled, {c.option for c in self.quest.spec.choices}
        return [
            -compiled.option(option.id)
            for option in compiled.catalogue.options.values()
            if is_brought(option) and option.id not in standing
        ]

    def _mendable(self) -> tuple[RuleId, ...]:
        """The rules broken at STOP without those that what stands breaks whatever else comes."""
        quest, selectors = self.quest, self.quest.machine.compiled.selectors
        rules = [f.rule for f in quest.report.broken(Level.STOP) if f.rule in selectors]
        rest = [*ground_of(quest, ()), *quest.choices, *quest.idle]
        while conflict := quest.machine.conflict([selectors[rule] for rule in rules], rest):
            rules = [rule for rule in rules if selectors[rule] not in conflict]
        return tuple(rules)

    def _weeks(self) -> Mapping[int, int]:
        """Tenths of weeks until each option is here; what stands already is as it is."""
        compiled, standing = self.quest.machine.compiled, {c.option for c in self.quest.spec.choices}
        return {
            compiled.option(o.id): round(o.lead_weeks * 10)
            for o in compiled.catalogue.options.values()
            if o.lead_weeks and o.id not in standing
        }

    def _costs(self, rank_by: RankBy) -> Mapping[int, int]:
        """What each literal costs by the aim."""
        quest, compiled = self.quest, self.quest.machine.compiled
        levels = {lit: quest.catalogue.rules[rule].level for rule, lit in compiled.selectors.items()}
        costs = {-lit: SIGNED for lit, level in levels.items() if level is Level.SIGN}
        usual_extras = self._usual_extras() if self.aim is Aim.USUAL else frozenset[OptionId]()
        for option in quest.catalogue.options.values():
            cost = option_cost(quest.catalogue, option, rank_by)
            if self.aim is Aim.USUAL:
                cost = cost // 100 + self._unusual(option.id)
            if quest.catalogue.groups[option.group].pick is Pick.ANY and option.id not in usual_extras:
                cost += EXTRA
            for placement in placements_of(option):
                costs.update(dict.fromkeys(compiled.counts[placement], cost))
        costs |= {-compiled.option(option): EXTRA for option in usual_extras}
        return {lit: cost for lit, cost in costs.items() if cost}

    def _unusual(self, option: OptionId) -> int:
        """How far an answer is from the house usual: the first usual is none, the others by their place."""
        found = self.quest.catalogue.options[option]
        group = self.quest.catalogue.groups[found.group]
        if group.pick is Pick.ANY:
            return 0
        return UNUSUAL * (group.usual.index(option) if option in group.usual else len(group.usual) + 1)

    def _usual_extras(self) -> frozenset[OptionId]:
        """Usual extras of groups of which nothing stands yet."""
        catalogue = self.quest.catalogue
        touched = {catalogue.options[c.option].group for c in self.quest.choices.values()}
        return frozenset(
            option
            for group in catalogue.groups.values()
            if group.pick is Pick.ANY and group.id not in touched
            for option in group.usual
        )

    def _judge(self, build: Build, _cost: int) -> Collection[int] | None:
        """Judge it by every rule and sum; the lesson of a failure is the whole of what would be taken."""
        spec, _ = self._taken(build)
        report = judged(self.quest.catalogue, spec)
        before = {f.rule for f in self.quest.report.broken(Level.STOP)} - set(self.mended)
        if {f.rule for f in report.broken(Level.STOP)} <= before:
            return None
        return [lit for way in self._ways(build) for lit in way[1]]

    def _ways(self, build: Build) -> list[tuple[Edit, tuple[int, ...]]]:
        """What the build takes beyond what stands: open groups, and extras it needs."""
        quest, compiled = self.quest, self.quest.machine.compiled
        standing = {c.option for c in quest.spec.choices}
        found: list[tuple[Edit, tuple[int, ...]]] = []
        for option in quest.catalogue.options.values():
            is_open = option.group in quest.report.undecided or quest.catalogue.groups[option.group].pick is Pick.ANY
            if option.id in standing or not is_open:
                continue
            found += [(way.edit, way.literals) for way in takes(compiled, option) if build[way.literals[0]]]
        return found

    def _taken(self, build: Build) -> tuple[Spec, tuple[Edit, ...]]:
        """The spec with it; what comes along by itself is no edit."""
        catalogue, spec = self.quest.catalogue, self.quest.spec
        ways = self._ways(build)
        one = [
            e
            for e, _ in ways
            if isinstance(e, Take) and catalogue.groups[catalogue.options[e.option].group].pick is Pick.ONE
        ]
        edits: tuple[Edit, ...] = tuple(one)
        after = apply(catalogue, spec, Together(edits=edits)).spec if edits else spec
        edits += tuple(e for e, _ in ways if isinstance(e, Take) and e not in one and not after.has(e.option))
        return (apply(catalogue, spec, Together(edits=edits)).spec if edits else spec), edits

    def _proposal(self, build: Build, *, proven: bool) -> Proposal:
        catalogue, before = self.quest.catalogue, self.quest.report
        spec, edits = self._taken(build)
        report: Report = evaluate(catalogue, spec)
        order = {option: at for at, option in enumerate(catalogue.options)}
        taken = [c for c in spec.choices if c not in before.spec.choices]
        return Proposal(
            aim=self.aim,
            edits=edits,
            spec=spec,
            takes=tuple(sorted(taken, key=lambda c: order[c.option])),
            difference=difference(before, report),
            proven=proven,
            still_broken=tuple(f.rule for f in report.broken(Level.STOP, Level.SIGN)),
            unanswered=report.undecided,
        )


_RANKS = {Aim.PRICE: RankBy.PRICE, Aim.MASS: RankBy.MASS, Aim.USUAL: RankBy.PRICE}
