"""What stands on every page of every paper: whose it is, which job, which revision, and whether it may be built."""

from __future__ import annotations

from specbuilder.documents.blocks import Running
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.plain import fitted

_NAME_LONGEST = 40
"""Of a customer's name at the head of a page: a longer one would push the rest off it."""
_NOT_BUILT = {
    JobState.DRAFT: "NOT TO BE BUILT: this is a draft",
    JobState.QUOTED: "NOT TO BE BUILT: this is quoted and not ordered",
    JobState.EXPIRED: "NOT TO BE BUILT: this has expired",
}
_RECORDED_BY = {
    JobState.QUOTED: RecordKind.QUOTED,
    JobState.ORDERED: RecordKind.SIGNED,
    JobState.CHANGED: RecordKind.SIGNED,
    JobState.AS_BUILT: RecordKind.BUILT,
    JobState.EXPIRED: RecordKind.QUOTED,
}
"""Which record brought a revision into its state."""


def running(case: Case, *, private: bool) -> Running:
    """Head, banner and foot of a paper.

    Args:
        case: what the paper is made from.
        private: one of the firm's own papers, which may name the customer.
    """
    firm = case.stand.catalogue.firm
    spec = case.stand.spec
    return Running(
        firm=f"{firm.name}, {firm.town}",
        job=_job(spec, private),
        revision=revision_words(spec),
        state=_state(case),
        banner=banner(case),
        foot=_foot(case, private),
    )


def banner(case: Case) -> str:
    """Why the paper may not be built from; empty when it may."""
    if case.replaced_by is not None:
        return f"REPLACED BY REVISION {case.replaced_by}: NOT TO BE BUILT"
    return _NOT_BUILT.get(case.stand.spec.state, "")


def revision_words(spec: Spec) -> str:
    """``revision 2, replaces revision 1``."""
    replaces = f", replaces revision {spec.replaces}" if spec.replaces is not None else ""
    return f"revision {spec.revision}{replaces}"


def _job(spec: Spec, private: bool) -> str:
    number = one_line(spec.number) or "not numbered yet"
    name = fitted(one_line(spec.customer.name).strip(), _NAME_LONGEST) if private else ""
    return f"{number}, {name}" if name else number


def _state(case: Case) -> str:
    """The state with the day it came to be; a draft is as old as the paper."""
    spec = case.stand.spec
    if spec.state is JobState.DRAFT:
        return f"{spec.state.value}, {day_words(case.today)}"
    record = _brought_by(spec)
    if record is None:
        return spec.state.value
    if spec.state is JobState.EXPIRED:
        return f"{spec.state.value} {written_day(one_line(record.due))}" if record.due else spec.state.value
    state = f"{spec.state.value} {written_day(one_line(record.day))}"
    if spec.state is JobState.QUOTED and record.due:
        return f"{state}, valid until {written_day(one_line(record.due))}"
    return state


def _brought_by(spec: Spec) -> Record | None:
    """The last record of that kind, of this revision where one is."""
    kind = _RECORDED_BY.get(spec.state)
    found = [record for record in spec.records if record.kind is kind]
    own = [record for record in found if record.revision == spec.revision]
    return next(reversed(own or found), None)


def _foot(case: Case, private: bool) -> str:
    """What the firm says on every paper, and which data it was made from; the file's own sum is of use to the firm."""
    firm = case.stand.catalogue.firm
    data = [f"Catalogue {one_line(firm.catalogue_version)}."]
    if private and case.checksum:
        data.append(f"Checksum of the file {one_line(case.checksum)}.")
    return " ".join((firm.paper_foot, *data)).strip()
