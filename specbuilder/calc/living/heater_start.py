"""Told beside the nights of heating: the current while the heater lights, and what its cable leaves of the voltage."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import product

from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.calc.circuits.circuit_tables import TableLack, circuit_tables
from specbuilder.calc.formulas.validity import OutsideValidity, above, missing
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.calc.measuring.unsaid import nothing_here, unsaid
from specbuilder.calc.measuring.verdicts import verdict_of
from specbuilder.calc.power.power_parts import is_battery
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import GroupId, LedgerId
from specbuilder.model.kinds import Place, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, point
from specbuilder.model.vans import Van

from .heater_fuel import DRAWS_FUEL

_NO_HEATER, _UNKNOWN_A = 0.0, -1.0
_START_VOLTS = LedgerId("heater-start-volts")
_LEAST_VOLTS = "least volts at a heater that lights"


def is_fuel_heater(option: Option) -> bool:
    """A heater that burns diesel or petrol, and so lights with a glowing element."""
    return DRAWS_FUEL in option.gives


def _start_a(option: Option, _van: Van | None) -> float | None:
    return option.heat.start_a or 0 if is_fuel_heater(option) else None


def _lacks_start_a(option: Option, _van: Van | None) -> float | None:
    return 1 if is_fuel_heater(option) and (option.heat.start_a or 0) <= 0 else None


def _amps(joint: Joint, _frame: Frame) -> float | None:
    amps, lacks = joint
    if amps < 0:
        return None
    return 0 if lacks and missing("start current of the heater A") else above("start current of the heater A", amps)


START_AMPS = Tally(
    id=LedgerId("heater-start-amps"),
    value=Measure(parts=(largest(_start_a, none=_UNKNOWN_A), largest(_lacks_start_a, none=0)), rest=_amps),
)
"""The largest current a heater takes while it lights."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StartVolts:
    """The figure: the least voltage at a heater while it lights, by the section and run of its own cable."""

    id: LedgerId = _START_VOLTS
    settings: tuple[str, ...] = ()

    def touches(self, option: Option) -> bool:
        """True for fuel heaters and batteries."""
        return is_fuel_heater(option) or is_battery(option)

    def amount(self, _situation: Situation, _option: Option, _place: Place | None) -> float | None:
        """None: volts do not add."""
        return None

    def read(self, situation: Situation) -> Reading:
        """Over every heater and battery that may still be chosen; nothing can be said where a cable is not known."""
        sense = situation.catalogue.ledgers[self.id].sense
        lacks = tuple(Lack(group=group) for group in self._open(situation))
        try:
            bound = point(_least_volts(situation))
            each = [_volts(way) for way in self._ways(situation)]
        except OutsideValidity as fault:
            return unsaid(self.id, sense, fault, lacks)
        found = [volts for volts in each if volts is not None]
        if not found:
            return nothing_here(self.id, sense, bound)
        value = Span(round(min(found), 6), round(max(found), 6))
        settled = len(found) == len(each)
        return Reading(
            id=self.id,
            value=value,
            bound=bound,
            verdict=verdict_of(sense, value, bound) if settled else Verdict.CANNOT_TELL,
            lacks=() if settled and value.settled else lacks,
            sense=sense,
        )

    def _open(self, situation: Situation) -> tuple[GroupId, ...]:
        return tuple(group for group, options in situation.undecided.items() if any(map(self.touches, options)))

    def _ways(self, situation: Situation) -> Iterator[Situation]:
        """The situation under every heater and battery that may still be chosen."""
        for chosen in product(*(situation.undecided[group] for group in self._open(situation))):
            more = tuple(Placed(option=option) for option in chosen)
            yield replace(situation, placed=(*situation.placed, *more)) if more else situation


def _least_volts(situation: Situation) -> float:
    tables = circuit_tables(situation.catalogue)
    if isinstance(tables, TableLack):
        return missing(f"table {tables.table}")
    return tables.settings[_LEAST_VOLTS]


def _volts(situation: Situation) -> float | None:
    """The least at any heater; None without one.

    Raises:
        OutsideValidity: its current or its cable is not known, or the cable would lose all there is.
    """
    heaters = [p.option for p in situation.placed if is_fuel_heater(p.option)]
    lines = circuit_schedule(situation) if heaters else ()
    found: list[float] = []
    for heater in heaters:
        above("start current of the heater A", heater.heat.start_a or 0)
        mine = [line for line in lines if line.option == heater.id and line.bus == heater.power.bus]
        if not mine:
            return missing("cable run of the heater m")
        for line in mine:
            volts = line.start_v
            found.append(missing(f"volts behind the cable {line.label} V") if volts is None else volts)
    return min(found, default=None)


START_VOLTS = StartVolts()
