"""``sources``: where every number comes from, or one formula by its name."""

from __future__ import annotations

import difflib

from specbuilder.model.catalogue import Catalogue
from specbuilder.session.calculation_names import calculation_names
from specbuilder.storage.formula_texts import read_formulas
from specbuilder.wording.sources import formula_lines, sources_page

from .answers import Answer
from .output import Exit, StopError


def sources(catalogue: Catalogue, formula: str | None) -> Answer:
    """The page, or the entries of that name.

    Raises:
        StopError: no formula is called so.
    """
    formulas = read_formulas(calculation_names())
    if formula is None:
        return Answer(sources_page(catalogue, formulas))
    found = [one for one in formulas if formula in (one.name, f"{one.module}.{one.name}")]
    if not found:
        near = difflib.get_close_matches(formula, [one.name for one in formulas], n=1)
        hint = f" Did you mean {near[0]}?" if near else " specbuilder sources lists them all."
        raise StopError(Exit.UNUSABLE, f'There is no formula "{formula}".{hint}')
    return Answer(tuple(line for one in found for line in formula_lines(one)))
