"""Small builds made in code: steps that hang on each other any way they can, parts for them, and a firm's days."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from types import MappingProxyType

from hypothesis import strategies as st

from specbuilder.model.catalogue import WorkStep
from specbuilder.model.facts import Facts
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Truth, Verdict, Weekday
from specbuilder.model.ledger import Entry, Reading
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.report import Pence, Price, Report
from specbuilder.model.span import point
from specbuilder.model.spec import Choice, Spec
from specbuilder.workshop.view import SpecView, view_of
from tests.worlds import catalogue, group, option

START = date(2031, 4, 19)
"""A Saturday."""
NOTHING = Pence(least=0, most=0)


def step(id_: str, hours: float, *before: str, hold: str = "") -> WorkStep:
    """A step of the build with its own hours."""
    return WorkStep(
        id=id_,
        work=f"Work {id_}",
        hours_fixed=hours,
        hours_per_circuit=0,
        hours_basis="fixed",
        predecessors=before,
        hold_point=hold,
        hold_text="",
        freezes=(),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """A build in figures. Parts: step, and days after the start on which it comes."""

    steps: tuple[WorkStep, ...]
    parts: tuple[tuple[str, int], ...] = ()
    records: tuple[Record, ...] = ()
    week: tuple[Weekday, ...] = tuple(Weekday)[:5]
    hours_per_day: float = 7.5

    def view(self) -> SpecView:
        """The build as the workshop sees it."""
        parts = tuple(
            option(f"part-{number}", "parts", build_step=at, mass_kg=1.0) for number, (at, _) in enumerate(self.parts)
        )
        built = catalogue((group("parts", any_=len(parts) + 1),), parts)
        firm = replace(built.firm, work_days=self.week, hours_per_day=self.hours_per_day)
        built = replace(built, firm=firm, work=MappingProxyType({one.id: one for one in self.steps}))
        spec = Spec(
            choices=tuple(Choice(option=part.id) for part in parts),
            records=(*self.records, *(due(number, days) for number, (_, days) in enumerate(self.parts))),
        )
        return view_of(built, spec, report_of(spec, self.steps))

    def without(self, number: int) -> World:
        """The same with one part there on the first day."""
        parts = tuple((at, 0 if n == number else days) for n, (at, days) in enumerate(self.parts))
        return replace(self, parts=parts)


def due(number: int, days: int) -> Record:
    """A part with the day on which it is expected."""
    return supply(number, "due", (START + timedelta(days=days)).isoformat())


def supply(number: int, words: str, on: str, day: str = "2031-04-18") -> Record:
    """Something recorded of a part."""
    about = f"part-{number}"
    return Record(kind=RecordKind.SUPPLY, at=f"{day} 09:00", by="foreman", about=about, words=words, due=on)


def passed(hold: str, day: str) -> Record:
    """A hold point signed."""
    return Record(kind=RecordKind.PASSED, at=f"{day} 16:00", by="foreman", about=hold)


def report_of(spec: Spec, steps: tuple[WorkStep, ...]) -> Report:
    """A report of the hours alone."""
    hours = sum(one.hours_fixed for one in steps)
    whole = Reading(
        id=LedgerId("workshop-hours"),
        value=point(hours),
        bound=None,
        verdict=Verdict.HOLDS,
        entries=(Entry("work on every van", point(hours)),),
    )
    return Report(
        spec=spec,
        facts=Facts(values=MappingProxyType({}), assumed=frozenset(), ranges=MappingProxyType({})),
        van=None,
        options=MappingProxyType({}),
        groups=MappingProxyType({}),
        steps=MappingProxyType({}),
        findings=(),
        readings=MappingProxyType({whole.id: whole}),
        price=Price(net=NOTHING, vat=NOTHING, gross=NOTHING, van_included=Truth.NO),
        unknown=(),
        assumed=(),
        undecided=(),
        strangers=(),
        unsettled=frozenset(),
        silent_rules=(),
        silent_ledgers=(),
    )


def part(number: int) -> OptionId:
    """The option of a part."""
    return OptionId(f"part-{number}")


HOURS = st.sampled_from([0.0, 0.25, 0.35, 1.0, 3.75, 4.0, 7.5, 8.0, 15.0, 22.5, 33.3])


@st.composite
def worlds(draw: st.DrawFn) -> World:
    """Any build of up to seven steps; the table lists them in no order of work."""
    count = draw(st.integers(1, 7))
    ids = [f"S{number}" for number in range(count)]
    steps = []
    for number, id_ in enumerate(ids):
        before = draw(st.lists(st.sampled_from(ids[:number]), unique=True, max_size=3)) if number else []
        steps.append(step(id_, draw(HOURS), *before, hold=f"H{number}" if draw(st.booleans()) else ""))
    parts = draw(st.lists(st.tuples(st.sampled_from(ids), st.integers(0, 40)), max_size=4))
    week = draw(st.lists(st.sampled_from(tuple(Weekday)), unique=True, min_size=1))
    return World(
        steps=tuple(draw(st.permutations(steps))),
        parts=tuple(parts),
        week=tuple(week),
        hours_per_day=draw(st.sampled_from([1.0, 4.0, 7.5, 8.0])),
    )
