"""The circuit schedule: every cable run of the choices with its section, its fuse and what is wrong with it.

What one circuit needs by itself rests on the catalogue only and is remembered; which fuse it takes and what must break
it rests on the battery and the other circuits.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import NamedTuple

from specbuilder.calc.formulas.cables import start_voltage_v
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.calc.measuring.prepared import as_brought
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.circuits import CircuitBasis, CircuitCode, CircuitLine, CircuitProblem
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.parts import Circuit
from specbuilder.model.situation import Placed, Situation

from .cable_sizing import MAIN, MAINS, NO_FUSE, Sized, sized
from .circuit_fuses import BATTERY, Fed, Fuse, Run
from .circuit_tables import CircuitTables, Start, TableLack, circuit_tables


def circuit_schedule(situation: Situation) -> tuple[CircuitLine, ...]:
    """Every circuit of every choice, once for each of its count, in the order of taking.

    Pure; remembered by what it rests on, so that an edit elsewhere costs nothing.
    """
    catalogue, van = situation.catalogue, situation.van_data
    tags = [tag for placed in situation.placed for tag in placed.option.gives]
    given = {tag.partition("@")[0] for tag in (*tags, *(van.gives if van else ()))}
    wired = tuple(p for p in situation.placed if p.option.circuits or p.option.power.battery_ah)
    return _schedule(_Seen(catalogue, wired, _asked(catalogue) & given))


@lru_cache(maxsize=4)
def _asked(catalogue: Catalogue) -> frozenset[str]:
    """Tags that decide whether some circuit is run, and where it starts."""
    circuits = tuple(circuit for option in catalogue.options.values() for circuit in option.circuits)
    moving = (tag for circuit in circuits for start in circuit.other_starts for tag in start.beside)
    return frozenset((*(tag for circuit in circuits for tag in circuit.only_with), *moving))


class _Seen:
    """What a schedule rests on, as a key. Objects of the catalogue count as themselves: they are large to compare."""

    __slots__ = ("_key", "catalogue", "given", "wired")

    def __init__(self, catalogue: Catalogue, wired: tuple[Placed, ...], given: frozenset[str]) -> None:
        self.catalogue, self.wired, self.given = catalogue, wired, given
        self._key = id(catalogue), tuple((id(p.option), p.count, p.owner, p.own_part) for p in wired), given

    def __hash__(self) -> int:
        return hash(self._key)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Seen) and other._key == self._key


@lru_cache(maxsize=64)
def _schedule(seen: _Seen) -> tuple[CircuitLine, ...]:
    tables, found = circuit_tables(seen.catalogue), tuple(_chosen(seen))
    if isinstance(tables, TableLack):
        lack = _Size(None, Sized(problems=(CircuitProblem(code=CircuitCode.TABLE_MISSING, what=tables.table),)))
        return tuple(_line(one, lack, Fuse(), _Start()) for one in found)
    sizes = [_sized(seen.catalogue, one) for one in found]
    runs = [_run(one, size) for one, size in zip(found, sizes, strict=True)]
    battery = next((as_brought(p) for p in seen.wired if p.option.power.battery_ah), None)
    fed = Fed(tables, (run for run in runs if run is not None), battery)
    return tuple(
        _line(one, size, fed.fuse(run) if run else Fuse(), _heater(tables, one, size, battery))
        for one, size, run in zip(found, sizes, runs, strict=True)
    )


@dataclass(frozen=True, slots=True)
class _Chosen:
    """One cable run of a choice."""

    circuit: Circuit
    """With the start it has in this build."""
    placed: Placed
    label: str
    load_w: float
    load_a: float
    start_a: float | None
    unsure: bool
    """Its load is the catalogue's, though the part is the customer's."""

    @property
    def option(self) -> Option:
        """Whose run it is."""
        return self.placed.option


def _chosen(seen: _Seen) -> Iterator[_Chosen]:
    total: dict[OptionId, int] = {}
    for placed in seen.wired:
        total[placed.option.id] = total.get(placed.option.id, 0) + placed.count
    number: dict[str, int] = {}
    for placed in seen.wired:
        option = placed.option
        for circuit in option.circuits:
            if not circuit.is_run(seen.given):
                continue
            here = _starting(_Held(circuit), circuit.starts_at(seen.given))
            load_w, load_a, unsure = _load(seen.catalogue, circuit, placed)
            start_a = option.heat.start_a if circuit.bus != MAINS else None
            most_a = max(load_a, start_a) if start_a is not None and load_a > 0 else load_a
            for _ in range(placed.count):
                number[circuit.id] = number.get(circuit.id, 0) + 1
                label = circuit.id if total[option.id] == 1 else f"{circuit.id}/{number[circuit.id]}"
                yield _Chosen(here, placed, label, load_w, most_a, start_a, unsure)


@lru_cache(maxsize=500)
def _starting(held: _Held, from_point: str) -> Circuit:
    """The circuit as it starts in this build; always the same one, as what is worked out is remembered by it."""
    same = held.circuit.from_point == from_point
    return held.circuit if same else replace(held.circuit, from_point=from_point)


def _load(catalogue: Catalogue, circuit: Circuit, placed: Placed) -> tuple[float, float, bool]:
    """Watts and amps; those of the customer's own part from its sheet, where it has one circuit and a sheet."""
    if placed.owner is not Owner.CUSTOMER:
        return circuit.load_w, circuit.load_a, False
    tables = circuit_tables(catalogue)
    if isinstance(tables, TableLack):
        return circuit.load_w, circuit.load_a, True
    if (main := _main_load(tables, circuit, placed)) is not None:
        return (*main, False)
    watts = placed.own_part.watts_w if placed.own_part else None
    if watts is None or len(placed.option.circuits) > 1:
        return circuit.load_w, circuit.load_a, True
    side = "volts of the mains" if circuit.bus == MAINS else "volts of the 12 V side"
    return watts, watts / tables.settings[side], False


