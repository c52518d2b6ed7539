"""Told beside the energy of a day: both ends of the year, the inverter left on, what a day leaves in the battery."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.calc.formulas.energy import DAY_H, inverter_idle_wh
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, lacking, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.span import Span, hull
from specbuilder.model.vans import Van

from .banks import STORE_SETTINGS, Bank, bank_lacks, banks, holds
from .energy_use import SUMMER, WINTER
from .filling import engine_a, panel_w, turning
from .power_parts import is_engine_charger, is_inverter, is_panel, lacks_idle
from .told_power import NOTHING, Outlook, Told, power_figure


def _summer(outlook: Outlook) -> Told:
    return _in(outlook, SUMMER)


def _winter(outlook: Outlook) -> Told:
    return _in(outlook, WINTER)


def _in(outlook: Outlook, season: str) -> Told:
    day = outlook.day(season)
    return Told(day.by_season[season], day.lacks)


def _balance(outlook: Outlook) -> Told:
    """Sun and driving as far as the battery gives them back, less what the day takes."""
    holding = outlook.uses(holds)
    found = set(banks(holding))
    shares = {bank.store_share(outlook.settings) for bank in found if bank is not None}
    if not shares:
        return NOTHING
    day, engine = outlook.day(*outlook.seasons), outlook.engine()
    least, most = min(shares), max(shares)
    given, taken = list[tuple[Span, Span]](), list[Span]()
    for season, used in day.by_season.items():
        sun = outlook.sun(season)
        given.append((_kept(sun, least, most), _kept(engine, least, most)))
        taken.append(used * -1)
    each = [sun + driving + used for (sun, driving), used in zip(given, taken, strict=True)]
    entries = tuple(
        Entry(label, amount)
        for label, amount in (
            ("what the day takes", hull(taken)),
            ("sun, as the battery gives it back", hull(sun for sun, _ in given)),
            ("driving, as the battery gives it back", hull(driving for _, driving in given)),
        )
        if amount is not None and (amount.least or amount.most)
    )
    return Told(hull(each), _balance_lacks(outlook, day.lacks), None in found, entries)


def _kept(brought: Span, least: float, most: float) -> Span:
    return Span(brought.least * least, brought.most * most)


def _balance_lacks(outlook: Outlook, of_day: tuple[Lack, ...]) -> Iterator[Lack]:
    def share(bank: Bank | None) -> float | None:
        return bank.store_share(outlook.settings) if bank is not None else None

    yield from of_day
    yield from bank_lacks(outlook.uses(holds), share)
    yield from turning(outlook.uses(is_engine_charger), engine_a)
    yield from turning(outlook.uses(is_panel), panel_w)


def _inverter(option: Option, _van: Van | None) -> float | None:
    return 1 if is_inverter(option) else None


def _idle_w(option: Option, _van: Van | None) -> float | None:
    return option.power.inverter_idle_w if is_inverter(option) and not lacks_idle(option) else None


def _left_on(joint: Joint, _frame: Frame) -> float | None:
    stands, idle_w, lacks = joint
    if not stands:
        return None
    return missing("idle watts of the inverter W") if lacks else inverter_idle_wh(idle_w, DAY_H)


SUMMER_ENERGY = power_figure(ledger=LedgerId("summer-energy"), value=_summer)
"""Watt-hours of a summer day, whatever season the brief names."""

WINTER_ENERGY = power_figure(ledger=LedgerId("winter-energy"), value=_winter)
"""Watt-hours of a winter day, whatever season the brief names."""

INVERTER_LEFT_ON = Tally(
    id=LedgerId("inverter-left-on"),
    value=Measure(parts=(largest(_inverter, none=0), summed(_idle_w), lacking(lacks_idle)), rest=_left_on),
)
"""What the inverter takes for itself when nobody switches it off."""

DAY_BALANCE = power_figure(
    ledger=LedgerId("day-balance"), value=_balance, settings=("sun_share", "engine_v", *STORE_SETTINGS)
)
"""What a day leaves in the battery, or takes from it; nothing to measure without one."""
