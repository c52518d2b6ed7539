"""The two lines that never move: which job, and where it stands."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report


def glance(catalogue: Catalogue, report: Report, width: int) -> str:
    """Price or range, weight left, undecided, not known, broken: in this order, shortened to fit ``width`` columns."""
    raise NotImplementedError


def head(catalogue: Catalogue, report: Report, width: int, saved: str = "", counter: str = "") -> str:
    """Job, customer, state, base van, ``saved 10:42``, counter: shortened to fit ``width`` columns."""
    raise NotImplementedError
