"""How PDF pages are laid: nothing outside the page, nothing over anything else, and what belongs together together."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from specbuilder.documents.blocks import (
    Big,
    Block,
    Column,
    Diagram,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Signatures,
    Table,
    Weight,
)
from specbuilder.documents.formats.pdf.style import BOTTOM, LEFT, PAGE_HEIGHT, PAGE_WIDTH, RIGHT, TOP

from .drawn import Page, drawn
from .trial_papers import DRAFT, LONG_NAME, LONG_WORD, PAPERS, SAMPLE, paper


def assert_sound(pages: list[Page]) -> None:
    for page in pages:
        for area in page.areas:
            assert area.left >= LEFT - 1.2, area
            assert area.right <= PAGE_WIDTH - RIGHT + 1.2, area
            assert area.foot >= BOTTOM - 1, area
            assert area.top <= PAGE_HEIGHT - TOP + 1, area
        assert list(page.overlapping()) == []


def texts(page: Page) -> list[str]:
    """The texts of a page in the order they were drawn in."""
    return [area.text for area in page.texts]


def page_of(pages: list[Page], text: str) -> int:
    return next(i for i, page in enumerate(pages) if text in texts(page))


@settings(max_examples=150, deadline=None)
@given(any_paper=PAPERS)
def test_nothing_is_outside_the_page_or_over_anything_else(any_paper: Paper) -> None:
    assert_sound(drawn(any_paper))


def test_a_paper_with_every_kind_of_block_is_sound() -> None:
    assert_sound(drawn(SAMPLE))


def test_head_and_banner_leave_room_for_the_paper_however_long_they_are() -> None:
    fields = ("firm", "job", "revision", "state", "banner", "foot")
    running = type(DRAFT)(**dict.fromkeys(fields, LONG_NAME * 3))
    pages = drawn(paper(*[Paragraph(text=LONG_NAME)] * 9, running=running, title=LONG_NAME))
    assert len(pages) < 9
    assert_sound(pages)


LINES = [Paragraph(text=f"Line {i}.") for i in range(60)]


@pytest.mark.parametrize("before", range(20, 50))
def test_a_heading_stands_on_the_page_of_what_follows(before: int) -> None:
    below: list[tuple[Block, str]] = [
        (Paragraph(text="Below."), "Below."),
        (Paragraph(text="Below.", weight=Weight.CAUTION), "Below."),
        (Items(rows=("Below.", "b")), "Below."),
        (Table(columns=(Column(head="Head"),), rows=(("Below.",), ("b",), ("c",))), "Below."),
        (Diagram(roots=(Node(title="Below."),), alt="A thing."), "Below."),
        (Big(label="Below.", figure="1"), "Below."),
        (Signatures(roles=("Below.",)), "Below."),
    ]
    for block, text in below:
        pages = drawn(paper(*LINES[:before], Heading(text="Part", level=1), Heading(text="Section"), block))
        assert page_of(pages, "Part") == page_of(pages, "Section") == page_of(pages, text)


@pytest.mark.parametrize("before", range(20, 50))
def test_a_paragraph_that_leads_in_stands_on_the_page_of_what_it_leads_to(before: int) -> None:
    listed = Items(rows=("Below.", "b"))
    for blocks in (
        (Heading(text="Part"), Paragraph(text="Leading in."), listed),
        (Heading(text="Part"), Paragraph(text="Leading in.", weight=Weight.CAUTION), Heading(text="Below.", level=3)),
        (Paragraph(text="Leading in:"), listed),
    ):
        pages = drawn(paper(*LINES[:before], *blocks, listed))
        leading = next(i for i, page in enumerate(pages) if {"Leading in.", "Leading in:"} & set(texts(page)))
        assert leading == page_of(pages, "Below.")


@pytest.mark.parametrize("before", range(20, 50))
def test_nobody_signs_on_a_page_without_what_is_signed(before: int) -> None:
    rows = tuple((f"row {i}",) for i in range(4))
    for block in (Table(columns=(Column(head="What"),), rows=rows), Items(rows=("row 2", "row 3"), boxes=True)):
        pages = drawn(paper(*LINES[:before], block, Signatures(roles=("Foreman",))))
        assert page_of(pages, "row 2") == page_of(pages, "row 3") == page_of(pages, "Foreman")


@pytest.mark.parametrize("before", range(20, 50, 3))
def test_a_short_hold_point_stands_on_one_page_with_what_is_ticked_and_signed(before: int) -> None:
    rows = tuple((f"row {i}",) for i in range(5))
    block = Table(columns=(Column(head="What"),), rows=rows)
    ticks = Items(rows=("tick 0", "tick 1"), boxes=True)
    pages = drawn(paper(*LINES[:before], Heading(text="Hold", level=3), block, ticks, Signatures(roles=("Foreman",))))
    stands = ("Hold", *(row[0] for row in rows), *ticks.rows, "Foreman")
    assert len({page_of(pages, text) for text in stands}) == 1


def test_short_sections_do_not_cling_to_each_other() -> None:
    pages = drawn(paper(*[b for i in range(60) for b in (Heading(text=f"Part {i}"), Paragraph(text=f"None {i}."))]))
    counts = [sum(text.startswith("Part") for text in texts(page)) for page in pages]
    assert max(counts) - min(counts[:-1]) <= 1
    for i in range(60):
        assert page_of(pages, f"Part {i}") == page_of(pages, f"None {i}.")


@pytest.mark.parametrize("before", range(20, 50))
def test_no_row_stands_alone_and_none_is_parted(before: int) -> None:
    rows = tuple((f"row {i}", "words that take two lines " * 4) for i in range(6))
    block = Table(columns=(Column(head="Row"), Column(head="What", share=2)), rows=rows)
    pages = drawn(paper(*LINES[:before], block))
    assert page_of(pages, "Row") == page_of(pages, "row 0")
    for page in pages:
        here = [text for text in texts(page) if text.startswith("row ")]
        lines = [text for text in texts(page) if text.startswith(("words", "take", "that", "two", "lines"))]
        assert len(lines) == 2 * len(here)


@pytest.mark.parametrize("before", range(20, 50))
def test_no_single_line_of_a_paragraph_is_left_behind(before: int) -> None:
    pages = drawn(paper(*LINES[:before], Paragraph(text="word " * 160)))
    counts = [sum(text.startswith("word") for text in texts(page)) for page in pages]
    assert 1 not in counts


@pytest.mark.parametrize("before", range(20, 50))
def test_a_caution_stands_whole(before: int) -> None:
    pages = drawn(paper(*LINES[:before], Paragraph(text="Gas kills. " * 30, weight=Weight.CAUTION)))
    assert sum(any(text.startswith("Gas") for text in texts(page)) for page in pages) == 1
    assert page_of(pages, "CAUTION") == page_of(pages, next(t for p in pages for t in texts(p) if "Gas" in t))


def test_a_caution_has_a_box_its_sign_and_the_word() -> None:
    (page,) = drawn(paper(Paragraph(text="Gas kills.", weight=Weight.CAUTION)))
    assert {"!", "CAUTION", "Gas kills."} <= set(texts(page))
    sign, word, text = (next(a for a in page.texts if a.text == each) for each in ("!", "CAUTION", "Gas kills."))
    assert sign.right < word.left < word.right < text.left
    left = [line for line in page.lines if line.right < sign.left and line.top > sign.top and line.foot < sign.foot]
    right = [line for line in page.lines if line.left > text.right and line.top > sign.top and line.foot < sign.foot]
    assert left
    assert right


def test_figures_that_follow_each_other_stand_beside_each_other() -> None:
    (page,) = drawn(paper(*[Big(label=f"label {i}", figure=f"{i} kg") for i in range(3)]))
    feet = {area.foot for area in page.texts if area.text.endswith("kg")}
    assert len(feet) == 1
    (page,) = drawn(paper(*[Big(label=f"label {i}", figure=f"{i} of very many kg") for i in range(3)]))
    sizes = {round(area.top - area.foot, 3) for area in page.texts if area.text.endswith("kg")}
    assert len(sizes) == 1
    assert_sound([page])


def test_figures_of_a_table_end_on_one_line() -> None:
    block = Table(
        columns=(Column(head="What"), Column(head="kg", right=True)), rows=(("a", "2,012"), ("b", "9"), ("c", "147.5"))
    )
    (page,) = drawn(paper(block))
    ends = [area.right for area in page.texts if area.text in {"kg", "2,012", "9", "147.5"}]
    assert max(ends) - min(ends) < 0.01


def test_words_stay_whole_where_the_page_is_wide_enough() -> None:
    columns = (Column(head="No.", share=0.1), Column(head="What", share=9), Column(head="Registration", share=0.1))
    (page,) = drawn(paper(Table(columns=columns, rows=(("1,000,000", "text " * 60, "undecided"),))))
    assert {"1,000,000", "Registration", "undecided"} <= set(texts(page))


@pytest.mark.parametrize("count", [2, 8, 12, 14, 30])
def test_many_columns_are_sound_and_hold_every_word(count: int) -> None:
    rows = tuple(tuple(f"r{r}c{c}" for c in range(count)) for r in range(4))
    pages = drawn(paper(Table(columns=tuple(Column(head=f"H{c}", right=c % 2 == 0) for c in range(count)), rows=rows)))
    assert_sound(pages)
    assert {cell for row in rows for cell in row} <= {text for page in pages for text in texts(page)}


def test_a_blank_has_a_line_to_write_on_with_room_above() -> None:
    block = Table(columns=(Column(head="What"), Column(head="Read")), rows=(("Mass", ""),), blank=frozenset({1}))
    (page,) = drawn(paper(block))
    what, read = (next(a for a in page.texts if a.text == each) for each in ("What", "Read"))
    (line,) = [line for line in page.lines if abs(line.left - read.left) < 1 and line.top < read.foot - 20]
    assert line.right - line.left > 100
    assert what.foot - line.top > 20


def test_every_line_of_a_list_to_tick_has_its_box() -> None:
    (page,) = drawn(paper(Items(rows=("a", "b", "c"), boxes=True)))
    for letter in "abc":
        text = next(area for area in page.texts if area.text == letter)
        sides = [
            line
            for line in page.lines
            if line.right < text.left and line.top > text.foot - 4 and line.foot < text.top + 4
        ]
        assert len(sides) == 4


def test_words_without_blanks_stay_in_their_boxes() -> None:
    tree = Node(title=LONG_WORD, note=LONG_WORD, wire=LONG_WORD, below=(Node(title=LONG_WORD, wire=LONG_WORD),) * 3)
    assert_sound(drawn(paper(Diagram(roots=(tree, tree), alt=LONG_WORD))))


def test_a_diagram_leads_every_wire_to_its_box() -> None:
    """From each box but the first a level line runs left, to an upright line or to the box before."""
    branches = tuple(Node(title=f"Lamp {i}", note="0.4 A", wire="1.5 mm², 5 A") for i in range(5))
    (page,) = drawn(paper(Diagram(roots=(Node(title="Battery", below=branches),), alt="Lamps.")))
    (source,) = [area for area in page.texts if area.text == "Battery"]
    for i in range(5):
        lamp = next(area for area in page.texts if area.text == f"Lamp {i}")
        wires = [
            line
            for line in page.lines
            if line.top - line.foot < 2
            and line.right - line.left > 20
            and source.right < line.left + 1
            and line.right <= lamp.left
            and abs((line.top + line.foot) / 2 - lamp.foot) < 12
        ]
        assert wires, i
