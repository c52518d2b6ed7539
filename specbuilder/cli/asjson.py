"""Reports as JSON for other programs. Ids stand here, and the words beside them."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from typing import Any

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, Finding, Reasons
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import LedgerKind, Truth
from specbuilder.model.ledger import Lack, LedgerSpec, Reading
from specbuilder.model.power import Together
from specbuilder.model.report import Pence, Price, Report
from specbuilder.model.span import Span
from specbuilder.session.beside import figures_beside
from specbuilder.session.power_notes import never_together
from specbuilder.wording.findings import finding_line, finding_words
from specbuilder.wording.ledger_detail import outside_words
from specbuilder.wording.readings import reading_line
from specbuilder.wording.reasons import reasons

FORMAT = 1
"""Grows when a key changes its meaning or goes; a new key is no new format."""

_INCLUDED = {Truth.YES: True, Truth.NO: False, Truth.MAYBE: None}


def check_json(catalogue: Catalogue, report: Report) -> str:
    """All of a report, as ``check --json`` prints it."""
    readings = report.readings.values()
    return json_text(
        {
            "format": FORMAT,
            "number": report.spec.number,
            "revision": report.spec.revision,
            "state": report.spec.state.value,
            "catalogue": catalogue.firm.catalogue_version,
            "verdict": report.verdict.value,
            "van": report.van,
            "findings": [_finding(catalogue, report, finding) for finding in report.findings],
            "ledgers": [reading_value(catalogue, r) for r in readings if _is(catalogue, r, LedgerKind.LEDGER)],
            "figures": [
                *(reading_value(catalogue, r) for r in readings if _is(catalogue, r, LedgerKind.FIGURE)),
                *(reading_value(catalogue, r) for r in figures_beside(catalogue, report.spec)),
            ],
            "states": {option: status.state.value for option, status in report.options.items()},
            "cannot_run_together": [_together(one) for one in never_together(catalogue, report.spec)],
            "price": price_value(report.price),
            "undecided": list(report.undecided),
            "unknown": list(report.unknown),
            "assumed": list(report.assumed),
            "not_in_catalogue": list(report.strangers),
            "silent": {"ledgers": list(report.silent_ledgers), "rules": list(report.silent_rules)},
        }
    )


def _together(one: Together) -> dict[str, Any]:
    """The smallest sets of options that ask one feed for more than it gives; ``limit_w`` null: nobody can tell."""
    sets = [
        {
            "options": [{"id": option, "count": many} for option, many in found.options],
            "watts_w": number(found.watts_w),
            "over_w": number(found.over_w),
        }
        for found in one.sets
    ]
    return {"feed": one.feed.value, "limit_w": _amount(one.limit_w), "assumed": one.assumed, "sets": sets}


def finding_json(catalogue: Catalogue, report: Report, finding: Finding, cause: Cause, chain: Iterable[str]) -> str:
    """One finding with its chain of reasons, as ``why --json`` prints it."""
    return json_text(
        {"format": FORMAT, "kind": "finding", **_finding(catalogue, report, finding), **_chain(cause, chain)}
    )


def option_json(catalogue: Catalogue, report: Report, option: OptionId, words: str, found: Reasons | None) -> str:
    """One option with its reasons, as ``why --json`` prints it: the first at the top, all in ``all_reasons``."""
    causes = found.causes if found else ()
    chains = [_chain(cause, reasons(catalogue, report, cause)) for cause in causes]
    return json_text(
        {
            "format": FORMAT,
            "kind": "option",
            "id": option,
            "state": report.options[option].state.value,
            "words": words,
            **(chains[0] if chains else _chain(None, ())),
            "all_reasons": chains,
            "complete": found is None or found.complete,
        }
    )


def reading_json(catalogue: Catalogue, reading: Reading, detail: Iterable[str]) -> str:
    """One ledger or figure with its entries, as ``why --json`` prints it."""
    entries = [
        {
            "option": entry.option,
            "group": entry.group,
            "label": entry.label,
            "count": entry.count,
            "assumed": entry.assumed,
            **_ends(entry.amount),
        }
        for entry in reading.entries
    ]
    kind = catalogue.ledgers[reading.id].kind.value
    told = {"entries": entries, "reasons": list(detail)}
    return json_text({"format": FORMAT, "kind": kind, **reading_value(catalogue, reading), **told})


def plain_json(kind: str, id_: str, words: str) -> str:
    """What has no chain of reasons: a group, a line of the brief, a silent ledger or rule."""
    return json_text({"format": FORMAT, "kind": kind, "id": id_, "words": words, "reasons": []})


def _is(catalogue: Catalogue, reading: Reading, kind: LedgerKind) -> bool:
    return catalogue.ledgers[reading.id].kind is kind


def _finding(catalogue: Catalogue, report: Report, finding: Finding) -> dict[str, Any]:
    told = finding_words(catalogue, report, finding)
    return {
        "id": finding.rule,
        "level": finding.level.value,
        "verdict": finding.verdict.value,
        "accepted": finding.accepted,
        "step": finding.step.value,
        "subjects": list(finding.subjects),
        "keys": list(finding.keys),
        "reading": finding.reading,
        "lacks": [_lack(lack) for lack in finding.lacks],
        "words": finding_line(catalogue, report, finding),
        "because": catalogue.rules[finding.rule].because,
        "rests_on": list(told.rests_on),
        "fixes": list(told.fixes),
        "source": told.source,
    }


def reading_value(catalogue: Catalogue, reading: Reading) -> dict[str, Any]:
    """One sum with bound, verdict and words."""
    spec = catalogue.ledgers[reading.id]
    return {
        "id": reading.id,
        "unit": spec.unit,
        **_ends(reading.value),
        "bound": _amount(reading.bound),
        "sense": spec.sense.value,
        "level": spec.level.value,
        "verdict": reading.verdict.value,
        "applies": reading.applies,
        "value": _amount(reading.value),
        "estimate": spec.estimate,
        "basis": _basis(spec, reading),
        "confidence": spec.confidence.value,
        "source": spec.source,
        "part_of": spec.part_of,
        "lacks": [_lack(lack) for lack in reading.lacks],
        "absurd": _outside(catalogue, reading),
        "words": reading_line(catalogue, reading),
    }


def _outside(catalogue: Catalogue, reading: Reading) -> dict[str, Any] | None:
    """The figure because of which nothing can be said, and whose it is; null where there is none."""
    outside = reading.outside
    if outside is None:
        return None
    owner = catalogue.options.get(outside.option) if outside.option is not None else None
    return {
        "quantity": outside.quantity,
        "value": number(outside.value),
        "needs": outside.needs,
        "option": outside.option,
        "written_in": str(owner.origin) if owner is not None and owner.origin.file else None,
        "words": outside_words(catalogue, outside),
    }


def _basis(spec: LedgerSpec, reading: Reading) -> str:
    """On what the figure stands: nothing yet, an assumption, an estimate of the catalogue, or what was counted."""
    if reading.value is None:
        return "not known"
    if reading.assumed:
        return "assumed"
    return "estimate" if spec.estimate else "counted"


def _ends(value: Span | None) -> dict[str, Any]:
    """``least`` and ``most``; both null while nothing can be said, ``most`` null and ``no_end`` true without end."""
    if value is None:
        return {"least": None, "most": None, "no_end": False}
    no_end = math.isinf(value.most)
    return {"least": number(value.least), "most": number(value.most), "no_end": no_end}


def _amount(value: Span | None) -> object:
    """One number when it is settled, ``least`` and ``most`` while it is not, null when there is none."""
    if value is None:
        return None
    if value.settled:
        return number(value.least)
    return {"least": number(value.least), "most": number(value.most)}


def number(value: float) -> float | int | None:
    """The number, whole ones without a decimal point; JSON has no word for without end, so that is null."""
    if not math.isfinite(value):
        return None
    rounded = round(value, 6)
    return int(rounded) if rounded == int(rounded) else rounded


def price_value(price: Price) -> dict[str, Any]:
    """A price in whole pence: one number when it is settled, ``least`` and ``most`` while it is not."""
    return {
        "net_pence": _pence(price.net),
        "vat_pence": _pence(price.vat),
        "gross_pence": _pence(price.gross),
        "van_included": _INCLUDED[price.van_included],
        "lacks": [_lack(lack) for lack in price.lacks],
    }


def _pence(pence: Pence) -> object:
    return pence.least if pence.least == pence.most else {"least": pence.least, "most": pence.most}


def _lack(lack: Lack) -> dict[str, Any]:
    return {"group": lack.group, "key": lack.key}


def _chain(cause: Cause | None, chain: Iterable[str]) -> dict[str, Any]:
    return {"reasons": list(chain), "cause": _cause(cause) if cause is not None else None}


def _cause(cause: Cause) -> dict[str, Any]:
    named = {
        "option": cause.option,
        "place": cause.place.value if cause.place else None,
        "key": cause.key,
        "rule": cause.rule,
        "group": cause.group,
        "tag": cause.tag,
        "ledger": cause.ledger,
    }
    told = {name: value for name, value in named.items() if value is not None}
    return {"kind": cause.kind.value, **told, "because": [_cause(below) for below in cause.because]}


def json_text(content: dict[str, Any]) -> str:
    """JSON in ASCII on one line: nothing that could move a cursor is left in it."""
    return json.dumps(content, allow_nan=False)
