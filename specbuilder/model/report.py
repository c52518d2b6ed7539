"""Everything that follows from a spec and a catalogue. Screens and papers show nothing else."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from .circuits import CircuitLine
from .facts import Facts
from .findings import Cause, Finding
from .ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from .kinds import Level, OptionState, Place, Step, Truth, Verdict
from .ledger import Lack, Reading
from .mains import MainsPoint
from .span import Span
from .spec import Choice, Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class Pence:
    """Whole pence, from least to most."""

    least: int
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """Gross totals of what the firm sells. Each bound is rounded once, on the total."""

    net: Pence
    vat: Pence
    gross: Pence
    van_included: Truth
    """YES when the firm supplies the van, MAYBE while that is open."""
    lacks: tuple[Lack, ...] = ()
    """What is still open that changes it."""


class Effect(NamedTuple):
    """What taking an option does to this spec, next to what stands in its group now."""

    gross_pence: int
    mass_kg: float


class OptionStatus(NamedTuple):
    """One row of the walk."""

    option: OptionId
    state: OptionState
    place: Place | None
    """Where it sits, or where Enter would put it."""
    effect: Effect
    cause: Cause | None = None
    """Why it is blocked or follows."""
    brings: tuple[OptionId, ...] = ()
    """What comes along when it is taken."""
    asks: tuple[GroupId, ...] = ()
    """Groups that would have to be answered because of it."""
    clashes: tuple[RuleId, ...] = ()
    """Broken rules this choice takes part in."""
    would_clear: tuple[RuleId, ...] = ()
    """Broken rules whose clash ends when this takes the place of what stands there."""
    usual: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupStatus:
    """One question of the walk."""

    group: GroupId
    decided: bool
    choices: tuple[Choice, ...]
    gross_added: Pence
    """What the choices of the group cost, or may cost while undecided."""
    mass_added_kg: Span
    clashes: tuple[RuleId, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepStatus:
    """Counts for the step line."""

    step: Step
    undecided: int
    unknown: int
    broken: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What the rules say of one spec, and the sums they judge."""

    spec: Spec
    facts: Facts
    findings: tuple[Finding, ...]
    """Every rule that is heard, sorted by rank; holding ones last."""
    readings: Mapping[LedgerId, Reading]
    price: Price

    def broken(self, *levels: Level) -> tuple[Finding, ...]:
        """Findings that are broken at one of these levels and not accepted."""
        return tuple(f for f in self.findings if f.verdict is Verdict.BROKEN and f.level in levels and not f.accepted)

    def cannot_tell(self, *levels: Level) -> tuple[Finding, ...]:
        """Findings at one of these levels that cannot be told yet."""
        return tuple(f for f in self.findings if f.verdict is Verdict.CANNOT_TELL and f.level in levels)


@dataclass(frozen=True, slots=True, kw_only=True)
class Report(Judged):
    """All that follows from one spec."""

    van: OptionId | None
    options: Mapping[OptionId, OptionStatus]
    groups: Mapping[GroupId, GroupStatus]
    steps: Mapping[Step, StepStatus]
    unknown: tuple[BriefKey, ...]
    """Lines of the brief that are open and not known."""
    assumed: tuple[BriefKey, ...]
    """Lines that stand on an assumption."""
    undecided: tuple[GroupId, ...]
    strangers: tuple[OptionId, ...]
    """Choices whose option is not in this catalogue."""
    unsettled: frozenset[OptionId]
    """Options whose state could not be settled in the time: they are shown as *checking*, never as open."""
    silent_rules: tuple[RuleId, ...]
    """Rules that cannot be heard yet because their sum is not made; nothing about them is known."""
    silent_ledgers: tuple[LedgerId, ...]
    circuits: tuple[CircuitLine, ...] = ()
    """The circuit schedule of what is chosen, in the order of taking."""
    mains: tuple[MainsPoint, ...] = ()
    """What protects its 230 V side; empty where it has none."""

    def taking(self, option: OptionId) -> Effect:
        """What taking an option does, with all that comes along."""
        along = [option]
        for each in along:  # grows while it is gone through: what comes along may bring more
            along += (o for o in self.options[each].brings if o not in along)
        effects = [self.options[o].effect for o in along]
        return Effect(sum(e.gross_pence for e in effects), sum(e.mass_kg for e in effects))

    @property
    def verdict(self) -> Verdict:
        """Of the whole: broken, cannot tell, or holds at STOP. A choice nobody knows counts as broken."""
        if self.broken(Level.STOP) or self.strangers:
            return Verdict.BROKEN
        if self.cannot_tell(Level.STOP) or self.undecided:
            return Verdict.CANNOT_TELL
        return Verdict.HOLDS
