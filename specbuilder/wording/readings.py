"""Ledgers and figures in words: one line, a bar, or every entry."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Verdict
from specbuilder.model.ledger import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """What a bar needs: shares of the bound, and the words beside it."""

    short: str
    """At most 12 characters."""
    used: float | None
    """Least value over the bound, 0 or more; None: no bar can be drawn."""
    may: float | None
    """Most value over the bound; above 1 it reaches past the bound (or, for *at least*, well over it)."""
    amount: str
    """``13 of 8 kg``, ``218-294 kg left``."""
    verdict: Verdict
    words: str
    """``holds: 218 kg spare``, ``cannot tell: barrier``."""
    level: str
    """``STOP`` when broken at that level, else empty."""


def reading_line(catalogue: Catalogue, reading: Reading) -> str:
    """``holds: 218 kg spare``, ``broken: 13 of 8 kg, over by 5 kg``, ``cannot tell: needs barrier height``."""
    raise NotImplementedError


def reading_bar(catalogue: Catalogue, reading: Reading) -> Bar:
    """Numbers and words for a bar."""
    raise NotImplementedError


def reading_detail(catalogue: Catalogue, reading: Reading) -> tuple[str, ...]:
    """Head line, entries, sum, bound, formula, source, assumptions: one line each."""
    raise NotImplementedError
