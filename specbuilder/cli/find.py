"""``find``: options, questions, sums, rules and fields by a few letters of their names."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Step
from specbuilder.model.report import Report
from specbuilder.session.find import Hit, HitKind, find
from specbuilder.wording.edits import VAN_FIELDS
from specbuilder.wording.finding_things import hit_words
from specbuilder.wording.last_line import nothing_found
from specbuilder.wording.lines import found_line
from specbuilder.wording.names import key_name
from specbuilder.wording.plain import ended

from . import output
from .answers import Answer
from .asjson_reading import listed_json
from .output import Exit

_CUSTOMER = {"customer": "customer", "contact": "contact", "note": "note of the job"}
"""What is typed on the brief and is no line of it, with what it is called."""


def found(catalogue: Catalogue, report: Report, text: str, *, json: bool) -> Answer:
    """One line a hit, the best first; its id stands in brackets. Where nothing is found the code is 1."""
    called = {key: key_name(catalogue, key) for key in catalogue.brief}
    fields = [(Hit(kind=HitKind.FIELD, id=name, step=Step.BRIEF), words) for name, words in _CUSTOMER.items()]
    fields += [(Hit(kind=HitKind.FIELD, id=name, step=Step.BASE_VAN), words) for name, words in VAN_FIELDS.items()]
    hits = find(catalogue, text, called, fields)
    told = [(hit, *_words(catalogue, report, hit)) for hit in hits]
    code = Exit.FINE if hits else Exit.BROKEN
    if json:
        rows = [
            {"kind": hit.kind.value, "id": hit.id, "step": hit.step.value, "state": state, "name": name}
            for hit, state, name in told
        ]
        return Answer((listed_json(catalogue, report, "found", rows),), code)
    if not hits:
        output.message((ended(nothing_found()),))
    return Answer(tuple(found_line(hit.step, state, name, hit.id) for hit, state, name in told), code)


def _words(catalogue: Catalogue, report: Report, hit: Hit) -> tuple[str, str]:
    if hit.kind is HitKind.FIELD:
        return "field", (_CUSTOMER | VAN_FIELDS)[hit.id]
    return hit_words(catalogue, report, hit.kind.value, hit.id)
