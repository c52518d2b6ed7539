"""What a rule says of a spec, and why something is as it is. Values only; ``wording`` makes the sentences."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import BriefKey, GroupId, LedgerId, OptionId, RuleId, Tag
from .kinds import Level, Place, Rank, Step, Verdict
from .ledger import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One rule on one spec."""

    rule: RuleId
    step: Step
    level: Level
    verdict: Verdict
    subjects: tuple[OptionId, ...] = ()
    """The choices that make it so, in the order they were taken."""
    keys: tuple[BriefKey, ...] = ()
    """The answers that take part."""
    values: tuple[tuple[BriefKey, str], ...] = ()
    """What of those answers it asks about: of all that must run, the kettle that is lacking."""
    reading: LedgerId | None = None
    """The ledger or figure it is about."""
    lacks: tuple[Lack, ...] = ()
    """What must be known or decided before it can be told."""
    wanted: tuple[Tag, ...] = ()
    """Capabilities of which one is missing."""
    accepted: bool = False
    """A SIGN that was accepted in writing."""

    @property
    def rank(self) -> Rank:
        """Its place on a list, what stops first."""
        return _RANKS[self.level, self.verdict]


_RANKS: dict[tuple[Level, Verdict], Rank] = {
    (Level.STOP, Verdict.BROKEN): Rank.STOP_BROKEN,
    (Level.STOP, Verdict.CANNOT_TELL): Rank.STOP_UNKNOWN,
    (Level.SIGN, Verdict.BROKEN): Rank.SIGN_BROKEN,
    (Level.SIGN, Verdict.CANNOT_TELL): Rank.SIGN_UNKNOWN,
    (Level.NOTE, Verdict.BROKEN): Rank.NOTE_BROKEN,
    (Level.NOTE, Verdict.CANNOT_TELL): Rank.NOTE_UNKNOWN,
    (Level.STOP, Verdict.HOLDS): Rank.HOLDS,
    (Level.SIGN, Verdict.HOLDS): Rank.HOLDS,
    (Level.NOTE, Verdict.HOLDS): Rank.HOLDS,
}


class CauseKind(StrEnum):
    """What a node of a chain of reasons is."""

    CHOICE = "choice"
    """Somebody took this option (``option``, ``place``)."""
    ANSWER = "answer"
    """The brief or the job says so (``key``)."""
    VAN = "van"
    """The base van is so (``option``; ``tag`` when it is about one capability)."""
    RULE = "rule"
    """This rule connects what stands below it (``rule``)."""
    NEEDS = "needs"
    """The option's own needs column (``option``)."""
    FITS = "fits"
    """The option does not list this base van (``option``)."""
    ONE_ANSWER = "one answer"
    """A pick-one group has one answer (``group``)."""
    GIVES = "gives"
    """The option gives the capability (``option``, ``tag``)."""
    NOTHING_GIVES = "nothing gives"
    """All that could give the capability are out (``tag``)."""
    LEDGER = "ledger"
    """A ledger or figure is at its bound (``ledger``)."""
    ZONE = "zone"
    """Two things claim one place (``tag`` holds the zone)."""
    TOGETHER = "together"
    """What stands below it leaves no way to finish the build; no single rule says so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """A node of a chain of reasons; ``because`` are the nodes it rests on."""

    kind: CauseKind
    option: OptionId | None = None
    place: Place | None = None
    key: BriefKey | None = None
    rule: RuleId | None = None
    group: GroupId | None = None
    tag: Tag | None = None
    ledger: LedgerId | None = None
    because: tuple[Cause, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Reasons:
    """Why something is as it is: minimal reasons, each enough by itself and none with a part too many."""

    causes: tuple[Cause, ...]
    """The one with the fewest choices first."""
    complete: bool
    """False: there may be more reasons than these."""
