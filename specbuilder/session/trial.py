"""What a what-if begins with."""

from __future__ import annotations

from specbuilder.model.kinds import JobState
from specbuilder.model.stand import Stand

from .life import SIGNED_STATES, next_revision
from .state import Session


def trial_of(stand: Stand, base: Stand | None) -> Session:
    """A session to try things in: of what has left the house, its next revision.

    ``base`` is the signed revision that the spec itself changes.
    """
    spec = stand.spec
    if spec.state is JobState.DRAFT:
        return Session(catalogue=stand.catalogue, spec=spec, base=base)
    signed = spec.state in SIGNED_STATES
    return Session(catalogue=stand.catalogue, spec=next_revision(stand.catalogue, spec), base=stand if signed else base)
