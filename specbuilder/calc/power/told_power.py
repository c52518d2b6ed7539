"""Figures of the electrics that are no plain sum: what they look at, and how their reading is made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import chain
from typing import NamedTuple

from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.prepared import Prepared, prepared
from specbuilder.calc.measuring.told import NOTHING as NOT_HERE
from specbuilder.calc.measuring.told import Found, ToldFigure
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span

from .banks import holds
from .energy_day import Day, Use, energy_in, lacks_of, seasons, takes_part
from .filling import engine_of_day, lacks_engine_a, panel_w, summed, sun_of_day, sun_of_months, uses
from .power_parts import (
    is_engine_charger,
    is_panel,
    is_plug_charger,
    lacks_charge,
    lacks_energy,
    lacks_idle,
    lacks_sun_watts,
    lacks_use,
)

_GAPS = (lacks_use, lacks_idle, lacks_energy, lacks_sun_watts, lacks_engine_a, lacks_charge)


class Outlook(NamedTuple):
    """What a figure may look at: the situation, the brief as it asks it, and its settings."""

    prep: Prepared
    asked: Asked
    settings: Mapping[str, float]

    @property
    def catalogue(self) -> Catalogue:
        """The catalogue of the situation."""
        return self.prep.catalogue

    @property
    def seasons(self) -> tuple[str, ...]:
        """The season of the brief, or all it may be."""
        return seasons(self.catalogue, self.asked)

    def uses(self, is_one: Callable[[Option], bool]) -> tuple[Use, ...]:
        """What of the build is of one kind, over everything undecided."""
        return uses(self.prep, is_one)

    def day(self, *in_seasons: str) -> Day:
        """The energy of a day in these seasons."""
        return energy_in(self.prep, in_seasons)

    @property
    def panels_w(self) -> Span:
        """Watts of the panels together."""
        return summed(self.uses(is_panel), panel_w)

    def sun(self, season: str) -> Span:
        """What the sun of a day brings, Wh."""
        return sun_of_day(self.catalogue, self.asked, season, self.panels_w, self.settings["sun_share"])

    def months(self) -> tuple[Span, ...]:
        """The same for each month of the year."""
        return sun_of_months(self.catalogue, self.asked, self.panels_w, self.settings["sun_share"])

    def engine(self) -> Span:
        """What the driving of a day brings, Wh."""
        return engine_of_day(self.uses(is_engine_charger), self.asked, self.settings["engine_v"])


class Told(NamedTuple):
    """What a figure comes to over everything undecided."""

    span: Span | None
    """None: there is nothing to measure."""
    lacks: Iterable[Lack] = ()
    """What may widen it; asked only where something is open."""
    absent: bool = False
    """In some way to finish this build there is nothing to measure."""
    entries: tuple[Entry, ...] = ()
    bound: Span | None = None


NOTHING = Told(None)
"""There is nothing to measure."""


def over(found: Iterable[float | None], lacks: Iterable[Lack] = ()) -> Told:
    """Least and most of the ways it may turn out; None is a way with nothing to measure."""
    each = list(found)
    values = [value for value in each if value is not None]
    if not values:
        return NOTHING
    return Told(Span(min(values), max(values)), lacks, len(values) < len(each))


def touches_power(option: Option) -> bool:
    """It uses, makes, holds or fills the energy of the van."""
    tests = (takes_part, holds, is_engine_charger, is_plug_charger, is_panel)
    return any(test(option) for test in tests)


def power_figure(ledger: LedgerId, value: Callable[[Outlook], Told], settings: tuple[str, ...] = ()) -> ToldFigure:
    """One such figure; nothing can be said while a number of the electrics is missing or absurd."""

    def find(situation: Situation, own: Mapping[str, float]) -> Found:
        asked = Asked(situation.facts)
        told = value(Outlook(prepared(situation), asked, own))
        lacks = tuple(_lacks(told, asked))
        if told.span is None:
            return NOT_HERE
        return Found(
            value=told.span,
            bound=told.bound,
            lacks=lacks,
            assumed=asked.assumed,
            open_ended=told.absent or (told.bound is None and not told.span.settled),
            entries=told.entries,
        )

    return ToldFigure(
        id=ledger,
        find=find,
        looks_at=touches_power,
        settings=settings,
        gaps=lambda situation: lacks_of(situation, *_GAPS),
    )


def _lacks(told: Told, asked: Asked) -> Iterable[Lack]:
    """What is open, where that widens it."""
    if told.span is None:
        return ()
    settled = told.span.settled and (told.bound is None or told.bound.settled)
    if settled and not told.absent:
        return ()
    return dict.fromkeys(chain(told.lacks, (Lack(key=key) for key in asked.unknown)))
