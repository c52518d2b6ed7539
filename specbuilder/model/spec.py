"""The spec: what was said about one job, at one revision. Nothing in it is computed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from .brief import Answers
from .ids import OptionId, RuleId
from .kinds import JobState, Owner, Place
from .record import Record, RecordKind, Undone


@dataclass(frozen=True, slots=True, kw_only=True)
class Customer:
    """Who the job is for. Private: never on a paper for anybody else."""

    name: str = ""
    """Empty while nobody has given it."""
    contact: str = ""
    """Telephone, mail or address, as given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VanData:
    """What only the real vehicle can tell; None or empty while not known."""

    registration: str = ""
    vin_tail: str = ""
    """Last six characters of the chassis number."""
    year: int | None = None
    paint_code: str = ""
    mileage_km: int | None = None
    damage: str = ""
    """Existing damage, in words."""
    weighed_front_kg: float | None = None
    weighed_rear_kg: float | None = None

    @property
    def complete(self) -> bool:
        """True when the fields compulsory before signing are known (the body's own data come with the base van)."""
        return bool(self.vin_tail) and self.year is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPart:
    """Sheet of a part the customer brings; None and empty are open questions."""

    mass_kg: float | None = None
    watts_w: float | None = None
    cut_out_mm: str = ""
    """Width by height of its hole, as written on the part's paper; of what has none its size."""
    arrives: str = ""
    """Date, as YYYY-MM-DD."""
    door_mm: float | None = None
    """How long the door of a fridge is that swings out; nought: a drawer or a lid."""
    day_wh: float | None = None
    """What a fridge takes in a day at 25 degrees, where its paper says so."""
    continuous_a: float | None = None
    """What a battery gives for good."""
    capacity_ah: float | None = None
    """Of a battery, as its label says."""
    chemistry: str = ""
    """Kind of a battery, as the tables of batteries name it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """An option taken into the spec. One option may stand twice, at two places."""

    option: OptionId
    count: int = 1
    place: Place | None = None
    owner: Owner = Owner.HOUSE
    own_part: OwnPart | None = None
    note: str = ""
    came_with: tuple[OptionId, ...] = ()
    """Set when it was not asked for but follows from these choices; it leaves with them."""
    at: str = ""
    """When it was taken, ``YYYY-MM-DD HH:MM``; empty when not known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Acceptance:
    """A SIGN finding or a NOTE, accepted in writing in the words used."""

    rule: RuleId
    words: str
    by: str
    at: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenQuestion:
    """Something nobody knows yet: who finds it out, by when, and what it stops."""

    text: str
    owner: str = ""
    due: str = ""
    """Date, as YYYY-MM-DD."""
    stops: str = ""
    """Build step or signing, e.g. ``B4``."""
    part: str = ""
    """Of a blank on a customer's sheet: option and line, ``fridge-own mass_kg``. It closes with the blank."""

    @property
    def owned(self) -> bool:
        """True when a person and a date are named."""
        return bool(self.owner) and bool(self.due)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spec:
    """Brief, base van, choices, accepted cautions and open questions of one job, at one revision."""

    number: str = ""
    """Job number, four digits; empty until its first answer."""
    revision: int = 1
    replaces: int | None = None
    state: JobState = JobState.DRAFT
    customer: Customer = Customer()
    answers: Answers = field(default_factory=Answers)
    """Keys of the brief and of the job state."""
    van_data: VanData = VanData()
    choices: tuple[Choice, ...] = ()
    """In the order they were taken."""
    accepted: tuple[Acceptance, ...] = ()
    questions: tuple[OpenQuestion, ...] = ()
    note: str = ""
    """Private to the house: on no paper and no customer view."""
    records: tuple[Record, ...] = ()
    """What happened to the job, of all its revisions, in the order it was written down."""
    reason: str = ""
    """Why there is this revision, in the customer's or the firm's words; printed on a change order."""
    undone: tuple[Undone, ...] = ()
    """Work that signed changes made useless; it is in the price."""

    def recorded(self, *kinds: RecordKind) -> tuple[Record, ...]:
        """The records of these kinds, oldest first."""
        return tuple(record for record in self.records if record.kind in kinds)

    @property
    def changes_signed(self) -> bool:
        """True when an earlier revision was signed, so that only a change order brings this one."""
        return any(record.revision < self.revision for record in self.recorded(RecordKind.SIGNED))

    @property
    def valid_until(self) -> str:
        """The last day of this revision's quote, as YYYY-MM-DD; empty when it was not quoted."""
        quotes = [record for record in self.recorded(RecordKind.QUOTED) if record.revision == self.revision]
        return quotes[-1].due if quotes else ""

    @property
    def signed_on(self) -> str:
        """The day on which this revision was signed, as YYYY-MM-DD; empty while it is not."""
        signed = [record for record in self.recorded(RecordKind.SIGNED) if record.revision == self.revision]
        return signed[-1].day if signed else ""

    def chosen(self, option: OptionId) -> tuple[Choice, ...]:
        """Every choice of this option (one for each place)."""
        return tuple(c for c in self.choices if c.option == option)

    def has(self, option: OptionId) -> bool:
        """True when this option is among the choices."""
        return any(c.option == option for c in self.choices)

    def keeps(self, choice: Choice) -> bool:
        """True when a choice of another spec stands in this one as it was: in its place, as many of it."""
        return any(c.place is choice.place and c.count == choice.count for c in self.chosen(choice.option))

    def with_choices(self, choices: Iterator[Choice] | tuple[Choice, ...]) -> Spec:
        """A copy with these choices."""
        return replace(self, choices=tuple(choices))
