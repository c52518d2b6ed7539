"""What is told beside the sums of power is exact over everything undecided, worked out twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product

import pytest
from hypothesis import given

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Situation
from specbuilder.model.vans import Van
from tests.calc.plain_power import Pieces
from tests.calc.plain_power_beside import PLAIN_BESIDE
from tests.calc.power_beside_scene import FIGURES, read
from tests.calc.power_scene import RULES
from tests.calc.test_power import ENDS, SLOW, Told, situations


def test_every_figure_is_worked_out_twice() -> None:
    of = ("daily-energy", "battery-nights", "battery-current", "inverter-largest-load", "hook-up-watts")
    fridges = {"fridge-cool", "fridge-warm", "fridge-hot"}  # they have a file of their own
    told = {id_ for id_, spec in RULES.ledgers.items() if spec.part_of in of} - fridges
    assert told == set(PLAIN_BESIDE) == set(FIGURES)


@given(situations())
@SLOW
def test_a_figure_spans_every_finished_build_and_names_what_is_open(told: Told) -> None:
    now = told.laid()
    found: dict[str, list[tuple[Mapping[str, object], float | None]]] = {id_: [] for id_ in PLAIN_BESIDE}
    for settled, pieces, brief in _finished(now):
        for id_, plain in PLAIN_BESIDE.items():
            found[id_].append((settled, plain(_van(now, settled), pieces, brief)))
    for id_, ways in found.items():
        _check(read(id_, now), ways)


def _van(now: Situation, settled: Mapping[str, object]) -> Van:
    option = settled.get("base-van", now.van)
    assert isinstance(option, Option)
    assert option.van is not None
    return option.van


def _finished(now: Situation) -> Iterator[tuple[Mapping[str, object], Pieces, Mapping[str, Answer]]]:
    """Every way to finish it: what was settled, the choices, and the brief."""
    chosen = [(p.option, p.count) for p in now.placed if p.option.van is None]
    groups = {str(g): options for g, options in now.undecided.items()}
    unknown = {k: ends for k, ends in ENDS.items() if not now.facts.known(k)}
    known = {str(k): v for k, v in now.facts.values.items()}
    for answers, ways in product(product(*unknown.values()), product(*groups.values())):
        settled = {**dict(zip(groups, ways, strict=True)), **dict(zip(unknown, answers, strict=True))}
        pieces = [*chosen, *((o, 1) for o in ways if o.van is None)]
        yield settled, pieces, {**known, **dict(zip(unknown, answers, strict=True))}


def _check(reading: Reading, ways: Sequence[tuple[Mapping[str, object], float | None]]) -> None:
    values = [one for _, one in ways if one is not None]
    if not reading.applies:
        assert not any(values), reading
        return
    assert reading.value is not None, reading
    assert (reading.value.least, reading.value.most) == pytest.approx((min(values), max(values)), abs=2e-6), reading.id
    if reading.sense is Sense.SHOWN:
        settled = len(values) == len(ways) and reading.value.settled
        assert reading.verdict is (Verdict.HOLDS if settled else Verdict.CANNOT_TELL), reading
    named = {str(lack.group or lack.key) for lack in reading.lacks}
    for thing in ways[0][0]:
        seen: dict[object, object] = {}
        for settled_, one in ways:
            others = tuple((k, str(v)) for k, v in settled_.items() if k != thing)
            rounded = None if one is None else round(one, 5)
            if seen.setdefault(others, rounded) != rounded:
                assert thing in named, (reading.id, thing)
                break
    if not ways[0][0]:
        assert not named, reading
