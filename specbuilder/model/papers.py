"""What a paper is made from, whatever paper it is."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from .change_order import ChangeOrder
from .comparison import Comparison
from .ledger import Reading
from .plan import BuildPlan
from .spec import Spec
from .stand import Stand


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """One revision of a job with all that papers tell of it."""

    stand: Stand
    today: date
    """The day the paper is made."""
    plan: BuildPlan
    beside: tuple[Reading, ...]
    """The figures told beside the ledgers."""
    before: Stand | None = None
    """The revision it replaces; None for a first one."""
    signed: tuple[Spec, ...] = ()
    """The signed revisions before it, oldest first."""
    beside_before: tuple[Reading, ...] = ()
    """The figures told beside its ledgers."""
    changes: Comparison | None = None
    """What differs from it; None for a first one."""
    change_order: ChangeOrder | None = None
    """Set when the revision it replaces was signed."""
    replaced_by: int | None = None
    """Number of the signed revision that has replaced this one: it is not to be built any more."""
    checksum: str = ""
    """Of the spec's file, so that paper and file can be told to belong together."""
