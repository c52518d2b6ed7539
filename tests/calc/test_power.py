"""The sums of power are exact over everything undecided, and say who uses how much."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from math import inf
from typing import NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.model.brief import Answer
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Sense, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import point
from tests.calc.plain_power import PLAIN, Pair
from tests.calc.power_scene import BRIEF, RULES, build, read

OPEN = ("battery", "battery-place", "inverter", "engine-charging", "mains-charger", "hook-up", "fridge", "cooking")
EXTRA = ("solar", "appliances", "sockets")
ENDS: Mapping[str, tuple[Answer, ...]] = {
    **{key: BRIEF[key] for key in ("season", "region", "site_amps")},
    "drive_h_per_day": (0, 6),
    "design_temp_c": (-20, 15),
    "nights_off_grid": (0, 14),
}
"""What an unknown answer may turn out to be."""
SLOW = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])


class Told(NamedTuple):
    """A situation in words, so that a failure can be read."""

    choices: tuple[tuple[str, int], ...]
    undecided: Mapping[str, tuple[str, ...]]
    answers: Mapping[str, Answer]
    unknown: tuple[str, ...]
    van: str | None

    def laid(self) -> Situation:
        placed = [Placed(option=RULES.options[OptionId(o)], count=n) for o, n in self.choices]
        van = RULES.options[OptionId(self.van)] if self.van else None
        return build(*placed, answers=self.answers, undecided=self.undecided, unknown=self.unknown, van=van)


@st.composite
def situations(draw: st.DrawFn) -> Told:
    """Some groups decided and some not, any extras, now and then an answer that is not known."""
    choices: list[tuple[str, int]] = []
    undecided: dict[str, tuple[str, ...]] = {}
    for group in OPEN:
        members = [o.id for o in RULES.options.values() if o.group == group]
        live = draw(st.lists(st.sampled_from(members), min_size=1, max_size=3, unique=True))
        if len(undecided) < 4 and draw(st.booleans()):
            undecided[group] = tuple(live)
        else:
            choices.append((live[0], 1))
    extras = [o for o in RULES.options.values() if o.group in EXTRA]
    taken = draw(st.lists(st.integers(0, len(extras) - 1), max_size=6, unique=True))
    choices += [(extras[at].id, draw(st.integers(1, extras[at].max_count))) for at in taken]
    unknown = tuple(draw(st.lists(st.sampled_from(sorted(ENDS)), max_size=2, unique=True)))
    answers = {key: draw(st.sampled_from(values)) for key, values in BRIEF.items()}
    van = draw(st.sampled_from(["fenwain-short", "hushwain", None]))
    if van is None:
        undecided["base-van"] = ("fenwain-short", "hushwain")
    return Told(tuple(choices), undecided, answers, unknown, van)


def finished(now: Situation) -> Iterator[tuple[Mapping[str, object], Pair, str]]:
    """Every way to finish it, with what each sum comes to."""
    given_ = [(p.option, p.count) for p in now.placed if p.option.van is None]
    groups = {str(g): options for g, options in now.undecided.items()}
    unknown = {k: ends for k, ends in ENDS.items() if not now.facts.known(k)}
    known = {str(k): v for k, v in now.facts.values.items()}
    for answers, ways in product(product(*unknown.values()), product(*groups.values())):
        brief = {**known, **dict(zip(unknown, answers, strict=True))}
        chosen = dict(zip(groups, ways, strict=True))
        van = chosen.get("base-van", now.van)
        assert van is not None
        assert van.van is not None
        pieces = [*given_, *((o, 1) for o in ways if o.van is None)]
        settled = {**chosen, **dict(zip(unknown, answers, strict=True))}
        for id_, plain in PLAIN.items():
            yield settled, plain(van.van, pieces, brief), id_


@given(situations())
@SLOW
def test_a_reading_spans_every_finished_build_and_names_what_is_open(told: Told) -> None:
    now = told.laid()
    pairs: dict[str, list[tuple[Mapping[str, object], Pair]]] = {id_: [] for id_ in PLAIN}
    for settled, pair, id_ in finished(now):
        pairs[id_].append((settled, pair))
    for id_, found in pairs.items():
        _check(id_, read(id_, now), [pair for _, pair in found])
        _check_lacks(read(id_, now), found)


def _check(id_: str, reading: Reading, pairs: list[Pair]) -> None:
    nothing = [value is None or (bound is None and id_ != "daily-energy") for value, bound in pairs]
    if all(nothing):
        assert not reading.applies or reading.verdict is Verdict.CANNOT_TELL
        return
    values = [value for value, bound in pairs if value is not None]
    assert reading.value is not None
    assert (reading.value.least, reading.value.most) == pytest.approx((min(values), max(values)))
    if any(nothing):
        assert reading.verdict is Verdict.CANNOT_TELL
        return
    kept = {_keeps(reading.sense, value, bound) for value, bound in pairs}
    if reading.verdict is not Verdict.CANNOT_TELL and id_ != "daily-energy":
        assert kept == {reading.verdict is Verdict.HOLDS}
    if len(set(pairs)) == 1:
        assert reading.verdict is not Verdict.CANNOT_TELL


def _keeps(sense: Sense, value: float | None, bound: float | None) -> bool:
    if value is None or bound is None:
        return True
    return value >= bound - 1e-6 if sense is Sense.AT_LEAST else value <= bound + 1e-6


def _check_lacks(reading: Reading, found: list[tuple[Mapping[str, object], Pair]]) -> None:
    """Everything open that can change the value is named; nothing is lacking where all is settled."""
    if not reading.applies:
        return
    named = {str(lack.group or lack.key) for lack in reading.lacks}
    for thing in found[0][0]:
        seen: dict[object, object] = {}
        for settled, pair in found:
            others = tuple((k, str(v)) for k, v in settled.items() if k != thing)
            rounded = tuple(None if n is None else round(n, 5) for n in pair)
            if seen.setdefault(others, rounded) != rounded:
                assert thing in named, thing
                break
    if not found[0][0]:
        assert not named


def test_without_end_where_sun_carries_the_day() -> None:
    now = build(
        "battery-small", "place-in-galley", Placed(option=RULES.options[OptionId("solar-light-120")], count=2),
        answers={"region": "south", "nights_off_grid": 9},
    )  # fmt: skip
    reading = read("battery-nights", now)
    assert reading.value == point(inf)
    assert reading.verdict is Verdict.HOLDS
    assert not reading.lacks


def test_who_uses_how_much() -> None:
    now = build("inverter-600", "laptop", "fridge-front-door", undecided={"cooking": ("no-cooking", "fuel-hob-bundle")})
    lines = {
        str(entry.label or entry.option or entry.group): (entry.amount.least, entry.amount.most)
        for entry in read("daily-energy", now).entries
    }
    laptop, hob = 60 * 2.5 / 0.88, 12 * 0.8 + 2 * 7
    assert lines == {
        "phones and the like": (33, 33),
        "always on": (48, 48),
        "inverter-600": (24, 24),
        "laptop": pytest.approx((laptop, laptop)),
        "fridge-front-door": (432, 432),
        "cooking": pytest.approx((0, hob)),
    }


def test_a_strong_kettle_counts_only_on_an_inverter_that_carries_it() -> None:
    weak, strong = (
        read("daily-energy", build(inverter, "kettle-household")) for inverter in ("inverter-600", "inverter-2000")
    )
    assert weak.value == point(33 + 48 + 24)
    assert strong.value is not None
    assert strong.value.least == pytest.approx(33 + 48 + 42 + 2000 * 0.12 / 0.9)
