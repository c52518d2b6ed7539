"""``build``: how far the build of a job is, one fact a line. ``record`` writes down what happens next."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any

from specbuilder.documents.sheets.customer.price import deposit_of
from specbuilder.model.ids import OptionId
from specbuilder.model.record import RecordKind
from specbuilder.model.stand import Stand
from specbuilder.office.house import House, stand_of
from specbuilder.session.life import SIGNED_STATES
from specbuilder.wording import build as words
from specbuilder.wording.job_lines import (
    build_head,
    hold_line,
    next_call_line,
    only_a_job_stands,
    part_line,
    promise_line,
)
from specbuilder.wording.papers import deposit_line
from specbuilder.wording.plain import ended
from specbuilder.workshop.progress import HoldPoint, PartOfBuild, hold_points, next_hold, parts_of_build
from specbuilder.workshop.view import view_of

from .answers import Answer
from .asjson import FORMAT, json_text
from .opening import held_job, opened


def build(house: House, arguments: Namespace, now: datetime) -> Answer:
    """Deposit, hold points with what was read, parts with where they are, promises and the next call.

    Raises:
        StopError: it is no job, or cannot be read.
        DiskError, RulesFaults: a file could not be read.
    """
    held_job(arguments.file, house, only_a_job_stands())
    was = opened(arguments.file, house)
    stand = stand_of(was.catalogue, was.spec)
    base = house.base_of(was.spec)
    seen = _Build(house, stand, now.date(), to_build=stand.spec.state in SIGNED_STATES or base is not None)
    if arguments.json:
        return Answer((json_text(seen.json()),))
    return Answer(tuple(seen.lines()))


class _Build:
    """A build as it stands on a day."""

    def __init__(self, house: House, stand: Stand, today: date, *, to_build: bool) -> None:
        self.stand, self.to_build = stand, to_build
        view = view_of(stand.catalogue, stand.spec, stand.report)
        self.points: tuple[HoldPoint, ...] = hold_points(view) if to_build else ()
        self.parts: tuple[PartOfBuild, ...] = parts_of_build(view) if to_build else ()
        steps = house.case(stand, today).plan.steps if to_build else ()
        self.due: dict[str, date] = {step.step: step.last_day for step in steps}
        self.arrivals: dict[OptionId, date] = {
            each.option: each.on for step in steps for each in step.arrivals if each.on is not None
        }

    def lines(self) -> Iterator[str]:
        """One fact a line."""
        spec, catalogue = self.stand.spec, self.stand.catalogue
        yield build_head(spec)
        if not self.to_build:
            yield words.not_ordered_yet()
        elif spec.state not in SIGNED_STATES and spec.replaces is not None:
            yield words.changes_first(spec.replaces)
        if self.to_build:
            yield ended(deposit_line(*self._deposit(), catalogue.firm.currency))
        following = next_hold(self.points)
        for point in self.points:
            yield hold_line(point, words.hold_state(point, point is following, self.due.get(point.step.id)))
            yield from (f"{point.step.hold_point}: {ended(text)}" for text in words.hold_detail(point))
        for part in self.parts:
            yield part_line(words.part_name(catalogue, part), self._state(part), part.chosen.choice.option)
        yield from (promise_line(text) for text in words.promises(spec.recorded(RecordKind.PROMISED)))
        yield next_call_line(words.calls(spec.recorded(RecordKind.CALL)))

    def json(self) -> dict[str, Any]:
        """The same for other programs."""
        spec, (asked, received) = self.stand.spec, self._deposit()
        following = next_hold(self.points)
        return {
            "format": FORMAT,
            "number": spec.number,
            "revision": spec.revision,
            "state": spec.state.value,
            "deposit_asked_pence": {"least": asked.least, "most": asked.most},
            "deposit_received_pence": received,
            "next_hold_point": following.step.hold_point if following is not None else None,
            "hold_points": [
                {
                    "id": point.step.hold_point,
                    "step": point.step.id,
                    "what": point.step.hold_text,
                    "passed": point.passed.day if point.passed is not None else None,
                    "by": point.passed.by if point.passed is not None else None,
                    "must_be": {figure.what: figure.must_be for figure in point.figures},
                    "read": [record.words for record in point.readings],
                }
                for point in self.points
            ],
            "parts": [
                {
                    "option": part.chosen.choice.option,
                    "fitted": part.fitted,
                    "supply": part.supply.words if part.supply is not None else None,
                    "due": (part.supply.due or None) if part.supply is not None else None,
                    "words": self._state(part),
                }
                for part in self.parts
            ],
            "promises": [record.words for record in spec.recorded(RecordKind.PROMISED)],
            "calls": [{"due": record.due, "about": record.words} for record in spec.recorded(RecordKind.CALL)],
        }

    def _deposit(self) -> tuple[Any, int]:
        received = sum(record.pence or 0 for record in self.stand.spec.recorded(RecordKind.DEPOSIT))
        return deposit_of(self.stand), received

    def _state(self, part: PartOfBuild) -> str:
        return words.part_state(part, self.arrivals.get(part.chosen.choice.option))
