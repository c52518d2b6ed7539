"""What a line on a screen stands for. An item is a value: the cursor finds its row again after everything moved."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Place, Step
from specbuilder.model.life import Hindrance


@dataclass(frozen=True, slots=True)
class OnOption:
    """A row of the walk."""

    option: OptionId


@dataclass(frozen=True, slots=True)
class OnGroup:
    """The head of a group, or the brief's line that a group answers."""

    group: GroupId


@dataclass(frozen=True, slots=True)
class OnAnswer:
    """A line of the brief or of the job state."""

    key: BriefKey


@dataclass(frozen=True, slots=True)
class OnAssumed:
    """The row that tells the assumed answers of a question of the brief."""

    question: int


@dataclass(frozen=True, slots=True)
class OnDigit:
    """A numbered answer: a click on it is its digit."""

    digit: int


@dataclass(frozen=True, slots=True)
class OnSign:
    """A sign of the pad: a click on it types it. A name of several letters is a key that types nothing."""

    sign: str


class Field(StrEnum):
    """A text that is typed and is no line of the brief."""

    NAME = "name"
    CONTACT = "contact"
    JOB_NOTE = "job-note"
    REGISTRATION = "registration"
    VIN_TAIL = "vin-tail"
    YEAR = "year"
    PAINT = "paint-code"
    MILEAGE = "mileage"
    DAMAGE = "damage"
    WEIGHED_FRONT = "weighed-front"
    WEIGHED_REAR = "weighed-rear"
    CHOICE_NOTE = "choice-note"
    PART_MASS = "part-mass"
    PART_WATTS = "part-watts"
    PART_CUT_OUT = "part-cut-out"
    PART_ARRIVES = "part-arrives"
    PART_DOOR = "part-door"
    PART_DAY = "part-day"
    PART_AMPS = "part-amps"
    PART_CAPACITY = "part-capacity"
    PART_KIND = "part-kind"
    WHO = "who"
    DUE = "due"
    STOPS = "stops"
    BY = "by"
    QUOTES = "quotes"
    CUSTOMER_SIGNS = "customer-signs"
    FIRM_SIGNS = "firm-signs"
    SIGN_PLACE = "sign-place"
    DONE_BY = "done-by"
    SAID_BY = "said-by"
    TAKEN_BY = "taken-by"
    CALLS = "calls"
    SUPPLY = "supply"
    REASON = "reason"
    READING = "reading"
    REMARKS = "remarks"
    AMOUNT = "amount"
    EXPECTED = "expected"
    PROMISE = "promise"
    CALL_ABOUT = "call-about"
    CALL_DUE = "call-due"


NUMBERS = frozenset(
    {
        Field.YEAR,
        Field.MILEAGE,
        Field.WEIGHED_FRONT,
        Field.WEIGHED_REAR,
        Field.PART_MASS,
        Field.PART_WATTS,
        Field.PART_DOOR,
        Field.PART_DAY,
        Field.PART_AMPS,
        Field.PART_CAPACITY,
        Field.PART_KIND,
        Field.AMOUNT,
    }
)
"""Fields that hold a number."""
DATES = frozenset({Field.DUE, Field.PART_ARRIVES, Field.EXPECTED, Field.CALL_DUE})
"""Fields that hold a date."""


@dataclass(frozen=True, slots=True)
class OnField:
    """A field to type into; ``about`` says of which choice or question, where there are several."""

    field: Field
    about: str = ""


@dataclass(frozen=True, slots=True)
class OnFinding:
    """What a rule says."""

    rule: RuleId


@dataclass(frozen=True, slots=True)
class OnReading:
    """A ledger or a figure."""

    ledger: LedgerId


@dataclass(frozen=True, slots=True)
class OnCircuit:
    """A cable run, by its mark."""

    label: str


@dataclass(frozen=True, slots=True)
class OnQuestion:
    """An open question of the spec."""

    text: str


@dataclass(frozen=True, slots=True)
class OnPlace:
    """A place a choice may take."""

    option: OptionId
    place: Place


@dataclass(frozen=True, slots=True)
class OnStep:
    """A stop of the walk."""

    step: Step


@dataclass(frozen=True, slots=True)
class OnJob:
    """A job of the list, by its file's name."""

    name: str


@dataclass(frozen=True, slots=True)
class OnWord:
    """A line of the Actions list, or any other numbered line, by its name."""

    name: str


@dataclass(frozen=True, slots=True)
class OnWay:
    """A way out by its number, or the place where the next one will stand."""

    number: int


@dataclass(frozen=True, slots=True)
class OnHindrance:
    """Something in the way of a step of the job."""

    hindrance: Hindrance


@dataclass(frozen=True, slots=True)
class OnText:
    """A line to read; the cursor may stand there so that everything can be scrolled to."""

    number: int


Item: TypeAlias = (
    OnOption
    | OnGroup
    | OnAnswer
    | OnAssumed
    | OnDigit
    | OnSign
    | OnField
    | OnFinding
    | OnReading
    | OnCircuit
    | OnQuestion
    | OnPlace
    | OnStep
    | OnJob
    | OnWord
    | OnWay
    | OnHindrance
    | OnText
)


def row_of(item: Item | None) -> str:
    """The name a place of the cursor is kept under; empty where it is not kept."""
    match item:
        case OnOption(name) | OnGroup(name) | OnAnswer(name):
            return name
        case OnField(field=field, about=""):
            return field.value
        case OnQuestion() | OnFinding() | _:
            return ""
