"""What can be built: everything read from ``rules/``, as frozen values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from .brief import BriefLine, Question
from .ids import BASE_VAN_GROUP, BriefKey, CautionId, GroupId, LedgerId, OptionId, PaperId, RuleId, Tag, Zone
from .kinds import Basis, CollectionSubject, Confidence, Pick, Place, Step, Weekday
from .ledger import LedgerSpec
from .origin import NOWHERE, Origin
from .parts import NO_HEAT, NO_POWER, NO_SPACE, NO_WATER, Circuit, Heat, Hole, Need, Position, Power, Space, Water
from .rules import Rule
from .vans import Van


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """An answer of a group."""

    id: OptionId
    group: GroupId
    name: str
    description: str = ""
    price_net_pence: int = 0
    """Fitted price without tax."""
    labour_h: float = 0
    lead_weeks: float = 0
    mass_kg: float = 0
    position: Position | None = None
    door_position: Position | None = None
    """Its place on a side with a sliding door, where that is another one."""
    exhaust_outlet: Position | None = None
    """End of its exhaust for the usual side. Set, ``places`` say where the exhaust ends, and the part itself stays."""
    exhaust_outlet_rear: Position | None = None
    """The same for the rear, as written."""
    body_stays: bool = False
    """It keeps the written y although others of its group turn with something."""
    sits_at: GroupId | None = None
    """As ``sits_at`` of a group, for this option alone."""
    measure: str = ""
    """How its place is found on the van; set, ``position`` is good for weights and not to build by."""
    drawn_for: tuple[OptionId, ...] = ()
    """Its place holds only beside one of these and is measured on the van beside others; empty: always."""
    build_step: str = ""
    """B0 to B11."""
    places: tuple[Place, ...] = ()
    """Places it may take, the usual one first; empty: it has no side."""
    fits_vans: tuple[OptionId, ...] = ()
    """Empty: all."""
    max_count: int = 1
    gives: tuple[Tag, ...] = ()
    """A tag ending ``@side`` also gives the bare tag."""
    needs: tuple[Need, ...] = ()
    needs_because: str = ""
    zones: tuple[Zone, ...] = ()
    """``@side`` stands for the chosen place."""
    frees_zones: tuple[Zone, ...] = ()
    papers: tuple[PaperId, ...] = ()
    hold_points: tuple[str, ...] = ()
    cautions: tuple[CautionId, ...] = ()
    basis: Basis = Basis.ESTIMATE
    source: str = ""
    zero_note: str = ""
    """Why mass or price is nought; never by accident."""
    is_none: bool = False
    """This answer means *none of these* and takes nothing."""
    refused: bool = False
    """Kept only so that it can be refused with a reason: no build without a STOP holds it."""
    safety: bool = False
    """Part of a safety bundle: never offered as a saving."""
    carried: bool = False
    """The customer's own thing, brought along on the day: nobody orders it or waits for it."""
    found: bool = False
    """So on the real van or with its owner: no proposal changes it."""
    colour: str = ""
    """Shown colour or finish, where the option is a colour choice."""
    handover: tuple[str, ...] = ()
    """What is said about it on collection day."""
    space: Space = NO_SPACE
    power: Power = NO_POWER
    heat: Heat = NO_HEAT
    water: Water = NO_WATER
    circuits: tuple[Circuit, ...] = ()
    holes: tuple[Hole, ...] = ()
    van: Van | None = None
    """Set for the options of group base-van only."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A question inside a step."""

    id: GroupId
    step: Step
    name: str
    """One or two words for the row, e.g. ``Galley``."""
    question: str
    pick: Pick
    none_is_an_answer: bool
    max_choices: int = 1
    compulsory_before_signing: bool = False
    usual: tuple[OptionId, ...] = ()
    """House usual: pick one takes the first that is not blocked; pick any takes all that are not."""
    seller_note: str = ""
    turns_with: GroupId | None = None
    """Drawn for a choice of that group on the right: while it sits on the left, y of these options changes sign."""
    sits_at: GroupId | None = None
    """These options sit where the choice of that group does, whatever position they have of their own."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    id: CautionId
    text: str
    shown_where: str
    who_must_do_or_sign: str
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A paper that others sign."""

    id: PaperId
    name: str
    signed_by: str
    at_hold_point: str
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class PassFigure:
    """What must be read at a hold point before anybody signs it; figures of the part and of the code go first."""

    what: str
    must_be: str
    only_with: tuple[Tag, ...] = ()
    """Read only beside a choice or a van that gives one of these; empty: always."""

    @property
    def words(self) -> str:
        """``Gas, 5 minutes of watching: drop at most 10 mbar``."""
        return f"{self.what}: {self.must_be}"


