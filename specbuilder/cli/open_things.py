"""``open``: everything to decide, to find out or to mend, in the order it is walked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId
from specbuilder.model.report import Report
from specbuilder.session.walk import OpenThing, open_things
from specbuilder.wording.brief import nothing_open, open_thing
from specbuilder.wording.lines import asked_words, open_line
from specbuilder.wording.open_things import asked_of, question_text

from .answers import Answer
from .asjson_reading import listed_json, question_value

VAN = "van"
"""Names the data of the real van, which is open as a whole."""


def open_list(catalogue: Catalogue, report: Report, *, json: bool) -> Answer:
    """One line a thing, with the person who finds it out, and in brackets what ``ask`` and ``why`` know it by."""
    things = tuple(_things(catalogue, report))
    if json:
        rows = [_value(catalogue, report, thing) for thing in things]
        return Answer((listed_json(catalogue, report, "open", rows),))
    return Answer(tuple(_line(catalogue, report, thing) for thing in things) or (nothing_open(),))


def asked_text(catalogue: Catalogue, handle: str) -> str | None:
    """The words of the question about what stands in brackets; None where it names nothing that is asked so."""
    if handle == VAN:
        return question_text(catalogue)
    if GroupId(handle) in catalogue.groups:
        return question_text(catalogue, group=GroupId(handle))
    if BriefKey(handle) in catalogue.brief:
        return question_text(catalogue, key=BriefKey(handle))
    return None


def _things(catalogue: Catalogue, report: Report) -> Iterator[OpenThing]:
    """A question about a thing that is listed itself stands on its line."""
    every = open_things(catalogue, report)
    told = {_question(catalogue, thing) for thing in every if thing.question is None}
    return (thing for thing in every if thing.question is None or thing.question not in told)


def _question(catalogue: Catalogue, thing: OpenThing) -> str | None:
    """The words it is asked in; None for what is broken, which is mended."""
    if thing.rule is not None:
        return None
    return thing.question or question_text(catalogue, group=thing.group, key=thing.key)


def _handle(thing: OpenThing) -> str:
    if thing.question is not None:
        return ""
    return thing.key or thing.group or thing.rule or VAN


def _words(catalogue: Catalogue, report: Report, thing: OpenThing) -> str:
    step, question = thing.step, thing.question
    return open_thing(
        catalogue, report, step=step, group=thing.group, key=thing.key, rule=thing.rule, question=question
    )


def _line(catalogue: Catalogue, report: Report, thing: OpenThing) -> str:
    text = _question(catalogue, thing)
    asked = asked_words(asked_of(report, text)) if text is not None and thing.question is None else ""
    return open_line(thing.step, _words(catalogue, report, thing), asked, _handle(thing))


def _value(catalogue: Catalogue, report: Report, thing: OpenThing) -> dict[str, Any]:
    text = _question(catalogue, thing)
    return {
        "kind": _kind(thing),
        "id": _handle(thing) or None,
        "step": thing.step.value,
        "question": text,
        **question_value(asked_of(report, text) if text is not None else None),
        "words": _words(catalogue, report, thing),
    }


def _kind(thing: OpenThing) -> str:
    kinds = {"answer": thing.key, "group": thing.group, "finding": thing.rule, "question": thing.question}
    return next((kind for kind, named in kinds.items() if named is not None), VAN)
