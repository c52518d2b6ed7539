"""Two builds side by side in words."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.model.circuits import CircuitLine
from specbuilder.model.comparison import Change, ChangeKind, FigureChange, PieceChange, PieceKind
from specbuilder.model.holes import HoleLine
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import Owner, Place, Verdict
from specbuilder.model.span import point
from specbuilder.model.spec import OwnPart
from specbuilder.wording.compare import change_line, change_mark, comparison_lines, side_words
from specbuilder.wording.differences import difference_cells
from tests.scenes.cable import PUMP
from tests.wording.compare_scene import CHEAP, FOUND, GALLEY, POD, REPLACED, USB, WANTED, change, difference, stand
from tests.wording.scene import CATALOGUE, choice, finding, reading


def test_the_whole_of_it_line_by_line() -> None:
    assert comparison_lines(WANTED, CHEAP, FOUND) == (
        "A: job 0147, revision 1, draft, not quoted, catalogue test.",
        "Price of A: £20,712 VAT in, van not included.",
        "Weight of A: about 248 kg left.",
        "B: job 0147, revision 1, draft, not quoted, catalogue test.",
        "Price of B: £17,520 VAT in, van not included.",
        "Weight of B: about 341 kg left.",
        "From A to B: takes off 3,192 pounds, 93 kilograms and 20 hours; parts take as long as before.",
        "Replaced: Side galley, right; now Pod galley: -£1,392, -51 kg, -14 hours, its part takes 1 week less.",
        "Beside these lines, by who travels, water, open questions or work to be undone: -£1,800, -42 kg, -6 hours.",
        "Barrier height: not known yet; was 2,100 mm.",
        "The real van, year: 2029; was not known yet.",
        "Weight of the loaded van: 2,659 of 3,000 kg (ESTIMATE); was 2,752 of 3,000 kg (ESTIMATE).",
        "SIGN no longer broken: By the second evening the fridge is off.",
        "The same in both: 1 choice.",
    )


def test_nothing_that_differs_is_said_in_one_line() -> None:
    same = replace(
        FOUND,
        changes=(),
        answers=(),
        figures=(),
        van_data=(),
        went=(),
        gross_after=FOUND.gross_before,
        difference=difference(),
    )
    assert comparison_lines(WANTED, WANTED, same)[-1] == "Nothing that is built, answered or worked out differs."


def test_other_rules_are_named() -> None:
    today = replace(CHEAP, catalogue=replace(CATALOGUE, digest="other"))
    assert "A and B are not held against the same rules." in comparison_lines(WANTED, today, FOUND)


def test_a_finding_that_cannot_be_told_any_more_is_not_told_as_mended() -> None:
    unsure = (finding("nights-short", Verdict.CANNOT_TELL), finding("roof-not-too-heavy", Verdict.CANNOT_TELL))
    lines = comparison_lines(WANTED, CHEAP, replace(FOUND, doubts_came=unsure))
    assert "SIGN was broken, cannot be told any more: By the second evening the fridge is off." in lines
    assert "STOP cannot be told any more: Too heavy and you could not pull the roof shut." in lines
    turned = comparison_lines(CHEAP, WANTED, replace(FOUND, doubts_came=unsure).turned)
    assert "SIGN now broken: By the second evening the fridge is off." in turned
    assert "STOP can be told now: Too heavy and you could not pull the roof shut." in turned


THEIRS = replace(POD, owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=17.5, cut_out_mm="400 x 500"))


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (
            change(ChangeKind.ADDED, None, POD, difference(93_600, 21, 2.5, 3)),
            "Added: Pod galley: +£936, +21 kg, +2.5 hours, its part takes 3 weeks.",
        ),
        (change(ChangeKind.REMOVED, POD, None, difference(-93_600, -21, 0, -3)), "Removed: Pod galley: -£936, -21 kg."),
        (
            change(ChangeKind.MOVED, GALLEY, replace(GALLEY, place=Place.LEFT)),
            "Moved: Side galley, right; now Side galley, left.",
        ),
        (change(ChangeKind.RESIZED, USB, replace(USB, count=4)), "More: 2 x USB pair; now 4 x USB pair."),
        (change(ChangeKind.RESIZED, USB, replace(USB, count=1)), "Fewer: 2 x USB pair; now USB pair."),
        (
            change(ChangeKind.RESIZED, POD, THEIRS),
            "Now theirs: Pod galley; now Pod galley, theirs, 17.5 kg, watts not known yet, cut-out 400 x 500, "
            "arrives not known yet.",
        ),
        (
            change(ChangeKind.NOTED, POD, replace(POD, note="oak\nedge")),
            'Other note: Pod galley, no note; now Pod galley, note "oak edge".',
        ),
        (
            change(ChangeKind.RENAMED, POD, POD, names=("Pod galley", "Small galley")),
            "Renamed: Pod galley; now Small galley.",
        ),
        (change(ChangeKind.GONE, POD, POD, difference(-93_600)), "Gone from the catalogue: Pod galley: -£936."),
        (change(ChangeKind.BACK, POD, POD, difference(93_600)), "In the catalogue again: Pod galley: +£936."),
        (change(ChangeKind.REPRICED, POD, POD, difference(4_800, 2)), "Dearer: Pod galley: +£48, +2 kg."),
        (change(ChangeKind.REPRICED, POD, POD, difference(-4_800)), "Cheaper: Pod galley: -£48."),
        (change(ChangeKind.REPRICED, POD, POD, difference(40)), "Dearer: Pod galley."),
        (change(ChangeKind.REWEIGHED, POD, POD, difference(0, -1.5)), "Lighter: Pod galley: -1.5 kg."),
        (
            change(ChangeKind.RETIMED, POD, POD, difference(weeks=2)),
            "Longer wait: Pod galley: its part takes 2 weeks longer.",
        ),
        (change(ChangeKind.RETIMED, POD, POD, difference(hours=-1)), "Less work: Pod galley: -1 hour."),
    ],
)
def test_every_kind_of_line(line: Change, words: str) -> None:
    assert change_line(line, "£") == words


def test_a_line_has_a_mark_two_sides_and_what_it_does() -> None:
    assert change_mark(REPLACED) == "replaced"
    assert side_words(REPLACED, after=False) == "Side galley, right"
    assert side_words(REPLACED, after=True) == "Pod galley"
    cells = difference_cells(REPLACED.difference)
    assert (cells.price, cells.mass, cells.hours, cells.weeks) == ("-1,392", "-51", "-14", "-1")


def test_an_option_that_has_left_both_catalogues_is_told_by_its_id() -> None:
    old = change(ChangeKind.ADDED, None, choice("old-stove"), group=None, names=("", "old-stove"))
    assert side_words(old, after=True) == "old-stove"
    assert side_words(old, after=False) == ""


def hole(x_mm: float) -> HoleLine:
    return HoleLine(
        id="h1",
        option=GALLEY.option,
        what="window",
        surface="side skin",
        measured=False,
        x_mm=x_mm,
        y_mm=-860,
        z_mm=900,
        width_mm=700,
        height_mm=300,
        diameter_mm=None,
        corner_radius_mm=60,
        cut_from="outside",
    )


def cable(area_mm2: float) -> CircuitLine:
    return replace(
        PUMP,
        id="c1",
        label="c1",
        option=OptionId("usb-pair"),
        circuit="phone sockets",
        to_point="socket",
        run_one_way_m=4,
        area_mm2=area_mm2,
    )


def test_holes_and_circuits_are_told_with_both_their_lines() -> None:
    pieces = (
        PieceChange(kind=PieceKind.HOLE, change=ChangeKind.MOVED, id="h1", before=hole(1500), after=hole(1580)),
        PieceChange(kind=PieceKind.HOLE, change=ChangeKind.REMOVED, id="h1", before=hole(1500), after=None),
        PieceChange(kind=PieceKind.CIRCUIT, change=ChangeKind.RESIZED, id="c1", before=cable(1.5), after=cable(2.5)),
    )
    lines = comparison_lines(WANTED, CHEAP, replace(FOUND, pieces=pieces))
    assert [line for line in lines if line.startswith(("Hole", "Circuit"))] == [
        "Hole moved: window: side skin, 700 wide x 300 high, at X 1,580, Y 860 right, Z 900; "
        "was window: side skin, 700 wide x 300 high, at X 1,500, Y 860 right, Z 900.",
        "Hole removed: window: side skin, 700 wide x 300 high, at X 1,500, Y 860 right, Z 900.",
        "Circuit re-sized: phone sockets: 12 V panel to socket, 4 m, 2.5 mm², fuse 7.5 A blade; "
        "was phone sockets: 12 V panel to socket, 4 m, 1.5 mm², fuse 7.5 A blade.",
    ]


def test_what_is_below_what_is_shown_is_not_told() -> None:
    nearly = replace(
        CHEAP.report,
        readings=MappingProxyType(
            {LedgerId("total-mass"): reading("total-mass", point(2752.2), point(3000), Verdict.HOLDS)}
        ),
    )
    found = replace(
        FOUND, figures=(FigureChange(ledger=LedgerId("total-mass"), before=point(2752), after=point(2752.2)),)
    )
    assert not [line for line in comparison_lines(WANTED, stand(nearly), found) if line.startswith("Weight of the")]
