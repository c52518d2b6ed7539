"""Length and width of the beds. A bed is an option with sleeping places; a bench counts through the bed made of it."""

from __future__ import annotations

from math import inf

from specbuilder.calc.formulas.gaps import longest_bed_mm
from specbuilder.calc.measuring.frame import Frame
from specbuilder.calc.measuring.measure import Measure, largest, summed
from specbuilder.calc.measuring.states import Joint
from specbuilder.calc.measuring.tally import Tally
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, LedgerId, Tag
from specbuilder.model.ledger import Entry
from specbuilder.model.vans import Van

from .seats import berths

FROM_BENCH = Tag("bed-from-bench")
"""Needed by a bed that is made from the bench: it moves with it."""
_TALLEST, _SLEEPERS = BriefKey("tallest_sleeper_mm"), BriefKey("sleepers")


def from_bench(option: Option) -> bool:
    """True for a bed that is made from the bench."""
    return any(FROM_BENCH in need.any_of for need in option.needs)


def _own_length_mm(option: Option, _van: Van | None) -> float | None:
    return option.space.bed_length_mm if berths(option) and not from_bench(option) else None


def _bench_length_mm(option: Option, _van: Van | None) -> float | None:
    return option.space.bed_length_mm if berths(option) and from_bench(option) else None


def _shift_mm(option: Option, _van: Van | None) -> float | None:
    return option.space.bench_shift_mm or None


def _longest(joint: Joint, _frame: Frame) -> float | None:
    found = longest_bed_mm(*joint)
    return None if found == -inf else found


def _longest_signs(joint: Joint, _frame: Frame) -> tuple[int, ...]:
    own_mm, bench_mm, shift_mm = joint
    bench_wins = bench_mm - shift_mm >= own_mm
    return (0, 1, -1) if bench_wins else (1, 0, 0)


def _tall(frame: Frame) -> tuple[Entry, ...]:
    return (
        frame.entry("tallest sleeper", frame.asked.number(_TALLEST), _TALLEST),
        frame.entry("room beyond", frame.settings["beyond_sleeper_mm"]),
    )


def _side_by_side(frame: Frame) -> tuple[Entry, ...]:
    return (frame.entry("sleepers", frame.asked.number(_SLEEPERS) * frame.settings["per_sleeper_mm"], _SLEEPERS),)


BED_LENGTH = Tally(
    id=LedgerId("bed-length"),
    value=Measure(
        parts=(largest(_own_length_mm), largest(_bench_length_mm), summed(_shift_mm)),
        rest=_longest,
        signs=_longest_signs,
    ),
    bound=Measure(base=_tall),
    named_by=_TALLEST,
    settings=("beyond_sleeper_mm",),
)
"""The longest bed against the tallest sleeper."""

BED_WIDTH = Tally(
    id=LedgerId("bed-width"),
    value=Measure(amount=lambda option: option.space.bed_width_mm if berths(option) else 0),
    bound=Measure(base=_side_by_side),
    settings=("per_sleeper_mm",),
)
"""All beds together against room for each sleeper."""
