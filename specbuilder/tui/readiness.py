"""May it be quoted, may it be signed: worked out beside the screens, for the check."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from specbuilder.model.kinds import Level
from specbuilder.model.life import HindranceCode, LifeStep
from specbuilder.office.steps import Signature, in_the_way
from specbuilder.session.life import PLACES, place_of
from specbuilder.session.state import Session
from specbuilder.wording.life import hindrance_lines
from specbuilder.wording.papers import may_line

from .errands import Stop
from .screens.page import Host
from .screens.question import Question

Lines: TypeAlias = tuple[str, ...]


class Readiness:
    """What stands in the way of a quote and of a signature; what is not known yet says nothing."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self._found: Question[tuple[Lines, Lines]] = Question(host)

    def words(self, open_points: int) -> str:
        """``QUOTE yes, with 4 open points   SIGN no, 3 things``; empty until it is worked out."""
        to_accept = len(self.host.report.broken(Level.SIGN))
        session, now = self.host.deeds.desk.session, self.host.now()

        def work(stop: Stop) -> Iterator[tuple[Lines, Lines]]:
            yield _in_the_way(session, LifeStep.QUOTE, now), _in_the_way(session, LifeStep.ORDER, now)

        self._found.ask("may", work)
        return may_line(*self._found.answer, open_points, to_accept) if self._found.answer is not None else ""


def _in_the_way(session: Session, step: LifeStep, now: str) -> Lines:
    """As the form tells them; that it is not quoted yet is no thing of its own."""
    place = place_of(session.spec) or PLACES[0]
    found = in_the_way(session, step, now, signature=Signature(customer="", firm="", place=place))
    told = (each for each in found if each.code is not HindranceCode.WRONG_STATE)
    return hindrance_lines(session.catalogue, step, told)
