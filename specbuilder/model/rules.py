"""Rules as values: atoms, either-or lists of and-lists, and the rule record itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from .ids import BriefKey, GroupId, LedgerId, OptionId, RuleId, Tag, Zone
from .kinds import Compare, Confidence, Level, RuleKind, Step
from .origin import NOWHERE, Origin

SAME = "same"
"""Written ``#tag@same``: the same place for every ``@same`` of one rule."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """``option-id``: this option is among the choices."""

    option: OptionId


@dataclass(frozen=True, slots=True)
class Given:
    """``#tag`` or ``#tag@left``: a choice or the van gives this capability; ``place`` is a side or ``same``."""

    tag: Tag
    place: str | None = None


@dataclass(frozen=True, slots=True)
class GroupAnswered:
    """``group:ID``: something of this group is chosen."""

    group: GroupId


@dataclass(frozen=True, slots=True)
class BriefIs:
    """``brief.KEY=V`` or ``job.KEY=V``: the answer compares so.

    On a list, ``=`` means that it holds V and ``!=`` that it holds something else.
    """

    key: BriefKey
    compare: Compare
    value: str | float


@dataclass(frozen=True, slots=True)
class MarginBelow:
    """``margin(LEDGER)<N``: less than N is left to the bound."""

    ledger: LedgerId
    amount: float


@dataclass(frozen=True, slots=True)
class FigureAbove:
    """``figure(ID)>N``: the computed value is above N."""

    ledger: LedgerId
    amount: float


@dataclass(frozen=True, slots=True)
class Always:
    """``always``: true of every spec."""


@dataclass(frozen=True, slots=True)
class FitsVan:
    """``fits-van``: every choice lists this base van."""


@dataclass(frozen=True, slots=True)
class NeedsMet:
    """``needs-met``: every choice has what its own table says it needs."""


@dataclass(frozen=True, slots=True)
class PlacesLegal:
    """``places-legal``: every choice sits where its table allows."""


@dataclass(frozen=True, slots=True)
class WithinBound:
    """``LEDGER <= bound`` and its relatives: value against ``factor * bound - minus``.

    ``within`` says which sign stood there: ``<=`` (True) or ``>=`` (False).
    """

    ledger: LedgerId
    within: bool = True
    factor: float = 1.0
    minus: float = 0.0


@dataclass(frozen=True, slots=True)
class ZonesFree:
    """``zone-use(a,b) <= bound``: no named zone is claimed more than once."""

    zones: tuple[Zone, ...]


@dataclass(frozen=True, slots=True)
class Not:
    """``!atom``."""

    atom: Atom


Atom: TypeAlias = (
    Chosen
    | Given
    | GroupAnswered
    | BriefIs
    | MarginBelow
    | FigureAbove
    | Always
    | FitsVan
    | NeedsMet
    | PlacesLegal
    | WithinBound
    | ZonesFree
    | Not
)


@dataclass(frozen=True, slots=True)
class AllOf:
    """``a + b``: all of them. Empty: true."""

    atoms: tuple[Atom, ...]


@dataclass(frozen=True, slots=True)
class AnyOf:
    """``x | y``: at least one of them. Empty: false."""

    terms: tuple[AllOf, ...]


ALWAYS = AnyOf((AllOf((Always(),)),))
NEVER = AnyOf(())


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One table of ``rules/constraints/``."""

    id: RuleId
    step: Step
    kind: RuleKind
    level: Level
    when: AnyOf
    then: AnyOf = NEVER
    """Left out for advice only: shown while ``when`` holds."""
    because: str
    """The sentence the customer hears."""
    fixes: tuple[str, ...]
    """What the seller offers, in words."""
    source: str
    confidence: Confidence
    refused: bool = False
    """Kept so that a wish can be refused with its reason."""
    origin: Origin = NOWHERE
