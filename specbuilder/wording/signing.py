"""Words of the forms in which a quote goes out and both sign."""

from __future__ import annotations

from datetime import date, timedelta

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Level
from specbuilder.model.life import LifeStep
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand

from .dates import day_words, written_day
from .names import listed
from .papers import goes_out_with, price_change
from .quantities import hours, money_range

COUNTER = "the counter"
"""Who signs for the firm while nobody has said otherwise."""


def step_word(step: LifeStep) -> str:
    """What Enter does, for the hint line."""
    return "quote" if step is LifeStep.QUOTE else "sign"


def quote_title(spec: Spec) -> str:
    """Over the form of a quote."""
    return f"QUOTE revision {spec.revision}"


def quote_words(catalogue: Catalogue, report: Report, now: str, open_points: int) -> tuple[str, ...]:
    """Price, validity, and what is still open in it, which the paper says as well."""
    firm = catalogue.firm
    until = day_words(date.fromisoformat(now[:10]) + timedelta(days=firm.quote_valid_days))
    return (
        f"{money_range(report.price.gross, firm.currency)} VAT in, valid until {until}.",
        *_open(report, open_points),
    )


def _open(report: Report, open_points: int) -> tuple[str, ...]:
    stops = len(report.broken(Level.STOP))
    told = []
    if opened := goes_out_with(open_points, len(report.broken(Level.SIGN)), "broken at SIGN"):
        told.append(f"It goes out with {opened}, named on it.")
    if stops:
        told.append(f"It cannot be built as it stands ({stops} broken at STOP), and says so on every page.")
    return tuple(told)


def quote_take() -> str:
    """The line that quotes."""
    return "Quote: Enter writes it down; it stays done"


def order_title(spec: Spec, number: int) -> str:
    """Over the form of a signature."""
    if not spec.changes_signed:
        return f"SIGN THE ORDER, revision {spec.revision}"
    return f"SIGN CHANGE ORDER {number}: revision {spec.revision} instead of revision {spec.replaces}"


def order_words(report: Report, currency: str) -> tuple[str, ...]:
    """What is agreed."""
    until = written_day(report.spec.valid_until)
    return (f"{money_range(report.price.gross, currency)} VAT in, as quoted until {until}.",)


def change_words(base: Stand, report: Report, number: int, currency: str) -> tuple[str, ...]:
    """What is agreed instead of what, and the work that is undone for it."""
    undone = [work for work in report.spec.undone if work.order == number]
    told = f"{price_change(base.report.price.gross, report.price.gross, currency)}."
    if undone:
        spent = hours(sum(work.hours for work in undone))
        told = f"{told} In it: {spent} (ESTIMATE) to undo what is done already: {listed(w.words for w in undone)}."
    return told, f"Until it is signed the workshop builds revision {base.spec.revision}."


def order_take() -> str:
    """The line that signs."""
    return "Sign: Enter writes both signatures down; they stay done"
