"""The life of a job: its steps, and what can stand in the way of one."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import BriefKey, GroupId, OptionId, RuleId


class LifeStep(StrEnum):
    """What can be done to a job as a whole. Each writes a record, and none is undone."""

    QUOTE = "quote"
    ORDER = "order"
    """Both sign; of a revision that replaces a signed one: both sign the change order."""
    PASS = "pass"
    """A hold point of the build."""
    BUILT = "built"
    """Handed over as built."""


class HindranceCode(StrEnum):
    """Why a step cannot be taken now. What is set beside the code is said for each."""

    WRONG_STATE = "wrong-state"
    """Not in this state of the job: text."""
    NAMELESS = "nameless"
    """The customer has no name yet."""
    EMPTY = "empty"
    """Nothing is chosen."""
    STRANGER = "stranger"
    """option: chosen, and not in the catalogue."""
    STOP_BROKEN = "stop-broken"
    """rule."""
    STOP_UNKNOWN = "stop-unknown"
    """rule."""
    NOT_ACCEPTED = "not-accepted"
    """rule: broken at SIGN and not accepted in writing."""
    NOT_CHOSEN = "not-chosen"
    """group: to be answered before signing."""
    NOBODY_ASKED = "nobody-asked"
    """key: not known, and no person and date are named for it."""
    QUESTION_STOPS = "question-stops"
    """text: an open question that stops the signing."""
    QUOTE_RAN_OUT = "quote-ran-out"
    """text: valid until."""
    NOT_CHANGED = "not-changed"
    """A change order without a change."""
    HOLD_OPEN = "hold-open"
    """text: a hold point that must be passed first."""
    HOLD_PASSED = "hold-passed"
    """text: a hold point that is passed already."""
    HOLD_UNKNOWN = "hold-unknown"
    """text: no hold point of this catalogue."""
    EARLIER = "earlier"
    """text: the last record is of a later time than now: the clock of this machine is behind."""
    NO_NAME_SIGNED = "no-name-signed"
    """A signature needs the names of both."""
    NO_PLACE = "no-place"
    """The place of signing is none of premises, home, distance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hindrance:
    """One thing in the way."""

    code: HindranceCode
    rule: RuleId | None = None
    group: GroupId | None = None
    key: BriefKey | None = None
    option: OptionId | None = None
    text: str = ""
