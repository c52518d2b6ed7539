"""What is said of a spec in its file: findings, cautions, and rules that could not be heard."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Verdict
from specbuilder.workshop.cautions import cautions_of
from specbuilder.workshop.view import SpecView

from .spec_sums import verdict_words
from .toml_out import Value, comment, item, table

_FINDINGS = "FINDINGS: what is broken, what cannot be told yet, and what is to be said. Computed."
_CAUTIONS = "CAUTIONS. They never go away by being accepted. Computed."
_UNHEARD = "NOT CHECKED: rules that could not be heard because a sum in [not_looked_at] is not made. Computed."


def notes(view: SpecView) -> Iterator[str]:
    """All of it, in the order it stops the work."""
    found = [finding for finding in view.report.findings if finding.verdict is not Verdict.HOLDS]
    yield "\n" + comment(_FINDINGS if found else f"{_FINDINGS} None.")
    yield from (_finding(view, finding) for finding in found)
    cautions = tuple(_cautions(view))
    yield "\n" + comment(_CAUTIONS if cautions else f"{_CAUTIONS} None.")
    yield from cautions
    rules = view.catalogue.rules
    unheard = [rules[key].because for key in view.report.silent_rules if key in rules]
    yield table("not_checked", {"rules": unheard or "None"}, remark=_UNHEARD)


def _finding(view: SpecView, finding: Finding) -> str:
    catalogue = view.catalogue
    rule = catalogue.rules.get(finding.rule)
    ledger = catalogue.ledgers.get(finding.reading) if finding.reading else None
    verdict = verdict_words(finding.level, finding.verdict)
    values: dict[str, Value | None] = {
        "rule": finding.rule,
        "level": finding.level.value,
        "verdict": f"{verdict}, accepted" if finding.accepted else verdict,
        "because": rule.because if rule else None,
        "choices": view.names(finding.subjects),
        "sum": ledger.name if ledger else None,
        "needs": view.lacks(finding.lacks),
    }
    return item("finding", values)


def _cautions(view: SpecView) -> Iterator[str]:
    """Each once with everything it is about."""
    for caution, about in cautions_of(view):
        values: dict[str, Value | None] = {
            "text": caution.text,
            "by_whom": caution.who_must_do_or_sign,
            "shown": caution.shown_where,
            "for": view.names(about),
        }
        yield item("caution", values)
