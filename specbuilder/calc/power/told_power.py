"""Figures of the electrics that are no plain sum: what they look at, and how their reading is made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import NamedTuple

from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.measuring.frame import Asked
from specbuilder.calc.measuring.outcome import all_settings
from specbuilder.calc.measuring.prepared import Prepared, prepared
from specbuilder.calc.measuring.verdicts import verdict_of
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Place, Sense, Verdict
from specbuilder.model.ledger import Entry, Lack, Outside, Reading
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

_DECIMALS = 6
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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PowerFigure:
    """One such figure."""

    id: LedgerId
    value: Callable[[Outlook], Told]
    settings: tuple[str, ...] = ()

    def touches(self, option: Option) -> bool:
        """True when it uses, makes, holds or fills the energy of the van."""
        return touches_power(option)

    def amount(self, _situation: Situation, _option: Option, _place: Place | None) -> float | None:
        """None: it is no sum."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Value and verdict; nothing can be said while a figure is missing or absurd."""
        catalogue, asked = situation.catalogue, Asked(situation.facts)
        sense = catalogue.ledgers[self.id].sense
        try:
            told = self.value(Outlook(prepared(situation), asked, all_settings(catalogue)[self.id]))
            lacks = tuple(_lacks(told, asked))
        except OutsideValidity as fault:
            return Reading(
                id=self.id,
                value=None,
                bound=None,
                verdict=Verdict.CANNOT_TELL,
                lacks=tuple(lacks_of(situation, *_GAPS)),
                sense=sense,
                outside=Outside(fault.quantity, fault.value, fault.needs),
            )
        if told.span is None:
            return Reading(id=self.id, value=None, bound=None, verdict=Verdict.HOLDS, applies=False, sense=sense)
        value = Span(round(told.span.least, _DECIMALS), round(told.span.most, _DECIMALS))
        return Reading(
            id=self.id,
            value=value,
            bound=told.bound,
            verdict=Verdict.CANNOT_TELL if told.absent else _verdict(sense, value, told.bound),
            lacks=lacks,
            entries=told.entries,
            assumed=asked.assumed,
            sense=sense,
        )


def _verdict(sense: Sense, value: Span, bound: Span | None) -> Verdict:
    if sense is Sense.SHOWN or bound is None:
        return Verdict.HOLDS if value.settled else Verdict.CANNOT_TELL
    return verdict_of(sense, value, bound)


def _lacks(told: Told, asked: Asked) -> Iterable[Lack]:
    """What is open, where that widens it."""
    if told.span is None:
        return ()
    settled = told.span.settled and (told.bound is None or told.bound.settled)
    if settled and not told.absent:
        return ()
    return dict.fromkeys(chain(told.lacks, (Lack(key=key) for key in asked.unknown)))
