"""One alphabet of marks: every one of them one cell wide, none that another means, none written anywhere else."""

from __future__ import annotations

import ast
import unicodedata
from dataclasses import fields
from pathlib import Path

import pytest
from rich.cells import cell_len

from specbuilder.model.kinds import OptionState, Verdict
from specbuilder.tui.marks import BOX, PLAIN, SHAPES, Marks

PROGRAM = Path(__file__).parents[2] / "specbuilder"
SETS = pytest.mark.parametrize("marks", [SHAPES, PLAIN], ids=["shapes", "plain"])
MEANT_TWICE = {"past", "cursor"}, {"novalue", "line"}
"""The cursor stands before a line and the end of a bar in it; a line across is no value of a bar."""


def alphabet(marks: Marks) -> dict[str, str]:
    return {each.name: getattr(marks, each.name) for each in fields(Marks) if each.name != "box"}


@SETS
def test_every_mark_is_one_cell_wide_on_every_terminal(marks: Marks) -> None:
    for name, mark in alphabet(marks).items():
        assert len(mark) == cell_len(mark) == 1, name
        assert unicodedata.east_asian_width(mark) in ("N", "Na"), name


@SETS
def test_no_two_meanings_have_one_mark(marks: Marks) -> None:
    known = alphabet(marks)
    for one, mark in known.items():
        others = {name for name, other in known.items() if other == mark} - {one}
        assert all({one, other} in MEANT_TWICE for other in others), (one, others)


@SETS
def test_every_state_and_verdict_has_its_own_mark(marks: Marks) -> None:
    found = [*map(marks.of_state, OptionState), *map(marks.of_verdict, Verdict)]
    assert len(set(found)) == len(OptionState) + len(Verdict)


def test_the_plain_set_is_complete_and_ascii() -> None:
    assert "".join((*alphabet(PLAIN).values(), PLAIN.box)).isascii()
    assert len(PLAIN.box) == len(BOX)
    assert PLAIN.drawn(BOX) == PLAIN.box


def test_marks_are_written_in_one_place() -> None:
    signs = {mark for mark in alphabet(SHAPES).values() if not mark.isascii()}
    elsewhere = [
        f"{path.relative_to(PROGRAM)}: {text}"
        for floor in ("tui", "wording", "cli")
        for path in sorted((PROGRAM / floor).rglob("*.py"))
        if path.name != "marks.py"
        for text in _texts(path)
        if signs & set(text)
    ]
    assert elsewhere == []


def _texts(path: Path) -> list[str]:
    """Texts of a module that can come to a screen: its sentences, not what is said of them."""
    tree = ast.parse(path.read_text("utf-8"))
    told = {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    return [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told
    ]
