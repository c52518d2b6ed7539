"""The house usual before it is taken: each option, and all together."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.report import Report

from . import quantities
from .key_names import pressed
from .names import group_name, option_name

_MONEY = 9
_MASS = 10


def usual_lines(catalogue: Catalogue, report: Report, options: tuple[OptionId, ...], width: int) -> tuple[str, ...]:
    """``Battery: Small pack   +1,668   +19 kg``, one for each option, money and mass at the right."""
    return tuple(_line(catalogue, report, option, width) for option in options)


def usual_total(catalogue: Catalogue, report: Report, options: tuple[OptionId, ...]) -> str:
    """All together, and what Enter does; or that there is nothing to take."""
    if not options:
        return (
            "Nothing is undecided here, or the house has no usual for it. "
            f"{pressed('next')} goes to the next open thing."
        )
    money = quantities.money_delta(sum(report.options[o].effect.gross_pence for o in options))
    mass = quantities.kilograms_delta(sum(report.options[o].effect.mass_kg for o in options))
    return f"Together {money}, {mass}. Enter takes all of it, Esc none; one undo takes it back."


def _line(catalogue: Catalogue, report: Report, option: OptionId, width: int) -> str:
    effect = report.options[option].effect
    name = f"{group_name(catalogue, catalogue.options[option].group)}: {option_name(catalogue, option)}"
    room = max(width - _MONEY - _MASS - 1, 8)
    name = name if len(name) <= room else name[: room - 2].rstrip() + ".."
    money, mass = quantities.money_delta(effect.gross_pence), quantities.kilograms_delta(effect.mass_kg)
    return f"{name:<{room}}{money:>{_MONEY}}{mass:>{_MASS}}"
