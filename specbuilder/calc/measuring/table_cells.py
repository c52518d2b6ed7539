"""Numbers of the catalogue's tables, by the word that begins their row."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from specbuilder.calc.formulas.validity import missing
from specbuilder.model.catalogue import Catalogue


@lru_cache(maxsize=64)
def _column(catalogue: Catalogue, table: str, column: str) -> Mapping[str, float]:
    """One column by the first cell of each row; a memo of the catalogue."""
    found = catalogue.tables.get(table)
    keys = [c.key for c in found.columns] if found is not None else []
    if found is None or column not in keys:
        return {}
    at = keys.index(column)
    return {str(row[0]): float(row[at]) for row in found.rows if not isinstance(row[at], str)}


def cell(catalogue: Catalogue, table: str, row: str, column: str) -> float:
    """The number in that row and column.

    Raises:
        OutsideValidity: when there is none.
    """
    found = _column(catalogue, table, column).get(row)
    return missing(f"{column} of {row} in the table {table}") if found is None else found


@lru_cache(maxsize=16)
def columns(catalogue: Catalogue, table: str, *names: str) -> tuple[tuple[float, ...], ...]:
    """Every row of a table whose cells in these columns are all numbers, in its order; a memo of the catalogue."""
    found = catalogue.tables.get(table)
    keys = [c.key for c in found.columns] if found is not None else []
    if found is None or not set(names) <= set(keys):
        return ()
    rows = [[row[keys.index(name)] for name in names] for row in found.rows]
    return tuple(tuple(map(float, row)) for row in rows if not any(isinstance(x, str) for x in row))
