"""``sources``: where every number comes from, or one ledger, figure or formula by its name."""

from __future__ import annotations

import difflib

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ledger import LedgerSpec
from specbuilder.model.sources import FormulaText
from specbuilder.session.calculation_names import calculation_names
from specbuilder.storage.formula_texts import read_formulas
from specbuilder.wording.names import listed
from specbuilder.wording.sources import formula_lines, how_to_ask, ledger_lines, sources_page

from .answers import Answer
from .output import Exit, StopError

_SOME = 3


def sources(catalogue: Catalogue, name: str | None) -> Answer:
    """The page, or the entries of that name.

    Raises:
        StopError: nothing is called so.
    """
    formulas = read_formulas(calculation_names())
    if name is None:
        return Answer((how_to_ask(), "", *sources_page(catalogue, formulas)))
    ledgers = _ledgers(catalogue, name)
    found = [one for one in formulas if name in (one.name, f"{one.module}.{one.name}")]
    if not found and not ledgers:
        raise StopError(
            Exit.UNUSABLE, f'No ledger, figure or formula is called "{name}".{_hint(catalogue, formulas, name)}'
        )
    return Answer(
        (
            *(line for one in ledgers for line in ledger_lines(catalogue, one, formulas)),
            *(line for one in found for line in formula_lines(one)),
        )
    )


def _ledgers(catalogue: Catalogue, name: str) -> list[LedgerSpec]:
    """The one of that id; else those of that name, short or whole."""
    wanted = name.casefold().strip()
    every = catalogue.ledgers.values()
    return [one for one in every if one.id == wanted] or [
        one for one in every if wanted in (one.short.casefold(), one.name.casefold())
    ]


def _hint(catalogue: Catalogue, formulas: tuple[FormulaText, ...], name: str) -> str:
    names = [*(one.name for one in formulas), *catalogue.ledgers]
    near = difflib.get_close_matches(name, names, n=_SOME)
    return f" Did you mean {listed(near, 'or')}?" if near else " specbuilder sources lists them all."
