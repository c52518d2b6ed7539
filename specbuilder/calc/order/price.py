"""What it costs: the total the screen shows, and the sum held against the ceiling of the brief."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from specbuilder.calc.formulas.money import gross_pence
from specbuilder.calc.measuring.frame import Asked, Frame
from specbuilder.calc.measuring.marginal import marginals
from specbuilder.calc.measuring.measure import Measure, largest
from specbuilder.calc.measuring.outcome import outcome
from specbuilder.calc.measuring.prepared import prepared
from specbuilder.calc.measuring.states import Joint, Slot
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.kinds import Truth
from specbuilder.model.ledger import Entry, Lack
from specbuilder.model.report import Pence, Price
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span
from specbuilder.model.vans import Van

from .supply import SUPPLIED, own_van, supplied

_CEILING, _VAN_IN_CEILING = BriefKey("ceiling_gross_pence"), BriefKey("van_in_ceiling")
_YES = "yes"


def _net_pence(option: Option) -> float:
    return option.price_net_pence


def _with_van(joint: Joint, frame: Frame) -> float:
    return frame.van.price_net_supplied_pence if all(joint) and frame.option else 0


def _van_line(amount: Span, frame: Frame) -> Entry:
    line = frame.van_entry("van", 0)
    return Entry(line.label, amount, option=line.option, group=line.group)


def _undone(frame: Frame) -> tuple[Entry, ...]:
    return tuple(frame.entry(work.words, work.net_pence) for work in frame.asked.facts.undone)


def _gross(net_pence: float, frame: Frame) -> float:
    return gross_pence(round(net_pence), frame.firm.vat_percent)


def _with_tax(frame: Frame) -> float:
    return 1 + frame.firm.vat_percent / 100


def _unanswered(_option: Option, _van: Van | None) -> float | None:
    return None


def _inside_ceiling(frame: Frame) -> tuple[Slot, ...]:
    """Whether the van counts against the ceiling; not asked while the customer brings it."""
    answer = frame.asked.facts.get(_VAN_IN_CEILING)
    if supplied(prepared(frame.situation)) is not Truth.NO:
        frame.asked.word(_VAN_IN_CEILING)
    ways = (0, 1) if answer is None else (1,) if answer == _YES else (0,)
    return (Slot(_VAN_IN_CEILING, {(0, way): (0, 0) for way in ways}, Lack(key=_VAN_IN_CEILING)),)


def _ceiling(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("ceiling", frame.asked.number(_CEILING), _CEILING),)


NET = Measure(
    base=_undone,
    amount=_net_pence,
    parts=(SUPPLIED,),
    rest=_with_van,
    rest_entry=_van_line,
    needs_van=True,
    van_unseen=own_van,
)
"""Net price of everything the house sells, the van included when it supplies it; pence."""

PRICE_GROSS = Tally(
    id=LedgerId("price-gross"),
    value=Measure(
        base=_undone,
        amount=_net_pence,
        parts=(SUPPLIED, largest(_unanswered, none=0)),
        rest=_with_van,
        rest_entry=_van_line,
        slots=_inside_ceiling,
        final=_gross,
        scale=_with_tax,
        needs_van=True,
        van_unseen=own_van,
    ),
    bound=Measure(base=_ceiling),
    named_by=_CEILING,
)
"""Price with tax against the ceiling; the van only when the house supplies it and the ceiling is to hold it."""


_CHOICES = Measure(base=_undone, amount=_net_pence)
"""Net price of the choices alone, pence."""


def price(situation: Situation) -> Price:
    """Totals of what the house sells, from least to most, in whole pence; each end is rounded once.

    While the base van is undecided the price is that of every van that may still be chosen; with none left it is out.
    """
    prep, asked = prepared(situation), Asked(situation.facts)
    included, found = supplied(prep), outcome(NET, prep, asked, None, listed=False)
    lacks = found.lacks
    if found.span is None:
        found = outcome(_CHOICES, prep, asked, None, listed=False)
    assert found.span is not None, "the choices alone always have a price"
    vat_percent = situation.catalogue.firm.vat_percent
    net = Pence(least=round(found.span.least), most=round(found.span.most))
    gross = Pence(least=gross_pence(net.least, vat_percent), most=gross_pence(net.most, vat_percent))
    vat = Pence(least=gross.least - net.least, most=gross.most - net.most)
    return Price(
        net=net, vat=vat, gross=gross, van_included=included, lacks=tuple(dict.fromkeys((*lacks, *found.lacks)))
    )


def gross_effects(situation: Situation) -> Mapping[OptionId, int]:
    """What each option adds to the gross total, pence: beside the rest, or in place of its group's one answer.

    A choice says what it adds now. Rounded half up, each by itself.
    """
    vat_percent = situation.catalogue.firm.vat_percent
    return {option: _rounded(net, vat_percent) for option, net in marginals(NET, situation).items()}


@lru_cache(maxsize=4096)
def _rounded(net_pence: float, vat_percent: float) -> int:
    return gross_pence(round(net_pence), vat_percent)
