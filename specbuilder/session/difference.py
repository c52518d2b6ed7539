"""What a set of edits does to the whole spec in money, mass, hours and weeks."""

from __future__ import annotations

from specbuilder.calc.formulas.money import gross_pence
from specbuilder.calc.order.hours import WORKSHOP_HOURS
from specbuilder.calc.order.weeks import LEAD_WEEKS
from specbuilder.calc.weights.mass import TOTAL_MASS, part_mass_kg
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import LedgerId
from specbuilder.model.report import Judged
from specbuilder.model.spec import Choice
from specbuilder.model.ways import Difference, RankBy


def difference(before: Judged, after: Judged) -> Difference:
    """After less before, each at its low end."""
    return Difference(
        gross_pence=after.price.gross.least - before.price.gross.least,
        mass_kg=_least(after, TOTAL_MASS.id) - _least(before, TOTAL_MASS.id),
        hours=_least(after, WORKSHOP_HOURS.id) - _least(before, WORKSHOP_HOURS.id),
        weeks=_least(after, LEAD_WEEKS.id) - _least(before, LEAD_WEEKS.id),
    )


def _least(report: Judged, ledger: LedgerId) -> float:
    reading = report.readings.get(ledger)
    return round(reading.value.least, 3) if reading is not None and reading.value is not None else 0.0


def option_cost(catalogue: Catalogue, option: Option, rank_by: RankBy) -> int:
    """What one of an option adds, as a whole number: pence with tax, grams, minutes. Weeks do not add and count nought.

    A search orders by it; what is shown is always the difference of two reports.
    """
    match rank_by:
        case RankBy.PRICE:
            return gross_pence(option.price_net_pence, catalogue.firm.vat_percent)
        case RankBy.MASS:
            return round(part_mass_kg(option) * 1000)
        case RankBy.HOURS:
            return round(option.labour_h * 60)
        case RankBy.WEEKS:
            return 0


def choices_cost(catalogue: Catalogue, choices: tuple[Choice, ...], rank_by: RankBy) -> int:
    """What choices add together; of weeks the longest wait, in tenths."""
    known = [(catalogue.options[c.option], c.count) for c in choices if c.option in catalogue.options]
    if rank_by is RankBy.WEEKS:
        return round(10 * max((option.lead_weeks for option, _ in known), default=0))
    return sum(option_cost(catalogue, option, rank_by) * count for option, count in known)
