"""Whether a spec is whole, current and unaltered."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class StandingCode(StrEnum):
    """What was found of a spec's file. What ``text`` holds is said for each; faults make it one not to build from."""

    UNREADABLE = "unreadable"
    """text: one fault of the file."""
    NO_CHECKSUM = "no-checksum"
    ALTERED = "altered"
    """The text is not what was written."""
    NOT_WHAT_FOLLOWS = "not-what-follows"
    """What is computed in it does not follow from what was said in it."""
    RULES_GONE = "rules-gone"
    """text: version of the rules it was written with, which are not kept here."""
    NO_JOB = "no-job"
    """text: the folder, which has no such job."""
    NO_REVISION = "no-revision"
    """The job has no such revision."""
    REPLACED = "replaced"
    """revision: the one that has replaced it."""
    TWO_CURRENT = "two-current"
    """revision: another that was signed and does not replace this one, nor the other way round."""
    OTHER_CONTENT = "other-content"
    """The job itself says otherwise in this revision."""
    NOT_SEALED = "not-sealed"
    """text: the act that should have been sealed."""
    SEAL_BROKEN = "seal-broken"
    """text: the folder, whose seal was altered or does not fit."""
    KEPT_ALTERED = "kept-altered"
    """text: a kept file that is not as it was."""
    EXPIRED = "expired"
    """text: last day of the quote."""
    OLDER_LOG = "older-log"
    """number: so many records were written since. No fault: the build is the same."""
    CHANGE_OPEN = "change-open"
    """revision: a change that is drawn up and not signed. No fault: this one is built."""
    DRAFT = "draft"
    """Nothing of it has left the house. No fault."""


NO_FAULTS = frozenset({StandingCode.OLDER_LOG, StandingCode.CHANGE_OPEN, StandingCode.DRAFT})


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingPoint:
    """One thing that was found."""

    code: StandingCode
    text: str = ""
    revision: int = 0
    number: int = 0

    @property
    def fault(self) -> bool:
        """True when nobody should build or sign from this file."""
        return self.code not in NO_FAULTS


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """All that was found of one file."""

    number: str
    revision: int
    state: str
    points: tuple[StandingPoint, ...]

    @property
    def good(self) -> bool:
        """Whole, current and unaltered."""
        return not any(point.fault for point in self.points)
