"""The change order: what a signed build becomes, what that costs, and what is already done.

Both sign it. Until then the workshop builds the revision that was signed last.
"""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.documents.blocks import (
    Big,
    Block,
    Column,
    Facts,
    Heading,
    Items,
    Paper,
    Paragraph,
    Table,
    Weight,
)
from specbuilder.model.change_order import ChangeOrder, FreezePoint
from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Level
from specbuilder.model.papers import Case
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import PlannedStep
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.stand import Stand
from specbuilder.wording import customer as words
from specbuilder.wording.customer_changes import (
    answer_line,
    change_cells,
    is_told,
    price_cells,
    price_change,
    sum_cells,
    undoing_cells,
    undone_row,
)
from specbuilder.wording.dates import day_words, written_day
from specbuilder.wording.plain import ended, raised

from .change_measures import before_after, works
from .customer import figures
from .customer.terms import notice, signed_rows, signing_lines
from .customer.told import CANNOT_BE_BUILT
from .running import running

_WHY_IT_COSTS = (
    "Why this costs: it was built as you had signed it. Now it is taken out, holes are closed and sealed, and what was "
    "tested is tested once more before the new part can go in. The price of a part holds only fitting it once."
)
_SAID = (Level.SIGN, Level.NOTE)


def change_order_paper(case: Case) -> Paper:
    """The paper of the change order of this case.

    Raises:
        ValueError: if the revision changes nothing that was signed.
    """
    order = case.change_order
    if order is None:
        raise ValueError("a change order needs a signed revision before this one")
    return Paper(
        name="change-order",
        title=f"Change order {order.number}",
        running=running(case, private=False),
        blocks=(
            *_head(case, order),
            *_what_changes(case, order),
            *_undone(case, order),
            *works(case),
            *before_after(case, order),
            *_findings(case, order),
            *_freeze(case, order),
            *_signing(case, order),
        ),
    )


def _head(case: Case, order: ChangeOrder) -> Iterator[Block]:
    firm, spec = case.stand.catalogue.firm, case.stand.spec
    yield Big(
        label="New price, VAT included",
        figure=words.pounds_range(order.comparison.gross_after, firm.currency),
        note=raised(price_change(order.comparison.gross_before, order.comparison.gross_after, firm.currency)),
    )
    changes = f"revision {order.of_revision}, signed on {written_day(one_line(order.signed_on))}"
    yield Facts(
        rows=(
            ("Changes", f"{changes}; it becomes revision {order.becomes}"),
            ("For", one_line(spec.customer.name).strip()),
            ("Why", one_line(order.reason).strip()),
            ("Job", f"{one_line(spec.number) or 'not numbered yet'}, {day_words(case.today)}"),
        )
    )
    yield Paragraph(text=_which_is_built(case, order), weight=Weight.STRONG)


def _which_is_built(case: Case, order: ChangeOrder) -> str:
    if _signature(case) is not None:
        return (
            f"This is signed: the workshop builds revision {order.becomes}. "
            f"Revision {order.of_revision} is not to be built any more."
        )
    return f"Until this is signed the workshop builds revision {order.of_revision}."


def _what_changes(case: Case, order: ChangeOrder) -> Iterator[Block]:
    currency, comparison = case.stand.catalogue.firm.currency, order.comparison
    yield Heading(text="What changes")
    rows = [change_cells(change, currency).row for change in comparison.changes if is_told(change)]
    if order.undone:
        hours = sum(work.hours for work in order.undone)
        rows.append(undoing_cells(order.undone_gross_pence, hours, currency).row)
    rows.append(sum_cells(comparison.difference, currency).row)
    rows.append(price_cells(f"Price of revision {order.of_revision}, as signed", comparison.gross_before, currency))
    rows.append(price_cells(f"New price, revision {order.becomes}", comparison.gross_after, currency))
    yield Table(
        columns=(
            Column(head="Goes out", share=3),
            Column(head="Comes in", share=3),
            Column(head="Price, VAT in", right=True, share=1.4),
            Column(head="kg", right=True),
            Column(head="Hours", right=True),
            Column(head="Weeks", right=True),
        ),
        rows=tuple(rows),
        strong=frozenset({len(rows) - 3, len(rows) - 1}),
    )
    yield Paragraph(
        text="Hours, weeks and kg: ESTIMATE. Weeks: how much longer we wait for that part; together, for the slowest "
        "of all.",
        weight=Weight.SMALL,
    )
    if comparison.answers:
        yield Heading(text="What you told us otherwise", level=3)
        yield Table(
            columns=(Column(head=""), Column(head="Before"), Column(head="Now")),
            rows=tuple(answer_line(case.stand.catalogue, answer) for answer in comparison.answers),
        )


