"""What protects the 230 V side of a build, point by point: read off its circuits and what its choices give."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.calc.power.power_parts import CHARGER_ON_INVERTER, PLUG
from specbuilder.model.circuits import CircuitLine
from specbuilder.model.ids import OptionId, Tag
from specbuilder.model.mains import MainsCode, MainsPoint, MainsStand
from specbuilder.model.situation import Situation

from .cable_sizing import BREAKER, EARTH
from .circuit_tables import TableLack, circuit_tables

INVERTER = Tag("inverter")
PLUG_SWITCH, INVERTER_SWITCH = Tag("rcd"), Tag("inverter-protected")
CHANGEOVER = Tag("changeover")
ON_PLUG, AWAY, COOKING_ELECTRIC = Tag("socket-hook-up"), Tag("socket-off-grid"), Tag("induction")
"""What gives both of the first, or the third, is fed by plug and inverter in turn, where there are both."""
LEAST_BOND = "least bonding conductor in mm2"
"""A figure of the table of cable settings."""


def mains_protection(situation: Situation, lines: tuple[CircuitLine, ...]) -> tuple[MainsPoint, ...]:
    """Every point, in the order of an inspection; none where nothing of the build is at 230 V."""
    mains = tuple(line for line in lines if line.is_mains)
    build = _Build(situation, mains)
    return tuple(build.points()) if mains or build.plug or build.inverter else ()


class _Build:
    """The mains side of one build."""

    def __init__(self, situation: Situation, lines: tuple[CircuitLine, ...]) -> None:
        self._placed, self._lines = situation.placed, lines
        self._tables = circuit_tables(situation.catalogue)
        self._given: dict[str, list[OptionId]] = {}
        for placed in situation.placed:
            for tag in placed.option.gives:
                self._given.setdefault(tag.partition("@")[0], []).append(placed.option.id)
        self.inverter = INVERTER in self._given
        self.plug = PLUG in self._given or (bool(lines) and not self.inverter)

    def points(self) -> Iterator[MainsPoint]:
        """Each of them."""
        if self.plug:
            yield self._brought(MainsCode.PLUG_RESIDUAL_CURRENT, PLUG_SWITCH)
        if self.inverter:
            yield self._brought(MainsCode.INVERTER_RESIDUAL_CURRENT, INVERTER_SWITCH)
        yield self._breakers()
        yield self._bonding()
        if self.inverter:
            by = self._by(INVERTER_SWITCH) or self._by(INVERTER)
            yield MainsPoint(code=MainsCode.EARTH_LINK_CHANGES, stand=MainsStand.BY_PAPER, by=by)
        else:
            yield MainsPoint(code=MainsCode.ONE_EARTH_LINK, stand=MainsStand.HOLDS)
        if self.inverter and self.plug:
            both = not set(self._by(ON_PLUG)).isdisjoint(self._by(AWAY)) or COOKING_ELECTRIC in self._given
            apart = MainsPoint(code=MainsCode.SOURCES_APART, stand=MainsStand.HOLDS)
            yield self._brought(MainsCode.CHANGEOVER, CHANGEOVER) if both or CHANGEOVER in self._given else apart
        if self.inverter:
            yield from self._charger()

    def _by(self, tag: str) -> tuple[OptionId, ...]:
        return tuple(self._given.get(tag, ()))

    def _brought(self, code: MainsCode, tag: str) -> MainsPoint:
        by = self._by(tag)
        return MainsPoint(code=code, stand=MainsStand.HOLDS if by else MainsStand.TO_SETTLE, by=by)

    def _starts(self, line: CircuitLine) -> tuple[str, str]:
        """What feeds it and what protects it, as the table of starts has it."""
        start = None if isinstance(self._tables, TableLack) else self._tables.start(line.from_point, line.bus)
        return (start.feeds, start.fuse) if start is not None else ("", "")

    def _breakers(self) -> MainsPoint:
        """A circuit of which nothing is known has none."""
        ask = [line for line in self._lines if self._starts(line)[0] != EARTH]
        lack = tuple(line.label for line in ask if self._starts(line)[1] != BREAKER or line.fuse_a is None)
        stand = MainsStand.TO_SETTLE if lack else MainsStand.HOLDS
        code, has = MainsCode.TWO_POLE_BREAKERS, len(ask) - len(lack)
        return MainsPoint(code=code, stand=stand, circuits=lack, has=has, needs=len(ask))

    def _bonding(self) -> MainsPoint:
        """An inverter alone may be made for use without; its paper says."""
        bonds = [line for line in self._lines if self._starts(line)[0] == EARTH]
        least = None if isinstance(self._tables, TableLack) else self._tables.settings.get(LEAST_BOND)
        thinnest = min((line.area_mm2 for line in bonds if line.area_mm2 is not None), default=None)
        stand = MainsStand.TO_SETTLE if self.plug else MainsStand.BY_PAPER
        if bonds and thinnest is not None:
            stand = MainsStand.HOLDS if least is not None and thinnest >= least else MainsStand.TO_SETTLE
        marks = tuple(line.label for line in bonds)
        return MainsPoint(code=MainsCode.BONDING, stand=stand, circuits=marks, has=thinnest, needs=least)

    def _charger(self) -> Iterator[MainsPoint]:
        """Only one that plugs into the inverter is fed by it."""
        chargers = tuple(p.option.id for p in self._placed if p.option.power.mains_charge_a)
        wrong = self._by(CHARGER_ON_INVERTER)
        if chargers or wrong:
            stand = MainsStand.TO_SETTLE if wrong else MainsStand.HOLDS
            yield MainsPoint(code=MainsCode.CHARGER_BEFORE_CHANGEOVER, stand=stand, by=wrong or chargers)
