"""What a fitter reads off the sheets of places, clearances and seats: whole cells, and whose figure it is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Facts, Items, Paper, Paragraph, Table, Weight
from specbuilder.documents.sheets.handover import handover_pack
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Place
from specbuilder.workshop.boxes import Box

from .cases import NAMES, case, plain_case, spec_of
from .reading import part, rows, tables, texts
from .scenes import changed_pair, signed_pair

_FAMILY, _PAIR, _HYBRID = "saturday-family", "off-grid-pair", "winter-walkers"
_DECLARES = "As the part declares it"


def _said(paper: Paper) -> str:
    return "\n".join(texts(paper.blocks))


def _with(name: str, **instead: str) -> Paper:
    """The pack of an example with other options in place of its own (ids with underscores)."""
    swap = {old.replace("_", "-"): OptionId(new) for old, new in instead.items()}
    choices = tuple(replace(one, option=swap.get(one.option, one.option)) for one in spec_of(name).choices)
    return workshop_pack(case(name, choices=choices))


def _clearances(pack: Paper) -> dict[str, str]:
    return {row["What"]: row["Planned"] for row in rows(pack, "What", "Planned", "Measured by, on")}


# --- numbers on boxes


def test_a_part_keeps_its_item_number_over_a_change_order_and_a_number_that_is_gone_is_told() -> None:
    old, new = workshop_pack(case("off-grid-pair")), workshop_pack(changed_pair())
    was = {row["Part"].removesuffix(", left"): row["Item"] for row in rows(old, "Item", "Store")}
    now = {row["Part"].removesuffix(", right"): row["Item"] for row in rows(new, "Item", "Store")}
    buzzer, window = "Buzzer in the cab while the roof is open", "Opening window at the rear of the side"
    was = {name.removesuffix(", right"): item for name, item in was.items()}
    now = {name.removesuffix(", left"): item for name, item in now.items()}
    assert was.keys() - now.keys() == {buzzer}
    assert all(was[name] == item for name, item in now.items())
    told = {row["What"]: row["Item"] for row in rows(new, "What", "Item", "Was")}
    assert told == {"Removed": f"{was[buzzer]} gone", "Moved": now[window]}
    [gone] = [block for block in part(new, "Numbers that are gone").blocks if isinstance(block, Items)]
    assert gone.rows == (f"{was[buzzer]}, {buzzer}: not built any more, last in revision 1.",)


# --- what moves


def test_a_drawer_fridge_pulls_out_and_its_way_is_measured_against_the_bench_and_the_turned_seats() -> None:
    pack = _with(_FAMILY, fridge_front_door="fridge-drawer")
    [placed] = [r for r in rows(pack, "Keep clear, mind") if r["Part"].startswith("Drawer fridge")]
    assert placed["Keep clear, mind"] == "pulls out 480 mm towards the aisle"
    planned = {what: figure for what, figure in _clearances(pack).items() if what.startswith("Drawer fridge")}
    assert planned == {
        "Drawer fridge, pulled out, to Bench Two": "10 mm\N{NO-BREAK SPACE}e",
        "Drawer fridge, pulled out, to Driver's seat turns, turned round": ("overlap of 370 mm\N{NO-BREAK SPACE}e"),
        "Drawer fridge, pulled out, to Passenger seat turns, turned round": ("30 mm\N{NO-BREAK SPACE}e"),
    }
    held = {row["What"]: row["Must be"] for row in rows(part(pack, "Hold point H6"), "Must be", "Read")}
    assert held["Drawer of the fridge, pulled out all the way"] == "touches nothing"


def test_a_seat_that_turns_beside_the_kitchen_is_to_be_turned_before_anybody_says_it_goes_past() -> None:
    pack = workshop_pack(plain_case(_FAMILY))
    planned = _clearances(pack)
    overlap = "overlap of 365 mm\N{NO-BREAK SPACE}e"
    assert planned["Driver's seat turns, turned round, to Side galley"] == overlap
    assert "turn, open or pull it before the unit is screwed down" in _said(part(pack, "Clearances to measure"))
    held = {row["What"]: row["Must be"] for row in rows(part(pack, "Hold point H6"), "Must be", "Read")}
    assert held["Every turning seat, turned all the way round beside kitchen and fridge"] == (
        "touches nothing; with the fridge open as well, write down what touches"
    )


@pytest.mark.parametrize(
    ("other", "gap_mm"),
    [
        ((100, 200, -50, 50), 50),  # behind it, in line
        ((20, 80, 110, 200), 10),  # beside it, further left
        ((20, 80, 50, 200), -30),  # in it along the van
        ((100, 200, 150, 200), 50),  # behind it and beside it: it comes past no nearer than along
    ],
)
def test_the_gap_between_two_boxes_is_less_than_nought_only_where_both_ways_overlap(
    other: tuple[float, float, float, float], gap_mm: float
) -> None:
    one = Box(from_x_mm=-50, to_x_mm=50, from_y_mm=0, to_y_mm=100)
    from_x, to_x, from_y, to_y = other
    found = Box(from_x_mm=from_x, to_x_mm=to_x, from_y_mm=from_y, to_y_mm=to_y)
    assert one.gap_mm(found) == found.gap_mm(one) == gap_mm


# --- seats


def test_top_strap_points_have_paper_hole_torque_rows_and_a_place_for_each() -> None:
    pack = workshop_pack(plain_case(_FAMILY))
    sheet = part(pack, "Top-strap points for child seats")
    fixings = rows(sheet, "Fixing", "Torque by its own paper", "Torque as built")
    assert [row["Fixing"] for row in fixings] == ["Top-strap point 1", "Top-strap point 2"]
    assert [row["Point"] for row in rows(sheet, "X, Y, Z by the report")] == ["Top-strap point 1", "Top-strap point 2"]
    assert {*fixings[0].values()} == {"Top-strap point 1", ""}
    assert "signed by trained fitter" in _said(sheet)
    [hole] = [row for row in rows(pack, "Label", "Size") if row["Label"] == "child-top-straps-hole1"]
    assert (hole["X"], hole["Size"]) == ("measure", "by its template")
    [torque] = [r for r in rows(part(pack, "Hold point H5"), "Must be", "Read") if "top-strap" in r["What"]]
    assert torque["Must be"] == "at the torque of its own paper, on the torque list, paint-marked"


@pytest.mark.parametrize("name", NAMES)
def test_one_bench_has_one_table_of_fixings(name: str) -> None:
    """A position of the bench has none of its own, only a frame below it: of two nobody knows which is signed."""
    pack = workshop_pack(plain_case(name))
    seats = [found.under[-1] for found in tables(part(pack, "Seats and belts")) if "Plate" in found.heads]
    assert len(set(seats)) == len(seats)
    assert sum(sheet.startswith("Bench") and not sheet.startswith("Bench kit on factory") for sheet in seats) <= 1


def test_a_bench_that_is_set_back_says_that_its_fixings_stand_in_the_table_of_the_bench() -> None:
    sheet = part(workshop_pack(plain_case(_PAIR)), "Bench bolted 80 mm further back")
    [facts] = [dict(block.rows) for block in sheet.blocks if isinstance(block, Facts)]
    assert facts["Fixings"] == "those of the bench: they stand in its table"
    assert facts["Stands further back by"] == "80 mm"
    assert not [block for block in sheet.blocks if isinstance(block, Table)]


# --- from where to where


def test_from_where_to_where_is_reckoned_about_the_middle_and_of_a_bench_from_its_front_edge() -> None:
    pack = workshop_pack(plain_case(_FAMILY))
    found = {row["Part"]: (row["X from - to"], row["Y from - to"]) for row in rows(pack, "X from - to")}
    assert found["Side galley, right"] == ("275 - 2,225", "365 to 805 right")
    assert found["Bench Two, two belts, fixed"] == ("720 - 1,340", "295 right to 805 left")
    assert found["Passenger seat turns, wiring lengthened"] == ("-390 - 30", "140 to 560 left")
    assert "nothing is cut or bolted by it" in _said(part(pack, "From where to where"))


@pytest.mark.parametrize("name", NAMES)
def test_no_edge_is_reckoned_of_what_is_measured_on_the_van(name: str) -> None:
    pack = workshop_pack(plain_case(name))
    placed = rows(pack, "Keep clear, mind")
    measured = {r["Item"] for r in placed if "measure" in (r["X"], r["Y"]) or "more than one" in r["Keep clear, mind"]}
    assert not measured & {row["Item"] for row in rows(pack, "X from - to")}


def test_what_is_set_into_a_measured_hole_has_a_figure_in_neither_list() -> None:
    pack = workshop_pack(plain_case(_HYBRID))
    placed = {row["Part"]: row for row in rows(pack, "Keep clear, mind")}
    marked = {row["Label"]: row for row in rows(pack, "Label", "Size")}
    for name, label in (
        ("Roof fan in the fixed strip", "roof-fan-fixed-hole1"),
        ("Opening window beside the living space, left", "window-mid-opening-hole1"),
    ):
        assert (placed[name]["X"], placed[name]["Y"], placed[name]["Z"]) == ("measure",) * 3
        assert marked[label]["X"] == "measure"
        assert "it stands where its hole is measured" in placed[name]["Keep clear, mind"]


@pytest.mark.parametrize("name", NAMES)
def test_no_clearance_of_nought_is_planned_where_nothing_stands_side_by_side(name: str) -> None:
    planned = [row["Planned"] for row in rows(workshop_pack(plain_case(name)), "What", "Planned", "Measured by, on")]
    assert planned
    assert not [figure for figure in planned if figure.startswith("0 mm")]


@pytest.mark.parametrize("name", NAMES)
def test_the_extinguisher_is_placed_on_the_van_since_every_bench_ends_elsewhere(name: str) -> None:
    for row in rows(workshop_pack(plain_case(name)), "Keep clear, mind"):
        if row["Part"] == "Extinguisher and fire blanket":
            assert row["X"] == "measure"
            assert row["Keep clear, mind"] == "measure on the van: on the front of the bench, or beside the door"


# --- one figure, one name


def test_the_road_fill_of_the_water_is_the_same_figure_at_the_tank_and_at_its_stop() -> None:
    declared = {r["Part"]: r["As the part declares it"] for r in rows(workshop_pack(plain_case(_FAMILY)), _DECLARES)}
    road = "filled for the road to 20 L, where the travel-fill stop ends it"
    assert declared["40-litre tank in the kitchen"].startswith(f"fresh water 40 L; {road}; at X ")
    assert declared["Travel-fill stop at 20 litres"].startswith(f"{road}; at X ")
    free = _with(_FAMILY, travel_fill_stop="no-such-stop")
    [tank] = [r[_DECLARES] for r in rows(free, _DECLARES) if r["Part"] == "40-litre tank in the kitchen"]
    assert tank.startswith("fresh water 40 L; filled for the road to 40 L; at X ")


@pytest.mark.parametrize("name", NAMES)
def test_the_height_to_be_kept_is_the_same_in_both_packs_to_the_millimetre(name: str) -> None:
    found = plain_case(name)
    floor = {r["Must be"] for r in rows(workshop_pack(found), "Planned", "Must be") if "Height closed as" in r["What"]}
    scales = {row["Planned, at most"] for row in rows(handover_pack(found), "Planned, at most")}
    assert {f"at most {figure}" for figure in scales} == floor or (not floor and scales == {"cannot tell yet"})


def test_the_side_of_a_heater_is_said_to_be_that_of_its_exhaust() -> None:
    pack = workshop_pack(plain_case(_FAMILY))
    [heater] = [row for row in rows(pack, "Keep clear, mind") if row["Part"].startswith("Air heater")]
    assert (heater["Part"], heater["Y"]) == ("Air heater, diesel, 2 kW, exhaust right", "300 left")


def test_a_margin_that_changed_says_what_it_is_and_what_it_must_be_at_least() -> None:
    changed = {row["What"]: row["Is"] for row in rows(part(workshop_pack(changed_pair()), "What changed"), "Was", "Is")}
    assert changed["Weight free for your things with all belted seats taken"] == "128 kg, at least 93 kg (ESTIMATE)"
    assert changed["Weight of the loaded van"] == "2,902 kg, at most 3,100 kg (ESTIMATE)"


@pytest.mark.parametrize("name", NAMES)
def test_no_place_across_the_van_is_told_by_a_sign(name: str) -> None:
    assert "y -" not in _said(part(workshop_pack(plain_case(name)), "Do not drill"))


# --- beside what must not be drilled


def test_a_hole_beside_the_high_voltage_battery_says_how_near_it_is_and_whose_work_that_is() -> None:
    pack = workshop_pack(plain_case(_HYBRID))
    cut = {row["Label"]: row["Look behind first for, mind"] for row in rows(pack, "Label", "Edge")}
    assert cut["vents-full-set-hole2"].endswith("its edge is 62 mm from the no-drill box: hybrid battery box")
    holes = part(pack, "To be cut by B2")
    [caution] = [b.text for b in holes.blocks if isinstance(b, Paragraph) and b.weight is Weight.CAUTION]
    assert caution.startswith(
        "The floor and orange cables of an electric or hybrid van are for high-voltage trained people only. "
        "By: high-voltage qualified technician."
    )
    assert "Caution, as at B1: The floor and orange cables of an electric or hybrid van" in _said(pack)


def test_the_end_of_an_exhaust_says_how_far_it_is_from_the_high_voltage_battery() -> None:
    declared = {row["Part"]: row[_DECLARES] for row in rows(workshop_pack(plain_case(_HYBRID)), _DECLARES)}
    ends = "exhaust ends at X 250, Y 800 right, Z -250, 206 mm from the no-drill box: hybrid battery box"
    assert ends in declared["Air heater, petrol, 4 kW, exhaust right"]


def test_an_exhaust_that_changes_sides_is_told_as_an_exhaust_and_the_warranty_names_the_heater_the_same() -> None:
    old = signed_pair()
    turned = tuple(
        replace(one, place=Place.LEFT) if one.option == "air-heater-diesel-2" else one for one in old.choices
    )
    found = case(_PAIR, before=old, revision=2, replaces=1, records=old.records, choices=turned)
    changed = {row["What"]: row for row in rows(part(workshop_pack(found), "What changed"), "What", "Item", "Was")}
    heater = "Air heater, diesel, 2 kW, exhaust"
    assert (changed["Moved"]["Was"], changed["Moved"]["Is"]) == (f"{heater} right", f"{heater} left")
    warranted = {row[0] for each in tables(part(handover_pack(found), "Warranties")) for row in each.table.rows}
    assert f"{heater} left" in warranted
    assert f"{heater} left: Switch the heater off at its dial" in _said(handover_pack(found))
