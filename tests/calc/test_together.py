"""What cannot run at the same moment: the sets told are smallest, and none is forgotten."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from types import MappingProxyType

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc.power.battery_cold import charging_in_cold
from specbuilder.calc.power.together import Piece, together_away, together_plugged, too_much
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.power import ColdCharging, Feed, Together
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, point
from specbuilder.model.spec import OwnPart
from tests.calc.power_scene import RULES, build

WATTS = st.lists(st.integers(0, 3000), max_size=8)


def pieces(watts: list[int]) -> list[Piece]:
    return [Piece(OptionId(f"thing-{at}"), w) for at, w in enumerate(watts)]


@given(WATTS, st.integers(0, 6000))
def test_every_smallest_set_is_told_once(watts: list[int], limit_w: int) -> None:
    things = pieces(watts)
    over = [
        frozenset(p.option for p in some)
        for size in range(len(things) + 1)
        for some in combinations(things, size)
        if sum(p.watts_w for p in some) > limit_w
    ]
    smallest = {one for one in over if not any(other < one for other in over)}
    told = [frozenset(p.option for p in one) for one in too_much(things, limit_w)]
    assert len(told) == len(set(told))
    assert set(told) == smallest


@given(WATTS, st.integers(0, 6000))
def test_without_any_one_of_a_set_the_rest_can_run(watts: list[int], limit_w: int) -> None:
    for one in too_much(pieces(watts), limit_w):
        total = sum(p.watts_w for p in one)
        assert total > limit_w
        assert all(total - p.watts_w <= limit_w for p in one)


def sets(told: Together | None) -> dict[str, float]:
    assert told is not None
    return {" ".join(f"{o}*{n}" if n > 1 else o for o, n in one.options): one.watts_w for one in told.sets}


STRONG = ("battery-twin", "place-in-galley", "inverter-2000")


def test_pairs_on_the_inverter() -> None:
    now = build(*STRONG, "induction-single", "kettle-low-watt", "microwave-800", "laptop")
    told = together_away(now)
    assert told is not None
    assert (told.feed, told.limit_w) == (Feed.INVERTER, point(2000))
    assert sets(told) == {
        "induction-single microwave-800": 3133,
        "induction-single kettle-low-watt": 2700,
        "microwave-800 kettle-low-watt": 2233,
    }
    assert [one.over_w for one in told.sets] == [1133, 700, 233]


def test_three_that_go_in_pairs() -> None:
    two = Placed(option=RULES.options[OptionId("e-bike-charger")], count=2)
    now = build(*STRONG, "microwave-800", two, "breathing-device", "laptop", "kettle-low-watt")
    assert sets(together_away(now)) == {"microwave-800 kettle-low-watt": 2233}


def test_what_just_meets_the_limit_can_run() -> None:
    """Two bike chargers, laptop and breathing device: 600 W of 600."""
    two = Placed(option=RULES.options[OptionId("e-bike-charger")], count=2)
    now = build("battery-small", "place-in-galley", "inverter-600", two, "laptop", "breathing-device")
    assert sets(together_away(now)) == {}


def test_a_set_of_three_with_two_alike() -> None:
    rules = replace(
        RULES,
        options=MappingProxyType(
            {
                **RULES.options,
                OptionId("inverter-600"): replace(
                    RULES.options[OptionId("inverter-600")],
                    power=replace(RULES.options[OptionId("inverter-600")].power, inverter_w=550),
                ),
            }
        ),
    )
    two = Placed(option=rules.options[OptionId("e-bike-charger")], count=2)
    now = build("battery-small", "place-in-galley", "inverter-600", two, "laptop", "breathing-device", rules=rules)
    assert sets(together_away(now)) == {"e-bike-charger*2 laptop": 560}


def test_the_battery_gives_up_before_the_inverter() -> None:
    now = build("battery-small", "place-in-galley", "inverter-2000", "kettle-low-watt", "laptop", "e-bike-charger")
    told = together_away(now)
    assert told is not None
    assert told.feed is Feed.BATTERY
    assert told.limit_w == point(100 * 12 * 0.9)
    assert sets(told) == {"kettle-low-watt e-bike-charger": 1150}
    lead = together_away(build("battery-lantern", "place-in-galley", "inverter-2000", "kettle-low-watt"))
    assert lead is not None
    assert lead.limit_w is not None
    assert lead.limit_w.least == pytest.approx(100 * 11.5 * 0.9)


def test_without_a_battery_nothing_runs() -> None:
    assert sets(together_away(build("no-battery", "inverter-600", "laptop"))) == {"laptop": 60}


def test_nothing_is_told_without_a_source() -> None:
    assert together_away(build("no-inverter", "kettle-household")) is None
    assert together_plugged(build("no-hook-up", "kettle-household")) is None


def test_all_of_it_counts_on_the_pitch() -> None:
    """Kettle, water heater and charger: 3,341 W, too much for 10 A and not for 16 A."""
    things = ("hook-up-bundle", "kettle-household", "hot-water-electric-6l", "mains-charger-30")
    told = together_plugged(build(*things, answers={"site_amps": "10"}))
    assert told is not None
    assert (told.feed, told.limit_w) == (Feed.PITCH, point(2300))
    assert sets(told) == {"kettle-household hot-water-electric-6l": 2850, "kettle-household mains-charger-30": 2491}
    assert sets(together_plugged(build(*things, answers={"site_amps": "16"}))) == {}
    dried = together_plugged(build(*things, "hair-dryer", answers={"site_amps": "16"}))
    assert sets(dried) == {
        "kettle-household hair-dryer mains-charger-30": 3991,
        "kettle-household hair-dryer hot-water-electric-6l": 4350,
    }


def test_the_weakest_pitch_counts_while_nobody_named_it() -> None:
    told = together_plugged(build("hook-up-bundle", "kettle-household", unknown=("site_amps",)))
    assert told is not None
    assert told.limit_w == Span(1380, 3680)
    assert sets(told) == {"kettle-household": 2000}


def test_what_is_missing_or_absurd_says_nothing() -> None:
    def with_(option: str, **figures: float | None) -> Situation:
        known = RULES.options[OptionId(option)]
        spoilt = replace(known, power=replace(known.power, **figures))  # type: ignore[arg-type]
        rules = replace(RULES, options=MappingProxyType({**RULES.options, known.id: spoilt}))
        return build(*STRONG, "hook-up-bundle", "laptop", rules=rules)

    for now in (
        with_("laptop", watts_running=None),
        with_("laptop", watts_running=-60),
        with_("inverter-2000", inverter_efficiency=2),
        with_("battery-twin", bms_continuous_a=None),
    ):
        told = together_away(now)
        assert told is not None
        assert told.limit_w is None
        assert told.outside is not None
    plugged = together_plugged(with_("laptop", watts_running=None))
    assert plugged is not None
    assert plugged.limit_w is None


def test_nobody_can_tell_while_the_battery_is_open() -> None:
    now = build("inverter-600", "laptop", undecided={"battery": ("battery-small", "no-battery")})
    assert together_away(now) == Together(feed=Feed.INVERTER, limit_w=None)


def test_the_customers_own_thing_counts_by_its_plate() -> None:
    laptop = RULES.options[OptionId("laptop")]
    read = Placed(option=laptop, owner=Owner.CUSTOMER, own_part=OwnPart(watts_w=700))
    told = together_away(build("battery-small", "place-in-galley", "inverter-600", read))
    assert sets(told) == {"laptop": 700}
    assert told is not None
    assert told.unsure == ()
    unread = together_away(
        build("battery-small", "place-in-galley", "inverter-600", Placed(option=laptop, owner=Owner.CUSTOMER))
    )
    assert unread is not None
    assert unread.unsure == ("laptop",)


@pytest.mark.parametrize(
    ("battery", "cold_c", "charging"),
    [
        ("battery-kettle", 0, ColdCharging.MAY),
        ("battery-kettle", -1, ColdCharging.STOPS_ITSELF),
        ("battery-kettle-heated", -1, ColdCharging.WARMS_FIRST),
        ("battery-own", -1, ColdCharging.MUST_NOT),
        ("battery-lantern", -10, ColdCharging.LEAD),
    ],
)
def test_charging_in_the_cold(battery: str, cold_c: int, charging: ColdCharging) -> None:
    told = charging_in_cold(build(battery, "place-in-galley", answers={"design_temp_c": cold_c}))
    assert told is not None
    assert told.charging is charging
    assert not told.outside
    outside = charging_in_cold(build(battery, "place-under-floor", answers={"design_temp_c": cold_c}))
    assert outside is not None
    assert outside.outside


def test_charging_in_a_cold_nobody_named() -> None:
    told = charging_in_cold(build("battery-kettle", unknown=("design_temp_c",)))
    assert told is not None
    assert told.charging is ColdCharging.UNKNOWN
    assert charging_in_cold(build("no-battery")) is None
    bare = replace(RULES, tables=MappingProxyType({k: v for k, v in RULES.tables.items() if k != "lithium-charging"}))
    no_limit = charging_in_cold(build("battery-kettle", rules=bare))
    assert no_limit is not None
    assert no_limit.charging is ColdCharging.UNKNOWN
