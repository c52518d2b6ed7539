"""Where parts are shown on the walk round, for the builds of the house."""

from __future__ import annotations

import pytest

from specbuilder.workshop.stations import Station, station_of, walking_order
from specbuilder.workshop.view import Chosen, SpecView, view_of
from tests.documents.cases import NAMES, plain_case


def view(name: str) -> SpecView:
    stand = plain_case(name).stand
    return view_of(stand.catalogue, stand.spec, stand.report)


def shown(name: str, option: str) -> Station:
    seen = view(name)
    (one,) = (one for one in seen.taken if one.choice.option == option)
    return station_of(seen, one)


@pytest.mark.parametrize(
    ("name", "option", "station"),
    [
        ("saturday-family", "awning-body-rail", Station.LEFT),
        ("saturday-family", "window-mid-opening", Station.LEFT),
        ("saturday-family", "hook-up-bundle", Station.RIGHT),
        ("saturday-family", "swivel-driver", Station.CAB),
        ("saturday-family", "gas-bundle", Station.INSIDE),
        ("saturday-family", "battery-small", Station.INSIDE),
        ("saturday-family", "larchlid-short", Station.OVERHEAD),
        ("saturday-family", "roof-bed-board-net-ladder", Station.OVERHEAD),
        ("saturday-family", "takeoff-factory-tap", Station.UNDERNEATH),
        ("saturday-family", "weighed-on-arrival", Station.TABLE),
        ("off-grid-pair", "solar-light-120", Station.OVERHEAD),
        ("wheelchair-day-van", "side-step-powered", Station.LEFT),
        ("winter-walkers", "solar-light-120", Station.OVERHEAD),
    ],
)
def test_a_part_is_shown_where_one_stands_in_front_of_it(name: str, option: str, station: Station) -> None:
    assert shown(name, option) is station


def test_a_bike_rack_behind_the_van_is_shown_at_the_rear() -> None:
    assert shown("vanload-on-hushwain", "bike-rack-rear-door") is Station.REAR


def x_mm(seen: SpecView, one: Chosen) -> float | None:
    assert one.option is not None
    spot = seen.positions.of_choice(one.choice, one.option)
    return spot.x_mm if spot else None


@pytest.mark.parametrize("name", NAMES)
def test_one_walks_once_round_and_from_the_front_to_the_rear_inside(name: str) -> None:
    seen = view(name)
    walked = sorted(seen.taken, key=lambda one: walking_order(seen, one))
    stations = [station_of(seen, one) for one in walked]
    assert stations == sorted(stations)
    assert sorted(one.taken for one in walked) == [one.taken for one in seen.taken]
    inside = [x for one in walked if station_of(seen, one) is Station.INSIDE and (x := x_mm(seen, one)) is not None]
    assert inside == sorted(inside)
