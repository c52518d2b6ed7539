"""Open things with the person and the date somebody gave them."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId
from specbuilder.model.report import Report
from specbuilder.model.spec import OpenQuestion

from .key_names import pressed

VAN_DATA = "Data of the real van: end of the chassis number and year"


def question_text(catalogue: Catalogue, *, group: GroupId | None = None, key: BriefKey | None = None) -> str:
    """The words of the open question about a group, a line of the brief, or (neither) the real van."""
    if key is not None:
        return catalogue.brief[key].ask
    if group is not None:
        return f"{catalogue.groups[group].name}: {catalogue.groups[group].question}"
    return VAN_DATA


def asked_of(report: Report, text: str) -> OpenQuestion | None:
    """The open question with this text, if somebody was asked."""
    return next((q for q in report.spec.questions if q.text == text), None)


def asked_words(report: Report, text: str) -> str:
    """``How high is the barrier? stops B2``: a question somebody asked, and what waits for its answer."""
    found = asked_of(report, text)
    if found is None or not found.stops:
        return text
    return f"{text if text.endswith('?') else f'{text},'} stops {found.stops}"


def who_and_when(question: OpenQuestion | None) -> str:
    """``customer, 2031-04-28``; ``nobody yet`` where nobody was asked."""
    if question is None or not question.owner:
        return "nobody yet"
    return f"{question.owner}, {question.due}" if question.due else f"{question.owner}, no date"


def then_the_papers() -> str:
    """What comes next where nothing is open."""
    return f"{pressed('papers')} shows the papers, and where the job stands."


def only_this_is_open() -> str:
    """Said when there is no other open thing to go to."""
    return "Only this is open"


def all_is_decided() -> str:
    """Said when there is nothing open at all."""
    return "Nothing is open"
