"""Protection of the 230 V side in words: what must stand, and what of the build brings it."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.mains import MainsCode, MainsPoint, MainsStand

from .names import listed, option_name
from .plain import ended
from .quantities import number_text, quantity

TITLE = "Protection of the 230 V side"
CAUTION = (
    "230 V kills: a competent electrician fits, inspects and tests it by the code in force where the van is built and "
    "used, and signs before first use. 12 V and 230 V share no duct and no box."
)
_STANDS = {MainsStand.HOLDS: "Holds", MainsStand.BY_PAPER: "Mind", MainsStand.TO_SETTLE: "To settle"}


def mains_lines(catalogue: Catalogue, points: tuple[MainsPoint, ...]) -> tuple[str, ...]:
    """Title, every point, the caution; nothing where nothing is at 230 V."""
    return (TITLE, *(mains_line(catalogue, point) for point in points), CAUTION) if points else ()


def mains_line(catalogue: Catalogue, point: MainsPoint) -> str:
    """``Holds: a two-pole breaker for every circuit: 7 of 7.``"""
    by = listed(option_name(catalogue, option) for option in point.by) or "what is chosen"
    return ended(f"{_STANDS[point.stand]}: {_must(point)}: {_told(point, by)}")


def _must(point: MainsPoint) -> str:
    match point.code:
        case MainsCode.PLUG_RESIDUAL_CURRENT:
            return "30 mA two-pole residual-current switch (RCD), type A unless a paper asks for more, behind the inlet"
        case MainsCode.INVERTER_RESIDUAL_CURRENT:
            return (
                "30 mA two-pole residual-current switch (RCD), type A unless its paper asks more, behind the inverter"
            )
        case MainsCode.TWO_POLE_BREAKERS:
            return "two-pole breaker for every circuit, since a pitch may have live and neutral swapped"
        case MainsCode.BONDING:
            least = "" if point.needs is None else f" of {quantity(point.needs, 'mm2', '')} or more"
            return f"bonding{least} from the earth bar to the body, gas and water pipes and other metal within reach"
        case MainsCode.ONE_EARTH_LINK | MainsCode.EARTH_LINK_CHANGES:
            return "one link of neutral and earth, at the source that feeds"
        case MainsCode.CHANGEOVER | MainsCode.SOURCES_APART:
            return "plug and inverter never feed the same circuit together"
        case MainsCode.CHARGER_BEFORE_CHANGEOVER:
            return "mains charger fed from the plug alone, before any changeover"
        case _:
            assert_never(point.code)


def _told(point: MainsPoint, by: str) -> str:
    settle = point.stand is MainsStand.TO_SETTLE
    match point.code:
        case MainsCode.PLUG_RESIDUAL_CURRENT | MainsCode.INVERTER_RESIDUAL_CURRENT:
            return "nothing that is chosen brings it" if settle else f"brought by {by}"
        case MainsCode.TWO_POLE_BREAKERS:
            count = f"{number_text(point.has or 0, 'lines')} of {number_text(point.needs or 0, 'lines')}"
            return f"{count}, not {listed(point.circuits)}" if settle else count
        case MainsCode.BONDING:
            return _bonded(point)
        case MainsCode.ONE_EARTH_LINK:
            return "the pitch has it, and the van has none"
        case MainsCode.EARTH_LINK_CHANGES:
            return (
                f"the pitch has it on the plug; while the inverter feeds, its own is closed, and opened before the "
                f"plug feeds, by {by} if its paper says so; no fixed link in the consumer unit. Without a link the "
                "residual-current switch does not trip"
            )
        case MainsCode.CHANGEOVER:
            need = "a two-pole changeover that breaks before it makes"
            return f"needs {need}, and nothing that is chosen brings it" if settle else f"{need}, brought by {by}"
        case MainsCode.SOURCES_APART:
            return "no circuit is on both"
        case MainsCode.CHARGER_BEFORE_CHANGEOVER:
            return f"the inverter would feed it and empty its own battery: {by}" if settle else by
        case _:
            assert_never(point.code)


def _bonded(point: MainsPoint) -> str:
    if point.stand is MainsStand.BY_PAPER:
        return (
            "no circuit of the choices is one; the inverter's paper says what it asks for, and the electrician decides"
        )
    if not point.circuits:
        return "nothing that is chosen brings it"
    area = "section not known" if point.has is None else quantity(point.has, "mm2", "")
    return f"{listed(point.circuits)}, {area}"
