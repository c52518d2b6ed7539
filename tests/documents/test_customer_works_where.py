"""What works where: the grid follows from what feeds each thing, and nothing unknown is told as a yes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.report import Report
from specbuilder.model.span import point
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.wording.works_where import (
    FILLING,
    Supplies,
    Works,
    WorksWhere,
    battery_sentence,
    inverter_sentence,
    pitch_sentence,
    supplies,
    works_where,
)

from .cases import plain_case, spec_of, the_catalogue
from .customer import FAMILY, copy, table

YES, NO, LIMITS, UNKNOWN = Works.YES, Works.NO, Works.LIMITS, Works.UNKNOWN
FED = Supplies(battery=YES, plug=YES, inverter=YES, pitch_w=point(2300), inverter_w=point(1800))


def report(*options: str, own: OwnPart | None = None) -> Report:
    """A report of a spec with just these choices."""
    owner = Owner.CUSTOMER if own else Owner.HOUSE
    choices = tuple(Choice(option=OptionId(each), owner=owner, own_part=own) for each in options)
    base = plain_case(FAMILY).stand.report
    return replace(base, spec=replace(base.spec, choices=choices))


def line(option: str, fed: Supplies = FED, own: OwnPart | None = None) -> WorksWhere:
    [found] = works_where(the_catalogue(), report(option, own=own), fed)
    return found


def told(option: str, fed: Supplies = FED) -> tuple[Works, Works, Works]:
    found = line(option, fed)
    return found.driving, found.plugged, found.away


@pytest.mark.parametrize(
    ("option", "driving", "plugged", "away"),
    [
        ("fridge-front-door", YES, YES, YES),
        ("lights-basic", YES, YES, YES),
        ("socket-12v", YES, YES, YES),
        ("side-galley", YES, YES, YES),
        ("side-step-powered", NO, YES, YES),
        ("transfer-seat-powered", NO, YES, YES),
        ("gas-bundle", NO, YES, YES),
        ("fuel-hob-bundle", NO, YES, YES),
        ("outdoor-stove-loose", NO, LIMITS, LIMITS),
        ("air-heater-diesel-2", NO, YES, YES),
        ("combined-gas-heater", NO, YES, YES),
        ("electric-heater-1kw", NO, YES, NO),
        ("hot-water-electric-6l", NO, YES, NO),
        ("socket-plug-only", NO, YES, NO),
        ("socket-away-only", LIMITS, NO, LIMITS),
        ("socket-both", LIMITS, YES, LIMITS),
        ("hook-up-bundle", NO, YES, NO),
        ("laptop", YES, YES, YES),
        ("induction-single", NO, YES, YES),
        ("induction-double", NO, LIMITS, NO),
        ("kettle-household", NO, YES, NO),
        ("kettle-low-watt", NO, YES, YES),
    ],
)
def test_where_a_thing_works_follows_from_what_feeds_it(
    option: str, driving: Works, plugged: Works, away: Works
) -> None:
    assert told(option) == (driving, plugged, away)


@pytest.mark.parametrize("option", ["mains-charger-15", "battery-monitor", "smoke-alarm", "lining-standard"])
def test_chargers_and_what_is_no_appliance_have_no_line_of_their_own(option: str) -> None:
    lines = works_where(the_catalogue(), report(option), FED)
    assert [each.names for each in lines] == (
        [("Battery monitor with a percent display",)] * (option == "battery-monitor")
    )


def test_what_is_too_strong_says_for_what() -> None:
    assert "too strong for the weakest pitch" in line("induction-double").mind
    assert "too strong for the inverter" in line("kettle-household").mind
    assert "outdoors only" in line("outdoor-stove-loose").mind
    assert line("socket-away-only").mind == "up to 1,800 W from the battery"


def test_without_a_source_a_thing_does_not_work() -> None:
    none = Supplies(battery=NO, plug=NO, inverter=NO, pitch_w=None, inverter_w=None)
    for option in ("fridge-front-door", "air-heater-diesel-2", "electric-heater-1kw", "socket-both", "laptop"):
        assert set(told(option, none)) == {NO}, option


def test_what_hangs_on_an_open_question_is_not_known_and_never_a_yes() -> None:
    nothing = Supplies(battery=UNKNOWN, plug=UNKNOWN, inverter=UNKNOWN, pitch_w=None, inverter_w=None)
    for option in ("fridge-front-door", "air-heater-diesel-2", "electric-heater-1kw", "socket-both", "laptop"):
        found = told(option, nothing)
        assert YES not in found, option
        assert UNKNOWN in found, option


def test_an_inverter_of_which_nobody_knows_what_it_carries_is_not_known() -> None:
    assert told("laptop", replace(FED, inverter_w=None)) == (UNKNOWN, YES, UNKNOWN)


def test_the_watts_read_off_an_own_part_go_before_those_of_the_catalogue() -> None:
    assert line("kettle-household", own=OwnPart(watts_w=700)).away is YES
    assert line("laptop", own=OwnPart(watts_w=2400)).away is NO


def test_the_battery_carries_no_more_than_it_can_whatever_the_inverter_says() -> None:
    found = report("battery-small", "inverter-2000", "hook-up-bundle")
    fed = supplies(the_catalogue(), found, pitch_w=point(2300), carried_w=point(1100))
    assert fed == Supplies(battery=YES, plug=YES, inverter=YES, pitch_w=point(2300), inverter_w=point(1100))
    strong = supplies(the_catalogue(), found, pitch_w=None, carried_w=point(9000))
    assert strong.inverter_w == point(2000)


def test_what_works_alike_shares_a_line_and_each_name_stands_once() -> None:
    lines = works_where(the_catalogue(), report("fridge-front-door", "lights-basic", "lights-basic", "gas-bundle"), FED)
    names = [name for each in lines for name in each.names]
    assert len(lines) == 2
    assert len(names) == len(set(names)) == 3


def test_a_battery_says_what_fills_it() -> None:
    found = works_where(the_catalogue(), report("battery-small", "dcdc-30", "solar-light-120"), FED)
    assert found == (WorksWhere(names=(FILLING,), driving=YES, plugged=NO, away=LIMITS, mind="by the sun"),)


def test_the_sentences_above_say_nothing_that_is_not_known() -> None:
    nothing = Supplies(battery=UNKNOWN, plug=UNKNOWN, inverter=UNKNOWN, pitch_w=None, inverter_w=None)
    assert "not chosen yet" in battery_sentence(nothing)
    assert inverter_sentence(nothing) == pitch_sentence(nothing) == ""
    assert "1,800 W" in inverter_sentence(FED)
    assert "2,300 W" in pitch_sentence(FED)


def test_every_socket_and_appliance_of_an_example_stands_in_the_grid_of_its_copy() -> None:
    grid = "\n".join(cell for row in table(copy(FAMILY), "What works where") for cell in row)
    for choice in spec_of(FAMILY).choices:
        option = the_catalogue().options[choice.option]
        if option.group in ("fridge", "space-heater", "sockets", "appliances"):
            assert option.name.split(",")[0] in grid, option.name


def test_without_a_campsite_plug_its_column_is_left_out() -> None:
    assert len(table(copy("off-grid-pair"), "What works where")[0]) == 3
    assert len(table(copy(FAMILY), "What works where")[0]) == 4
