"""The hand-over pack: everything that is fitted, once, and nothing that is not."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from datetime import timedelta

import pytest

from specbuilder.documents.blocks import Facts, Heading, Items, Paragraph, Table, Weight
from specbuilder.documents.sheets.handover import handover_pack
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.kinds import Owner
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Customer, OwnPart
from specbuilder.wording.names import listed
from specbuilder.wording.plain import raised
from specbuilder.workshop.cautions import cautions_of
from specbuilder.workshop.passing import pass_figures

from .cases import TODAY, case, spec_of
from .handing_over import EVERY, fitted, pack, table, texts, ticked, under, view

# --- the walk round


@EVERY
def test_every_handover_sentence_of_what_is_fitted_stands_once_in_the_walk_and_no_other(name: str) -> None:
    found, paper = pack(name)
    lines = ticked(paper, "The walk round")
    said = {sentence for option in fitted(found) for sentence in option.handover}
    assert Counter(line[line.rindex(sentence) :] for sentence in said for line in lines if line.endswith(sentence)) == (
        Counter(said)
    )
    assert len(lines) == len(said)


@EVERY
def test_every_line_of_the_walk_names_the_part_it_is_about(name: str) -> None:
    found, paper = pack(name)
    lines = ticked(paper, "The walk round")
    for option in fitted(found):
        for sentence in option.handover:
            (line,) = (line for line in lines if line.endswith(f": {sentence}"))
            assert option.name.lower() in line.lower()


@EVERY
def test_every_caution_the_customer_is_told_stands_once_with_its_stop(name: str) -> None:
    found, paper = pack(name)
    boxed = [b.text for b in under(paper, "The walk round") if isinstance(b, Paragraph) and b.weight is Weight.CAUTION]
    told = [c for c, _ in cautions_of(view(found)) if "hand-over" in c.shown_where or "customer" in c.shown_where]
    assert len(boxed) == len(told)
    for caution in told:
        assert sum(text.startswith(caution.text) for text in boxed) == 1


def test_the_stops_are_numbered_in_walking_order() -> None:
    _, paper = pack("saturday-family")
    stops = [b.text for b in under(paper, "The walk round") if isinstance(b, Heading)]
    assert stops == [
        "1. Outside, along the left side to the rear",
        "2. Along the right side to the front",
        "3. In the cab",
        "4. Inside, from the front to the rear",
        "5. Overhead",
        "6. Underneath",
        "7. At the table",
    ]


# --- the record


@EVERY
def test_every_hold_point_has_a_line_for_each_figure_of_this_build_and_one_for_its_signature(name: str) -> None:
    found, paper = pack(name)
    for step in found.stand.catalogue.work.values():
        if step.hold_point:
            (block,) = under(paper, f"{step.hold_point}. {step.hold_text}")[:1]
            assert isinstance(block, Table)
            asked = [(figure.what, figure.must_be) for figure in pass_figures(view(found), step)]
            assert [row[:2] for row in block.rows] == [*asked, (f"{step.hold_point} passed", "")]
            assert all(row[2:] == ("", "") for row in block.rows)
            assert block.blank == {2, 3}


@EVERY
def test_every_circuit_has_its_line_with_room_for_the_fuse_fitted(name: str) -> None:
    found, paper = pack(name)
    rows = [row for b in under(paper, "Circuits: fuses and readings") if isinstance(b, Table) for row in b.rows]
    for line in found.stand.report.circuits:
        (row,) = (row for row in rows if row[0] == line.label)
        assert line.circuit in row
        assert row[4] == ("" if line.fuse_a is not None else row[3])
        assert row[5:] == ("", "")


def test_a_socket_is_tried_on_the_source_it_has_and_on_the_one_it_has_not() -> None:
    _, paper = pack("saturday-family")
    sockets = {row[0]: row[1:] for row in table(paper, "Socket").rows}
    assert sockets["Mains double socket, works on the campsite plug"] == ("live", "", "dead", "")
    assert sockets["Mains socket, works away from the plug"] == ("dead", "", "live", "")
    assert sockets["Socket of the campsite plug kit, rear"] == ("live", "", "dead", "")
    heads = [column.head for column in table(paper, "Socket").columns]
    assert heads[1::2] == ["On the campsite plug, inverter off: must be", "On the inverter, plug out: must be"]


def test_what_was_recorded_is_printed_in() -> None:
    records = (
        Record(kind=RecordKind.PASSED, at="2031-05-06 16:00", by="R. Foreman", about="H0", words="customer present"),
        Record(kind=RecordKind.READING, at="2031-06-20 10:00", by="S. Fitter", about="H8", words="drop 2 mbar"),
        Record(kind=RecordKind.READING, at="2031-06-21 10:00", by="S. Fitter", about="lights-comfort-c1", words="3 A"),
        Record(kind=RecordKind.BUILT, at="2031-06-30 10:00", by="customer", words="foreman"),
    )
    _, paper = pack("saturday-family", records=records)
    rows = [row for block in paper.blocks if isinstance(block, Table) for row in block.rows]
    assert ("H0 passed", "", "customer present", "R. Foreman, Tue 6 May 2031") in rows
    assert ("Recorded", "", "drop 2 mbar", "S. Fitter, Fri 20 Jun 2031") in rows
    assert [row[5] for row in rows if row[0] == "lights-comfort-c1"] == ["3 A"]
    facts = next(block for block in paper.blocks if isinstance(block, Facts))
    assert ("Handed over", "Mon 30 Jun 2031") in facts.rows


def test_what_is_read_on_the_scales_and_added_is_the_loaded_van() -> None:
    """Planned on the scales and everything to add make the total of the ledger, to the kilogram of rounding."""
    for name in ("saturday-family", "winter-walkers", "wheelchair-day-van"):
        found, paper = pack(name)
        rows = table(paper, "kg").rows
        total = found.stand.report.readings["total-mass"].value  # type: ignore[index]
        assert total is not None
        added = [row for row in rows if row[0].startswith(("Planned", "To add"))]
        assert len(added) > 3
        figures = [float(re.sub(r"[^\d.-]", "", row[3])) for row in added]
        assert sum(figures) == pytest.approx(total.most, abs=0.5 * len(figures))
        assert [row[0] for row in rows[-2:]] == ["Plate, at most", "Left to the plate"]


def test_the_van_is_weighed_in_one_state_in_the_workshop_and_at_the_hand_over() -> None:
    """What is on board, the band and the plan are the same on both papers, and nothing on board is added again."""
    for name in ("saturday-family", "half-done-family", "wheelchair-day-van"):
        found, paper = pack(name)
        workshop = workshop_pack(found)
        told = [under(paper, "Mass as built"), under(workshop, "What the weighbridge should show")]
        states = [next(block.rows for block in blocks if isinstance(block, Items)) for blocks in told]
        assert states[0] == states[1]
        rows = table(paper, "kg").rows
        band = [row[1] for row in next(block for block in told[1] if isinstance(block, Table)).rows]
        front, rear, total = (
            figure.replace("-", " to ").replace("\N{NO-BREAK SPACE}", " kg ", 1) for figure in rows[0][1:]
        )
        assert rows[0][0] == "Band: must lie in it"
        assert [figure.replace("\N{NO-BREAK SPACE}", " ") for figure in band] == [total, front, rear]
        added = [row[0].removeprefix("To add: ") for row in rows if row[0].startswith("To add")]
        assert f"{raised(listed(added))}: not on board, added to what was read." in states[0]
        assert not [row for row in states[0] for load in added if row.startswith(f"On board: {load}")]


def test_the_state_of_the_scales_names_all_water_on_board() -> None:
    _, paper = pack("saturday-family")
    (state,) = (block.rows for block in under(paper, "Mass as built") if isinstance(block, Items))
    assert state == (
        "On board: one person of about 75 kg in the driver's seat, nobody else; the tank of the van nine tenths full.",
        "On board: travel water, 20 kg\N{NO-BREAK SPACE}e.",
        "On board: 8 L of water in: portable toilet in a strap place.",
        "On board: every part of the list of parts, also what the customer brings along: laptop, 60 W. "
        "What is not there is weighed by itself.",
        "People, luggage and last tenth of fuel: not on board, added to what was read.",
    )
    kinds = {row[0]: row[1:] for row in table(paper, "kg").rows}
    assert kinds["Planned on the scales"][-1] == "2,546\N{NO-BREAK SPACE}e"
    assert kinds["Band: must lie in it"][-1] == "2,508-2,583\N{NO-BREAK SPACE}e"
    assert all(cell.endswith("e") for head, cells in kinds.items() if head.startswith("To add") for cell in cells)


# --- papers of others


@EVERY
def test_every_paper_of_what_is_fitted_is_listed_once_and_no_other(name: str) -> None:
    found, paper = pack(name)
    papers = found.stand.catalogue.papers
    needed = [papers[key] for key in papers if any(key in option.papers for option in fitted(found))]
    rows = table(paper, "Paper").rows
    assert sorted(row[0] for row in rows) == sorted(one.name for one in needed)
    points = [int(row[2].removeprefix("H")) for row in rows]
    assert points == sorted(points)


# --- whose is what


def test_the_customers_own_parts_have_no_warranty_of_ours() -> None:
    spec = spec_of("saturday-family")
    catalogue = case("saturday-family").stand.catalogue
    fridge = next(one for one in spec.choices if "fridge" in catalogue.options[one.option].gives)
    own = replace(fridge, owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=17.0))
    choices = tuple(own if one is fridge else one for one in spec.choices)
    name = catalogue.options[fridge.option].name
    _, paper = pack("saturday-family", choices=choices)
    assert ticked(paper, "Your own parts") == [name]
    assert name not in [row[0] for row in table(paper, "Part").rows]
    assert any("do not warrant" in text for text in texts(under(paper, "Your own parts")))
    _, ours = pack("saturday-family")
    assert not under(ours, "Your own parts")
    assert name in [row[0] for row in table(ours, "Part").rows]


def test_no_name_or_note_of_the_house_stands_in_the_pack() -> None:
    customer = Customer(name="Ada Nobody", contact="0100 200300")
    _, paper = pack("saturday-family", customer=customer, note="pays late")
    said = "\n".join((*texts(paper.blocks), paper.running.job, paper.running.foot))
    assert "Nobody" not in said
    assert "0100" not in said
    assert "pays late" not in said


def test_a_draft_says_on_its_first_lines_that_it_is_not_to_be_built() -> None:
    paper = handover_pack(case("saturday-family"))
    assert paper.running.banner.startswith("NOT TO BE BUILT")
    assert paper.running.banner + "." in list(texts(paper.blocks[:3]))


def test_a_half_known_build_names_what_is_not_chosen_and_a_whole_one_does_not() -> None:
    _, half = pack("half-done-family")
    assert sum(text.startswith("Not chosen yet") and "cooking" in text for text in texts(half.blocks)) == 1
    _, whole = pack("saturday-family")
    assert not [text for text in texts(whole.blocks) if text.startswith("Not chosen yet")]


def test_a_passed_hold_point_leaves_no_reading_to_be_filled_in_afterwards() -> None:
    passed = Record(kind=RecordKind.PASSED, at="2031-05-06 16:00", by="R. Foreman", about="H0")
    read = Record(kind=RecordKind.READING, at="2031-05-06 10:00", by="S. Fitter", about="H0", words="1,948 kg in all")
    for records, said in (
        ((passed,), "reading not written down"),
        ((passed, read), "below, or reading not written down"),
        ((read,), ""),
    ):
        _, paper = pack("saturday-family", records=records)
        (block,) = under(paper, "H0. Identity, mass and condition are as the spec says")[:1]
        assert isinstance(block, Table)
        assert [row[2] for row in block.rows if row[1]] == [said] * 3


def test_text_typed_by_people_stands_on_one_line() -> None:
    record = Record(kind=RecordKind.PASSED, at="2031-05-06 16:00", by="A\nB", about="H0", words="x\x1b[31my")
    _, paper = pack("saturday-family", records=(record,))
    assert not any(ord(sign) < 32 for text in texts(paper.blocks) for sign in text)


def test_the_same_case_makes_the_same_pack_on_any_day_but_for_the_day() -> None:
    _, first = pack("winter-walkers")
    _, again = pack("winter-walkers")
    assert first == again
    _, later = pack("winter-walkers", today=TODAY + timedelta(days=1))
    assert [a for a, b in zip(texts(first.blocks), texts(later.blocks), strict=True) if a != b] == ["18 April 2031"]
