"""Everything that papers tell of one revision, brought together."""

from __future__ import annotations

from datetime import date

from specbuilder.model.papers import Case
from specbuilder.model.plan import BuildPlan
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Spec
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
    signed: tuple[Spec, ...] = (),
    replaced_by: int | None = None,
    checksum: str = "",
) -> Case:
    """What papers are made from.

    Args:
        stand: the revision.
        today: the day the papers are made; what is not signed yet is planned from it.
        before: the revision it replaces.
        signed: the signed revisions before that one, oldest first.
        replaced_by: the revision that has replaced it.
        checksum: of its file.
    """
    spec = stand.spec
    changes = compare(before, stand) if before is not None else None
    order = None
    if before is not None and changes is not None and before.spec.state in SIGNED_STATES:
        order = change_order(before, stand, changes)
    return Case(
        stand=stand,
        today=today,
        plan=_plan(stand, before, today),
        beside=figures_beside(stand.catalogue, spec),
        before=before,
        signed=(*signed, before.spec) if order is not None and before else (),
        beside_before=figures_beside(before.catalogue, before.spec) if order is not None and before else (),
        changes=changes,
        change_order=order,
        replaced_by=replaced_by,
        checksum=checksum,
    )


def _plan(stand: Stand, before: Stand | None, today: date) -> BuildPlan:
    """Planned from the first signature on; what a later revision brings is ordered when that one is signed."""
    spec = stand.spec
    signed = [record.day for record in spec.recorded(RecordKind.SIGNED)]
    start = _day(signed[0]) or today if signed else today
    since = _day(spec.signed_on) or today
    old = {choice.option for choice in before.spec.choices} if before is not None and signed else None
    new = {choice.option: since for choice in spec.choices if old is not None and choice.option not in old}
    return build_plan(view_of(stand.catalogue, spec, stand.report), start, new)


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
