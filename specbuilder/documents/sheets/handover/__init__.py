"""The hand-over pack: what was read and signed, what is shown on the day of collection, what is kept in the van.

Made of what is fitted and of nothing else: nobody is shown, told or asked to read what this van does not have.
"""

from __future__ import annotations

from specbuilder.documents.blocks import Paper
from specbuilder.documents.sheets.running import running
from specbuilder.documents.sheets.workshop.material import material
from specbuilder.model.papers import Case

from .certificates import certificates
from .circuits import circuits
from .closing import signed, snags
from .keeping import keeping
from .record import record
from .scales import scales
from .terms import terms
from .walk import walk

_PARTS = (record, circuits, scales, certificates, walk, keeping, terms, snags, signed)
"""In the order of the day: what the workshop has read, what is shown, what the customer takes home, the signatures."""


def handover_pack(case: Case) -> Paper:
    """Everything for the day of collection."""
    found = material(case)
    return Paper(
        name="handover",
        title="Hand-over pack",
        running=running(case, private=False),
        blocks=tuple(block for part in _PARTS for block in part(found)),
    )
