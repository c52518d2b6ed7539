"""Figures that are told beside a ledger: worked out when somebody looks at it, a file is written or a script asks."""

from __future__ import annotations

from specbuilder.calc import told_beside
from specbuilder.calc.limits.doubts import told
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.ledger import Reading
from specbuilder.model.spec import Spec

from .machine import lock_of
from .situate import lay


def figures_beside(catalogue: Catalogue, spec: Spec, ledger: LedgerId | None = None) -> tuple[Reading, ...]:
    """The figures in the detail of a ledger, or of all; in the order they are shown."""
    with lock_of(catalogue):
        situation = lay(catalogue, spec, exact=False).situation
        return tuple(told(calculation, situation) for calculation in told_beside(catalogue, ledger))
