"""What the search proposes: ways out of findings, a finished build, and what a late switch does. Values only."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from .edits import Edit, Take
from .findings import Cause
from .ids import GroupId, OptionId, RuleId
from .kinds import Place
from .spec import Choice, Spec


class RankBy(StrEnum):
    """What decides between ways out with equally many changes; the seller can switch it."""

    PRICE = "price"
    MASS = "mass"
    HOURS = "hours"
    WEEKS = "weeks"


class Aim(StrEnum):
    """What a finished build is to be: cheapest, lightest, soonest, or nearest to the house usual."""

    PRICE = "price"
    MASS = "mass"
    WEEKS = "weeks"
    USUAL = "usual"


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """What a set of edits does to the whole spec: after less before, at the low end while something is open."""

    gross_pence: int
    mass_kg: float
    hours: float
    weeks: float
    """Change of the longest wait for parts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearFindings:
    """Make these broken rules hold again."""

    rules: tuple[RuleId, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LetIn:
    """Have this option in the spec without a clash."""

    option: OptionId
    place: Place | None = None
    """None: at any of its places."""


Goal: TypeAlias = ClearFindings | LetIn


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """A set of edits that reaches a goal, re-evaluated in full."""

    edits: tuple[Edit, ...]
    """What the seller would do, one change each; followers come and go by themselves."""
    spec: Spec
    """The spec after them."""
    difference: Difference
    clears: tuple[RuleId, ...] = ()
    """Broken rules at STOP or SIGN that are broken no longer, the asked ones first."""
    breaks: tuple[RuleId, ...] = ()
    """Rules at SIGN that are broken after it and were not before: to be accepted in writing."""
    brought: tuple[OptionId, ...] = ()
    """Followers that come along."""
    left: tuple[OptionId, ...] = ()
    """What is not in the spec any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysOut:
    """The ways found so far, best first; a longer list of the same search begins with the same ways."""

    goal: Goal
    rank_by: RankBy
    ways: tuple[WayOut, ...] = ()
    within: int = 0
    """Up to this many changes everything has been looked at."""
    finished: bool = False
    """The search has ended."""
    complete: bool = False
    """No other way within ``within`` changes stands before those listed; False: the search stopped before it knew."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """The open groups of a spec answered as one step of undo; nothing is changed before it is taken."""

    aim: Aim
    edits: tuple[Edit, ...]
    spec: Spec
    takes: tuple[Choice, ...]
    """What would be taken, in catalogue order."""
    difference: Difference
    proven: bool
    """No other way to answer them is better by the aim; False: the best found in the time."""
    still_broken: tuple[RuleId, ...] = ()
    """Rules at STOP or SIGN that are broken after it; they were before, or nothing avoids them."""
    unanswered: tuple[GroupId, ...] = ()
    """Open groups for which nothing fits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unfit:
    """A choice that cannot stay when something else is switched."""

    choice: Choice
    cause: Cause | None
    """Why it cannot stay."""
    instead: tuple[OptionId, ...] = ()
    """What takes its place in the proposal; empty: it is left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Switch:
    """What taking another base van or roof would do, before anything is changed."""

    take: Take
    edits: tuple[Edit, ...]
    """The switch and what it proposes for what does not fit, as one step of undo."""
    spec: Spec
    """The spec after them."""
    stays: tuple[Choice, ...]
    unfit: tuple[Unfit, ...]
    difference: Difference
    came: tuple[RuleId, ...]
    """Broken at STOP or SIGN after it, not before."""
    went: tuple[RuleId, ...]
    """Broken before, no longer."""
    cannot_tell: tuple[RuleId, ...]
    """Could be told before and cannot after."""
    undecided: tuple[GroupId, ...]
    """Questions that would have to be asked again."""
    complete: bool
    """False: a smaller change may exist; the search stopped before it knew."""
