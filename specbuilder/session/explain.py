"""Why something is as it is, for one spec."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind, Finding, Reasons
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState
from specbuilder.model.spec import Spec
from specbuilder.rulegraph import explain as chains

from .evaluate import evaluate
from .situate import lay


def why_option(catalogue: Catalogue, spec: Spec, option: OptionId) -> Cause | None:
    """The chain behind a blocked or following option; None when it is open, chosen or not in the catalogue."""
    if option not in catalogue.options:
        return None
    status = evaluate(catalogue, spec).options[option]
    if status.state not in (OptionState.BLOCKED, OptionState.FOLLOWS):
        return None
    if status.cause is not None and status.cause.kind is CauseKind.LEDGER:
        return status.cause
    laid = lay(catalogue, spec)
    return chains.why_option(laid.run, option, laid.stands[option])


def reasons(catalogue: Catalogue, spec: Spec, option: OptionId, most: int = 3) -> Reasons | None:
    """Why an option is blocked or follows, at most so many reasons; None when it is open, chosen or unknown."""
    cause = why_option(catalogue, spec, option)
    return None if cause is None or most < 1 else Reasons(causes=(cause,), complete=False)


def why_finding(catalogue: Catalogue, spec: Spec, finding: Finding) -> Cause:
    """What a finding rests on."""
    return chains.why_finding(lay(catalogue, spec).run, finding)
