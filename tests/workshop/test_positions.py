"""Where parts and holes of the shipped rules sit: sides, doors, exhaust ends, benches set back, no-drill floors."""

from __future__ import annotations

from math import dist

import pytest

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Place
from specbuilder.model.spec import Choice, Spec
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.workshop.positions import Positions, Spot

_PLACES = {place.value: place for place in Place}


@pytest.fixture(scope="module")
def shipped() -> Catalogue:
    return read_rules(rules_folder())


class _Drawn:
    """Choices, written OPTION or OPTION@PLACE, with their positions."""

    def __init__(self, catalogue: Catalogue, *written: str) -> None:
        parts = [text.partition("@") for text in written]
        self.choices = {
            option: Choice(option=OptionId(option), place=_PLACES[place] if place else None)
            for option, _, place in parts
        }
        self.catalogue = catalogue
        vans = [self.option(option).van for option in self.choices]
        spec = Spec(choices=tuple(self.choices.values()))
        van = next((van for van in vans if van is not None), None)
        self.positions = Positions(catalogue=catalogue, spec=spec, van=van)

    def option(self, option: str) -> Option:
        return self.catalogue.options[OptionId(option)]

    def part(self, option: str) -> Spot | None:
        return self.positions.of_choice(self.choices[option], self.option(option))

    def hole(self, option: str, number: int = 0) -> Spot | None:
        """As drawn: which vans are cut by it is told in ``test_bodies``."""
        part = self.option(option)
        return self.positions.of_cut_drawn(part.holes[number], self.choices[option], part)

    def outlet(self, option: str) -> Spot | None:
        return self.positions.of_outlet(self.choices[option], self.option(option))


def _at(spot: Spot | None) -> tuple[float | None, float]:
    assert spot is not None
    return spot.x_mm, spot.y_mm


def test_bench_holes_are_measured_and_fall_away_on_factory_points(shipped: Catalogue) -> None:
    drawn = _Drawn(shipped, "fenwain-short", "bench-two")
    assert drawn.hole("bench-two") is None
    assert drawn.positions.holes_of(drawn.option("bench-two"))
    on_points = _Drawn(shipped, "hushwain", "bench-two", "floor-factory-points")
    assert not on_points.positions.holes_of(on_points.option("bench-two"))


def test_a_bench_set_back_stands_there_with_what_sits_at_it(shipped: Catalogue) -> None:
    drawn = _Drawn(shipped, "fenwain-short", "bench-two", "bench-set-back", "floor-factory-points")
    assert _at(drawn.part("bench-two")) == _at(drawn.part("floor-factory-points")) == (1310, 255)


@pytest.mark.parametrize(("place", "outlet"), [("right", (250, -800)), ("left", (250, 800)), ("rear", (2460, -600))])
def test_the_exhaust_changes_sides_and_the_heater_stays(
    shipped: Catalogue, place: str, outlet: tuple[float, float]
) -> None:
    drawn = _Drawn(shipped, "fenwain-short", f"air-heater-diesel-2@{place}")
    assert _at(drawn.part("air-heater-diesel-2")) == _at(drawn.hole("air-heater-diesel-2")) == (-150, 300)
    assert _at(drawn.outlet("air-heater-diesel-2")) == outlet


def test_an_inlet_at_the_rear_stays_in_its_corner(shipped: Catalogue) -> None:
    assert _at(_Drawn(shipped, "fenwain-short", "hook-up-bundle@rear").hole("hook-up-bundle")) == (2270, -860)


def test_a_window_on_the_door_side_is_cut_in_the_door(shipped: Catalogue) -> None:
    for van, place, x_mm in (("tormwain-left", "left", 510), ("tormwain-right", "left", 850)):
        spot = _Drawn(shipped, van, f"window-mid-fixed@{place}").hole("window-mid-fixed")
        assert _at(spot) == (x_mm, 860)
    undecided = _Drawn(shipped, "window-mid-fixed@left").hole("window-mid-fixed")
    assert _at(undecided) == (None, 860)


def test_furniture_turns_with_a_kitchen_on_the_left_and_cab_and_corners_do_not(shipped: Catalogue) -> None:
    drawn = _Drawn(
        shipped, "fenwain-short", "side-galley@left", "battery-small", "place-in-galley", "gas-one-small",
        "bed-infill-board", "swivel-passenger", "gas-locker-two-large",
    )  # fmt: skip
    assert _at(drawn.part("battery-small")) == (1650, 560)
    assert _at(drawn.part("gas-one-small")) == (1150, 585)
    assert _at(drawn.part("bed-infill-board")) == (2140, -220)
    assert _at(drawn.part("swivel-passenger")) == (-180, 350)
    assert _at(drawn.part("gas-locker-two-large")) == (2170, -480)


def test_what_belongs_to_the_long_kitchen_is_measured_beside_another(shipped: Catalogue) -> None:
    drawn = _Drawn(shipped, "fenwain-short", "pod-galley@right", "fuel-hob-bundle@right")
    assert drawn.part("fuel-hob-bundle") is None
    assert drawn.hole("fuel-hob-bundle") is None
    assert drawn.outlet("fuel-hob-bundle") is None


@pytest.mark.parametrize(("van", "hit"), [("fenwain-short", ()), ("hushwain", ("traction battery",))])
def test_a_floor_hole_over_a_battery_is_named(shipped: Catalogue, van: str, hit: tuple[str, ...]) -> None:
    drawn = _Drawn(shipped, van, "side-galley@right", "gas-bundle")
    spot = drawn.hole("gas-bundle")
    assert spot is not None
    assert drawn.positions.boxes_hit(drawn.option("gas-bundle").holes[0], spot) == hit


def test_every_floor_opening_is_half_a_metre_from_every_exhaust_end(shipped: Catalogue) -> None:
    kitchens = ("side-galley@right", "side-galley@left")
    sets = ("vents-sealed-set", "vents-full-set", "vents-wall-high-pair", "vents-in-cloth")
    for kitchen in kitchens:
        drawn = _Drawn(shipped, "fenwain-short", kitchen, *sets, "fuel-hob-bundle@right", "air-heater-diesel-2@right")
        ends = [drawn.outlet("fuel-hob-bundle"), drawn.outlet("air-heater-diesel-2")]
        for vents in sets:
            low = len(drawn.option(vents).holes) - 1
            opening = _at(drawn.hole(vents, low))
            assert all(_apart_mm(opening, _at(end)) >= 500 for end in ends)


def _apart_mm(one: tuple[float | None, float], other: tuple[float | None, float]) -> float:
    assert one[0] is not None
    assert other[0] is not None
    return dist((one[0], one[1]), (other[0], other[1]))
