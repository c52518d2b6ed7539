"""Two stands laid side by side: what differs, line by line. Words for it are made in ``wording``."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from types import MappingProxyType
from typing import TypeAlias

from .brief import Answer
from .circuits import CircuitLine
from .findings import Finding
from .holes import HoleLine
from .ids import BriefKey, GroupId, LedgerId, OptionId
from .report import Pence
from .span import Span
from .spec import Choice
from .ways import Difference


class ChangeKind(StrEnum):
    """How a line differs from one side to the other; where several are true, the first of them."""

    ADDED = "added"
    REMOVED = "removed"
    REPLACED = "replaced"
    """Another answer of the same pick-one question."""
    GONE = "gone from the catalogue"
    BACK = "in the catalogue again"
    """GONE from the other side."""
    MOVED = "moved"
    RESIZED = "resized"
    """Other count, owner or sheet of the customer's part; of a hole or a circuit other sizes."""
    NOTED = "other note"
    """The note for the workshop."""
    RENAMED = "renamed"
    REPRICED = "other price"
    """The same choice under another catalogue, or the base van when it comes into the price or leaves it."""
    REWEIGHED = "other weight"
    """The same choice under another catalogue, or the base van as it was weighed."""
    RETIMED = "other hours or weeks"
    """The same choice under another catalogue."""

    @property
    def turned(self) -> ChangeKind:
        """The same from the other side."""
        return _TURNED.get(self, self)


_TURNED = MappingProxyType(
    {
        ChangeKind.ADDED: ChangeKind.REMOVED,
        ChangeKind.REMOVED: ChangeKind.ADDED,
        ChangeKind.GONE: ChangeKind.BACK,
        ChangeKind.BACK: ChangeKind.GONE,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One line: what stands on the one side and on the other."""

    kind: ChangeKind
    group: GroupId | None
    """None when the option has left both catalogues."""
    before: Choice | None
    after: Choice | None
    name_before: str
    """As its own catalogue calls it, else the other one; empty where nothing stands."""
    name_after: str
    difference: Difference
    """What this line alone does; of ``weeks`` what its own part waits."""

    @property
    def option(self) -> OptionId:
        """The option it is about; of a replacement the new one."""
        choice = self.after or self.before
        assert choice is not None, "a change has at least one side"
        return choice.option

    @property
    def turned(self) -> Change:
        """The same from the other side."""
        return replace(
            self,
            kind=self.kind.turned,
            before=self.after,
            after=self.before,
            name_before=self.name_after,
            name_after=self.name_before,
            difference=_less(_NOTHING, self.difference),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerChange:
    """A line of the brief with another answer; None: not known."""

    key: BriefKey
    before: Answer | None
    after: Answer | None

    @property
    def turned(self) -> AnswerChange:
        """The same from the other side."""
        return replace(self, before=self.after, after=self.before)


@dataclass(frozen=True, slots=True, kw_only=True)
class VanDataChange:
    """Something the real van can tell that reads otherwise; None or empty: not known."""

    field: str
    """Of ``VanData``."""
    before: str | int | float | None
    after: str | int | float | None

    @property
    def turned(self) -> VanDataChange:
        """The same from the other side."""
        return replace(self, before=self.after, after=self.before)


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureChange:
    """A ledger or figure that comes to something else, or has another bound; None: cannot be told, or nothing there."""

    ledger: LedgerId
    before: Span | None
    after: Span | None
    bound_before: Span | None = None
    bound_after: Span | None = None

    @property
    def turned(self) -> FigureChange:
        """The same from the other side."""
        return replace(
            self,
            before=self.after,
            after=self.before,
            bound_before=self.bound_after,
            bound_after=self.bound_before,
        )


class PieceKind(StrEnum):
    HOLE = "hole"
    CIRCUIT = "circuit"


Piece: TypeAlias = HoleLine | CircuitLine
"""A line of a schedule of the workshop."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceChange:
    """A hole or a circuit that came, went, moved or is sized otherwise: its lines of the schedules."""

    kind: PieceKind
    change: ChangeKind
    id: str
    """As the catalogue has it."""
    before: Piece | None
    after: Piece | None

    @property
    def turned(self) -> PieceChange:
        """The same from the other side."""
        return replace(self, change=self.change.turned, before=self.after, after=self.before)


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
    """Broken before and not after: it may hold now, or not be told any more."""
    gross_before: Pence
    gross_after: Pence
    difference: Difference
    """Of the whole."""
    same: int
    """Choices that stand alike on both sides."""
    van_data: tuple[VanDataChange, ...] = ()
    doubts_came: tuple[Finding, ...] = ()
    """Findings that cannot be told after and could before."""
    doubts_went: tuple[Finding, ...] = ()

    @property
    def empty(self) -> bool:
        """True when nothing that was said or follows differs."""
        said = self.changes or self.answers or self.van_data
        follows = self.figures or self.pieces or self.came or self.went or self.doubts_came or self.doubts_went
        return not (said or follows or self.gross_before != self.gross_after)

    @property
    def rest(self) -> Difference:
        """What of the whole no line does alone: who travels, a fill that is capped, what is undecided, undone work.

        Of weeks nothing: waits do not add up, the longest counts.
        """
        lines = [change.difference for change in self.changes]
        return Difference(
            gross_pence=self.difference.gross_pence - sum(line.gross_pence for line in lines),
            mass_kg=round(self.difference.mass_kg - sum(line.mass_kg for line in lines), 2),
            hours=round(self.difference.hours - sum(line.hours for line in lines), 2),
            weeks=0,
        )

    @property
    def turned(self) -> Comparison:
        """The same from the other side: what ``compare`` says of the two stands exchanged."""
        return Comparison(
            changes=tuple(change.turned for change in self.changes),
            answers=tuple(change.turned for change in self.answers),
            van_data=tuple(change.turned for change in self.van_data),
            figures=tuple(change.turned for change in self.figures),
            pieces=tuple(change.turned for change in self.pieces),
            came=self.went,
            went=self.came,
            doubts_came=self.doubts_went,
            doubts_went=self.doubts_came,
            gross_before=self.gross_after,
            gross_after=self.gross_before,
            difference=_less(_NOTHING, self.difference),
            same=self.same,
        )


_NOTHING = Difference(gross_pence=0, mass_kg=0, hours=0, weeks=0)


def _less(one: Difference, other: Difference) -> Difference:
    return Difference(
        gross_pence=one.gross_pence - other.gross_pence,
        mass_kg=one.mass_kg - other.mass_kg,
        hours=one.hours - other.hours,
        weeks=one.weeks - other.weeks,
    )
