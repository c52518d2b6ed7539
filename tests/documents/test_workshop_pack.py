"""Whoever holds the workshop pack can mark every hole and name every circuit: it says what the spec says, and no more.

The pack is read back cell by cell and held against positions, schedules and records that it was not made from here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache

import pytest

from specbuilder.documents.blocks import Heading, Paper
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.catalogue import Option
from specbuilder.model.parts import Hole
from specbuilder.workshop.placing import other_body
from specbuilder.workshop.positions import Spot
from specbuilder.workshop.view import Chosen, SpecView, view_of

from .cases import NAMES, plain_case
from .reading import nodes, number, part, rows, texts

_MEASURE = "measure"


@cache
def _pack(name: str) -> Paper:
    return workshop_pack(plain_case(name))


@cache
def _view(name: str) -> SpecView:
    stand = plain_case(name).stand
    return view_of(stand.catalogue, stand.spec, stand.report)


def _cuts(name: str) -> Iterator[tuple[Chosen, Option, Hole]]:
    for one in _view(name).taken:
        for hole in one.holes:
            assert one.option is not None
            yield one, one.option, hole


def _stands_at(row: dict[str, str], spot: Spot | None, measured: frozenset[str] = frozenset()) -> None:
    """The three figures of a row are those of the spot, but for those that are measured on the van."""
    if spot is None or "X" in measured:
        assert (row["X"], row["Y"], row["Z"]) == (_MEASURE,) * 3
        return
    x_mm = "not known" if spot.x_mm is None else round(spot.x_mm)
    assert (row["X"] if spot.x_mm is None else round(number(row["X"]))) == x_mm
    for head, figure_mm in (("Y", spot.y_mm), ("Z", spot.z_mm)):
        if head in measured:
            assert row[head] == _MEASURE
        else:
            assert round(number(row[head])) == round(figure_mm)


def _open_beside_the_body(view: SpecView, item: str) -> frozenset[str]:
    """Which figures hang on a roof or a wall that is elsewhere than drawn; all, where the hole it is set into does."""
    one = next(one for one in view.taken if str(one.taken) == item)
    spot = view.positions.of_choice(one.choice, one.option) if one.option is not None else None
    if one.option is None or spot is None:
        return frozenset()
    of_cut = view.positions.of_cut
    own = [hole for hole in one.holes if hole.freeze_step == one.option.build_step and not hole.measure]
    if any(of_cut(hole, one.choice, one.option) is None for hole in own):
        return frozenset("XYZ")
    named = {"height": "Z", "width": "Y"}
    return frozenset(named[each] for each in other_body(view, one.option, spot))


# --- the pack and the spec say the same


@pytest.mark.parametrize("name", NAMES)
def test_every_hole_stands_in_the_marking_list_at_its_place_and_nothing_else_does(name: str) -> None:
    marked = rows(_pack(name), "Label", "Size")
    positions = _view(name).positions
    spots = {hole.id: positions.of_cut(hole, one.choice, option) for one, option, hole in _cuts(name)}
    assert Counter(row["Label"] for row in marked) == Counter(hole.id for _, _, hole in _cuts(name))
    for row in marked:
        _stands_at(row, spots[row["Label"]])


@pytest.mark.parametrize("name", NAMES)
def test_every_hole_is_marked_with_size_tolerance_and_the_item_it_is_for(name: str) -> None:
    marked = {row["Label"]: row for row in rows(_pack(name), "Label", "Size")}
    for one, _, hole in _cuts(name):
        row = marked[hole.id]
        sizes = [size for size in (hole.diameter_mm, hole.width_mm, hole.height_mm, hole.corner_radius_mm) if size]
        assert [number(word) for word in row["Size"].replace(", ", " ").split() if word[0].isdigit()] == sizes
        assert number(row["+/-"]) == hole.tolerance_mm
        assert row["Item"] == str(one.taken)
        assert hole.surface in row["What, in which surface"]


@pytest.mark.parametrize("name", NAMES)
def test_every_hole_stands_in_the_cutting_list_with_side_edge_and_what_lies_behind(name: str) -> None:
    cut = rows(_pack(name), "Label", "Edge")
    assert Counter(row["Label"] for row in cut) == Counter(hole.id for _, _, hole in _cuts(name))
    by_label = {row["Label"]: row for row in cut}
    for _, _, hole in _cuts(name):
        row = by_label[hole.id]
        assert row["Cut from"].endswith(hole.cut_from)
        assert row["Edge"] == hole.edge_treatment
        assert row["Look behind first for, mind"].startswith(hole.check_behind)
        assert row["Agreed by"] == ""


@pytest.mark.parametrize("name", NAMES)
def test_every_cable_run_stands_in_both_lists_of_its_side_and_in_the_diagrams_once(name: str) -> None:
    lines = plain_case(name).stand.report.circuits
    for side, mains in (("12 V, ", False), ("230 V, ", True)):
        labels = Counter(line.label for line in lines if line.is_mains is mains)
        run = Counter(row["Label, both ends"] for row in rows(part(_pack(name), f"{side}cables"), "Label, both ends"))
        fused = Counter(row["Label"] for row in rows(part(_pack(name), f"{side}fuses"), "Label", "Fuse"))
        drawn = Counter(_label(node.wire) for node in nodes(part(_pack(name), f"One-line diagram, {side[:-2]}")))
        drawn.pop("", None)
        assert labels == run == fused == drawn


def _label(wire: str) -> str:
    return wire.partition(": ")[0]


@pytest.mark.parametrize("name", NAMES)
def test_every_cable_the_choices_bring_is_in_the_schedule_of_the_pack(name: str) -> None:
    """By the choices, not by the schedule: each circuit so often as its part is taken."""
    brought: Counter[str] = Counter()
    for one in _view(name).taken:
        for circuit in one.circuits:
            brought[circuit.id] += one.choice.count
    labels = (row["Label, both ends"] for row in rows(_pack(name), "Label, both ends"))
    assert Counter(label.partition("/")[0] for label in labels) == brought


@pytest.mark.parametrize("name", NAMES)
def test_cable_fuse_and_ends_of_every_run_are_those_of_the_schedule(name: str) -> None:
    lines = {line.label: line for line in plain_case(name).stand.report.circuits}
    for row in rows(_pack(name), "Label, both ends"):
        line = lines[row["Label, both ends"]]
        assert row["From, to"] == f"{line.from_point} to {line.to_point}"
        run, _, cable = row["Cable, one way"].partition(" m of ")
        assert number(run) == line.run_one_way_m
        if line.area_mm2 is not None and line.side_by_side == 1:
            assert number(cable) == line.area_mm2
    for row in rows(_pack(name), "Label", "Fuse"):
        line = lines[row["Label"]]
        if line.fuse_a is not None:
            assert number(row["Fuse"]) == line.fuse_a
            assert line.fuse_kind in row["Fuse"]
        assert line.fuse_place in row["Where it stands"]


@pytest.mark.parametrize("name", NAMES)
def test_every_choice_is_an_item_of_the_parts_and_no_item_is_made_up(name: str) -> None:
    items = rows(_pack(name), "Item", "Store")
    assert sorted(int(row["Item"]) for row in items) == [one.taken for one in _view(name).taken]
    chosen = {str(one.taken): one for one in _view(name).taken}
    for row in items:
        one = chosen[row["Item"]]
        assert row["No."] == str(one.choice.count)
        assert one.option is None or row["Part"].startswith(one.option.name)
        assert one.choice.place is None or row["Part"].endswith(one.choice.place.value)


@pytest.mark.parametrize("name", NAMES)
def test_every_part_stands_under_the_step_that_needs_it(name: str) -> None:
    view = _view(name)
    chosen = {str(one.taken): one for one in view.taken}
    for step in view.catalogue.work:
        items = rows(part(part(_pack(name), "Parts, by the step"), f"{step} "), "Item", "Store")
        here = {str(one.taken) for one in chosen.values() if one.option and view.build_step(one.option) == step}
        assert {row["Item"] for row in items} == here, step


@pytest.mark.parametrize("name", NAMES)
def test_every_position_stands_in_the_pack_and_no_position_is_made_up(name: str) -> None:
    view = _view(name)
    spots = {
        str(one.taken): view.positions.of_choice(one.choice, one.option) for one in view.taken if one.option is not None
    }
    placed = {row["Item"]: row for row in rows(_pack(name), "Item", "As built X, Y, Z", "Long x wide x high")}
    assert {item for item, spot in spots.items() if spot is not None} <= placed.keys()
    for item, row in placed.items():
        _stands_at(row, spots[item], _open_beside_the_body(view, item))


@pytest.mark.parametrize("name", NAMES)
def test_the_end_of_every_exhaust_is_told_on_the_datum(name: str) -> None:
    view = _view(name)
    declared = {row["Item"]: row["As the part declares it"] for row in rows(_pack(name), "As the part declares it")}
    for one in view.taken:
        if one.option is None:
            continue
        outlet = view.positions.of_outlet(one.choice, one.option)
        if outlet is not None and outlet.x_mm is not None:
            told = declared[str(one.taken)].partition("exhaust ends at X ")[2].split(", ")
            assert number(told[0]) == outlet.x_mm
            assert number(told[1].removeprefix("Y ")) == outlet.y_mm
            assert number(told[2].partition(";")[0].removeprefix("Z ")) == outlet.z_mm


@pytest.mark.parametrize("name", NAMES)
def test_the_mass_budget_has_every_line_of_the_sum_and_adds_up_to_it(name: str) -> None:
    reading = plain_case(name).stand.report.readings["total-mass"]  # type: ignore[index]
    lines = rows(_pack(name), "on the rear axle")
    if reading.value is None:
        assert not lines
        return
    assert len(lines) == len(reading.entries) + 3
    if reading.value.settled:
        parts, total = lines[:-3], number(lines[-3]["kg"])
        assert total == pytest.approx(reading.value.least, abs=0.5)
        assert sum(number(row["kg"]) for row in parts) == pytest.approx(total, abs=0.5 * len(parts))


@pytest.mark.parametrize("name", NAMES)
def test_every_step_and_every_hold_point_has_its_sheet_in_the_order_of_the_plan(name: str) -> None:
    case = plain_case(name)
    work = case.stand.catalogue.work
    heads = [block.text for block in part_of_sequence(_pack(name)) if isinstance(block, Heading)]
    found = [head.split(" ")[0] for head in heads if head.split(" ")[0] in work]
    assert found == [step.step for step in case.plan.steps]
    held = [head.split(" ")[2].rstrip(":") for head in heads if head.startswith("Hold point ")]
    assert held == [work[step].hold_point for step in found if work[step].hold_point]


def part_of_sequence(paper: Paper) -> list[object]:
    """Everything behind the heading of the sequence."""
    blocks = list(paper.blocks)
    start = next(i for i, b in enumerate(blocks) if isinstance(b, Heading) and b.text.startswith("Sequence"))
    return blocks[start:]


def test_a_clearance_that_the_plan_does_not_keep_says_so_where_it_is_measured() -> None:
    measured = {row["What"]: row["Must be"] for row in rows(_pack("vanload-on-hushwain"), "Planned", "Must be")}
    assert measured["Height closed plus 30 mm"] == "at most 2,000 mm: NOT KEPT"
    assert measured["Gap between turning seat and bench"] == "at least 40 mm"


# --- words


@pytest.mark.parametrize("name", NAMES)
def test_no_id_of_the_catalogue_is_read_out_but_the_labels_of_holes_and_circuits(name: str) -> None:
    catalogue = plain_case(name).stand.catalogue
    ids = {*catalogue.options, *catalogue.rules, *catalogue.ledgers, *catalogue.cautions, *catalogue.papers}
    coded = {one for one in ids if "-" in one}
    words = {word.strip(".,;:()\"'") for text in texts(_pack(name)) for word in text.split()}
    assert not words & coded - _ENGLISH


_ENGLISH = frozenset({"high-voltage"})
"""Words that people say, which an id happens to share."""


@pytest.mark.parametrize("name", NAMES)
def test_every_text_is_one_line(name: str) -> None:
    assert not [text for text in texts(_pack(name)) if not text.replace("\N{NO-BREAK SPACE}", " ").isprintable()]
