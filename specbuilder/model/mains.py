"""Protection of the 230 V side: what must stand there whoever feeds it, and what of it the choices bring."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .ids import OptionId


class MainsCode(StrEnum):
    """What must stand. ``has`` and ``needs`` of the point are in the unit named here."""

    PLUG_RESIDUAL_CURRENT = "plug-residual-current-switch"
    """A residual-current switch behind the inlet."""
    INVERTER_RESIDUAL_CURRENT = "inverter-residual-current-switch"
    """One behind the inverter: that of the plug does not look there."""
    TWO_POLE_BREAKERS = "two-pole-breakers"
    """A breaker for every circuit: so many have one (``has``) of so many (``needs``)."""
    BONDING = "bonding"
    """A conductor from the earth bar to body and pipes: ``has`` at least ``needs``, mm2."""
    ONE_EARTH_LINK = "one-neutral-earth-link"
    """Neutral and earth are joined once, at the source that feeds: the pitch, since nothing else does."""
    EARTH_LINK_CHANGES = "neutral-earth-link-changes"
    """The same with an inverter, which makes and opens its own link."""
    CHANGEOVER = "changeover"
    """What both sources feed, they feed in turn."""
    SOURCES_APART = "sources-apart"
    """Nothing is fed by both."""
    CHARGER_BEFORE_CHANGEOVER = "charger-before-changeover"
    """The inverter never feeds the charger of its own battery."""


class MainsStand(StrEnum):
    """Whether it does."""

    HOLDS = "holds"
    BY_PAPER = "by the part's paper"
    """No choice settles it: the part's own paper and the electrician do."""
    TO_SETTLE = "to settle"


@dataclass(frozen=True, slots=True, kw_only=True)
class MainsPoint:
    """One of them in one build."""

    code: MainsCode
    stand: MainsStand
    by: tuple[OptionId, ...] = ()
    """The choices that bring it."""
    circuits: tuple[str, ...] = ()
    """Marks of the circuits it is about: those that do it, or those that lack it."""
    has: float | None = None
    needs: float | None = None