def _main_load(tables: CircuitTables, circuit: Circuit, placed: Placed) -> tuple[float, float] | None:
    """The main cables of a customer's battery carry what that battery gives, where somebody has read it."""
    start, brought = tables.start(circuit.from_point, circuit.bus), as_brought(placed)
    amps, volts = brought.power.bms_continuous_a, brought.power.battery_v
    if start is None or not _is_main(start) or not amps or not volts:
        return None
    return amps * volts, amps


def _is_main(start: Start) -> bool:
    """Whether it lies at the main fuse of the battery, or has none but that."""
    return start.fuse == MAIN or (start.fuse == NO_FUSE and start.feeds == BATTERY)


class _Size(NamedTuple):
    """How a circuit lies and what it needs by itself."""

    start: Start | None
    sized: Sized


def _sized(catalogue: Catalogue, one: _Chosen) -> _Size:
    return _sized_held(catalogue, _Held(one.circuit), one.load_w, one.load_a, _before_a(catalogue, one))


def _before_a(catalogue: Catalogue, one: _Chosen) -> float:
    """What the main fuses of its own part let through to a cable of the battery that has no fuse of its own."""
    tables = circuit_tables(catalogue)
    start = None if isinstance(tables, TableLack) else tables.start(one.circuit.from_point, one.circuit.bus)
    if start is None or start.fuse != NO_FUSE or start.feeds != BATTERY:
        return 0
    loads = ((c, *_load(catalogue, c, one.placed)) for c in one.option.circuits)
    beside = (_sized_held(catalogue, _Held(c), load_w, load_a, 0) for c, load_w, load_a, _ in loads)
    return sum(size.sized.fuse_a or 0 for size in beside if size.start is not None and size.start.fuse == MAIN)


@lru_cache(maxsize=2000)
def _sized_held(catalogue: Catalogue, held: _Held, load_w: float, load_a: float, before_a: float) -> _Size:
    tables, circuit = circuit_tables(catalogue), held.circuit
    assert isinstance(tables, CircuitTables), "nothing is sized without tables"
    start = tables.start(circuit.from_point, circuit.bus)
    if start is None:
        return _Size(None, Sized(problems=(CircuitProblem(code=CircuitCode.TABLE_MISSING, what="cable-starts"),)))
    return _Size(start, sized(tables, circuit, load_w, load_a, start, before_a))


