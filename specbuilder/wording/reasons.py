"""A chain of reasons as numbered lines."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause
from specbuilder.model.report import Report


def reasons(catalogue: Catalogue, report: Report, cause: Cause) -> tuple[str, ...]:
    """``1. you took Side galley, right`` ...: what it rests on first, the conclusion last."""
    raise NotImplementedError


def reason_head(catalogue: Catalogue, report: Report, cause: Cause) -> str:
    """The sentence the customer hears, of the first rule in the chain; empty when no rule takes part."""
    raise NotImplementedError


def culprit(catalogue: Catalogue, report: Report, cause: Cause) -> str:
    """The main thing in the way, in a few words: ``Side galley``, ``answer: barrier height``, ``roof load``."""
    raise NotImplementedError
