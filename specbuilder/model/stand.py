"""Where something stands: a spec with the catalogue it is held against and all that follows."""

from __future__ import annotations

from dataclasses import dataclass

from .catalogue import Catalogue
from .report import Report
from .spec import Spec


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stand:
    """One side of a comparison, and what papers are made from."""

    catalogue: Catalogue
    spec: Spec
    report: Report
