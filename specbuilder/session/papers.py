"""Everything that papers tell of one revision, brought together."""

from __future__ import annotations

from datetime import date

from specbuilder.model.papers import Case
from specbuilder.model.stand import Stand
from specbuilder.workshop.plan import build_plan
from specbuilder.workshop.view import view_of

from .beside import figures_beside
from .change_order import change_order
from .compare import compare
from .life import SIGNED_STATES


def case_of(
    stand: Stand,
    today: date,
    *,
    before: Stand | None = None,
    replaced_by: int | None = None,
    checksum: str = "",
) -> Case:
    """What papers are made from.

    Args:
        stand: the revision.
        today: the day the papers are made; what is not signed yet is planned from it.
        before: the revision it replaces.
        replaced_by: the revision that has replaced it.
        checksum: of its file.
    """
    spec = stand.spec
    signed = date.fromisoformat(spec.signed_on) if spec.signed_on else today
    changes = compare(before, stand) if before is not None else None
    order = None
    if before is not None and changes is not None and before.spec.state in SIGNED_STATES:
        order = change_order(before, stand, changes)
    return Case(
        stand=stand,
        today=today,
        plan=build_plan(view_of(stand.catalogue, spec, stand.report), signed),
        beside=figures_beside(stand.catalogue, spec),
        before=before,
        changes=changes,
        change_order=order,
        replaced_by=replaced_by,
        checksum=checksum,
    )
