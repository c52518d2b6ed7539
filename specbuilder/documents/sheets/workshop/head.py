"""The head of the pack: which job and revision, and what it replaces."""

from __future__ import annotations

from specbuilder.documents.blocks import Block, Facts, Paragraph, Weight
from specbuilder.documents.sheets.running import revision_words, running
from specbuilder.model.plain_text import one_line
from specbuilder.wording.dates import day_words
from specbuilder.wording.plain import raised

from .material import Material


def head(material: Material) -> tuple[Block, ...]:
    """Before anything else."""
    case, firm = material.case, material.catalogue.firm
    page = running(case, private=True)
    rows = [
        ("Job", page.job),
        ("Revision", raised(revision_words(material.spec))),
        ("State", raised(page.state)),
        ("Printed", day_words(case.today)),
        ("Catalogue", one_line(firm.catalogue_version)),
        ("Checksum of the file", one_line(case.checksum) or "the file is not written yet"),
    ]
    blocks: list[Block] = [Facts(rows=tuple(rows))]
    if material.spec.replaces is not None:
        old = f"This replaces revision {material.spec.replaces}. Take every page of that one off the floor."
        blocks.append(Paragraph(text=old, weight=Weight.STRONG))
        blocks.append(Facts(rows=((f"Old pages of revision {material.spec.replaces} returned: by, date", ""),)))
    return tuple(blocks)
