"""What a change that comes late asks for at passed steps: by label, and never close to a hole that is being closed."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from specbuilder.model.holes import HoleLine
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Place
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Spec
from specbuilder.session.change_order import settled
from specbuilder.session.life import next_revision
from specbuilder.session.papers import case_of
from specbuilder.workshop.gaps import gap_mm
from specbuilder.workshop.redo import Redo, owed, redos
from specbuilder.workshop.view import view_of
from tests.documents.cases import TODAY, stand_of, the_catalogue
from tests.documents.changing import signed, signed_change_case

WINDOW = OptionId("window-mid-opening")
OTHER = OptionId("window-mid-fixed")


def found(case: Case) -> dict[str, Redo]:
    stand = case.stand
    return {one.step.id: one for one in redos(case, view_of(stand.catalogue, stand.spec, stand.report))}


def changed(change: dict[OptionId, Place | None], more: tuple[Record, ...] = ()) -> Case:
    """The signed build with windows on other sides, or left out; signed, with what happened after."""
    old = signed()
    new = next_revision(the_catalogue(), old)
    kept = [c for c in new.choices if change.get(c.option, c.place) is not None or c.option not in change]
    kept = [replace(c, place=change.get(c.option, c.place)) for c in kept]
    spec = settled(stand_of(old), replace(new, choices=tuple(kept)))
    signature = Record(kind=RecordKind.SIGNED, at="2031-06-07 09:30", by="M. Hale", revision=2)
    return case_of(stand_of(_with(spec, signature, *more)), TODAY, before=stand_of(old))


def _with(spec: Spec, *records: Record) -> Spec:
    return replace(spec, records=(*spec.records, *records))


def test_a_hole_that_is_cut_and_not_wanted_any_more_is_closed_by_its_label() -> None:
    b2 = found(changed({WINDOW: None}))["B2"]
    [closing] = b2.close
    assert closing.hole.id == "window-mid-opening-hole1"
    assert closing.hole.x_mm is not None
    assert b2.cut == ()
    assert any("Opening window" in words for words in b2.out)


def test_a_part_that_moved_is_closed_where_it_was_and_cut_where_it_is() -> None:
    b2 = found(changed({WINDOW: Place.RIGHT, OTHER: None}))["B2"]
    assert [hole.id for hole in b2.cut] == ["window-mid-opening-hole1"]
    was = next(one.hole for one in b2.close if one.hole.id == "window-mid-opening-hole1")
    assert (was.y_mm or 0) > 0 > (b2.cut[0].y_mm or 0)
    assert {one.hole.id for one in b2.close} == {"window-mid-opening-hole1", "window-mid-fixed-hole1"}


def test_a_new_hole_across_a_closed_one_is_told_with_the_closed_one() -> None:
    b2 = found(changed({WINDOW: Place.RIGHT, OTHER: Place.LEFT}))["B2"]
    near = {one.hole.id: one.near for one in b2.close}
    assert near == {
        "window-mid-opening-hole1": ("window-mid-fixed-hole1",),
        "window-mid-fixed-hole1": ("window-mid-opening-hole1",),
    }


def test_a_step_that_is_not_passed_is_not_done_again() -> None:
    steps = found(signed_change_case())
    assert set(steps) == {"B2"}
    assert steps["B2"].passed.day == "2031-06-02"
    assert steps["B2"].again is None


def test_once_it_is_passed_after_the_signature_it_says_so() -> None:
    again = Record(kind=RecordKind.PASSED, at="2031-06-09 16:00", by="the foreman", about="H2", revision=2)
    b2 = found(changed({WINDOW: None}, (again,)))["B2"]
    assert b2.again == again
    assert b2.passed.day == "2031-06-02"


def test_what_an_older_change_left_open_is_owed_until_its_hold_point_is_passed_again() -> None:
    second = changed({WINDOW: None}).stand.spec
    third = next_revision(the_catalogue(), second)
    case = case_of(stand_of(third), TODAY, before=stand_of(second))
    assert [one.labels for one in owed(case)] == [("window-mid-opening-hole1",)]
    again = Record(kind=RecordKind.PASSED, at="2031-06-09 16:00", by="the foreman", about="H2", revision=3)
    assert owed(case_of(stand_of(_with(third, again)), TODAY, before=stand_of(second))) == ()


def _hole(surface: str, x_mm: float | None, y_mm: float, z_mm: float, width_mm: float, height_mm: float) -> HoleLine:
    return HoleLine(
        id="h", option=WINDOW, what="hole", surface=surface, measured=x_mm is None, x_mm=x_mm, y_mm=y_mm, z_mm=z_mm,
        width_mm=width_mm, height_mm=height_mm, diameter_mm=None, corner_radius_mm=None, cut_from="outside",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("surface", "other", "gap"),
    [
        ("side skin", (500.0, 800, 900, 200, 100), 0.0),
        ("side skin", (700.0, 800, 900, 200, 100), 100.0),
        ("side skin", (500.0, -800, 900, 200, 100), math.inf),
        ("side skin", (400.0, 800, 1040, 200, 100), 40.0),
        ("roof", (400.0, 1020, 900, 200, 100), 20.0),
        ("floor", (400.0, 920, 0, 200, 100), 20.0),
        ("worktop", (400.0, 800, 900, 200, 100), None),
    ],
)
def test_what_stays_between_two_cuts_follows_how_their_sizes_lie(
    surface: str, other: tuple[float, float, float, float, float], gap: float | None
) -> None:
    assert gap_mm(_hole(surface, 400, 800, 900, 200, 100), _hole(surface, *other)) == gap


def test_a_hole_that_is_measured_on_the_van_has_no_known_distance() -> None:
    assert gap_mm(_hole("roof", 400, 0, 1390, 200, 100), _hole("roof", None, 0, 1390, 200, 100)) is None
    assert gap_mm(_hole("roof", 400, 0, 1390, 200, 100), _hole("floor", None, 0, 0, 200, 100)) == math.inf