def _undone(case: Case, order: ChangeOrder) -> Iterator[Block]:
    if not order.undone:
        return
    firm = case.stand.catalogue.firm
    yield Heading(text="What is already done and has to be undone")
    yield Table(
        columns=(
            Column(head="Work", share=4),
            Column(head="Hours", right=True),
            Column(head="Price, VAT in", right=True, share=1.4),
        ),
        rows=tuple(undone_row(work, firm.vat_percent, firm.currency) for work in order.undone),
    )
    yield Paragraph(text=_WHY_IT_COSTS)
    yield Paragraph(text="Hours of undoing: ESTIMATE; the price is what we ask for it.", weight=Weight.SMALL)


def _findings(case: Case, order: ChangeOrder) -> Iterator[Block]:
    """What is to be told with the change, and what needs no telling any more."""
    comparison, before = order.comparison, case.before
    if stops := [each for each in comparison.came if each.level is Level.STOP and figures.is_of_the_build(each)]:
        yield Heading(text=CANNOT_BE_BUILT)
        yield Items(rows=tuple(words.stop_words(case.stand.catalogue, case.stand.report, each) for each in stops))
    came = tuple(_told_of(case.stand, finding) for finding in comparison.came if finding.level in _SAID)
    yield Heading(text="What we told you about this change")
    yield Items(rows=came, boxes=True) if came else Paragraph(text="Nothing new has to be told.")
    went = [finding for finding in comparison.went if before is not None and finding.rule in before.catalogue.rules]
    if before is not None and went:
        yield Heading(text="What we told you before, and is no longer so", level=3)
        yield Items(rows=tuple(ended(before.catalogue.rules[finding.rule].because) for finding in went))


def _told_of(stand: Stand, finding: Finding) -> str:
    said = words.told_words(stand.catalogue, stand.report, finding)
    acceptance = next((each for each in stand.spec.accepted if each.rule == finding.rule), None)
    if acceptance is not None:
        return f"{said} {words.accepted_words(acceptance)}"
    return f"{said} This needs your word in writing." if finding.level is Level.SIGN else said


def _freeze(case: Case, order: ChangeOrder) -> Iterator[Block]:
    """The steps of the build beside the change: which are passed, and what it touches there."""
    yield Heading(text="How far the build is")
    if order.late:
        yield Paragraph(
            text="This change comes after work it touches was done. What is undone and what that costs stands above.",
            weight=Weight.CAUTION,
        )
    planned = {step.step: step for step in case.plan.steps}
    rows = [_freeze_row(case, point, planned.get(point.step)) for point in order.freeze if _is_told(case, point)]
    yield Table(
        columns=(
            Column(head="Step", share=2.4),
            Column(head="Passed", share=1.4),
            Column(head="This change touches", share=2.4),
            Column(head="Already done", share=2.4),
        ),
        rows=tuple(rows),
        empty="It touches no step of the build.",
    )


def _is_told(case: Case, point: FreezePoint) -> bool:
    work = case.stand.catalogue.work.get(point.step)
    return bool(point.touched) or (work is not None and bool(work.freezes))


def _freeze_row(case: Case, point: FreezePoint, planned: PlannedStep | None) -> tuple[str, ...]:
    work = case.stand.catalogue.work.get(point.step)
    step = f"{point.step} {words.main_part(work.work)}" if work is not None else point.step
    if point.passed:
        passed = written_day(one_line(point.passed))
    else:
        passed = f"not yet; about {day_words(planned.last_day)}" if planned is not None else "not yet"
    return step, passed, "; ".join(point.touched) or "-", raised("; ".join(point.done)) or "-"


def _signing(case: Case, order: ChangeOrder) -> Iterator[Block]:
    yield Heading(text="Signatures")
    signature = _signature(case)
    if signature is not None:
        yield Facts(rows=signed_rows(case, signature))
        return
    yield Paragraph(
        text=f"With both signatures this takes the place of revision {order.of_revision}. What it does not name stays "
        "as it was agreed."
    )
    if told := notice(case):
        yield Paragraph(text=told)
    yield from signing_lines(case)


def _signature(case: Case) -> Record | None:
    """The signature of this revision, once it is there."""
    spec = case.stand.spec
    signed = [record for record in spec.recorded(RecordKind.SIGNED) if record.revision == spec.revision]
    return signed[-1] if signed else None
