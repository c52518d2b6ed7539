"""The circuit schedule in words: figures as cables are bought, and a sentence for every problem."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.circuits import CircuitCode, CircuitLine, CircuitProblem
from specbuilder.wording.circuits import CAUTION, cable_words, circuit_lines, drop_words, fuse_words, problem_line
from tests.scenes.cable import PUMP

SOCKET = replace(
    PUMP,
    id="socket-c1",
    label="socket-c1",
    circuit="socket",
    bus="230",
    from_point="consumer unit",
    to_point="kitchen",
    load_a=13.1,
    area_mm2=1.5,
    fuse_a=16,
    fuse_kind="two-pole breaker",
    fuse_place="in the consumer unit",
    drop_v=1.28,
    drop_pct=0.557,
)
UNKNOWN = replace(PUMP, area_mm2=None, insulation_c=None, carries_a=None, fuse_a=None, drop_v=None, drop_pct=None)


def broken(code: CircuitCode, *, has: float | None = 1.5, needs: float | None = 2.5, what: str = "x-c1") -> CircuitLine:
    return replace(PUMP, problems=(CircuitProblem(code=code, has=has, needs=needs, what=what),))


def test_a_table_of_both_sides() -> None:
    assert circuit_lines((SOCKET, PUMP)) == (
        "12 V: 1 run",
        "Mark     Circuit     Load   Run    Cable    Fuse         Drop            From and to",
        "pump-c1  water pump  4.2 A  4.5 m  2.5 mm²  7.5 A blade  0.34 V (2.8 %)  12 V panel > pump",
        "230 V: 1 run",
        "Mark       Circuit  Load    Run    Cable    Fuse                   Drop            From and to",
        "socket-c1  socket   13.1 A  4.5 m  1.5 mm²  16 A two-pole breaker  1.28 V (0.6 %)  consumer unit > kitchen",
        "Fuse in the consumer unit: socket-c1.",
        "Fuse in the 12 V panel: pump-c1.",
        CAUTION,
    )


def test_nothing_chosen_runs_no_cable() -> None:
    assert circuit_lines(()) == ("No cable is run by what is chosen.",)


@pytest.mark.parametrize(("area", "words"), [(0.5, "0.5 mm²"), (0.75, "0.75 mm²"), (1, "1 mm²"), (120, "120 mm²")])
def test_a_section_is_never_rounded_to_another_one(area: float, words: str) -> None:
    assert cable_words(replace(PUMP, area_mm2=area)) == words


def test_cables_side_by_side_are_counted_and_say_what_is_asked_of_them() -> None:
    pair = replace(broken(CircuitCode.CABLES_SIDE_BY_SIDE, has=264, needs=250), area_mm2=95, side_by_side=2)
    assert cable_words(pair) == "2 x 95 mm²"
    said = problem_line(pair, pair.problems[0])
    assert "each carries 264 A and must carry 250 A" in said
    assert "ESTIMATE" in said
    assert "The electrician decides" in said
    assert not pair.serious


def test_cable_that_must_bear_more_warmth_says_so_where_it_is_read() -> None:
    assert cable_words(broken(CircuitCode.HOT_CABLE_TAKEN, has=105)) == "2.5 mm², 105 °C"


def test_what_is_not_known_looks_like_no_figure() -> None:
    assert (cable_words(UNKNOWN), fuse_words(UNKNOWN), drop_words(UNKNOWN)) == ("not known", "not known", "-")
    assert fuse_words(replace(PUMP, fuse_a=None)) == "-"


def test_one_sentence_for_all_circuits_it_is_true_of() -> None:
    second = replace(broken(CircuitCode.SHORT_CIRCUIT_UNKNOWN), label="pump-c1/2")
    told = circuit_lines((broken(CircuitCode.SHORT_CIRCUIT_UNKNOWN), second))
    assert told[-2] == (
        "To settle: Water pump (pump-c1) and water pump (pump-c1/2): what the fuse must break is not known, because no "
        "leisure battery with that figure is chosen."
    )


def test_what_needs_no_mending_comes_after_what_does() -> None:
    mind, settle = broken(CircuitCode.FUSE_WINDOW_EMPTY_UNTIL), broken(CircuitCode.DROP_ABOVE_LIMIT)
    told = [line.partition(":")[0] for line in circuit_lines((mind, settle)) if line.startswith(("To settle", "Mind"))]
    assert told == ["To settle", "Mind"]


def test_a_bad_figure_names_its_file() -> None:
    line = broken(CircuitCode.RUN_MISSING, has=-3)
    assert problem_line(line, line.problems[0]) == (
        "water pump (pump-c1) in options/kitchen.toml:12: "
        "a one-way run of -3 m is no length of a cable in a van: correct it."
    )


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (
            CircuitCode.FUSE_WINDOW_EMPTY_UNTIL,
            "1.5 mm² would carry the load and have no fuse that protects it: 2.5 mm²",
        ),
        (CircuitCode.OWN_CABLE_SMALLER_THAN_COMPUTED, "its paper asks for 1.5 mm² and the sum for 2.5 mm²"),
        (CircuitCode.OWN_FUSE_ABOVE_CABLE, "a fuse of 1.5 A does not protect a cable that carries 2.5 A"),
        (CircuitCode.BREAKING_CAPACITY_TOO_SMALL, "the fuse breaks 1.5 kA, and 2.5 kA can flow there"),
        (CircuitCode.BREAKING_BACKED_UP, "that of x-c1 before it breaks the rest"),
        (CircuitCode.HEATER_START_VOLTAGE_LOW, "only 1.5 V reaches it, and it should have 2.5 V"),
        (CircuitCode.NO_FUSE_IN_WINDOW, "no rating lies between the 2.5 A the load asks for and the 1.5 A"),
    ],
)
def test_figures_stand_where_they_belong(code: CircuitCode, words: str) -> None:
    line = broken(code)
    assert words in problem_line(line, line.problems[0])


@pytest.mark.parametrize("code", CircuitCode)
def test_every_problem_has_a_sentence_with_and_without_figures(code: CircuitCode) -> None:
    said = [problem_line(line, line.problems[0]) for line in (broken(code), broken(code, has=None, needs=None))]
    for sentence in said:
        assert sentence.startswith("water pump (pump-c1)")
        assert sentence.endswith(".")
        assert "None" not in sentence
        assert "  " not in sentence
