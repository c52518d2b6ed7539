"""Two stands laid side by side, under one catalogue or two: everything that was said or follows and is not the same."""

from __future__ import annotations

from dataclasses import fields, replace
from types import MappingProxyType

from specbuilder.calc.order.weeks import LEAD_WEEKS
from specbuilder.calc.power.battery_nights import BATTERY_NIGHTS
from specbuilder.calc.room.height import CLOSED_HEIGHT
from specbuilder.calc.room.seats import BELTS, BERTHS
from specbuilder.model.brief import Answers
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import AnswerChange, Comparison, FigureChange, VanDataChange
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.kinds import Verdict
from specbuilder.model.report import Report
from specbuilder.model.span import Span
from specbuilder.model.spec import Spec, VanData
from specbuilder.model.stand import Stand

from .apply import fits
from .compare_choices import Sides
from .compare_order import WalkOrder
from .compare_pieces import piece_changes
from .difference import difference

FOR_CUSTOMERS: tuple[LedgerId, ...] = (BELTS.id, BERTHS.id, CLOSED_HEIGHT.id, BATTERY_NIGHTS.id, LEAD_WEEKS.id)
"""What a customer asks of two variants beside price and weight: who travels, who sleeps, how high, how long, when."""


def moved(spec: Spec, to: Catalogue) -> Spec:
    """The spec as it can be held against another catalogue.

    Choices that are gone from it stay: they are found as strangers. An answer that its brief does not take any more is
    not known again; one to a line that is gone stays and counts nothing.
    """
    lines = to.brief
    kept = {key: said for key, said in spec.answers.given.items() if key not in lines or fits(lines[key], said)}
    return spec if len(kept) == len(spec.answers.given) else replace(spec, answers=Answers(MappingProxyType(kept)))


def compare(before: Stand, after: Stand) -> Comparison:
    """What differs, line by line. Seen from the other side it is the same turned round (``Comparison.turned``)."""
    order = WalkOrder(before.catalogue, after.catalogue)
    changes, same = Sides(before=before, after=after, order=order).changes()
    was, now = before.report, after.report
    return Comparison(
        changes=changes,
        answers=_answers(before, after, order),
        van_data=_van_data(before.spec.van_data, after.spec.van_data),
        figures=_figures(was, now, order),
        pieces=piece_changes(before, after, order),
        came=_only_there(was, now, Verdict.BROKEN),
        went=_only_there(now, was, Verdict.BROKEN),
        doubts_came=_only_there(was, now, Verdict.CANNOT_TELL),
        doubts_went=_only_there(now, was, Verdict.CANNOT_TELL),
        gross_before=was.price.gross,
        gross_after=now.price.gross,
        difference=difference(was, now),
        same=same,
    )


def _answers(before: Stand, after: Stand, order: WalkOrder) -> tuple[AnswerChange, ...]:
    """Lines of the brief. The state of the job is no part of what is built, and not compared."""
    was, now = before.spec.answers, after.spec.answers
    keys = (key for key in sorted({*was.given, *now.given}, key=order.answer) if was.get(key) != now.get(key))
    return tuple(
        AnswerChange(key=key, before=was.get(key), after=now.get(key))
        for key in keys
        if not (_of_the_job(before, key) or _of_the_job(after, key))
    )


def _of_the_job(stand: Stand, key: BriefKey) -> bool:
    line = stand.catalogue.brief.get(key)
    return line is not None and line.question is None


def _van_data(was: VanData, now: VanData) -> tuple[VanDataChange, ...]:
    return tuple(
        VanDataChange(field=field.name, before=getattr(was, field.name), after=getattr(now, field.name))
        for field in fields(VanData)
        if getattr(was, field.name) != getattr(now, field.name)
    )


def _figures(was: Report, now: Report, order: WalkOrder) -> tuple[FigureChange, ...]:
    found: list[FigureChange] = []
    for ledger in sorted({*was.readings, *now.readings}, key=order.ledger):
        (value, bound), (value_after, bound_after) = _read(was, ledger), _read(now, ledger)
        if (value, bound) != (value_after, bound_after):
            found.append(
                FigureChange(
                    ledger=ledger,
                    before=value,
                    after=value_after,
                    bound_before=bound,
                    bound_after=bound_after,
                )
            )
    return tuple(found)


def _read(report: Report, ledger: LedgerId) -> tuple[Span | None, Span | None]:
    """Value and bound; nothing where there is nothing to measure."""
    reading = report.readings.get(ledger)
    return (reading.value, reading.bound) if reading is not None and reading.applies else (None, None)


def _only_there(here: Report, there: Report, verdict: Verdict) -> tuple[Finding, ...]:
    """Findings that say so there and not here, what stops first."""
    known = {finding.rule for finding in here.findings if finding.verdict is verdict}
    return tuple(f for f in there.findings if f.verdict is verdict and f.rule not in known)
