"""Papers as text in columns."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from rich.cells import cell_len

from specbuilder.documents.blocks import (
    Big,
    Block,
    Column,
    Diagram,
    Facts,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Table,
    Weight,
)
from specbuilder.documents.formats import FORMATS, text_lines

from .trial_papers import LONG_NAME, LONG_WORD, PAPERS, SAMPLE, paper

GOLDEN = """\
━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━
Harrowden Campers, Ossenthwick                                    Workshop sheet
0147, the Saturday family
revision 1
draft, 12 April 2031
━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━

┏━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━┓
┃ NOT TO BE BUILT: THIS IS A DRAFT                                             ┃
┗━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━━┛

┌──────────────────────────────────────────────────────────────────────────────┐
│ Price, VAT in                                                                │
│ £24,816                                                                      │
│ of that VAT £4,136                                                           │
└──────────────────────────────────────────────────────────────────────────────┘


Holes
═════

Positions
─────────

By the door
All measures are in millimetres from the datum.

▌ Sliding door right. Kitchen left.

┌──────────────────────────────────────────────────────────────────────────────┐
│ ! CAUTION: Check behind every mark before drilling.                          │
└──────────────────────────────────────────────────────────────────────────────┘
  Source: the template of the part.

Base van  Fenwain Long
VIN tail  ______________________________________________________________________

- Removed: awning
- Added: window

[ ] Plate seen
[ ] Photos taken

1. First
2. Then

Hole           From axle mm  As built
─────────────────────────────────────────────────
Window, left          1,420  ____________________
Hook-up inlet         3,020  ____________________
─────────────────────────────────────────────────
In all                    2  -

None.

Leisure battery
│  100 Ah
├─ 16 mm², 1.8 m ─ Fuse board
│  ├─ 6 mm², 10 A ─ Fridge
│  │     5.5 A
│  └─ 4 mm², 15 A ─ Heater
└─ 35 mm², 125 A ─ Inverter
      1,000 W

From the battery to fridge, heater and inverter.


Foreman                     ________________________________  date _____________

Customer                    ________________________________  date _____________

────────────────────────────────────────────────────────────────────────────────
Planning figures, no certificate. Local codes go first.
"""


def body(*blocks: Block, width: int = 40) -> str:
    """The lines of the blocks, without head and foot."""
    lines = text_lines(paper(*blocks), width)
    rules = [i for i, line in enumerate(lines) if line in ("━" * width, "─" * width)]
    return "\n".join(lines[rules[1] + 1 : rules[-1]]).strip("\n")


def test_a_whole_paper_reads_from_a_terminal() -> None:
    assert "\n".join(text_lines(SAMPLE)) + "\n" == GOLDEN


def test_the_file_is_the_lines_of_eighty_columns() -> None:
    assert FORMATS[0].set(SAMPLE).decode() == "\n".join(text_lines(SAMPLE)) + "\n"


@settings(max_examples=150, deadline=None)
@given(any_paper=PAPERS, width=st.integers(24, 120))
def test_no_line_is_wider_than_asked(any_paper: Paper, width: int) -> None:
    """Measured with the tables of the terminal toolkit, which are not those that set the lines."""
    lines = text_lines(any_paper, width)
    assert max(cell_len(line) for line in lines) <= width
    assert all(line == line.rstrip() and line.isprintable() for line in lines)


def test_long_words_and_names_are_broken_and_nothing_of_them_is_lost() -> None:
    for block in (
        Paragraph(text=LONG_WORD),
        Paragraph(text=LONG_WORD, weight=Weight.STRONG),
        Items(rows=(LONG_WORD,)),
        Facts(rows=(("Name", LONG_WORD),)),
        Table(columns=(Column(head="Name"),), rows=((LONG_WORD,),)),
    ):
        letters = "".join(character for character in body(block) if character.isalpha()).removeprefix("Name")
        assert letters == LONG_WORD
    assert " ".join(body(Paragraph(text=LONG_NAME)).split()) == " ".join(LONG_NAME.split())


def test_a_number_stays_with_its_unit() -> None:
    assert body(Paragraph(text="The hole is cut to a size of full 900 x 450 mm, and no more."), width=37) == (
        "The hole is cut to a size of full\n900 x 450 mm, and no more."
    )


def test_columns_that_would_be_too_narrow_become_records() -> None:
    heads = [f"Reading {i}" for i in range(8)]
    block = Table(columns=tuple(Column(head=head) for head in heads), rows=(("1", "", *"345678"), tuple("abcdefgh")))
    assert body(block) == (
        "Reading 0  1\nReading 2  3\nReading 3  4\nReading 4  5\nReading 5  6\nReading 6  7\nReading 7  8\n\n"
        + "\n".join(f"{head}  {text}" for head, text in zip(heads, "abcdefgh", strict=True))
    )


def test_a_record_keeps_its_blanks() -> None:
    columns = (Column(head="Circuit and what it feeds"), *(Column(head=f"Reading of socket {i}") for i in range(5)))
    block = Table(columns=columns, rows=(("C1", *[""] * 5),), blank=frozenset({2}))
    assert body(block) == "Circuit and    C1\nwhat it feeds\nReading of     _________________________\nsocket 1"


def test_figures_stand_right_and_are_not_broken() -> None:
    block = Table(
        columns=(Column(head="Hole"), Column(head="Size mm", right=True)),
        rows=(("Window of the sliding door on the left side", "900 x 450"), ("Inlet", "83")),
    )
    assert body(block) == (
        "Hole                             Size mm\n"
        "────────────────────────────────────────\n"
        "Window of the sliding door on  900 x 450\n"
        "the left side\n"
        "\n"
        "Inlet                                 83"
    )


def test_a_small_note_stands_right_below_its_paragraph() -> None:
    assert body(Paragraph(text="Drop 2.1 %."), Paragraph(text="Worked out.", weight=Weight.SMALL)) == (
        "Drop 2.1 %.\n  Worked out."
    )


def test_a_group_stands_right_below_its_heading() -> None:
    assert body(Heading(text="Wardrobe", level=3), Paragraph(text="Left.")) == "Wardrobe\nLeft."


def test_a_figure_without_note_has_no_empty_line() -> None:
    assert body(Big(label="Height", figure="1,985 mm"), width=24) == (
        "┌──────────────────────┐\n│ Height               │\n│ 1,985 mm             │\n└──────────────────────┘"
    )


def test_a_tree_that_is_deeper_than_the_page_is_wide_keeps_its_words() -> None:
    node = Node(title="the last")
    for level in reversed(range(40)):
        node = Node(title=f"level {level}", below=(node,))
    lines = body(Diagram(roots=(node,), alt="A chain.")).splitlines()
    assert lines[0] == "level 0"
    assert [line for line in lines if line.endswith("the last")]
    assert max(map(len, lines)) <= 40


def test_what_cannot_be_shown_has_a_sign_in_its_place() -> None:
    assert body(Paragraph(text="a\x1b[31mb\x00c\u202ed\ud800")) == "a�[31mb�c�d�"


def test_a_label_is_never_broken_while_all_longest_words_fit_the_width() -> None:
    label = "air-heater-diesel-2-circuit1"
    columns = (Column(head="Mark", share=1), Column(head="Circuit", share=9), Column(head="By", share=5))
    rows = ((label, "a long tale of what it feeds and where it runs, much longer than the mark on it", ""),)
    block = Table(columns=columns, rows=rows, blank=frozenset({2}))
    for width in (60, 80, 100):
        lines = text_lines(paper(block), width)
        assert any(label in line for line in lines)