class _Held:
    """The very same circuit as a key: hashing all its fields would cost more than it saves."""

    __slots__ = ("circuit",)

    def __init__(self, circuit: Circuit) -> None:
        self.circuit = circuit

    def __hash__(self) -> int:
        return id(self.circuit)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and other.circuit is self.circuit


def _run(one: _Chosen, size: _Size) -> Run | None:
    if size.start is None:
        return None
    return Run(
        label=one.label,
        from_point=one.circuit.from_point,
        to_point=one.circuit.to_point,
        start=size.start,
        run_one_way_m=one.circuit.run_one_way_m,
        area_mm2=size.sized.area_mm2 and size.sized.area_mm2 * size.sized.side_by_side,
        fuse_a=size.sized.fuse_a,
    )


class _Start(NamedTuple):
    """What a heater gets while it lights, in V; None for anything else, and where its cable is not known."""

    volts_v: float | None = None
    problems: tuple[CircuitProblem, ...] = ()


def _heater(tables: CircuitTables, one: _Chosen, size: _Size, battery: Option | None) -> _Start:
    wire, run_m = size.sized.wire, one.circuit.run_one_way_m
    if one.start_a is None or wire is None:
        return _Start()
    loaded_v = tables.loaded_v.get(battery.power.chemistry) if battery else None
    battery_v = loaded_v if loaded_v is not None else min(tables.loaded_v.values())
    mohm_per_m = wire.drop_v * 1000 / (2 * run_m * one.load_a)
    volts_v: float | None
    try:
        volts_v = start_voltage_v(battery_v, one.start_a, run_m, mohm_per_m)
    except OutsideValidity:
        volts_v = None
    least_v = tables.settings["least volts at a heater that lights"]
    if volts_v is not None and volts_v >= least_v:
        return _Start(volts_v)
    return _Start(volts_v, (CircuitProblem(code=CircuitCode.HEATER_START_VOLTAGE_LOW, has=volts_v, needs=least_v),))


def _line(one: _Chosen, size: _Size, fuse: Fuse, heater: _Start) -> CircuitLine:
    circuit, sized_, start = one.circuit, size.sized, size.start
    wire = sized_.wire
    unsure = (CircuitProblem(code=CircuitCode.OWN_PART_FIGURES),) if one.unsure else ()
    return CircuitLine(
        id=circuit.id,
        label=one.label,
        option=one.option.id,
        circuit=circuit.circuit,
        from_point=circuit.from_point,
        to_point=circuit.to_point,
        bus=circuit.bus,
        load_w=one.load_w,
        load_a=one.load_a,
        run_one_way_m=circuit.run_one_way_m,
        drop_limit_pct=circuit.drop_limit_pct,
        volts_v=sized_.volts_v,
        area_mm2=sized_.area_mm2,
        side_by_side=sized_.side_by_side,
        insulation_c=wire.insulation_c if wire else None,
        carries_a=wire.carries_a if wire else None,
        fuse_a=sized_.fuse_a,
        fuse_kind=fuse.kind,
        fuse_place=start.fuse_place if start else "",
        breaking_needed_ka=fuse.breaking_needed_ka,
        breaking_ka=fuse.breaking_ka,
        drop_v=wire.drop_v if wire else None,
        drop_pct=wire.drop_v / sized_.volts_v * 100 if wire and sized_.volts_v else None,
        start_v=heater.volts_v,
        basis=(basis := _basis(circuit, start)),
        estimate=basis is not CircuitBasis.STATED,
        problems=(*sized_.problems, *fuse.problems, *heater.problems, *unsure),
        origin=circuit.origin,
    )


def _basis(circuit: Circuit, start: Start | None) -> CircuitBasis:
    """Where there is no fuse to work out, the section alone says it."""
    own_area, unfused = circuit.own_area_mm2 is not None, start is not None and start.fuse == NO_FUSE
    match own_area, circuit.own_fuse_a is not None or (own_area and unfused):
        case True, True:
            return CircuitBasis.STATED
        case True, False:
            return CircuitBasis.SECTION_STATED
        case False, True:
            return CircuitBasis.FUSE_STATED
        case _:
            return CircuitBasis.COMPUTED
