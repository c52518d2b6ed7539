"""The leisure battery at its place: every way it may turn out, and what it gives."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product
from typing import NamedTuple

from specbuilder.calc.formulas.energy import lead_cold_share, usable_wh
from specbuilder.calc.formulas.validity import missing
from specbuilder.model.catalogue import Option
from specbuilder.model.ledger import Lack

from .energy_day import Use
from .energy_use import WINTER
from .power_parts import LITHIUM, OUTSIDE, is_battery, lacks_energy

SEASON_SETTINGS = (
    "lead_full_c",
    "lead_loss_share_per_c",
    "inside_summer_c",
    "inside_three_season_c",
    "inside_winter_c",
    "lithium_outside_winter_share",
)
"""What :func:`season_share` needs."""
STORE_SETTINGS = ("store_lithium_share", "store_lead_share")
"""What :meth:`Bank.store_share` needs."""


class Bank(NamedTuple):
    """The batteries and where they stand, in one way it may turn out."""

    batteries: tuple[tuple[Option, int], ...]
    """Each with its count."""
    outside: bool
    """They stand outside the warm part of the van."""

    @property
    def lithium(self) -> bool:
        """All of them are lithium."""
        return all(option.power.chemistry in LITHIUM for option, _ in self.batteries)

    @property
    def capacity_ah(self) -> float:
        """The label of all together, Ah."""
        return sum(many * (option.power.battery_ah or 0) for option, many in self.batteries)

    def mean(self, of: Callable[[Option], float]) -> float:
        """A figure of the batteries, each as heavy as its amp-hours."""
        each = ((many * (option.power.battery_ah or 0), of(option)) for option, many in self.batteries)
        return sum(ah * figure for ah, figure in each) / self.capacity_ah

    def usable_wh(self, age_share: float, cold: Callable[[Option], float]) -> float:
        """What they give between full and as empty as they may get, Wh.

        Raises:
            OutsideValidity: a figure is absurd.
        """
        return sum(many * _usable_wh(option, age_share, cold(option)) for option, many in self.batteries)

    def store_share(self, settings: Mapping[str, float]) -> float:
        """What charging and discharging leave of what is put in."""
        return settings["store_lithium_share" if self.lithium else "store_lead_share"]


def _usable_wh(battery: Option, age_share: float, cold_share: float) -> float:
    power = battery.power
    depth = power.depth_of_discharge or 0
    return usable_wh(power.battery_ah or 0, power.battery_v or 0, depth, age_share, cold_share)


def season_share(bank: Bank, season: str, settings: Mapping[str, float]) -> Callable[[Option], float]:
    """What the warmth of the season leaves of each battery: lead minds it inside too, lithium outside in winter."""

    def share(battery: Option) -> float:
        if battery.power.chemistry in LITHIUM:
            return settings["lithium_outside_winter_share"] if bank.outside and season == WINTER else 1.0
        inside_c = settings[f"inside_{season.replace('-', '_')}_c"]
        return lead_cold_share(inside_c, settings["lead_full_c"], settings["lead_loss_share_per_c"])

    return share


def is_place(option: Option) -> bool:
    """A battery place outside the warm part of the van."""
    return OUTSIDE in option.gives


def holds(option: Option) -> bool:
    """A battery, or a place that changes what it gives."""
    return is_battery(option) or is_place(option)


def banks(uses: Sequence[Use]) -> Iterator[Bank | None]:
    """Every battery that may be chosen at every place it may get; None where there is none.

    Raises:
        OutsideValidity: a battery lacks its figures.
    """
    for chosen in product(*(use.options for use in uses)):
        yield _bank(tuple(zip(chosen, (use.many for use in uses), strict=True)))


def _bank(chosen: Sequence[tuple[Option, int]]) -> Bank | None:
    batteries = tuple((option, many) for option, many in chosen if is_battery(option))
    if not batteries:
        return None
    if any(lacks_energy(option) for option, _ in batteries):
        missing("amp-hours, volts, depth and kind of the battery")
    return Bank(batteries, any(is_place(option) for option, _ in chosen))


def bank_lacks(uses: Sequence[Use], told: Callable[[Bank | None], object]) -> Iterator[Lack]:
    """What may still turn out several ways and changes what is told of the battery, beside some way of the others."""
    for at, use in enumerate(uses):
        others = (*uses[:at], *uses[at + 1 :])
        if len(use.options) > 1 and _turns(use, others, told):
            yield use.lack


def _turns(use: Use, others: Sequence[Use], told: Callable[[Bank | None], object]) -> bool:
    counts = tuple(other.many for other in others)
    for beside in product(*(other.options for other in others)):
        rest = tuple(zip(beside, counts, strict=True))
        if len({told(_bank(((option, use.many), *rest))) for option in use.options}) > 1:
            return True
    return False
