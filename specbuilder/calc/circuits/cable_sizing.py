"""One circuit by itself: its section, fuse and drop, whatever feeds it. Rests on the catalogue only."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from specbuilder.calc.formulas.cables import ampacity_a, bundle_share, drop_v, load_of_each_a
from specbuilder.calc.formulas.cords import cord_ampacity_a, cord_drop_v, warmth_share
from specbuilder.calc.formulas.fuses import fuse_in_window_a, least_fuse_a, smallest_fused_section
from specbuilder.calc.formulas.validity import OutsideValidity
from specbuilder.model.circuits import CircuitCode, CircuitProblem
from specbuilder.model.parts import Circuit

from .circuit_tables import CircuitTables, Start

PAIR = 2
"""So many equal cables are put side by side where no single one does."""
CORD_C = 60.0
"""What the insulation of mains cord bears, degrees C."""
MAINS = "230"
"""The bus of the mains."""
BREAKER, NO_FUSE, BY_AMPS, MAIN = "breaker", "none", "by amps", "main"
"""Words of the table of starts for what protects a cable; else it is a kind of fuse."""
EARTH, PANELS = "earth", "panels"
"""Words of it for what feeds a cable."""


@dataclass(frozen=True, slots=True)
class Wire:
    """A section that could be taken, or equal cables of it side by side: they carry and lose that together."""

    area_mm2: float
    insulation_c: float
    carries_a: float
    drop_v: float
    side_by_side: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Sized:
    """What came of it."""

    volts_v: float | None = None
    area_mm2: float | None = None
    wire: Wire | None = None
    """The cable of the tables whose amps and drop are told: that section, or the next thinner one to the part's own."""
    fuse_a: float | None = None
    problems: tuple[CircuitProblem, ...] = ()

    @property
    def side_by_side(self) -> int:
        """So many cables of that section."""
        return self.wire.side_by_side if self.wire else 1


def sized(
    tables: CircuitTables, circuit: Circuit, load_w: float, load_a: float, start: Start, before_a: float = 0
) -> Sized:
    """Section, fuse and drop of one circuit with this load; problems where something of it cannot be told.

    ``before_a`` is what the fuses before it let through, where it has none of its own.
    """
    if lacking := _lacking(circuit, load_a, earth=start.feeds == EARTH):
        return Sized(problems=lacking)
    if start.feeds == EARTH:
        return _bond(circuit)
    try:
        return _Sizing(tables, circuit, load_w, load_a, start, before_a).taken()
    except OutsideValidity as outside:
        return Sized(problems=(_outside(outside),))


def _outside(outside: OutsideValidity) -> CircuitProblem:
    """Which figure of the circuit, or else of the tables, no equation covers."""
    if outside.quantity.startswith("load"):
        return CircuitProblem(code=CircuitCode.LOAD_MISSING, has=outside.value)
    if outside.quantity.startswith(("one-way run", "length")):
        return CircuitProblem(code=CircuitCode.RUN_MISSING, has=outside.value)
    return CircuitProblem(code=CircuitCode.TABLE_MISSING, what=str(outside))


def _lacking(circuit: Circuit, load_a: float, *, earth: bool) -> tuple[CircuitProblem, ...]:
    """Figures of the catalogue that are none."""
    found: list[CircuitProblem] = []
    if not _is_figure(circuit.run_one_way_m):
        found.append(CircuitProblem(code=CircuitCode.RUN_MISSING, has=circuit.run_one_way_m))
    stated = (circuit.own_area_mm2, circuit.own_fuse_a)
    found += (
        CircuitProblem(code=CircuitCode.STATED_FIGURE_ABSURD, has=figure)
        for figure in stated
        if figure is not None and not _is_figure(figure)
    )
    if earth:
        return tuple(found)
    if not _is_figure(load_a):
        found.append(CircuitProblem(code=CircuitCode.LOAD_MISSING, has=load_a))
    limit_pct = circuit.drop_limit_pct
    if limit_pct is None or not _is_figure(limit_pct) or limit_pct >= 100:
        found.append(CircuitProblem(code=CircuitCode.DROP_LIMIT_MISSING, has=limit_pct))
    return tuple(found)


def _is_figure(value: float) -> bool:
    return isfinite(value) and value > 0


def _bond(circuit: Circuit) -> Sized:
    """A bonding conductor carries nothing for long: its section is named, never computed."""
    if circuit.own_area_mm2 is None:
        return Sized(problems=(CircuitProblem(code=CircuitCode.EARTH_SECTION_MISSING),))
    return Sized(area_mm2=circuit.own_area_mm2)


