"""The glance line of the narrowest windows: nothing of it is ever cut away."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report

from . import quantities
from .glance import counts, weight_words
from .plain import fitted


def narrow_glance(catalogue: Catalogue, report: Report, width: int) -> str:
    """``£17,532-24,024  218-294 kg left  6 open 1 broken``: the counts stay whole, the price gives way."""
    undecided, unknown, broken, _ = counts(report)
    end = f"{undecided + unknown} open  {broken} broken"
    price = quantities.money_range_tight(report.price.gross, catalogue.firm.currency)
    weight = weight_words(catalogue, report, tight=True)
    return f"{fitted(f'{price}  {weight}', max(width - len(end) - 2, 4))}  {end}"
