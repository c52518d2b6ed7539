"""The energy of a day away from the plug: who uses how many watt-hours.

Things on mains count through the inverter, each by itself only when the inverter is strong enough for it, so what they
use hangs on the inverter. Under one season and one inverter every other choice adds by itself: the span over undecided
groups is the least and the most over those ways, and exact.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from specbuilder.calc.formulas.validity import OutsideValidity, at_least, missing
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.lines import largest_first
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import Prepared, as_brought, prepared
from specbuilder.calc.measuring.unsaid import unsaid
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import ZERO, Span, hull, point

from .energy_use import BETWEEN, SUMMER, WINTER, Inverter, together, used_wh
from .power_parts import SEASON, is_inverter, is_load, lacks_idle, lacks_use

_PHONES, _ALWAYS_ON, _INVERTER_ON = "phones_wh", "always_on_wh", "inverter_on_h"
_FIXED = (("phones and the like", _PHONES), ("always on", _ALWAYS_ON))
"""What every build uses, whatever is chosen."""
_DECIMALS = 6
DAY_ID = LedgerId("daily-energy")


class Use(NamedTuple):
    """One thing that takes part: a choice, a customer's part as it may turn out, or an undecided group."""

    options: tuple[Option, ...]
    """The ways it may turn out."""
    many: int = 1
    group: GroupId | None = None
    """The undecided group."""
    placed: Placed | None = None
    """The choice."""

    @property
    def lack(self) -> Lack:
        """What settles it."""
        return Lack(group=self.group or self.options[0].group)


class Way(NamedTuple):
    """One season and one inverter: what every use takes then, and all together."""

    season: str
    takes: tuple[Span, ...]
    total: Span
    making: tuple[tuple[Option, int], ...] = ()
    """What may make mains from the battery, as it turns out here; each with its count."""


@dataclass(frozen=True, slots=True)
class Day:
    """The energy of a day over everything undecided."""

    uses: tuple[Use, ...]
    ways: tuple[Way, ...]
    """Each season that may be meant with each inverter that may be chosen."""
    fixed: tuple[tuple[str, float], ...]
    """Labelled lines that are no choice, Wh."""
    lacks: tuple[Lack, ...]
    asked: Asked
    """What of the brief it rests on."""

    @property
    def by_season(self) -> Mapping[str, Span]:
        """Least and most in each season that may be meant, Wh."""
        found: dict[str, Span] = {}
        for way in self.ways:
            found[way.season] = found.get(way.season, way.total).hull(way.total)
        return found


def seasons(catalogue: Catalogue, asked: Asked) -> tuple[str, ...]:
    """The season of the brief, or every one it may turn out to be."""
    return words(catalogue, asked, SEASON, (SUMMER, BETWEEN, WINTER))


def words(catalogue: Catalogue, asked: Asked, key: BriefKey, known: Sequence[str]) -> tuple[str, ...]:
    """The answer of the brief, or all it may turn out to be; never one that nobody knows.

    Raises:
        OutsideValidity: for an answer that is none of ``known``.
    """
    answer = asked.word(key)
    line = catalogue.brief.get(key)
    found = (answer,) if answer is not None else tuple(map(str, line.values)) if line and line.values else tuple(known)
    for word in found:
        if word not in known:
            missing(f"{key} {word}")
    return found


def energy_of(prep: Prepared) -> Day:
    """The energy of a day in the season of the brief.

    Raises:
        OutsideValidity: a figure is missing or absurd.
    """
    asked = Asked(prep.situation.facts)
    return replace(energy_in(prep, seasons(prep.catalogue, asked)), asked=asked)


@lru_cache(maxsize=16)
def energy_in(prep: Prepared, in_seasons: tuple[str, ...]) -> Day:
    """The energy of a day in these seasons, whatever the brief says; a memo of the last few situations.

    Raises:
        OutsideValidity: a figure is missing or absurd.
    """
    settings = all_settings(prep.catalogue).get(DAY_ID)
    if settings is None or not {_PHONES, _ALWAYS_ON, _INVERTER_ON} <= set(settings):
        missing("settings of the energy of a day Wh")
    uses = tuple(uses_of(prep, taking_part(prep.catalogue)))
    fixed = tuple((label, at_least(f"{label} Wh", settings[name])) for label, name in _FIXED)
    base = sum(wh for _, wh in fixed)
    making = [at for at, use in enumerate(uses) if any(map(is_inverter, use.options))]
    ways = [
        _way(uses, season, dict(zip(making, chosen, strict=True)), settings[_INVERTER_ON], base)
        for season in in_seasons
        for chosen in product(*(uses[at].options for at in making))
    ]
    return Day(uses, tuple(ways), fixed, tuple(_lacks(uses, ways, making)), Asked(prep.situation.facts))


def _way(uses: Sequence[Use], season: str, chosen: Mapping[int, Option], on_h: float, base: float) -> Way:
    inverter = together(option for option in chosen.values() if is_inverter(option))
    takes = tuple(
        _taken(use, (chosen[at],) if at in chosen else use.options, season, inverter, on_h)
        for at, use in enumerate(uses)
    )
    total = Span(base + sum(t.least for t in takes), base + sum(t.most for t in takes))
    return Way(season, takes, total, tuple((option, uses[at].many) for at, option in chosen.items()))