class _Sizing:
    """One circuit on its way to a section."""

    def __init__(
        self, tables: CircuitTables, circuit: Circuit, load_w: float, load_a: float, start: Start, before_a: float
    ) -> None:
        self._tables, self._circuit, self._load_a, self._start = tables, circuit, load_a, start
        self._mains = circuit.bus == MAINS
        self._problems: list[CircuitProblem] = []
        self._volts = self._voltage(load_w)
        self._limit_v = self._volts * (circuit.drop_limit_pct or 0) / 100
        rule = "least breaker over steady load" if start.fuse == BREAKER else "least fuse over steady load"
        self._over_load = tables.fuse_rules[rule]
        self._least_fuse_a = least_fuse_a(load_a, self._over_load)
        self._unfused_a = max(self._least_fuse_a, before_a)
        self._wires = self._mains_wires() if self._mains else self._low_voltage_wires()

    def taken(self) -> Sized:
        """The section and fuse, the part's own before the computed ones."""
        own = self._circuit.own_area_mm2
        computed = self._computed(self._wires)
        if own is None:
            wire, fuse = computed if computed[0] or self._mains else self._computed(self._low_voltage_wires(PAIR))
            if wire is None:
                self._say(CircuitCode.NO_CABLE_FITS, has=max((w.area_mm2 for w in self._wires), default=None))
            return self._sized(wire.area_mm2 if wire else None, wire, fuse)
        return self._sized(own, *self._with_own_cable(own, computed[0]))

    def _sized(self, area_mm2: float | None, wire: Wire | None, fuse: float | None) -> Sized:
        own = self._circuit.own_fuse_a
        if own is not None and own < self._least_fuse_a - 1e-9:
            self._say(CircuitCode.OWN_FUSE_BELOW_LOAD, has=own, needs=self._least_fuse_a)
        return Sized(volts_v=self._volts, area_mm2=area_mm2, wire=wire, fuse_a=fuse, problems=tuple(self._problems))

    def _computed(self, wires_here: Sequence[Wire]) -> tuple[Wire | None, float | None]:
        """The thinnest cable that keeps the drop and has its fuse, of the coolest insulation that does."""
        keeping = [wire for wire in wires_here if wire.drop_v <= self._limit_v + 1e-9]
        for insulation_c in sorted({wire.insulation_c for wire in keeping}):
            wires = {wire.area_mm2: wire for wire in keeping if wire.insulation_c == insulation_c}
            found = self._fused(wires)
            if found is None:
                continue
            wire, fuse = wires[found[0]], found[1]
            if self._circuit.own_area_mm2 is None:
                self._note_taken(wire, wires, fuse)
            return wire, fuse
        return None, None

    def _fused(self, wires: dict[float, Wire]) -> tuple[float, float | None] | None:
        """The thinnest section with a fuse that protects it."""
        carrying = [(area, wire.carries_a) for area, wire in wires.items()]
        own = self._circuit.own_fuse_a
        if own is not None:
            most = max(own, self._load_a)
            able = [area for area, carries in carrying if carries >= most - 1e-9]
            return (min(able), own) if able else None
        if self._start.fuse == NO_FUSE:
            able = [area for area, carries in carrying if carries >= self._unfused_a - 1e-9]
            return (min(able), None) if able else None
        return smallest_fused_section(self._load_a, carrying, self._ratings(), self._over_load)

    def _note_taken(self, wire: Wire, wires: dict[float, Wire], fuse: float | None) -> None:
        """Says why it is not the one cable of the section that drop and load alone ask for."""
        enough = min(area for area, other in wires.items() if other.carries_a >= self._load_a)
        if (beside := wire.side_by_side) > 1:
            each_a = load_of_each_a(fuse or self._unfused_a, beside)
            self._say(CircuitCode.CABLES_SIDE_BY_SIDE, has=wire.carries_a / beside, needs=each_a)
        elif enough < wire.area_mm2:
            self._say(CircuitCode.FUSE_WINDOW_EMPTY_UNTIL, has=enough, needs=wire.area_mm2)
        if not self._mains and wire.insulation_c > min(w.insulation_c for w in self._wires):
            self._say(CircuitCode.HOT_CABLE_TAKEN, has=wire.insulation_c)

    def _with_own_cable(self, own_mm2: float, computed: Wire | None) -> tuple[Wire | None, float | None]:
        """The part's own cable stands; what is wrong with it is said."""
        listed = [wire for wire in self._wires if wire.area_mm2 <= own_mm2]
        if computed is not None and own_mm2 < computed.area_mm2:
            self._say(CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED, has=own_mm2, needs=computed.area_mm2)
        if not listed:
            self._say(CircuitCode.OWN_CABLE_NOT_IN_TABLE, has=own_mm2)
            return None, self._circuit.own_fuse_a
        nearest = max(wire.area_mm2 for wire in listed)
        found: Wire | None = None
        for wire in sorted((w for w in listed if w.area_mm2 == nearest), key=lambda w: w.insulation_c):
            found = wire
            if self._fused({nearest: wire}) is not None:
                break
        assert found is not None, "the nearest listed section is one of those listed"
        if found.drop_v > self._limit_v + 1e-9:
            self._say(CircuitCode.DROP_ABOVE_LIMIT, has=found.drop_v, needs=self._limit_v)
        return found, self._own_cable_fuse(found)

    def _own_cable_fuse(self, wire: Wire) -> float | None:
        own = self._circuit.own_fuse_a
        if own is not None:
            if own > wire.carries_a:
                self._say(CircuitCode.OWN_FUSE_ABOVE_CABLE, has=own, needs=wire.carries_a)
            return own
        if self._start.fuse == NO_FUSE:
            return None
        fuse = fuse_in_window_a(self._load_a, wire.carries_a, self._ratings(), self._over_load)
        if fuse is None:
            self._say(CircuitCode.NO_FUSE_IN_WINDOW, has=wire.carries_a, needs=self._least_fuse_a)
        return fuse

    def _ratings(self) -> Sequence[float]:
        """Ratings of what protects it."""
        tables, fuse = self._tables, self._start.fuse
        if fuse == BREAKER:
            return tables.breakers
        if fuse == BY_AMPS:
            return sorted({rating for ratings in tables.ratings_a.values() for rating in ratings})
        kinds = set(tables.main_kinds.values()) if fuse == MAIN else {fuse}
        series = {kind.series for kind in tables.kinds if kind.kind in kinds}
        return sorted({rating for one in series for rating in tables.ratings_a.get(one, ())})

    def _mains_wires(self) -> tuple[Wire, ...]:
        """Every mains cord as it would lie here."""
        tables, share = self._tables, bundle_share(self._start.together, self._tables.bundles)
        warm = warmth_share(tables.settings["warmth around mains cords in degrees"], tables.cord_warmth)
        return tuple(
            Wire(
                cord.area_mm2,
                CORD_C,
                cord_ampacity_a(cord.amps, cord.wall_amps, warm, share),
                cord_drop_v(self._load_a, self._circuit.run_one_way_m, cord.drop_mv_per_a_m),
            )
            for cord in tables.cords
        )

    def _low_voltage_wires(self, side_by_side: int = 1) -> tuple[Wire, ...]:
        """Every 12 V cable as it would lie here, once for each insulation; or so many of it side by side."""
        tables, together = self._tables, self._start.together + side_by_side - 1
        share = bundle_share(together, tables.bundles)
        each_a = self._load_a if side_by_side == 1 else load_of_each_a(self._load_a, side_by_side)
        place = tables.places.get(self._start.place, min(tables.places.values()))
        warm_c = tables.settings["warmth of the conductor for the drop in degrees"]
        run_m, rho = self._circuit.run_one_way_m, tables.rho[warm_c]
        found: list[Wire] = []
        for section in tables.sections:
            lost = drop_v(each_a, run_m, section.area_mm2, section.r20_mohm_per_m, rho, warm_c)
            found += (
                Wire(section.area_mm2, bears_c, ampacity_a(amps, share, place) * side_by_side, lost, side_by_side)
                for bears_c, amps in section.amps.items()
            )
        return tuple(found)

    def _voltage(self, load_w: float) -> float:
        """Of which the drop is a share; panels work at their own."""
        if self._start.feeds == PANELS and _is_figure(load_w):
            return load_w / self._load_a
        settings = self._tables.settings
        return settings["volts of the mains"] if self._mains else settings["volts of the 12 V side"]

    def _say(self, code: CircuitCode, *, has: float | None = None, needs: float | None = None) -> None:
        self._problems.append(CircuitProblem(code=code, has=has, needs=needs))
