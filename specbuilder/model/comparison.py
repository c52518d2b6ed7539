"""Two stands laid side by side: what differs, line by line. Words for it are made in ``wording``."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .brief import Answer
from .findings import Finding
from .ids import BriefKey, GroupId, LedgerId, OptionId
from .report import Pence
from .span import Span
from .spec import Choice
from .ways import Difference


class ChangeKind(StrEnum):
    """How a line differs from one side to the other."""

    ADDED = "added"
    REMOVED = "removed"
    REPLACED = "replaced"
    """Another answer of the same pick-one question."""
    MOVED = "moved"
    RESIZED = "resized"
    """Other count, owner or sheet of the customer's part."""
    GONE = "gone from the catalogue"
    RENAMED = "renamed"
    REPRICED = "other price"
    REWEIGHED = "other weight"
    """The same choice under another catalogue."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One line: what stands on the one side and on the other."""

    kind: ChangeKind
    group: GroupId | None
    """None when the option has left both catalogues."""
    before: Choice | None
    after: Choice | None
    name_before: str
    name_after: str
    difference: Difference
    """What this line alone does; of ``weeks`` what its own part waits."""

    @property
    def option(self) -> OptionId:
        """The option it is about; of a replacement the new one."""
        choice = self.after or self.before
        assert choice is not None, "a change has at least one side"
        return choice.option


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerChange:
    """A line of the brief with another answer; None: not known."""

    key: BriefKey
    before: Answer | None
    after: Answer | None


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureChange:
    """A ledger or figure that reads otherwise."""

    ledger: LedgerId
    before: Span | None
    after: Span | None


class PieceKind(StrEnum):
    HOLE = "hole"
    CIRCUIT = "circuit"


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceChange:
    """A hole or a circuit that came, went, moved or was sized otherwise; the texts are of the workshop's schedule."""

    kind: PieceKind
    change: ChangeKind
    id: str
    before: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """All that differs between two stands; what is the same is counted."""

    changes: tuple[Change, ...]
    answers: tuple[AnswerChange, ...]
    figures: tuple[FigureChange, ...]
    pieces: tuple[PieceChange, ...]
    came: tuple[Finding, ...]
    """Findings broken after and not before."""
    went: tuple[Finding, ...]
    gross_before: Pence
    gross_after: Pence
    difference: Difference
    """Of the whole."""
    same: int
    """Choices that stand alike on both sides."""

    @property
    def empty(self) -> bool:
        """True when nothing that was said or follows differs."""
        return not (self.changes or self.answers or self.figures or self.pieces or self.came or self.went)
