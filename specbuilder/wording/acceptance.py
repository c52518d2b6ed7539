"""The words a finding is accepted in."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import RuleId
from specbuilder.model.report import Report

from .findings import finding_line

CUSTOMER = "customer"


def accept_words(catalogue: Catalogue, report: Report, rule: RuleId) -> str:
    """What is said now, as it will stand in writing: reason and figures."""
    finding = next((f for f in report.findings if f.rule == rule), None)
    return finding_line(catalogue, report, finding) if finding else catalogue.rules[rule].because


def default_by(report: Report) -> str:
    """Who gives their word unless another name is typed: the customer, by name when it is known."""
    return report.spec.customer.name or CUSTOMER


def accept_hint() -> str:
    """What the second key does."""
    return "Enter accepts it in these words; Esc leaves it open"
