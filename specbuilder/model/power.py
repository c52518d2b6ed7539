"""What is told of the electrics that is no number: charging in the cold, what cannot run together, what protects."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from .ids import OptionId
from .ledger import Outside, Reading
from .span import Span


class ColdCharging(StrEnum):
    """Whether a battery may be charged at the cold of the brief."""

    MAY = "may"
    """Lithium, and it does not get so cold."""
    LEAD = "lead"
    """A lead battery takes charge in frost, slowly."""
    WARMS_FIRST = "warms first"
    """Lithium in frost that warms itself before it charges."""
    STOPS_ITSELF = "stops itself"
    """Lithium in frost: its own protection refuses the charge until it is warmer."""
    MUST_NOT = "must not"
    """Lithium in frost, and nothing of the build keeps the charge from it."""
    UNKNOWN = "unknown"
    """Kind of battery, cold, or limit is not known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InCold:
    """The chosen battery at the cold of the brief."""

    options: tuple[OptionId, ...]
    charging: ColdCharging
    cold_c: Span
    """Outside at night, degrees C."""
    least_c: float | None
    """Of the cell, below which lithium may not be charged, degrees C."""
    outside: bool
    """It stands outside the warm part of the van, so it gets as cold as the night."""
    assumed: bool
    """The cold is an assumption."""


class Feed(StrEnum):
    """What gives the mains things their watts, and is the first to be asked too much."""

    INVERTER = "inverter"
    BATTERY = "battery"
    """The inverter could, but the battery behind it switches itself off before."""
    PITCH = "pitch"


@dataclass(frozen=True, slots=True, kw_only=True)
class TooMuch:
    """A smallest set of things that ask for more than there is: without any one of them the rest can run."""

    options: tuple[tuple[OptionId, int], ...]
    """Each with how many of it, strongest first. One thing alone is too strong by itself."""
    watts_w: float
    over_w: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """What of the chosen things on mains cannot run at the same moment."""

    feed: Feed
    limit_w: Span | None
    """None: nobody can tell. While the pitch is open, the sets are those of the weakest."""
    sets: tuple[TooMuch, ...] = ()
    """Fewest things first; empty where all of it can run at once."""
    assumed: bool = False
    """The limit rests on an assumption."""
    unsure: tuple[OptionId, ...] = ()
    """The customer's own things whose plate nobody has read: they count as the catalogue has them."""
    outside: Outside | None = None
    """Set when nobody can tell because a number of the data is absurd or missing."""


def _no_seasons() -> Mapping[str, tuple[Reading, Reading]]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class PowerNotes:
    """What is told beside one ledger of the electrics; empty where it does not belong to that ledger."""

    seasons: Mapping[str, tuple[Reading, Reading]] = field(default_factory=_no_seasons)
    """The energy of a day and the nights on the battery, as they would be in each season, lightest first."""
    months: tuple[Span, ...] = ()
    """What the sun of a day brings from January to December, Wh."""
    in_cold: InCold | None = None
    together: Together | None = None
