"""Where a job stands in its life, what comes next, and what is in the way of it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from specbuilder.model.kinds import JobState
from specbuilder.model.life import LifeStep
from specbuilder.model.papers import Case
from specbuilder.office.house import House
from specbuilder.office.steps import in_the_way, may_give_up
from specbuilder.session.change_order import order_number
from specbuilder.session.life import SIGNED_STATES, state_on
from specbuilder.session.state import Session
from specbuilder.wording import papers as words
from specbuilder.wording.job_lines import next_step_line
from specbuilder.wording.life import hindrance_lines
from specbuilder.wording.plain import ended

_MINUTE = "%Y-%m-%d %H:%M"


def standing_of(house: House, case: Case, now: datetime) -> Iterator[str]:
    """One fact a line."""
    stand = case.stand
    spec, currency = stand.spec, stand.catalogue.firm.currency
    base = house.base_of(spec) if spec.state not in SIGNED_STATES else None
    state = state_on(spec, now.date())
    if base is not None:
        yield from words.change_stands(spec, base.spec, order_number(spec))
    else:
        yield words.stands(spec, state, currency)
    if case.replaced_by is not None:
        yield words.replaced(case.replaced_by)
        return
    if spec.state in SIGNED_STATES or state is JobState.AS_BUILT:
        return
    step = LifeStep.ORDER if base is not None or spec.state is not JobState.DRAFT else LifeStep.QUOTE
    gross = stand.report.price.gross
    if base is not None:
        yield next_step_line(words.change_line(order_number(spec), base.report.price.gross, gross, currency))
    elif state is JobState.EXPIRED:
        yield next_step_line(words.again_line())
        return
    else:
        line = words.quote_line if step is LifeStep.QUOTE else words.order_line
        yield next_step_line(line(gross, currency))
    session = Session(catalogue=stand.catalogue, spec=spec, base=base)
    found = in_the_way(session, step, f"{now:{_MINUTE}}")
    yield from hindrance_lines(stand.catalogue, step, found)
    if may_give_up(stand):
        yield ended(words.give_up_line(spec))
