"""Findings in whole sentences."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.report import Report


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingWords:
    """A finding told in full, part by part."""

    head: str
    """``STOP, broken: Too heavy and you could not pull the roof shut.``"""
    rests_on: tuple[str, ...]
    """The choices, answers and the ledger it rests on, one line each."""
    lacks: tuple[str, ...]
    """What must be known or decided before it can be told, one line each."""
    fixes: tuple[str, ...]
    """What the house offers, one line each; empty when it holds."""
    source: str
    """``Source: mass-seats 41. ESTIMATE``"""


def finding_words(catalogue: Catalogue, report: Report, finding: Finding) -> FindingWords:
    """All of it."""
    raise NotImplementedError


def finding_line(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """One sentence or two, for lists."""
    raise NotImplementedError


def findings_none() -> str:
    """``Nothing is broken.``"""
    raise NotImplementedError
