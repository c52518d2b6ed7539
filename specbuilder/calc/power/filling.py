"""What fills the battery: sun, engine and plug."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import lru_cache

from specbuilder.calc.formulas.energy import engine_wh, sun_wh
from specbuilder.calc.formulas.validity import missing
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.prepared import Prepared
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId
from specbuilder.model.ledger import Lack
from specbuilder.model.span import Span

from .energy_day import Use, uses_of, words
from .power_parts import DRIVE_H, REGION, is_engine_charger, lacks_sun_watts

_SUN_TABLE, _MONTH_TABLE = "sun-hours", "sun-hours-by-month"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
"""As the columns of the table of months begin."""


@lru_cache(maxsize=32)
def _part(catalogue: Catalogue, is_one: Callable[[Option], bool]) -> frozenset[OptionId]:
    return frozenset(o.id for o in catalogue.options.values() if is_one(o))


def uses(prep: Prepared, is_one: Callable[[Option], bool]) -> tuple[Use, ...]:
    """What of a situation is of one kind: choices, customer's parts as they may turn out, undecided groups."""
    return tuple(uses_of(prep, _part(prep.catalogue, is_one)))


def summed(found: Sequence[Use], of: Callable[[Option], float]) -> Span:
    """Least and most of a figure over all of them together."""
    each = [[of(option) * use.many for option in use.options] for use in found]
    return Span(sum(map(min, each)), sum(map(max, each)))


def turning(found: Sequence[Use], of: Callable[[Option], float]) -> Iterator[Lack]:
    """Those of them whose figure is still open."""
    yield from (use.lack for use in found if len({of(option) for option in use.options}) > 1)


def lacks_engine_a(option: Option) -> bool:
    """A charger on the engine without the amps it gives."""
    return is_engine_charger(option) and option.power.engine_charge_a is None


def engine_a(option: Option) -> float:
    """Amps it gives while driving, A.

    Raises:
        OutsideValidity: nobody knows them.
    """
    if lacks_engine_a(option):
        missing("amps the engine's charger gives A")
    return option.power.engine_charge_a or 0


def panel_w(option: Option) -> float:
    """Watts on the label of a panel, W.

    Raises:
        OutsideValidity: nobody knows them.
    """
    if lacks_sun_watts(option):
        missing("watts of the panel W")
    return option.power.solar_w or 0


def engine_of_day(charging: Sequence[Use], asked: Asked, volts_v: float) -> Span:
    """What the driving of a day brings, Wh; the brief is asked only where something charges."""
    amps = summed(charging, engine_a)
    drive = asked.number(DRIVE_H) if amps.most else Span(0, 0)
    return Span(engine_wh(amps.least, volts_v, drive.least), engine_wh(amps.most, volts_v, drive.most))


def sun_of_day(catalogue: Catalogue, asked: Asked, season: str, panels: Span, share: float) -> Span:
    """What the sun of a day of the season brings, Wh; the brief is asked only where there are panels."""
    if not panels.most:
        return Span(0, 0)
    hours = _season_hours(catalogue)
    regions = words(catalogue, asked, REGION, tuple({region: None for region, _ in hours}))
    if not regions or any((region, season) not in hours for region in regions):
        missing("hours of full sun a day h")
    return _brought([hours[region, season] for region in regions], panels, share)


def sun_of_months(catalogue: Catalogue, asked: Asked, panels: Span, share: float) -> tuple[Span, ...]:
    """What the sun of a day brings in each month of the year, Wh."""
    months = _month_hours(catalogue)
    regions = words(catalogue, asked, REGION, tuple(months))
    if not regions or any(region not in months for region in regions):
        missing("hours of full sun a day h")
    return tuple(_brought([months[region][at] for region in regions], panels, share) for at, _ in enumerate(MONTHS))


def _brought(hours: Sequence[float], panels: Span, share: float) -> Span:
    return Span(sun_wh(panels.least, min(hours), share), sun_wh(panels.most, max(hours), share))


@lru_cache(maxsize=4)
def _season_hours(catalogue: Catalogue) -> Mapping[tuple[str, str], float]:
    """Hours of full sun by region and season, from the catalogue's table."""
    table = catalogue.tables.get(_SUN_TABLE)
    found: dict[tuple[str, str], float] = {}
    for row in table.rows if table is not None else ():
        region, season, hours = row
        if isinstance(hours, int | float):
            found[str(region), str(season)] = hours
    return found


@lru_cache(maxsize=4)
def _month_hours(catalogue: Catalogue) -> Mapping[str, tuple[float, ...]]:
    """Hours of full sun of the twelve months by region, from the catalogue's table."""
    table = catalogue.tables.get(_MONTH_TABLE)
    found: dict[str, tuple[float, ...]] = {}
    if table is None:
        return found
    columns = [column.key.partition("_")[0] for column in table.columns]
    for row in table.rows:
        by_column = dict(zip(columns, row, strict=True))
        hours = [by_column.get(month) for month in MONTHS]
        numbers = tuple(hour for hour in hours if isinstance(hour, int | float))
        if len(numbers) == len(MONTHS):
            found[str(row[0])] = numbers
    return found
