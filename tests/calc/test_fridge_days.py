"""What a fridge takes in a day when it is cooler or hotter around it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Option
from specbuilder.model.kinds import Owner
from specbuilder.model.parts import Power
from specbuilder.model.situation import Placed
from specbuilder.model.spec import OwnPart
from tests import worlds
from tests.calc.beside_scene import nothing_told, says, set_to, spans_its_completions, told, with_tables

IDS = "fridge-cool", "fridge-warm", "fridge-hot"


def fridge(id_: str, watts: float | None, duty: float | None, hours: float = 24) -> Option:
    power = Power(bus="dc", watts_running=watts, hours_summer=hours, hours_winter=hours, duty_summer=duty)
    return worlds.option(id_, "fridge", gives="fridge", power=power)


OPTIONS = [
    fridge("forty", 40, 400 / 24 / 40),
    fridge("box", 48, 0.95, hours=14),
    fridge("no-watts", None, 0.4),
    fridge("no-duty", 45, None),
    fridge("absurd-duty", 45, 3),
    worlds.option("no-fridge", "fridge"),
]
RULES = with_tables(OPTIONS)


def test_a_fridge_of_four_hundred_watt_hours() -> None:
    """160 at 15 degrees, 400 at 25, 616 at 32."""
    assert [round(says(RULES, id_, "forty")) for id_ in IDS] == [160, 400, 616]
    assert round(says(set_to(RULES, "fridge-hot", around_c=40), "fridge-hot", "forty")) == 910


@settings(max_examples=60, deadline=None)
@given(watts=st.floats(10, 120), duty=st.floats(0.05, 1), warm=st.floats(6, 58))
def test_hotter_air_never_takes_less_and_the_figure_at_25_is_the_catalogues(
    watts: float, duty: float, warm: float
) -> None:
    rules = with_tables([fridge("any", watts, duty)])
    assert says(rules, "fridge-warm", "any") == pytest.approx(watts * 24 * duty, rel=1e-5)
    one, other = (says(set_to(rules, "fridge-hot", around_c=c), "fridge-hot", "any") for c in (warm, warm + 1))
    assert one <= other


def test_the_customers_own_fridge_counts_by_its_sheet() -> None:
    own = Placed(option=OPTIONS[0], owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=20, watts_w=80))
    assert says(RULES, "fridge-warm", own) == pytest.approx(800, abs=1e-5)


@pytest.mark.parametrize("id_", IDS)
def test_without_a_fridge_that_its_thermostat_runs_there_is_nothing_to_measure(id_: str) -> None:
    assert not told(RULES, id_, "no-fridge").applies
    assert not told(RULES, id_, "box").applies
    spans_its_completions(RULES, id_, {"fridge": ["forty", "box", "no-fridge"]})


@pytest.mark.parametrize("id_", IDS)
def test_missing_and_absurd_figures_tell_nothing(id_: str) -> None:
    for lacking in ("no-watts", "no-duty", "absurd-duty"):
        nothing_told(told(RULES, id_, lacking), "fridge")
    nothing_told(told(set_to(RULES, id_, around_c=200), id_, "forty"), "around")
    nothing_told(told(set_to(RULES, id_, fridge_c=30), id_, "forty"), "inside C")
