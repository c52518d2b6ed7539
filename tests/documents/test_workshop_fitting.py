"""What a fitter reads off the sheets of places, clearances and seats: whole cells, and whose figure it is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Facts, Paper, Table
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.ids import OptionId
from specbuilder.workshop.boxes import Box

from .cases import NAMES, case, plain_case, spec_of
from .reading import part, rows, tables, texts

_FAMILY, _PAIR = "saturday-family", "off-grid-pair"


def _said(paper: Paper) -> str:
    return "\n".join(texts(paper.blocks))


def _with(name: str, **instead: str) -> Paper:
    """The pack of an example with other options in place of its own (ids with underscores)."""
    swap = {old.replace("_", "-"): OptionId(new) for old, new in instead.items()}
    choices = tuple(replace(one, option=swap.get(one.option, one.option)) for one in spec_of(name).choices)
    return workshop_pack(case(name, choices=choices))


def _clearances(pack: Paper) -> dict[str, str]:
    return {row["What"]: row["Planned"] for row in rows(pack, "What", "Planned", "Measured by, on")}


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
    [hole] = [row for row in rows(pack, "Label", "Size") if row["Label"] == "child-top-straps-h1"]
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
