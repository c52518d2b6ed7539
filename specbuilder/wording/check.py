"""Sentences of the last step."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.report import Report

from .glance import counts
from .plain import raised


def standing(catalogue: Catalogue, report: Report) -> str:
    """Where the whole stands: ``2 broken at STOP, 1 to accept in writing; 4 undecided, 3 not known``."""
    stop, sign = len(report.broken(Level.STOP)), len(report.broken(Level.SIGN))
    parts: list[str] = []
    if stop:
        parts.append(f"{stop} broken at STOP: cannot be signed or built as it stands")
    if sign:
        parts.append(f"{sign} broken at SIGN: to be mended or accepted in writing")
    if report.strangers:
        parts.append(f"{len(report.strangers)} chosen that this catalogue does not have")
    if unknown := len(report.cannot_tell(Level.STOP)):
        parts.append(f"{unknown} at STOP that cannot be told yet")
    undecided, not_known, _, _ = counts(report)
    if undecided:
        parts.append(f"{undecided} undecided")
    if not_known:
        parts.append(f"{not_known} not known")
    if parts:
        return raised("; ".join(parts)) + "."
    if report.verdict is Verdict.HOLDS:
        return "Nothing that is summed so far is broken, undecided or unknown at STOP."
    return "Cannot tell yet."


def open_head() -> str:
    """Over the open things."""
    return "OPEN: undecided and not known, who finds it out by when"


def cautions_head() -> str:
    """Over the notes."""
    return "NOTES: said and printed"


def hand_over_line() -> str:
    """The line that writes the spec."""
    return "Write the spec for the workshop"


def hand_over_hint() -> str:
    """What it does."""
    return "Enter writes the spec as it stands, with all that is open or broken named in it, beside the jobs."


def handed_over(path: str) -> str:
    """Where it was written."""
    return f"Spec written to {path}"
