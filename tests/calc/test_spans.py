"""A span is the least and the most over every way to finish the build: no narrower, and no wider."""

from __future__ import annotations

from collections.abc import Iterable

import pytest
from hypothesis import HealthCheck, given, settings

from specbuilder.calc import read_all
from specbuilder.model.kinds import Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span
from tests.calc.completions import Finished, finished
from tests.calc.plain import PLAIN, Pair
from tests.calc.random_worlds import LIVING, situations
from tests.calc.scene import AT_LEAST, SHOWN
from tests.calc.scene import LIVING as LIVING_SUMS

NAMED_BY = {
    "closed-height": "parking_limit_mm",
    "price-gross": "ceiling_gross_pence",
    "lead-weeks": "weeks_wanted",
    "bed-length": "tallest_sleeper_mm",
}
SLOW = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)


def same(span: Span | None, numbers: Iterable[float | None]) -> None:
    """The span is the hull of the numbers."""
    there = [n for n in numbers if n is not None]
    if not there:
        assert span is None
        return
    assert span is not None
    assert (span.least, span.most) == pytest.approx((min(there), max(there)))


def keeps(id_: str, pair: Pair) -> bool:
    """Whether one finished build keeps the bound; with nothing to measure or no bound it does."""
    value, bound = pair
    if value is None or bound is None:
        return True
    return value >= bound - 1e-6 if id_ in (*AT_LEAST, *LIVING_SUMS) else value <= bound + 1e-6


@given(situations() | situations(LIVING))
@SLOW
def test_a_reading_spans_every_finished_build(situation: Situation) -> None:
    builds = list(finished(situation))
    readings = read_all(situation)
    assert set(readings) == set(PLAIN)
    for id_, reading in readings.items():
        pairs = [PLAIN[id_](b.build) for b in builds]
        _check(id_, reading, pairs, situation)
        _check_lacks(id_, reading, builds, pairs, situation)


def _check(id_: str, reading: Reading, pairs: list[Pair], situation: Situation) -> None:
    named_by = NAMED_BY.get(id_)
    asked = named_by is not None and not situation.facts.known(named_by)
    unnamed = named_by is not None and not asked and situation.facts.number(named_by).most == 0
    values = [value for value, _ in pairs]
    same(reading.value, values)
    if all(value is None for value in values) or unnamed:
        assert not reading.applies
        assert reading.verdict is Verdict.HOLDS
        return
    bounds = [bound for _, bound in pairs]
    if None not in values and not asked and None not in bounds:
        same(reading.bound, bounds)
    if id_ in SHOWN:
        settled = len(set(values)) == 1
        assert reading.verdict is (Verdict.HOLDS if settled else Verdict.CANNOT_TELL)
    elif id_ == "battery-box" and {bound for value, bound in pairs if value is not None} == {None}:
        assert reading.verdict in (Verdict.HOLDS, Verdict.CANNOT_TELL)
        assert reading.bound is None or None in values
    elif asked or None in values:
        assert reading.verdict is Verdict.CANNOT_TELL
    elif None in bounds:
        assert reading.bound is None
        assert reading.verdict is (Verdict.HOLDS if set(bounds) == {None} else Verdict.CANNOT_TELL)
    else:
        kept = {keeps(id_, pair) for pair in pairs}
        if reading.verdict is Verdict.HOLDS:
            assert kept == {True}
        elif reading.verdict is Verdict.BROKEN:
            assert kept == {False}
        elif len(set(bounds)) == 1:
            assert kept == {True, False}


def _check_lacks(id_: str, reading: Reading, builds: list[Finished], pairs: list[Pair], situation: Situation) -> None:
    """Everything open that can change the pair is named, and nothing else where that is promised."""
    if not reading.applies and reading.value is None:
        assert not reading.lacks
        return
    named = {str(lack.group or lack.key) for lack in reading.lacks}
    changing = {thing for thing in builds[0].settled if _changes(thing, builds, pairs)}
    for thing in changing:
        assert thing in named or (thing == NAMED_BY.get(id_) and reading.bound is None), thing
    if id_ not in ("zone-use", "roof-load-raised"):
        groups = {str(g) for g in situation.undecided}
        assert named & groups <= changing


def _changes(thing: str, builds: list[Finished], pairs: list[Pair]) -> bool:
    found: dict[object, Pair] = {}
    for build, pair in zip(builds, pairs, strict=True):
        others = tuple((k, str(v)) for k, v in build.settled.items() if k != thing)
        rounded = tuple(None if n is None else round(n, 6) for n in pair)
        if found.setdefault(others, rounded) != rounded:  # type: ignore[arg-type]  # two numbers stay two
            return True
    return False