def _taken(use: Use, options: tuple[Option, ...], season: str, inverter: Inverter, on_h: float) -> Span:
    each = [used_wh(option, use.many, season, inverter, on_h) for option in options]
    if use.group is None and len(options) > 1:
        each += _just_carried(options, use.many, season, inverter, on_h)
    return Span(min(each), max(each))


def _just_carried(
    options: tuple[Option, ...], count: int, season: str, inverter: Inverter, on_h: float
) -> Iterator[float]:
    """What a thing on mains of unknown watts uses when the inverter just carries it: more than stronger ones."""
    watts = [option.power.watts_running or 0 for option in options]
    if options[0].power.bus == "shared" and min(watts) < inverter.watts_w < max(watts):
        most = options[watts.index(max(watts))]
        yield used_wh(most, count, season, inverter._replace(watts_w=max(watts)), on_h) * inverter.watts_w / max(watts)


@lru_cache(maxsize=4)
def taking_part(catalogue: Catalogue) -> frozenset[OptionId]:
    """Options that use the battery. A memo of the catalogue."""
    return frozenset(o.id for o in catalogue.options.values() if takes_part(o))


def takes_part(option: Option) -> bool:
    """True when it uses the battery or decides what others use."""
    return is_load(option) or is_inverter(option)


def uses_of(prep: Prepared, part: frozenset[OptionId]) -> Iterator[Use]:
    """Settled choices, customer's parts as they may turn out, and undecided groups, of these options."""
    for option_id, count, own, placed in prep.settled:
        if option_id in part:
            yield Use((own or placed.option,), count, placed=placed)
    for placed, ways in prep.unweighed:
        if placed.option.id in part:
            yield Use(ways, placed.count, placed=placed)
    for group, options in prep.groups:
        if any(option.id in part for option in options):
            yield Use(options, group=group)


def _lacks(uses: Sequence[Use], ways: Sequence[Way], making: Sequence[int]) -> Iterator[Lack]:
    """What widens the span: the season, the inverter, and every use that may turn out several ways."""
    by_season: dict[str, dict[tuple[float, float], None]] = {}
    for way in ways:
        by_season.setdefault(way.season, {})[_ends(way.total)] = None
    if len({tuple(found) for found in by_season.values()}) > 1:
        yield Lack(key=SEASON)
    turning = any(len(found) > 1 for found in by_season.values())
    for at, use in enumerate(uses):
        if len(use.options) < 2:
            continue
        if (at in making and turning) or any(not way.takes[at].settled for way in ways):
            yield use.lack


def _ends(span: Span) -> tuple[float, float]:
    return round(span.least, _DECIMALS), round(span.most, _DECIMALS)


@dataclass(frozen=True, slots=True, kw_only=True)
class DailyEnergy:
    """The figure; see :mod:`specbuilder.calc.power.energy_day`."""

    id: LedgerId = DAY_ID
    settings: tuple[str, ...] = (_PHONES, _ALWAYS_ON, _INVERTER_ON)

    def touches(self, option: Option) -> bool:
        """True when it uses the battery or decides what others use."""
        return takes_part(option)

    def amount(self, _situation: Situation, _option: Option, _place: Place | None) -> float | None:
        """None: what one more takes hangs on the inverter."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Least and most of a day, and who uses how much; nothing can be said while a figure is missing."""
        sense = situation.catalogue.ledgers[self.id].sense
        try:
            day = energy_of(prepared(situation))
        except OutsideValidity as fault:
            return unsaid(self.id, sense, fault, lacks_of(situation, lacks_use, lacks_idle))
        totals = [_ends(way.total) for way in day.ways]
        value = Span(min(least for least, _ in totals), max(most for _, most in totals))
        return Reading(
            id=self.id,
            value=value,
            bound=None,
            verdict=Verdict.HOLDS if value.settled else Verdict.CANNOT_TELL,
            lacks=() if value.settled else day.lacks,
            entries=_entries(day),
            assumed=day.asked.assumed,
            sense=sense,
        )


def lacks_of(situation: Situation, *tests: Callable[[Option], bool]) -> Iterator[Lack]:
    """Groups of which a choice or a live answer lacks a figure."""
    live = [(p.option.group, as_brought(p)) for p in situation.placed]
    live += [(group, option) for group, options in situation.undecided.items() for option in options]
    yield from dict.fromkeys(Lack(group=group) for group, option in live if any(test(option) for test in tests))


def _entries(day: Day) -> tuple[Entry, ...]:
    lines = [Entry(label, point(wh)) for label, wh in day.fixed if wh]
    for at, use in enumerate(day.uses):
        amount = hull(way.takes[at] for way in day.ways) or ZERO
        if not amount.most:
            continue
        if use.placed is not None:
            lines.append(Entry("", amount, option=use.placed.option.id, count=use.many))
        else:
            lines.append(Entry("", amount, group=use.group))
    return largest_first(lines)


DAILY_ENERGY = DailyEnergy()
"""Watt-hours of a day in the season of the brief."""
