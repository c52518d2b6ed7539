"""Everything a user can do to a spec. One class a user action; ``session/apply.py`` has one arm for each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from .brief import Answer
from .ids import BriefKey, OptionId, RuleId
from .kinds import Owner, Place, Step
from .record import Record
from .spec import OpenQuestion, OwnPart, VanData


@dataclass(frozen=True, slots=True, kw_only=True)
class Take:
    """Take an option; in a pick-one group it replaces the answer there. ``place`` None: the first not blocked."""

    option: OptionId
    place: Place | None = None
    count: int | None = None
    at: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveOut:
    """Leave an option out, at one place or (None) everywhere, with all that came along with it."""

    option: OptionId
    place: Place | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SetCount:
    """How many of a choice; 0 leaves it out."""

    option: OptionId
    count: int
    place: Place | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """Move a choice to another place."""

    option: OptionId
    to: Place
    place: Place | None = None
    """Where it sits; None when there is only one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetOwner:
    """Whose part a choice is; ``own_part`` is the sheet of a customer's part."""

    option: OptionId
    owner: Owner
    own_part: OwnPart | None = None
    place: Place | None = None
    """None: of every choice of this option."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetNote:
    """A note on a choice, printed for the workshop."""

    option: OptionId
    note: str
    place: Place | None = None
    """None: on every choice of this option."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerLine:
    """Answer a key of the brief or of the job state; None makes it *not known yet* again."""

    key: BriefKey
    value: Answer | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NameCustomer:
    """The customer's name and contact."""

    name: str
    contact: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FillVanData:
    """Replace the data of the real vehicle."""

    van_data: VanData


@dataclass(frozen=True, slots=True, kw_only=True)
class Accept:
    """Accept a SIGN finding or NOTE in writing."""

    rule: RuleId
    words: str
    by: str
    at: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Withdraw:
    """Take an acceptance back."""

    rule: RuleId


@dataclass(frozen=True, slots=True, kw_only=True)
class PutQuestion:
    """Add an open question, or replace the one with the same text."""

    question: OpenQuestion


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseQuestion:
    """Remove an open question: it has been answered."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WriteNote:
    """The private note of the job."""

    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GiveReason:
    """Why there is this revision."""

    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Write:
    """Write down what happened: it stays, and undo does not reach behind it."""

    record: Record


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeUsual:
    """The house usual for every undecided group of a step, never over a choice."""

    step: Step
    at: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Several edits as one step of undo."""

    edits: tuple[Edit, ...]


Edit: TypeAlias = (
    Take
    | LeaveOut
    | SetCount
    | Move
    | SetOwner
    | SetNote
    | AnswerLine
    | NameCustomer
    | FillVanData
    | Accept
    | Withdraw
    | PutQuestion
    | CloseQuestion
    | WriteNote
    | Write
    | GiveReason
    | TakeUsual
    | Together
)
