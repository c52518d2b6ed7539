"""What a search for ways out is for: the goal as literals, what holds whatever happens, and what may change."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum, auto

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, RuleKind, Truth
from specbuilder.model.report import Report
from specbuilder.model.rules import BriefIs, WithinBound
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import ClearFindings, Goal, LetIn
from specbuilder.rulegraph.truth import brief_truth

from .evaluate import evaluate
from .machine import Machine, machine_of
from .situate import lay
from .way_helpful import helpful, may_follow, touching

SPENDING = frozenset({"price-gross", "total-mass"})
"""Ledgers on which a saving is offered; parts of a safety bundle are never such a saving."""


@dataclass(slots=True)
class Quest:
    """A goal on one spec."""

    catalogue: Catalogue
    spec: Spec
    goal: Goal
    report: Report
    machine: Machine
    facts: tuple[int, ...]
    """Answers and rules that hold whatever is changed."""
    targets: tuple[RuleId, ...]
    """The findings to clear that edits can clear at all."""
    choices: Mapping[int, Choice]
    """What stands, by its literals."""
    wanted: OptionId | None = None
    firm: frozenset[int] = frozenset()
    """Literals of choices that are not offered for change."""
    vans: frozenset[int] = field(default_factory=frozenset)
    signs: Mapping[int, RuleId] = field(default_factory=dict)
    """Rules at SIGN that are not broken now, each by its switch: a way should not break them."""
    helpful: frozenset[OptionId] = frozenset()
    """Extras that taking them could ever help something."""
    may_follow: frozenset[OptionId] = frozenset()
    """Extras that may come along by themselves with something else."""
    phase: bool = False
    """Whether the base van is let go of."""
    waived: frozenset[RuleId] = frozenset()
    """Rules at STOP that are let go of because the wanted option cannot keep them all, whatever is changed."""
    may_break: frozenset[RuleId] = frozenset()
    """All rules that cannot be kept together then: which of them is broken in the end is a matter of what follows."""
    hopeless: bool = False
    """No edits can reach the goal."""
    touching: frozenset[OptionId] = frozenset()
    """Where a target is about a figure that is no sum, and no search holds it: the options that change it."""

    @property
    def can_change_van(self) -> bool:
        """Whether another base van may be proposed."""
        wanted = self.catalogue.options.get(self.wanted) if self.wanted else None
        return bool(self.vans) and (wanted is None or wanted.van is None)

    def soft(self) -> dict[int, Choice]:
        """The literals of choices that may be changed. The base van is none of them: it stands, or was let go of."""
        out = self.firm | self.vans | self.replaced
        return {lit: choice for lit, choice in self.choices.items() if lit not in out}

    @property
    def absent(self) -> dict[int, OptionId]:
        """Helpful extras that do not stand, each by the literal that it stays away."""
        compiled, standing = self.machine.compiled, {c.option for c in self.choices.values()}
        return {
            -compiled.option(o.id): o.id
            for o in self.catalogue.options.values()
            if o.id in self.helpful and o.id not in standing and o.id != self.wanted
        }

    def given(self, with_van: bool) -> tuple[int, ...]:
        """What holds whatever is dropped."""
        wanted = (self.machine.compiled.option(self.wanted),) if self.wanted else ()
        kept = (*(self.firm - self.replaced), *self.idle)
        if not with_van:
            return (*self.facts, *(self.vans - self.replaced), *kept, *wanted)
        return (*self.facts, *(-lit for lit in self.vans), *kept, *wanted)

    @property
    def instead(self) -> tuple[OptionId, ...]:
        """What may serve in place of a wanted extra: others of its group that give what it is, the first tag it gives.

        Another supply of the same is meant, not whatever runs on it: no microwave is offered for a laptop.
        """
        option = self.catalogue.options.get(self.wanted) if self.wanted else None
        if option is None or self.catalogue.groups[option.group].pick is Pick.ONE:
            return ()
        standing = {c.option for c in self.spec.choices}
        return tuple(
            other.id
            for other in self.catalogue.options_of(option.group)
            if other.id != option.id
            and other.id not in standing
            and not (other.refused or other.found)
            and set(option.gives[:1]) & set(other.gives)
        )

    @property
    def idle(self) -> tuple[int, ...]:
        """Extras that do not stand and could help nothing stay away."""
        compiled, standing = self.machine.compiled, {c.option for c in self.choices.values()}
        return tuple(
            -compiled.option(o.id)
            for o in self.catalogue.options.values()
            if self.catalogue.groups[o.group].pick is Pick.ANY
            and (o.id not in self.helpful or o.found)
            and o.id not in standing
            and o.id != self.wanted
        )

    @property
    def replaced(self) -> frozenset[int]:
        """The choice whose place the wanted option takes."""
        option = self.catalogue.options.get(self.wanted) if self.wanted else None
        if option is None or self.catalogue.groups[option.group].pick is not Pick.ONE:
            return frozenset()
        options = self.catalogue.options
        return frozenset(lit for lit, c in self.choices.items() if options[c.option].group == option.group)


class Waiving(Enum):
    """Which rule is let go of where the wanted option cannot keep them all."""

    NONE = auto()
    BRIEF_FIRST = auto()
    """What the brief asks for."""
    BRIEF_LAST = auto()
    """What holds the parts together: where something that the brief asks for comes back by itself."""


def make_quest(catalogue: Catalogue, spec: Spec, goal: Goal, waiving: Waiving = Waiving.NONE) -> Quest:
    """Look at the spec as it is; ``waiving`` lets an option in beside what it cannot keep."""
    report = evaluate(catalogue, spec)
    laid = lay(catalogue, spec)
    machine = machine_of(catalogue, laid.facts, spec.choices, selectable=True)
    options = catalogue.options
    standing = tuple(c for c in spec.choices if not c.came_with or _is_loose(laid.run.choices, c))
    choices = machine.choices(tuple(c for c in standing if c.option in options))
    quest = Quest(
        catalogue=catalogue,
        spec=spec,
        goal=goal,
        report=report,
        machine=machine,
        facts=(),
        targets=(),
        choices=choices,
        wanted=goal.option if isinstance(goal, LetIn) else None,
        vans=frozenset(lit for lit, c in choices.items() if options[c.option].van is not None),
    )
    quest.firm = frozenset(lit for lit, c in choices.items() if options[c.option].found)
    quest.targets = _reachable(quest, goal)
    quest.facts = ground_of(quest, quest.targets)
    quest.touching = touching(catalogue, [rule for rule in quest.targets if rule in machine.compiled.unheard])
    quest.helpful = helpful(machine)
    if any(is_spending(catalogue, rule) for rule in quest.targets):
        quest.firm |= frozenset(lit for lit, c in choices.items() if options[c.option].safety)
    quest.may_follow = may_follow(catalogue, _blocked(report))
    broken = {f.rule for f in report.broken(Level.SIGN)}
    quest.signs = {
        lit: rule
        for rule, lit in machine.compiled.selectors.items()
        if catalogue.rules[rule].level is Level.SIGN and rule not in broken
    }
    if waiving is not Waiving.NONE:
        quest.waived, quest.may_break = _waived(quest, waiving)
        quest.facts = ground_of(quest, quest.targets)
    with machine.lock:
        given = [lit for lit in quest.given(True) if -lit not in quest.vans]
        quest.hopeless = isinstance(machine.reasoner.consistent(given), frozenset) or (
            isinstance(goal, ClearFindings) and not quest.targets
        )
    return quest


def _blocked(report: Report) -> frozenset[OptionId]:
    return frozenset(o for o, status in report.options.items() if status.state is OptionState.BLOCKED)


def _waived(quest: Quest, waiving: Waiving) -> tuple[frozenset[RuleId], frozenset[RuleId]]:
    """The rules that must go for the wanted option to stand at all, of each conflict one; and all of the conflicts."""
    machine = quest.machine
    rule_of = {lit: rule for rule, lit in machine.compiled.selectors.items()}
    waived: set[RuleId] = set()
    together: set[RuleId] = set()
    with machine.lock:
        while True:
            ground = [lit for lit in quest.given(True) if -lit not in quest.vans]
            held = [lit for lit in ground if lit in rule_of and rule_of[lit] not in waived]
            conflict = machine.conflict(held, [lit for lit in ground if lit not in rule_of])
            if not conflict:
                return frozenset(waived), frozenset(together)
            together.update(rule_of[lit] for lit in conflict)
            by_weight = sorted((rule_of[lit] for lit in conflict), key=lambda rule: _weight_of(quest.catalogue, rule))
            waived.add(by_weight[0 if waiving is Waiving.BRIEF_FIRST else -1])


def _weight_of(catalogue: Catalogue, rule: RuleId) -> int:
    """Low for what the brief asks for, then limits, high for what holds parts together."""
    found = catalogue.rules[rule]
    if any(isinstance(atom, BriefIs) for term in found.when.terms for atom in term.atoms):
        return 0
    return 1 if found.kind is RuleKind.LIMIT else 2


def _is_loose(held: tuple[Choice, ...], choice: Choice) -> bool:
    """A recorded follower that follows no longer by itself."""
    return any(c.option == choice.option and c.place is choice.place for c in held)


def is_spending(catalogue: Catalogue, rule: RuleId) -> bool:
    """Whether a finding asks for savings in money or mass."""
    found = catalogue.rules[rule]
    if found.kind is not RuleKind.LIMIT:
        return False
    return any(isinstance(a, WithinBound) and a.ledger in SPENDING for t in found.then.terms for a in t.atoms)


def _reachable(quest: Quest, goal: Goal) -> tuple[RuleId, ...]:
    """The rules to clear without those that the answers alone break: an answer, a date or a sheet cures them."""
    if not isinstance(goal, ClearFindings):
        return ()
    broken = {f.rule for f in quest.report.broken(Level.STOP, Level.SIGN)}
    targets = [rule for rule in dict.fromkeys(goal.rules) if rule in broken]
    selectors = quest.machine.compiled.selectors
    with quest.machine.lock:
        while targets:
            core = quest.machine.reasoner.consistent([*ground_of(quest, tuple(targets)), *quest.firm])
            if not isinstance(core, frozenset):
                break
            alone = [rule for rule in targets if selectors.get(rule) in core]
            if not alone:
                return ()
            targets = [rule for rule in targets if rule not in alone]
    return tuple(targets)


def ground_of(quest: Quest, targets: tuple[RuleId, ...]) -> tuple[int, ...]:
    """The answers, and the switches of the rules that must hold: all at STOP that hold now, and the targets."""
    compiled, catalogue = quest.machine.compiled, quest.catalogue
    broken = {f.rule for f in quest.report.broken(Level.STOP)} - set(targets) | quest.waived
    on = [
        lit
        for rule, lit in compiled.selectors.items()
        if rule in targets or (catalogue.rules[rule].level is Level.STOP and rule not in broken)
    ]
    answers: list[int] = []
    for atom, variable in compiled.clauses.atom.items():
        truth = brief_truth(atom, quest.report.facts)
        if truth is not Truth.MAYBE:
            answers.append(variable + 1 if truth is Truth.YES else -(variable + 1))
    return (*answers, *on, *quest.machine.theirs(quest.spec.choices))
