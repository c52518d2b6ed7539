"""What is still to be put right, and the signatures."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Column, Heading, Paragraph, Signatures, Table
from specbuilder.documents.sheets.workshop.material import Material

_SNAGS = 8
"""Lines to write on; a longer list means that the van is not ready."""
_COLUMNS = (
    Column(head="No.", right=True, share=0.5),
    Column(head="What is to be put right, and where", share=4.5),
    Column(head="By whom", share=1.3),
    Column(head="Until", share=1.2),
    Column(head="Done on", share=1.2),
)
_NOT_FOR_SAFETY = (
    "What is not right today, in the customer's words. Nothing that is about safety stands here: that is put right "
    "before the van leaves."
)
_DONE = (
    "Every line of the walk round was shown and done once; the papers named above were handed over; what is open "
    "stands on the snag list."
)


def snags(found: Material) -> Iterator[Block]:
    """Blank lines with dates."""
    yield Heading(text="Collected", level=1, new_page=True)
    yield Heading(text="Snag list")
    yield Paragraph(text=_NOT_FOR_SAFETY)
    rows = tuple((f"{number}", "", "", "", "") for number in range(1, _SNAGS + 1))
    yield Table(columns=_COLUMNS, rows=rows, blank=frozenset({1, 2, 3, 4}))


def signed(found: Material) -> Iterator[Block]:
    """Whoever was there."""
    yield Heading(text="Handed over")
    yield Paragraph(text=_DONE)
    yield Signatures(roles=("Customer", f"For {found.catalogue.firm.name}", "Foreman"))
