"""The metres of a build: every run counts once, and what goes there and back is drawn twice."""

from __future__ import annotations

from collections import Counter

import pytest

from specbuilder.workshop.metres import Cores, metres
from tests.documents.cases import NAMES, plain_case

SATURDAY, PAIR = "saturday-family", "off-grid-pair"


@pytest.mark.parametrize("name", NAMES)
def test_every_run_is_in_the_metres_of_its_section_once(name: str) -> None:
    stand = plain_case(name).stand
    found: Counter[tuple[float | None, int]] = Counter()
    told: Counter[tuple[float | None, int]] = Counter()
    for line in stand.report.circuits:
        found[line.area_mm2, line.side_by_side] += round(line.run_one_way_m * 1000)
    for one in metres(stand.catalogue, stand.report.circuits):
        told[one.like.area_mm2, one.like.side_by_side] += round(one.one_way_m * 1000)
    assert told == found
    runs = sum(one.runs for one in metres(stand.catalogue, stand.report.circuits))
    assert runs == len(stand.report.circuits)


def _drawn(name: str, label: str) -> tuple[Cores, float]:
    """What one run takes off the drum."""
    stand = plain_case(name).stand
    [one] = metres(stand.catalogue, [line for line in stand.report.circuits if line.label == label])
    return one.cores, one.drawn_m


@pytest.mark.parametrize(
    ("name", "label", "cores", "drawn_m"),
    [
        (SATURDAY, "air-heater-diesel-2-c1", Cores.PAIR, 6),
        (SATURDAY, "battery-small-c2", Cores.PAIR, 4),
        (SATURDAY, "battery-small-c1", Cores.ONE, 0.2),
        (SATURDAY, "battery-small-c3", Cores.ONE, 0.3),
        (SATURDAY, "battery-small-c4", Cores.ONE, 0.5),
        (SATURDAY, "battery-small-c5", Cores.ONE, 0.5),
        (SATURDAY, "hook-up-bundle-c1", Cores.CABLE, 2),
        (SATURDAY, "hook-up-bundle-c3", Cores.ONE, 2),
        (PAIR, "battery-twin-c3", Cores.ONE, 1.2),
    ],
)
def test_a_pair_is_drawn_twice_and_a_pole_an_earth_or_a_cable_once(
    name: str, label: str, cores: Cores, drawn_m: float
) -> None:
    found = _drawn(name, label)
    assert found[0] is cores
    assert found[1] == pytest.approx(drawn_m)
