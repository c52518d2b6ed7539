"""The circuits on a screen in words: cells with and without room, the count, and what one run says."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.circuits import CircuitBasis, CircuitCode, CircuitLine, CircuitProblem
from specbuilder.wording.circuit_rows import (
    LONG_HEAD,
    SHORT_HEAD,
    backed_up_words,
    circuit_short,
    circuit_told,
    estimate_sign,
    long_cells,
    minded,
    short_cells,
    side_head,
)

from .test_circuits import PUMP, SOCKET, UNKNOWN, broken

HOT = replace(PUMP, area_mm2=120, problems=(CircuitProblem(code=CircuitCode.HOT_CABLE_TAKEN, has=105),))


def test_cells_with_room_are_those_of_the_table() -> None:
    assert long_cells(PUMP).all == ("water pump", "4.2 A", "2.5 mm²", "7.5 A blade", "0.34 V (2.8 %)", "pump-c1")
    assert long_cells(HOT).cable == "120 mm², 105 °C"


def test_short_cells_keep_every_figure_and_the_unit_stands_over_them() -> None:
    assert short_cells(PUMP).all == ("water pump", "4.2 A", "2.5", "7.5 A", "2.8 %", "pump-c1")
    assert (LONG_HEAD.cable, SHORT_HEAD.cable) == ("Cable", "mm²")
    assert short_cells(HOT).cable == "120"
    assert short_cells(replace(PUMP, area_mm2=95, side_by_side=2)).cable == "2 x 95"


def test_what_is_not_known_is_no_figure_in_any_cell() -> None:
    assert short_cells(UNKNOWN).all[2:5] == ("not known", "not known", "-")


def test_one_run_says_from_where_to_where_its_limit_and_the_place_of_its_fuse() -> None:
    assert circuit_told(replace(PUMP, drop_limit_pct=3)) == (
        "Water pump (pump-c1): from 12 V panel to pump, 4.5 m one way.",
        "ESTIMATE: cable 2.5 mm², carries 15 A; loses 0.34 V (2.8 %) of 3 % at most; computed.",
        "Fuse 7.5 A blade, in the 12 V panel.",
    )


def test_one_run_says_what_to_settle_before_what_to_mind() -> None:
    both = replace(
        PUMP,
        problems=(
            CircuitProblem(code=CircuitCode.FUSE_WINDOW_EMPTY_UNTIL, has=1.5, needs=2.5),
            CircuitProblem(code=CircuitCode.DROP_ABOVE_LIMIT, has=0.4, needs=0.36),
        ),
    )
    assert [said.partition(":")[0] for said in circuit_told(both)][-2:] == ["To settle", "Mind"]
    assert minded(both)
    assert not minded(broken(CircuitCode.DROP_ABOVE_LIMIT))


def test_what_is_true_of_nearly_every_run_is_said_once_of_all() -> None:
    backed = broken(CircuitCode.BREAKING_BACKED_UP)
    assert not minded(backed)
    assert backed_up_words((PUMP, HOT)) == ""
    assert backed_up_words((PUMP, backed)).startswith("Mind, of all rows: 1 run has a fuse that breaks less")
    assert backed_up_words((backed, backed)).startswith("Mind, of all rows: 2 runs have fuses that break less")


def test_the_estimate_is_signed_and_a_part_s_own_figures_are_not() -> None:
    stated = replace(PUMP, basis=CircuitBasis.STATED, estimate=False)
    assert (estimate_sign(PUMP), estimate_sign(stated)) == ("e", " ")
    assert circuit_told(stated)[1].startswith("Cable 2.5 mm²")
    assert "ESTIMATE" not in circuit_short(stated)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (PUMP, "Cable, water pump: 2.5 mm², fuse 7.5 A blade (ESTIMATE)."),
        (replace(PUMP, fuse_a=None), "Cable, water pump: 2.5 mm², no fuse of its own (ESTIMATE)."),
        (UNKNOWN, "Cable, water pump: not known, fuse not known."),
        (
            broken(CircuitCode.DROP_ABOVE_LIMIT),
            "Cable, water pump: 2.5 mm², fuse 7.5 A blade (ESTIMATE); to settle, see the circuits.",
        ),
    ],
)
def test_the_details_of_an_option_tell_a_cable_in_one_line(line: CircuitLine, said: str) -> None:
    assert circuit_short(line) == said


def test_sides_are_counted() -> None:
    assert (side_head((PUMP,)), side_head((SOCKET, SOCKET))) == ("12 V: 1 run", "230 V: 2 runs")
