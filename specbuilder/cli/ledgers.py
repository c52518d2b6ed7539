"""``ledgers``: every sum of a spec with its bound, worst first; or one of them with what it is made of."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.wording.ledger_detail import detail_texts
from specbuilder.wording.plain import ended
from specbuilder.wording.readings import worst_first

from .answers import Answer
from .asjson_reading import ledgers_json
from .output import Exit, StopError
from .things import LedgerThing, Unclear, thing
from .why import why_ledger


def ledgers(catalogue: Catalogue, report: Report, name: str | None, *, json: bool) -> Answer:
    """All of them, a line each with the id at its end; or the one of that name.

    Raises:
        StopError: if no ledger or figure is called so.
    """
    if name is not None:
        return _one(catalogue, report, name, json=json)
    readings = worst_first(catalogue, tuple(report.readings.values()))
    if json:
        return Answer((ledgers_json(catalogue, report, readings),))
    return Answer(tuple(f"{ended(detail_texts(catalogue, one)[0])} [{one.id}]" for one in readings))


def _one(catalogue: Catalogue, report: Report, name: str, *, json: bool) -> Answer:
    match thing(catalogue, name):
        case LedgerThing(ledger):
            return why_ledger(catalogue, report, ledger, json)
        case Unclear(words):
            raise StopError(Exit.UNUSABLE, words)
        case _:
            raise StopError(Exit.UNUSABLE, f"{name} is no ledger: ledgers without a name lists them.")
