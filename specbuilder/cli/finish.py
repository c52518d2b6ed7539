"""``finish``: the open questions answered cheapest, lightest, soonest or nearest to the house usual."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Aim, Proposal
from specbuilder.session.evaluate import evaluate
from specbuilder.session.finish import finish as finished
from specbuilder.wording.proposal import nothing_open, proposal_spoken
from specbuilder.wording.ways import nothing_changed_yet

from . import asjson_ways
from .answers import Answer
from .change import Target
from .output import Exit, StopError
from .proposing import Offer, take_offer


def finish(catalogue: Catalogue, report: Report, aim: Aim, *, json: bool) -> Answer:
    """The proposal, with its totals; nothing is changed."""
    proposal = finished(catalogue, report.spec, aim)
    if json:
        return Answer((_json(catalogue, report.spec, proposal),), _code(proposal))
    if proposal is None:
        return Answer((nothing_open(),))
    after = evaluate(catalogue, proposal.spec)
    hint = f"{nothing_changed_yet()} To take all of it, add --take."
    return Answer((*proposal_spoken(catalogue, after, proposal), hint), _code(proposal))


def finish_taking(target: Target, aim: Aim, *, json: bool) -> Answer:
    """Takes the proposal as one step of undo; what is whole already stays as it is.

    Raises:
        StopError: it was refused, or the job cannot be had; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """

    def choose(catalogue: Catalogue, spec: Spec) -> Offer:
        proposal = finished(catalogue, spec, aim)
        told = _json(catalogue, spec, proposal) if json else ""
        if proposal is None:
            return Offer(edits=(), lines=(nothing_open(),), json=told)
        lines = proposal_spoken(catalogue, evaluate(catalogue, proposal.spec), proposal)
        return Offer(edits=proposal.edits, lines=lines, json=told, code=_code(proposal))

    return take_offer(target, choose)


def aim_of(text: str) -> Aim:
    """What was typed behind ``--by``.

    Raises:
        StopError: it is none of them.
    """
    for aim in Aim:
        if text == aim.value:
            return aim
    raise StopError(Exit.UNUSABLE, f'--by: "{text}" is nothing to go by: use price, mass, weeks or usual.')


def _json(catalogue: Catalogue, before: Spec, proposal: Proposal | None) -> str:
    after = evaluate(catalogue, proposal.spec if proposal else before)
    return asjson_ways.proposal_json(catalogue, before, after, proposal, nothing_open())


def _code(proposal: Proposal | None) -> Exit:
    """What could not be answered was asked for all the same."""
    return Exit.BROKEN if proposal and proposal.unanswered else Exit.FINE