@dataclass(frozen=True, slots=True, kw_only=True)
class CollectionNote:
    """A sentence for the day of collection that belongs to no single part."""

    id: str
    about: CollectionSubject
    text: str
    only_with: tuple[Tag, ...] = ()
    """Said only beside a choice or a van that gives one of these; empty: always."""
    unless_given: tuple[Tag, ...] = ()
    """Not said beside a choice or a van that gives one of these."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkStep:
    """One step of the build with its hold point."""

    id: str
    work: str
    hours_fixed: float
    hours_per_circuit: float
    hours_basis: str
    predecessors: tuple[str, ...]
    hold_point: str
    hold_text: str
    freezes: tuple[str, ...]
    pass_figures: tuple[PassFigure, ...] = ()
    """Of the hold point; ``workshop.passing`` tells which of them a build has."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of an engineering table; a row outside least..most is a slip of the pen."""

    key: str
    least: float | None = None
    most: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """An engineering table with its source. Rows hold text or numbers, in the order of the columns."""

    id: str
    name: str
    source: str
    confidence: Confidence
    columns: tuple[Column, ...]
    rows: tuple[tuple[str | float, ...], ...]
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Firm:
    """The house that builds. Money in whole pence."""

    name: str
    town: str
    currency: str
    vat_percent: float
    deposit_percent: float
    quote_valid_days: int
    undo_rate_net_pence_per_h: int
    """Only for undoing work already done: prices of parts are fitted prices."""
    catalogue_version: str
    address: str = ""
    ask_for: str = ""
    """Whom the customer asks for, and where: role, telephone, mail."""
    vat_number: str = ""
    undo_h_per_hole: float = 1
    """Hours for blanking one hole that is cut already (ESTIMATE)."""
    work_days: tuple[Weekday, ...] = (Weekday.MON, Weekday.TUE, Weekday.WED, Weekday.THU, Weekday.FRI)
    hours_per_day: float = 7.5
    """Hours of work on one van a day."""
    drawn_inside_height_mm: float | None = None
    drawn_inside_width_mm: float | None = None
    """Of the van for which the catalogue draws places at roof and walls; None: for any."""
    not_included: tuple[str, ...] = ()
    """What the customer might think is in the price and is not."""
    terms: tuple[str, ...] = ()
    """Sentences of the firm's terms, for its papers."""
    cancelling: str = ""
    """The firm's own words on deposit and cancelling, confirmed by its adviser; empty: the slot says so."""
    paper_foot: str = ""
    """One line at the foot of every paper."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Catalogue:
    """Everything of ``rules/``. Mappings keep file order, which is the order on screen. Equality is identity."""

    firm: Firm
    questions: Mapping[int, Question]
    brief: Mapping[BriefKey, BriefLine]
    """Lines of the brief and of the job state (those have no question)."""
    groups: Mapping[GroupId, Group]
    options: Mapping[OptionId, Option]
    """All options, the base vans among them (group base-van)."""
    rules: Mapping[RuleId, Rule]
    ledgers: Mapping[LedgerId, LedgerSpec]
    work: Mapping[str, WorkStep]
    cautions: Mapping[CautionId, Caution]
    papers: Mapping[PaperId, Paper]
    tables: Mapping[str, Table]
    digest: str
    """Hash over all files, so that a spec can say what it was computed with."""
    collection: Mapping[str, CollectionNote] = field(default_factory=dict)
    """What is said on the day of collection beside the parts' own sentences."""

    def options_of(self, group: GroupId) -> tuple[Option, ...]:
        """The group's options in file order."""
        return tuple(o for o in self.options.values() if o.group == group)

    def groups_of(self, step: Step) -> tuple[Group, ...]:
        """The step's groups in file order."""
        return tuple(g for g in self.groups.values() if g.step is step)

    @property
    def vans(self) -> tuple[Option, ...]:
        """The base vans."""
        return self.options_of(BASE_VAN_GROUP)
