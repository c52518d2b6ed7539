"""What a lifting roof pushes, which panels fit, which bars the van passes, and what its weights mean on the road."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.calc import told_beside
from specbuilder.model.catalogue import Catalogue, Table
from specbuilder.model.kinds import RoofPart, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.parts import Power, Space, Water
from specbuilder.model.situation import Situation
from specbuilder.model.span import Span, point
from tests import worlds
from tests.calc.scene import FENWAIN, HUSHWAIN, SHORT, base_van, catalogue, facts, situation, theirs
from tests.calc.test_load_cases import SHIPPED, at, with_shipped

PANEL = worlds.option(
    "panel",
    "solar",
    mass_kg=13,
    position=at(1000),
    max_count=3,
    space=Space(length_mm=1480, width_mm=680, height_above_roof_mm=55, roof_part=RoofPart.TOP, roof_mass_kg=13),
    power=Power(solar_w=160),
)
KIT = worlds.option(
    "kit",
    "roof-type",
    gives="elevating-roof roof-kit",
    mass_kg=96,
    space=Space(length_mm=2480, width_mm=1300, height_above_roof_mm=85),
)
LEVEL = worlds.option("level", "roof-type", gives="elevating-roof roof-kit", space=Space(length_mm=2480, width_mm=1300))
UNKNOWN_KIT = worlds.option("unknown-kit", "roof-type", gives="elevating-roof roof-kit")
AS_IT_IS = worlds.option("as-it-is", "roof-type")
STRUTS = worlds.option("struts", "roof-extras", mass_kg=2)
OPTIONS = (PANEL, KIT, LEVEL, UNKNOWN_KIT, AS_IT_IS, STRUTS)
ROWS: Mapping[str, tuple[str | float, ...]] = {
    "tilting-roofs": ("kit", 52, 1.3, 2.6, 2600, 2, 1100, 0.55, 18, 25, 70),
    "level-roofs": ("level", 2),
    "roof-struts": ("struts", 200),
}


def _house() -> Catalogue:
    made = with_shipped(catalogue(OPTIONS), {"closed-height": {"spare_mm": 50}})
    tables: dict[str, Table] = {id_: replace(SHIPPED.tables[id_], rows=(row,)) for id_, row in ROWS.items()}
    return replace(made, tables=MappingProxyType({**SHIPPED.tables, **tables}))


RULES = _house()


def told(now: Situation) -> Mapping[str, Reading]:
    return {c.id: c.read(now) for c in told_beside(now.catalogue)}


def built(*choices: str, celsius: float = 20) -> Mapping[str, Reading]:
    return told(situation(RULES, *choices, van=SHORT, facts_=facts(design_temp_c=celsius)))


def value(reading: Reading) -> float:
    assert reading.value is not None
    assert reading.value.settled
    return reading.value.least


def test_the_worked_roof_bare_and_with_a_panel() -> None:
    bare, with_panel = built("kit"), built("kit", "panel")
    assert value(bare["roof-push"]) == pytest.approx(111, abs=0.5)
    assert value(with_panel["roof-push"]) == pytest.approx(190, abs=0.5)
    assert value(bare["roof-hold"]) == pytest.approx(206, abs=0.5)
    assert value(with_panel["roof-hold"]) == pytest.approx(135, abs=0.5)
    assert with_panel["roof-push"].verdict is Verdict.HOLDS


@given(st.integers(-20, 15), st.integers(1, 20))
def test_cold_makes_the_roof_heavier_and_stronger_struts_lighter(celsius: int, colder: int) -> None:
    now, cold = built("kit", "panel", celsius=celsius), built("kit", "panel", celsius=max(celsius - colder, -20))
    strong = built("kit", "panel", "struts", celsius=celsius)
    assert value(cold["roof-push"]) >= value(now["roof-push"]) > value(strong["roof-push"])
    assert value(cold["roof-hold"]) <= value(now["roof-hold"]) < value(strong["roof-hold"])


def test_a_panel_nobody_has_weighed_and_a_cold_nobody_named_widen_it() -> None:
    unweighed = told(situation(RULES, "kit", theirs(PANEL, None), facts_=facts(design_temp_c=20)))["roof-push"]
    assert unweighed.value is not None
    assert (unweighed.value.least, unweighed.value.most) == pytest.approx((111, 268), abs=1)
    assert [lack.group for lack in unweighed.lacks] == ["solar"]
    unnamed = told(situation(RULES, "kit", facts_=facts(unknown=["design_temp_c"])))["roof-hold"]
    assert [lack.key for lack in unnamed.lacks] == ["design_temp_c"]
    assert unnamed.value is not None
    assert not unnamed.value.settled


def test_no_roof_that_tilts_no_push() -> None:
    for choice in ("as-it-is", "level"):
        assert not built(choice)["roof-push"].applies
    reading = built("unknown-kit")["roof-push"]
    assert reading.value is None
    assert reading.outside is not None
    assert "moving_kg of unknown-kit" in reading.outside.quantity
    open_roof = told(situation(RULES, undecided={"roof-type": ["kit", "as-it-is"]}))["roof-push"]
    assert open_roof.value is None
    assert [lack.group for lack in open_roof.lacks] == ["roof-type"]


def test_every_lifting_roof_of_the_house_has_its_row() -> None:
    lifting = {o.id for o in SHIPPED.options.values() if "elevating-roof" in o.gives}
    rows = {row[0] for table in ("tilting-roofs", "level-roofs") for row in SHIPPED.tables[table].rows}
    assert rows == lifting
    struts = {row[0] for row in SHIPPED.tables["roof-struts"].rows}
    assert struts <= set(SHIPPED.options)


@pytest.mark.parametrize(
    ("choices", "rows_mm", "flat_mm", "verdict"),
    [
        (("as-it-is", "panel"), 1480, 2560, Verdict.HOLDS),
        (("kit", "panel"), 1480, 2480, Verdict.HOLDS),
        (("kit", "panel", "panel"), 2960, 2480, Verdict.BROKEN),
    ],
)
def test_panels_lie_on_the_flat_roof_of_van_or_kit(
    choices: tuple[str, ...], rows_mm: float, flat_mm: float, verdict: Verdict
) -> None:
    reading = built(*choices)["panels-on-roof"]
    assert (reading.value, reading.bound, reading.verdict) == (point(rows_mm), point(flat_mm), verdict)


def test_without_panels_nothing_lies_there_and_an_open_roof_is_asked_for() -> None:
    assert not built("kit")["panels-on-roof"].applies
    now = situation(RULES, "panel", undecided={"roof-type": ["kit", "as-it-is"]})
    assert [lack.group for lack in told(now)["panels-on-roof"].lacks] == ["roof-type"]


def test_bars_of_a_car_park() -> None:
    van = base_van("van", replace(FENWAIN, height_mm=1970))
    made = with_shipped(catalogue(OPTIONS, vans=(van,)), {"closed-height": {"spare_mm": 50}})
    bars = told(situation(made, "kit", van=van, facts_=facts(parking_limit_mm=0)))
    verdicts = [bars[f"under-bar-{mm}"].verdict for mm in (2000, 2100, 2200)]
    assert verdicts == [Verdict.BROKEN, Verdict.BROKEN, Verdict.HOLDS]
    assert bars["under-bar-2200"].room == point(95)
    unasked = told(situation(made, "kit", van=van, facts_=facts(unknown=["parking_limit_mm"])))["under-bar-2200"]
    assert (unasked.verdict, unasked.lacks) == (Verdict.HOLDS, ())


@pytest.mark.parametrize(("more_kg", "limits"), [(0, (70, 60)), (1, (60, 50))])
def test_speed_limits_change_above_3050_kg_of_empty_weight(more_kg: float, limits: tuple[int, int]) -> None:
    """The worked diesel with 90 L: 3,050 kg exactly is not above."""
    ready = 3050 + 75 + 0.9 * 90 * 0.84
    van = base_van("van", replace(FENWAIN, mro_kg=ready, tank_l=90))
    load = worlds.option("load", "load", mass_kg=1, water=Water(extra_water_l=20))
    made = with_shipped(catalogue([load], vans=(van,)), {})
    readings = told(situation(made, *([theirs(load, more_kg)] if more_kg else []), van=van, facts_=facts(country="GB")))
    found = [readings[f"speed-on-{road}-roads"] for road in ("dual", "other")]
    assert tuple(value(reading) for reading in found) == limits
    assert {reading.verdict for reading in found} == {Verdict.BROKEN if more_kg else Verdict.HOLDS}


def test_speed_limits_of_britain_are_told_in_britain_only() -> None:
    now = told(situation(RULES, facts_=facts(country="FR")))
    assert not now["speed-on-dual-roads"].applies
    unknown = told(situation(RULES, facts_=facts(unknown=["country"])))["speed-on-other-roads"]
    assert "country" in [lack.key for lack in unknown.lacks]


@pytest.mark.parametrize(
    ("electric", "country", "bound"),
    [(False, "GB", Span(3500, 3500)), (True, "GB", Span(4250, 4250)), (True, "FR", Span(3500, 3500))],
)
def test_the_licence_goes_by_the_plate(electric: bool, country: str, bound: Span) -> None:
    van = base_van("van", replace(HUSHWAIN if electric else FENWAIN, m_max_kg=3400))
    new_plate = worlds.option("new-plate", "plate", space=Space(plate_raise_kg=200))
    made = with_shipped(catalogue([new_plate], vans=(van,)), {})
    reading = told(situation(made, "new-plate", van=van, facts_=facts(country=country)))["car-licence"]
    assert (reading.value, reading.bound) == (point(3600), bound)
    assert (reading.verdict is Verdict.HOLDS) is (bound.least == 4250)


def test_where_an_electric_van_goes_is_asked_for() -> None:
    van = base_van("van", replace(HUSHWAIN, m_max_kg=3600))
    made = with_shipped(catalogue([], vans=(van,)), {})
    reading = told(situation(made, van=van, facts_=facts(unknown=["country"])))["car-licence"]
    assert reading.verdict is Verdict.CANNOT_TELL
    assert [lack.key for lack in reading.lacks] == ["country"]
