"""Ledgers and figures: what the catalogue says of them, and what was computed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from .ids import BriefKey, GroupId, LedgerId, OptionId
from .kinds import Confidence, LedgerKind, Level, Sense, Verdict
from .origin import NOWHERE, Origin
from .span import Span


def _no_settings() -> Mapping[str, float]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class LedgerSpec:
    """One table of ``rules/ledgers.toml``. The formula itself is code in ``calc/``."""

    id: LedgerId
    kind: LedgerKind
    name: str
    short: str
    """At most 12 characters, for the bars."""
    unit: str
    """kg, mm, pence, places, ...: the unit of value and bound."""
    draws: str = ""
    supplies: str = ""
    formula: str
    bound: str
    sense: Sense
    level: Level
    source: str
    settings: Mapping[str, float] = field(default_factory=_no_settings)
    """House settings by name, unit in the name (``spare_mm = 30``)."""
    settings_as: tuple[LedgerId, ...] = ()
    """Ledgers whose settings hold here too; its own go before them."""
    estimate: bool = True
    """The result rests on an estimate and says so wherever it is shown."""
    confidence: Confidence = Confidence.ESTIMATE
    """How sure the formula and its figures are."""
    below_nought: str = ""
    """Words for a minus where the figure is only shown: ``too much, over by``; empty: the minus itself is read."""
    part_of: LedgerId | None = None
    """It stands in the detail of that ledger only, not among the ledgers."""
    origin: Origin = NOWHERE


@dataclass(frozen=True, slots=True)
class Lack:
    """What must be answered before a value settles: a group, a key of the brief, or the base van's own data."""

    group: GroupId | None = None
    key: BriefKey | None = None


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a ledger: who draws or supplies how much (in the ledger's unit, + adds to the value)."""

    label: str
    """Plain name where there is no option: ``van with driver``, ``people``."""
    amount: Span
    option: OptionId | None = None
    group: GroupId | None = None
    """Set for the still undecided: the whole group is one entry with its range."""
    count: int = 1
    assumed: bool = False
    """Rests on an assumed answer of the brief."""


@dataclass(frozen=True, slots=True)
class Outside:
    """A number of the data for which an equation says nothing."""

    quantity: str
    """What it is, with its unit: ``wheelbase mm``."""
    value: float
    needs: str
    """What it would have to be: ``above 0``."""
    option: OptionId | None = None
    """Whose number it is, where that is one thing."""
    sheet: bool = False
    """It is to stand on the customer's sheet of that thing, not in the catalogue."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One ledger or figure, computed for one spec."""

    id: LedgerId
    value: Span | None
    """None: nothing can be said yet (see ``lacks``)."""
    bound: Span | None
    """None: nothing bounds it (shown only, or its bound was not named)."""
    verdict: Verdict
    """Against the plain bound; rules may add stricter ones."""
    lacks: tuple[Lack, ...] = ()
    entries: tuple[Entry, ...] = ()
    """Largest first. Empty where the figure is no sum."""
    applies: bool = True
    """False: there is nothing here for it to measure (no bench, no gap); it breaks nothing."""
    assumed: tuple[BriefKey, ...] = ()
    """Assumed answers it rests on."""
    bound_by: tuple[OptionId, ...] = ()
    """Choices that set or move the bound (a roof kit, a battery's place)."""
    sense: Sense = Sense.SHOWN
    outside: Outside | None = None
    """Set when nothing can be said because a number of the data is absurd or missing."""

    @property
    def room(self) -> Span | None:
        """What is left to the bound (negative: over); None while either is unknown. Unit of the ledger."""
        if self.value is None or self.bound is None:
            return None
        return self.value - self.bound if self.sense is Sense.AT_LEAST else self.bound - self.value
