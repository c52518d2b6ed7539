"""What an audit of the catalogue finds beside outright faults: places a reader of the rules should look at again."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import BriefKey, LedgerId
from .origin import Origin


class LintCode(StrEnum):
    """What is odd."""

    CONTRADICTION = "contradiction"
    """Rules that no build keeps together."""
    EMPTY_GROUP = "empty-group"
    """A question of one answer that has none."""
    VAN_WITHOUT_BUILD = "van-without-build"
    DEAD_OPTION = "dead-option"
    """No build without a STOP holds it, and it is not kept to be refused."""
    REFUSED_LIVES = "refused-lives"
    """Kept to be refused, and some build without a STOP holds it."""
    NEVER_FIRES = "never-fires"
    """A rule whose condition no build meets."""
    ALWAYS_FIRES = "always-fires"
    """A rule whose condition every build meets."""
    REDUNDANT = "redundant"
    """A rule at STOP that others imply already."""
    NEEDS_LOOP = "needs-loop"
    """Options that need one another in a circle."""
    NO_CASE = "no-case"
    """A rule without a case that breaks and mends it."""
    UNSETTLED = "unsettled"
    """Not settled in the time of the audit: such a question is slow at the counter too."""
    SETTING_MISSING = "setting-missing"
    """A house setting that a sum cannot be made without."""
    ZERO_WITHOUT_NOTE = "zero-without-note"
    """Mass or price is nought and nothing says why."""
    IMPLAUSIBLE = "implausible"
    """A figure outside what its kind can be."""
    FIGURE_MISSING = "figure-missing"
    """A figure that a sum cannot be made without."""
    NO_REASON = "no-reason"
    """A rule without the sentence the customer hears, or a need without one."""
    NO_SOURCE = "no-source"
    NO_FIX = "no-fix"
    """A rule that stops or needs signing and offers nothing to do about it."""
    NO_USUAL = "no-usual"
    """A pick-one group without a house usual."""
    TAG_UNUSED = "tag-unused"
    """A capability that is given and that nothing asks for."""
    SILENT = "silent"
    """A ledger or figure without a calculation, or a rule that waits for one."""


SERIOUS = frozenset((LintCode.CONTRADICTION, LintCode.EMPTY_GROUP, LintCode.VAN_WITHOUT_BUILD, LintCode.DEAD_OPTION))
"""Codes of what a catalogue should not be sold from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lint:
    """One place to look at again."""

    code: LintCode
    subject: str
    """Id of the option, group, rule, ledger or tag."""
    field: str = ""
    """The key in the file it is about, e.g. ``mass_kg``."""
    value: float | None = None
    least: float | None = None
    most: float | None = None
    above: bool = False
    """The least itself is out as well."""
    others: tuple[str, ...] = ()
    """Rules or options that take part: with which it clashes, or which imply it."""
    origin: Origin

    @property
    def serious(self) -> bool:
        """True where something in the catalogue can never be built as it stands."""
        return self.code in SERIOUS


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """One thing a sum asks for in vain: a line of the brief, or a setting of a ledger."""

    line: BriefKey | None = None
    ledger: LedgerId | None = None
    setting: str = ""
