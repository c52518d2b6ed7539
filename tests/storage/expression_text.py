"""Rules as values back to their written form, to hold the reader against itself."""

from __future__ import annotations

from collections.abc import Collection
from decimal import Decimal
from typing import assert_never

from specbuilder.model.ids import BriefKey
from specbuilder.model.rules import (
    Always,
    AnyOf,
    Atom,
    BriefIs,
    Chosen,
    FigureAbove,
    FitsVan,
    Given,
    GroupAnswered,
    MarginBelow,
    NeedsMet,
    Not,
    PlacesLegal,
    WithinBound,
    ZonesFree,
)


def expression_text(expression: AnyOf, job_keys: Collection[BriefKey] = ()) -> str:
    """The written form; ``job_keys`` are the keys written ``job.``, all others are the brief's."""
    return " | ".join(" + ".join(_atom_text(atom, job_keys) for atom in term.atoms) for term in expression.terms)


def _atom_text(atom: Atom, job_keys: Collection[BriefKey]) -> str:
    match atom:
        case Chosen(option):
            return option
        case Given(tag, place):
            return f"#{tag}@{place}" if place else f"#{tag}"
        case GroupAnswered(group):
            return f"group:{group}"
        case BriefIs(key, compare, value):
            shown = value if isinstance(value, str) else _number_text(value)
            return f"{'job' if key in job_keys else 'brief'}.{key}{compare.value}{shown}"
        case MarginBelow(ledger, amount):
            return f"margin({ledger})<{_number_text(amount)}"
        case FigureAbove(ledger, amount):
            return f"figure({ledger})>{_number_text(amount)}"
        case Always():
            return "always"
        case FitsVan():
            return "fits-van"
        case NeedsMet():
            return "needs-met"
        case PlacesLegal():
            return "places-legal"
        case WithinBound(ledger, within, factor, minus):
            bound = f"{_number_text(factor)} bound" if factor != 1 else "bound"
            return f"{ledger} {'<=' if within else '>='} {bound}" + (f" - {_number_text(minus)}" if minus else "")
        case ZonesFree(zones):
            return f"zone-use({','.join(zones)}) <= bound"
        case Not(inner):
            return f"!{_atom_text(inner, job_keys)}"
        case _:
            assert_never(atom)


def _number_text(number: float) -> str:
    """Without exponent, which the written form does not know, and without digits that say nothing."""
    return f"{int(number)}" if number == int(number) else f"{Decimal(repr(number)):f}"
