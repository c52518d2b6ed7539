"""What an edit did to a spec, or why it did nothing."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import OptionId
from .spec import Spec


class Refusal(StrEnum):
    """Why an edit was not done."""

    UNKNOWN_OPTION = "unknown option"
    IN_ALREADY = "in already"
    COMES_WITH = "comes with"
    NOT_CHOSEN = "not chosen"
    PLACE_NOT_ALLOWED = "place not allowed"
    TOO_MANY = "too many"
    NOT_AN_ANSWER = "not an answer"
    NOTHING_TO_DO = "nothing to do"
    FROZEN = "frozen"
    """The revision was quoted or signed: what it says stays as it is, and a change makes the next revision."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one edit."""

    spec: Spec
    """Unchanged when refused."""
    brought: tuple[OptionId, ...] = ()
    """Followers that came along."""
    left: tuple[OptionId, ...] = ()
    """What left: the replaced answer of the group, followers of something left out."""
    refused: Refusal | None = None
    refused_by: tuple[OptionId, ...] = ()
    """COMES_WITH: what it comes with."""
