"""What the sheet of a step says beside its figures: holes marked there, cautions of its work, cloth beside a flame."""

from __future__ import annotations

import pytest

from specbuilder.documents.blocks import Facts, Items, Paper, Paragraph, Table, Weight
from specbuilder.documents.sheets.workshop import workshop_pack
from specbuilder.model.papers import Case
from specbuilder.workshop.view import view_of

from .cases import case, plain_case
from .handing_over import pack, texts, under
from .scenes import ordered_family


def _step(found: Case, paper: Paper, step: str) -> list[str]:
    view = view_of(found.stand.catalogue, found.stand.spec, found.stand.report)
    return list(texts(under(paper, view.work_name(step))))


def _facts(found: Case, paper: Paper, step: str) -> dict[str, str]:
    view = view_of(found.stand.catalogue, found.stand.spec, found.stand.report)
    return next(dict(b.rows) for b in under(paper, view.work_name(step)) if isinstance(b, Facts))


def test_a_hole_is_marked_where_its_template_is_there_and_read_before_it_is_cut() -> None:
    """The windows' templates are in store or overdue on the day of H1; roof, awning and bench come later."""
    found = ordered_family()
    paper = workshop_pack(found)
    later = _facts(found, paper, "B1")["Marked later, template in hand"]
    assert [part.rsplit("-", 1)[0] for part in later.split(", ")] == ["larchlid-short", "bench-two", "awning-body-rail"]
    assert [part[-7:] for part in later.split(", ")] == ["(at B2)", "(at B3)", "(at B2)"]
    here = {step: _facts(found, paper, step)["Marked here, template in hand"] for step in ("B2", "B3")}
    assert here["B2"].endswith(": read each centre and sign before it is cut")
    assert here["B3"].startswith("bench-two-")
    assert "bench-two" not in here["B2"]


CAUTIONS = {
    "Gas kills by fire": ["B2", "B4", "B7", "B9"],
    "A travel seat holds": ["B3", "B6"],
    "230 volts can kill": ["B4", "B8", "B9"],
    "Exhaust kills without smell": ["B3", "B9"],
    "No curtain, blind or towel": ["B6", "B7"],
}
"""Beginnings of cautions, with the steps of this build at which their work is done."""


@pytest.mark.parametrize("begins", CAUTIONS)
def test_a_caution_stands_at_the_steps_where_its_work_is_done_and_at_no_other(begins: str) -> None:
    found = plain_case("saturday-family")
    paper = workshop_pack(found)
    at = [step for step in found.stand.catalogue.work if any(begins in text for text in _step(found, paper, step))]
    assert at == CAUTIONS[begins]


def test_the_window_beside_the_hob_is_named_where_cloth_is_hung_and_on_the_day_of_collection() -> None:
    named = (
        "No curtain, blind or towel within reach of the flame of the hob, so none at: fixed window beside the living "
        "space, right."
    )
    found, paper = pack("saturday-family")
    assert [
        b.text for b in under(paper, "The walk round") if isinstance(b, Paragraph) and b.weight is Weight.STRONG
    ] == [named]
    sheets = workshop_pack(found)
    view = view_of(found.stand.catalogue, found.stand.spec, found.stand.report)
    for step in ("B6", "B7"):
        rows = [row for b in under(sheets, view.work_name(step)) if isinstance(b, Items) for row in b.rows]
        assert named in rows


def test_a_van_without_an_open_flame_is_told_nothing_of_cloth() -> None:
    found = case("off-grid-pair")
    assert not [text for text in texts(workshop_pack(found).blocks) if "curtain, blind or towel" in text]


def test_what_counts_as_an_opening_is_said_and_what_is_not_known_is_to_be_settled() -> None:
    _, paper = pack("saturday-family")
    rows = [row for block in paper.blocks if isinstance(block, Table) for row in block.rows]
    (exhaust,) = (row for row in rows if row[0] == "End of every burner's exhaust")
    assert exhaust[1] == (
        "500 mm or more from every window that opens, fixed vent, air intake and vent of a locker, measured; whether a "
        "door counts: to be settled with the heater's own paper; its route clear of tank, lines and cables"
    )


def test_a_tank_under_the_seat_bolts_is_told_where_it_is_hung_and_only_where_they_overlap() -> None:
    said = {}
    for name in ("off-grid-pair", "saturday-family"):
        found = plain_case(name)
        said[name] = [text for text in _step(found, workshop_pack(found), "B3") if "hangs under the bolts" in text]
    assert said == {
        "off-grid-pair": [
            "35-litre waste tank under the floor hangs under the bolts of Bench Two, two belts, fixed: the foreman "
            "settles before B3 begins which goes first, so that every nut and plate can be reached and its torque read."
        ],
        "saturday-family": [],
    }
