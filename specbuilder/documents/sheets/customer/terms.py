"""The terms, what the firm still has to confirm, and the signatures."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import Block, Facts, Heading, Items, Paragraph, Signatures
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import Record, RecordKind
from specbuilder.wording.brief import value_word
from specbuilder.wording.customer import percent
from specbuilder.wording.dates import written_day
from specbuilder.wording.plain import ended

from . import figures
from .price import when_due

_ELSEWHERE = ("home", "distance")
_UNSIGNABLE = {
    JobState.DRAFT: "A draft is not signed. Ask for the quote when everything is as you want it.",
    JobState.EXPIRED: "This quote has run out and is not signed any more. Ask for a new one.",
}
_TO_SETTLE = (
    "until when and how you may cancel, and what it then costs you: no more than what it really costs us",
    "how much of the deposit comes back, and when",
    "whether you may change your mind within a number of days, for the work and for the parts made for you",
    "that we begin within those days only if you ask us to, in writing",
    "what happens to the price when the prices of parts move after you have signed",
    "what you may do when we are late",
)


def terms(case: Case) -> Iterator[Block]:
    """What holds between firm and customer beside the price."""
    firm = case.stand.catalogue.firm
    yield Heading(text="Terms")
    others = (ended(term) for term in firm.terms if term != when_due(case))
    yield Paragraph(text=" ".join((*others, *_vat(case))))
    if case.stand.spec.state is JobState.AS_BUILT:
        return
    yield Paragraph(text=f"Deposit and cancelling{_cancelling(case)}")
    if told := notice(case):
        yield Paragraph(text=told)


def _cancelling(case: Case) -> str:
    """The firm's own words, or what they still have to settle and by when."""
    words = one_line(case.stand.catalogue.firm.cancelling).strip()
    if words:
        return f": {words}"
    unsigned = case.stand.spec.state in figures.UNSIGNED
    when = "to be confirmed by the firm before you sign" if unsigned else "still to be confirmed by the firm"
    return f", {when}: {'; '.join(_TO_SETTLE)}."


def signatures(case: Case) -> Iterator[Block]:
    """Who signed, or lines to sign on; what cannot be signed says so."""
    state, signed = case.stand.spec.state, _signed(case)
    if state in _UNSIGNABLE:
        yield Paragraph(text=_UNSIGNABLE[state])
        return
    yield Heading(text="Signatures")
    if signed:
        yield Facts(rows=signed_rows(case, signed[-1]))
    else:
        yield from signing_lines(case)


def signing_lines(case: Case) -> Iterator[Block]:
    """What both sign on."""
    yield Items(rows=("I have read this and have had a copy.",), boxes=True)
    yield Signatures(roles=("Customer, with the place of signing", f"For {case.stand.catalogue.firm.name}"))


def _signed(case: Case) -> tuple[Record, ...]:
    """The signatures of this revision."""
    spec = case.stand.spec
    return tuple(record for record in spec.recorded(RecordKind.SIGNED) if record.revision == spec.revision)


def _vat(case: Case) -> Iterator[str]:
    yield f"VAT is counted at the standard rate of {percent(case.stand.catalogue.firm.vat_percent)}."
    if case.stand.spec.state in figures.UNSIGNED:
        yield (
            "A relief, as there is for some wheelchair users, has strict conditions and needs a declaration of its "
            "own: ask before you sign. We cannot claim it for you."
        )


def notice(case: Case) -> str:
    """What depends on where the agreement is made; neutral, for the firm's adviser decides."""
    signed = _signed(case)
    place = signed[-1].about if signed else case.stand.report.facts.get(figures.CONTRACT_PLACE)
    if place in _ELSEWHERE:
        return (
            "We agree away from our premises, or by telephone or online. Rights to change your mind may apply; our "
            "notice about them goes with this paper. If it is missing, ask for it."
        )
    if place == "premises":
        return ""
    return "Where and how we agree is not settled yet, and your right to change your mind may depend on it."


def signed_rows(case: Case, record: Record) -> tuple[tuple[str, str], ...]:
    """Who signed, when and where, as it was recorded."""
    line = case.stand.catalogue.brief.get(figures.CONTRACT_PLACE)
    about = one_line(record.about)
    place = value_word(line, about) if line is not None and about else about
    return (
        ("Signed on", written_day(one_line(record.day))),
        ("Customer", one_line(record.by)),
        ("For the firm", one_line(record.words)),
        ("Where", place),
    )
