"""A whole van worked by hand in five states of load, what may still be loaded where, and what says nothing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.calc import read_all, told_beside
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Weighed
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Anchor, Basis, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Position, Space, Water
from specbuilder.model.situation import Situation
from specbuilder.model.span import point
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests import worlds
from tests.calc.scene import FENWAIN, base_van, catalogue, facts, situation

SHIPPED = read_rules(rules_folder())
BY_HAND: Mapping[str, Mapping[str, float]] = {
    "total-mass": {"luggage_per_traveller_kg": 0, "luggage_per_metre_kg": 0, "last_fuel_share": 0},
    "rear-axle": {"front_seat_x_mm": 1250},
    "free-behind-seats": {"x_mm": 2400},
}
"""The worked van counts no luggage and no last tenth of fuel; x is measured from the front axle."""


def at(x_mm: float) -> Position:
    return Position(anchor=Anchor.DATUM, x_mm=x_mm, y_mm=0, z_mm=0)


def with_shipped(made: Catalogue, changed: Mapping[str, Mapping[str, float]]) -> Catalogue:
    """The catalogue with the tables of the house, some settings changed."""
    ledgers = {
        id_: replace(one, settings=MappingProxyType({**one.settings, **changed.get(id_, {})}))
        for id_, one in SHIPPED.ledgers.items()
    }
    return replace(made, ledgers=MappingProxyType(ledgers), tables=SHIPPED.tables)


LONG = base_van(
    "long",
    replace(
        FENWAIN,
        m_max_kg=3100,
        f_max_kg=1550,
        r_max_kg=1650,
        mro_kg=1980,
        mro_front_kg=1190,
        mro_rear_kg=790,
        wheelbase_mm=3400,
        length_mm=5410,
        datum_from_front_axle_mm=0,
        rear_sill_x_mm=4150,
        front_min_share=0.3,
    ),
)
KIT = (
    *((-16, 1750), (-18, 1250), (24, 1250), (38, 3000), (48, 2950), (85, 2550), (24, 2450), (58, 3100)),
    *((22, 2700), (9, 3050), (14, 3300), (20, 3950), (8, 1450), (12, 3600), (5, 3600), (14, 2500)),
    *((5, 3500), (15, 3900), (9, 2900), (19, 2700)),
)
PARTS = (
    *(worlds.option(f"kit-{n}", f"kit-{n}", mass_kg=kg, position=at(x)) for n, (kg, x) in enumerate(KIT)),
    worlds.option("cab", "cab", space=Space(belts=2)),
    worlds.option("bench", "bench", mass_kg=78, position=at(3050), space=Space(belts=2, seat_x_mm=3050)),
    worlds.option("battery", "battery", mass_kg=25),
    worlds.option("under-seat", "battery-place", position=at(1400)),
    worlds.option("tank", "water", mass_kg=5, position=at(3850), water=Water(fresh_full_l=50, fresh_travel_l=20)),
)
RULES = with_shipped(catalogue(PARTS, vans=(LONG,)), BY_HAND)
FOUR: Mapping[str, Answer] = {"adults": 4, "children": 0}


def build(**more: Answer) -> Situation:
    return situation(RULES, *PARTS, van=LONG, facts_=facts({**FOUR, **more}))


_FULL = LedgerId("filled-up-rear")
"""The one case that stands among the ledgers: a rule is about it."""


def beside(now: Situation) -> dict[str, Reading]:
    return {c.id: c.read(now) for c in told_beside(now.catalogue)} | {_FULL: read_all(now)[_FULL]}


def value(readings: Mapping[str, Reading], id_: str) -> float:
    found = readings[id_].value
    assert found is not None
    assert found.settled
    return found.least


@pytest.mark.parametrize(
    ("case", "total", "front", "rear"),
    [
        ("running-order", 2503, 1262.2, 1240.8),
        ("all-seats", 2728, 1325.0, 1403.0),
        ("least-luggage", 2822.1, 1319.5, 1502.6),
        ("filled-up", 3100, 1303.1, 1796.9),
        ("driver-and-rack", 2533, 1258.2, 1274.8),
    ],
)
def test_the_worked_van_in_each_state_of_load(case: str, total: float, front: float, rear: float) -> None:
    told = beside(build())
    found = [value(told, f"{case}-{part}") for part in ("total", "front", "rear")]
    assert found == pytest.approx([total, front, rear], abs=0.06)


def test_filled_to_the_plate_the_rear_axle_is_over_though_the_total_is_not() -> None:
    told = beside(build())
    assert told["filled-up-total"].verdict is Verdict.HOLDS
    assert told["filled-up-rear"].verdict is Verdict.BROKEN
    room = told["filled-up-rear"].room
    assert room is not None
    assert room.least == pytest.approx(-146.9, abs=0.06)
    assert told["least-luggage-rear"].verdict is Verdict.HOLDS
    assert value(told, "filled-up-share") == pytest.approx(1303.1 - 0.3 * 3100, abs=0.06)


def test_what_may_still_be_loaded_depends_on_where() -> None:
    told = beside(build())
    assert value(told, "free-in-stores") == pytest.approx(233, abs=0.5)
    assert value(told, "free-behind-seats") == pytest.approx(350, abs=0.5)
    assert value(told, "rest-furthest-back") == pytest.approx(2258, abs=0.5)
    assert not told["free-on-rack"].applies
    assert value(told, "rest-furthest-forward") == pytest.approx(3400 * (1 - 225 / 372), abs=0.5)


def test_a_finished_van_may_be_off_by_five_per_cent_and_the_scales_by_less() -> None:
    told = beside(build())
    band = told["finished-weight-band"].value
    assert band is not None
    assert (band.least, band.most) == pytest.approx((2378, 2628), abs=0.5)
    kit = [kg for kg, _ in KIT] + [78, 25, 5]
    off = sum((0.15 * kg) ** 2 for kg in kit) + 25**2
    scales = told["weighbridge-total"].value
    assert scales is not None
    assert (scales.least, scales.most) == pytest.approx((2503 - off**0.5, 2503 + off**0.5))
    assert told["weighbridge-total"].verdict is Verdict.HOLDS
    axles = [told[f"weighbridge-{axle}"].value for axle in ("front", "rear")]
    assert [(a.least + a.most) / 2 for a in axles if a] == pytest.approx([1262.2, 1240.8], abs=0.06)


def test_what_was_weighed_is_not_off() -> None:
    weighed = [replace(one, basis=Basis.MEASURED) for one in PARTS]
    van = replace(LONG, van=replace(LONG.van, basis=Basis.MEASURED)) if LONG.van else LONG
    made = with_shipped(catalogue(weighed, vans=(van,)), BY_HAND)
    scales = beside(situation(made, *weighed, van=van, facts_=facts(FOUR)))["weighbridge-total"].value
    assert scales == point(2503)


def test_a_van_that_was_weighed_is_off_by_its_parts_only() -> None:
    now = build()
    same = Weighed(OptionId("long"), 1190 - 75 * (1 - 1250 / 3400), 790 - 75 * 1250 / 3400)
    read = beside(replace(now, facts=replace(now.facts, weighed=same)))["weighbridge-total"].value
    papers = beside(now)["weighbridge-total"].value
    assert read is not None
    assert papers is not None
    assert (read.least + read.most) / 2 == pytest.approx((papers.least + papers.most) / 2)
    assert read.most - read.least < papers.most - papers.least


def test_a_load_behind_the_rear_axle() -> None:
    """The other worked van: 200 kg fit on a rack 5.75 m behind the front axle, and 150 kg there leave these axles."""
    van = base_van(
        "large",
        replace(
            FENWAIN,
            m_max_kg=3500,
            f_max_kg=1850,
            r_max_kg=2000,
            mro_kg=2100,
            mro_front_kg=1360,
            mro_rear_kg=740,
            wheelbase_mm=4035,
            datum_from_front_axle_mm=0,
            rear_sill_x_mm=5400,
            front_min_share=0.3,
        ),
    )
    parts = (
        worlds.option("conversion", "conversion", mass_kg=620, position=at(3050)),
        worlds.option("garage", "garage", mass_kg=250, position=at(4900)),
        worlds.option("cab", "cab", space=Space(belts=2)),
        worlds.option("bench", "bench", space=Space(belts=2, seat_x_mm=2200)),
        worlds.option("tank", "water", position=at(3900), water=Water(fresh_full_l=100, fresh_travel_l=100)),
        worlds.option("rack", "outside", gives="bike-rack"),
    )
    seat_elsewhere: dict[str, Mapping[str, float]] = {**BY_HAND, "rear-axle": {"front_seat_x_mm": 1300}}
    made = with_shipped(catalogue(parts, vans=(van,)), seat_elsewhere)
    told = beside(situation(made, *parts, van=van, facts_=facts(FOUR)))
    assert value(told, "all-seats-front") == pytest.approx(1580.2, abs=0.1)
    assert value(told, "all-seats-rear") == pytest.approx(1714.8, abs=0.1)
    assert value(told, "free-on-rack") == pytest.approx(200, abs=0.5)
    answers: dict[str, Answer] = {**FOUR, "extra_load_kg": 150, "extra_load_where": "rack"}
    hung = facts(answers)
    now = situation(made, *parts, van=van, facts_=hung)
    readings: dict[str, Reading] = {str(k): one for k, one in read_all(now).items()} | beside(now)
    rooms = [readings[id_].room for id_ in ("total-mass", "front-axle", "rear-axle")]
    assert [room.least for room in rooms if room] == pytest.approx([55, 333.6, 71.4], abs=0.06)
    alone = value(readings, "driver-and-rack-total")
    assert alone == pytest.approx(2100 + 620 + 250 + 100 + 150)


def test_a_rack_load_counts_behind_only_while_it_rides_there() -> None:
    inside, rack = (value(beside(build(extra_load_kg=40, extra_load_where=w)), "driver-and-rack-rear") for w in WHERE)
    assert rack - inside == pytest.approx(40 * 4500 / 3400)
    unsaid = facts({**FOUR, "extra_load_kg": 40}, unknown=["extra_load_where"])
    reading = beside(situation(RULES, *PARTS, van=LONG, facts_=unsaid))["driver-and-rack-rear"]
    assert reading.value is not None
    assert (reading.value.least, reading.value.most) == pytest.approx((inside, rack))
    assert "extra_load_where" in [lack.key for lack in reading.lacks]


WHERE = "inside", "rack"
