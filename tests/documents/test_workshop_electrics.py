"""What a fitter must know before a cable is cut stands on the workshop pack: rules, notes of the parts, lengths."""

from __future__ import annotations

import pytest

from specbuilder.documents.blocks import Paper, Paragraph, Weight
from specbuilder.documents.sheets import SHEETS

from .cases import NAMES, plain_case
from .reading import part, rows, texts


def _pack(name: str) -> Paper:
    return next(sheet for sheet in SHEETS if sheet.name == "workshop").make(plain_case(name))


def _cautions(name: str) -> list[str]:
    return [b.text for b in _pack(name).blocks if isinstance(b, Paragraph) and b.weight is Weight.CAUTION]


def test_heater_and_chargers_are_told_to_keep_off_the_main_user_switch() -> None:
    assert (
        "The leisure battery fuse block stands on the battery side of the isolator, behind the main fuse. What it "
        "feeds and what fills it never goes through the main user switch: air heater (air-heater-diesel-2-c1), engine "
        "charging output (dcdc-30-c2) and mains charger output (mains-charger-15-c2). A burner must never lose its "
        "power while it cools. With the isolator open they are still live."
    ) in _cautions("saturday-family")


def test_the_shunt_of_a_monitor_is_told_to_stand_in_series_where_there_is_one() -> None:
    told = (
        "The shunt of the battery monitor stands in series in the battery negative: the negative busbar, the earth to "
        "the body and every negative lie behind it, and nothing but the shunt is on the negative pole of the battery."
    )
    found = {name: told in _cautions(name) for name in NAMES}
    monitored = {
        name: any(line.from_point == "battery negative shunt" for line in plain_case(name).stand.report.circuits)
        for name in NAMES
    }
    assert found == monitored
    assert set(monitored.values()) == {True, False}


@pytest.mark.parametrize("name", NAMES)
def test_what_the_data_of_a_part_say_of_a_run_stands_beside_it(name: str) -> None:
    stand = plain_case(name).stand
    said = {
        circuit.id: circuit.protection for option in stand.catalogue.options.values() for circuit in option.circuits
    }
    lines = {line.label: line.id for line in stand.report.circuits}
    found = {row["Label, both ends"]: row["What the part's data say"] for row in rows(_pack(name), "Label, both ends")}
    assert found == {label: said[circuit] or "-" for label, circuit in lines.items()}


def test_the_earth_is_told_to_keep_off_seat_and_belt_bolts() -> None:
    found = {
        row["Label, both ends"]: row["What the part's data say"] for row in rows(_pack("saturday-family"), "Fed by")
    }
    assert found["battery-small-c5"] == (
        "no fuse; at clean, sound metal of the body, never on a seat or belt bolt; run is an estimate"
    )


def test_the_paper_says_that_every_run_is_measured_before_it_is_cut() -> None:
    told = "Runs are the catalogue's and not measured on this van: measure each in the van before it is cut."
    assert told in set(texts(_pack("saturday-family")))


def test_the_charger_is_not_told_to_stand_before_a_changeover_that_is_not_there() -> None:
    told = "Holds: mains charger fed from the plug alone, before any changeover: Mains charger, 15 A."
    assert told in set(texts(_pack("saturday-family")))


def test_a_changeover_is_turned_through_only_where_the_van_has_one() -> None:
    found = {name: any("Changeover, turned through" in text for text in texts(_pack(name))) for name in NAMES}
    given = {name: _gives(name, "changeover") for name in NAMES}
    assert found == given
    assert set(given.values()) == {True, False}


def _gives(name: str, tag: str) -> bool:
    stand = plain_case(name).stand
    return any(tag in stand.catalogue.options[choice.option].gives for choice in stand.spec.choices)


def test_the_metres_of_a_section_stand_there_one_way_and_off_the_drum() -> None:
    found = [tuple(row.values())[:5] for row in rows(_pack("saturday-family"), "To draw off the drum")]
    assert ("10 mm², 70 °C", "plus and minus", "1", "3 m\N{NO-BREAK SPACE}e", "6 m\N{NO-BREAK SPACE}e") in found
    assert ("35 mm², 70 °C", "one core", "4", "1.5 m\N{NO-BREAK SPACE}e", "1.5 m\N{NO-BREAK SPACE}e") in found


def test_the_most_a_run_may_lose_stands_beside_what_it_loses() -> None:
    found = {row["Label"]: (row["Drop"], row["At most"]) for row in rows(_pack("saturday-family"), "At most")}
    assert found["battery-small-c2"] == ("0.1 V (0.9 %)\N{NO-BREAK SPACE}e", "1 %")
    assert found["air-heater-diesel-2-c1"] == ("0.26 V (2.2 %)\N{NO-BREAK SPACE}e", "3 %")
    assert found["hook-up-bundle-c3"] == ("-", "-")


def test_a_run_that_cannot_reach_stands_among_what_is_settled_before_any_cable_is_cut() -> None:
    settle = part(_pack("winter-walkers"), "To settle before any cable is cut")
    assert (
        "Air heater (air-heater-petrol-4-c1): its run of 3 m is shorter than the straight line between its ends, "
        "3.52 m: measure before it is cut, and the electrician sizes it anew for the length that is measured."
    ) in set(texts(settle))
