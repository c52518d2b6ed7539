"""What ``fix``, ``finish`` and ``switch`` share: a set of edits that was found, taken as one step of undo."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Take, TakeUsual, Together
from specbuilder.model.spec import Spec
from specbuilder.session.state import Session, do
from specbuilder.wording.edits import done
from specbuilder.wording.plain import ended
from specbuilder.wording.refusals import refused

from .answers import Answer
from .change import Target, standing, through
from .output import Exit, StopError
from .working import Worked

NOTHING_CHANGED = "Nothing was changed."


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """Edits that were found for a spec."""

    edits: tuple[Edit, ...]
    lines: tuple[str, ...] = ()
    """Said of them before what was done."""
    json: str = ""
    """Printed instead of sentences once they are taken."""
    code: Exit = Exit.FINE


def take_offer(target: Target, choose: Callable[[Catalogue, Spec], Offer]) -> Answer:
    """Takes what ``choose`` finds: a job through its journal, a file in its place, or written elsewhere.

    Raises:
        StopError: nothing was found or it was refused, or the job cannot be had; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """
    offers: list[Offer] = []

    def work(session: Session) -> Worked:
        offers.append(choose(session.catalogue, session.spec))
        return _taken(session, offers[-1], target.file, datetime.now())

    worked = through(target, work)
    offer = offers[-1]
    answer = replace(standing(worked.session.catalogue, worked.session, worked.lines), code=offer.code)
    return replace(answer, lines=(offer.json,)) if offer.json else answer


def refuse(file: str, words: str) -> StopError:
    """Ends the command: what was asked of this file cannot be done."""
    return StopError(Exit.BROKEN, f"{file}: {ended(words)}", NOTHING_CHANGED)


def _taken(session: Session, offer: Offer, file: str, now: datetime) -> Worked:
    """The session after all of it as one step.

    Raises:
        StopError: it was refused.
    """
    if not offer.edits:
        return Worked(session=session, edits=(), lines=offer.lines)
    edit = _as_one(tuple(_stamped(edit, f"{now:%Y-%m-%d %H:%M}") for edit in offer.edits))
    before = session.spec
    after, outcome = do(session, edit)
    if outcome.refused is not None:
        raise refuse(file, refused(session.catalogue, edit, outcome))
    line = ended(done(session.catalogue, edit, before, after.spec, outcome.brought, outcome.left))
    return Worked(session=after, edits=(edit,), lines=(*offer.lines, line))


def _as_one(edits: tuple[Edit, ...]) -> Edit:
    return edits[0] if len(edits) == 1 else Together(edits=edits)


def _stamped(edit: Edit, at: str) -> Edit:
    """With the time a choice is taken at."""
    match edit:
        case Take() | TakeUsual():
            return replace(edit, at=at)
        case Together(edits=edits):
            return Together(edits=tuple(_stamped(part, at) for part in edits))
        case _:
            return edit
