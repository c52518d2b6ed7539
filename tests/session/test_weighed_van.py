"""A van that was on the scales counts with its own axles."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Level, OptionState, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.spec import Spec
from specbuilder.session.beside import figures_beside
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.wording.ledger_detail import detail_texts

FAMILY = Path(__file__).parents[2] / "examples" / "saturday-family.toml"
MASS, REAR, FRONT = LedgerId("total-mass"), LedgerId("rear-axle"), LedgerId("front-axle")
SEAT_X_MM, DRIVER_KG = -180, 75
BLOCKED = OptionState.BLOCKED


@pytest.fixture
def family(catalogue: Catalogue) -> Spec:
    return read_spec_file(FAMILY, catalogue).spec


def weighed(spec: Spec, front_kg: float | None, rear_kg: float | None) -> Spec:
    return replace(spec, van_data=replace(spec.van_data, weighed_front_kg=front_kg, weighed_rear_kg=rear_kg))


def value(reading: Reading) -> float:
    assert reading.value is not None
    assert reading.value.settled
    return reading.value.least


def test_the_scales_go_before_the_papers(catalogue: Catalogue, family: Spec) -> None:
    van = catalogue.options[OptionId("fenwain-short")].van
    assert van is not None
    before = evaluate(catalogue, family, exact=False).readings
    after = evaluate(catalogue, weighed(family, 1150, 800), exact=False).readings
    driver_rear = DRIVER_KG * (van.datum_from_front_axle_mm + SEAT_X_MM) / van.wheelbase_mm
    assert value(after[REAR]) - value(before[REAR]) == pytest.approx(800 + driver_rear - van.mro_rear_kg)
    assert value(after[FRONT]) - value(before[FRONT]) == pytest.approx(1150 + 75 - driver_rear - van.mro_front_kg)
    assert value(after[MASS]) == pytest.approx(value(after[REAR]) + value(after[FRONT]))


def test_one_axle_alone_changes_nothing(catalogue: Catalogue, family: Spec) -> None:
    before = evaluate(catalogue, family, exact=False).readings
    assert evaluate(catalogue, weighed(family, None, 800), exact=False).readings == before


def test_a_heavy_van_blocks_what_a_light_one_takes(catalogue: Catalogue, family: Spec) -> None:
    too_heavy = evaluate(catalogue, weighed(family, 1150, 950))
    assert {f.rule for f in too_heavy.broken(Level.STOP)} >= {"weight-rear-axle"}
    blocked = {
        rear_kg: {
            o for o, s in evaluate(catalogue, weighed(family, 1100, rear_kg)).options.items() if s.state is BLOCKED
        }
        for rear_kg in (700, 900)
    }
    assert blocked[700] < blocked[900]


def test_what_no_scales_can_show_says_nothing(catalogue: Catalogue, family: Spec) -> None:
    reading = evaluate(catalogue, weighed(family, 11, 800), exact=False).readings[REAR]
    assert reading.value is None
    assert reading.verdict is Verdict.CANNOT_TELL
    told = "\n".join(detail_texts(catalogue, reading))
    assert "Nothing can be said: weighed front axle kg is 11, but must be from" in told


def test_how_far_the_scales_are_from_the_papers_is_told_beside_the_mass(catalogue: Catalogue, family: Spec) -> None:
    def told(spec: Spec) -> Reading:
        (found,) = [r for r in figures_beside(catalogue, spec, MASS) if r.id == "arrival-difference"]
        return found

    van = catalogue.options[OptionId("fenwain-short")].van
    assert van is not None
    assert not told(family).applies
    assert value(told(weighed(family, 1150, 800))) == pytest.approx(abs(1150 + 800 + 75 - van.mro_kg))
    assert told(weighed(family, 1250, 850)).verdict is Verdict.BROKEN
