"""PDFs read back: what stands on every page, and that every word is there."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

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
    Signatures,
    Table,
    Weight,
)
from specbuilder.documents.formats.pdf import set_pdf

from .trial_papers import DRAFT, LONG_NAME, LONG_WORD, RUNNING, SAMPLE, TREE, paper


def read(a_paper: Paper) -> list[str]:
    """The text of each page, blanks and line ends run together."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(set_pdf(a_paper))).pages]


def pressed(text: str) -> str:
    """Without blanks: where a line is broken says nothing."""
    return "".join(text.split())


ROWS = tuple((f"row {i}", f"{i},000", "") for i in range(120))
LONG_TABLE = Table(
    columns=(Column(head="Circuit"), Column(head="Load", right=True), Column(head="As built")),
    rows=ROWS,
    blank=frozenset({2}),
)


def test_head_banner_and_foot_stand_on_every_page() -> None:
    pages = read(paper(*SAMPLE.blocks, LONG_TABLE, running=DRAFT, title="Workshop sheet"))
    assert len(pages) > 3
    for number, page in enumerate(pages, start=1):
        for text in (DRAFT.firm, DRAFT.job, f"{DRAFT.revision} · {DRAFT.state}", "Workshop sheet", DRAFT.foot):
            assert text in page
        assert "NOT TO BE BUILT: THIS IS A DRAFT" in page
        assert f"page {number} of {len(pages)}" in page


def test_a_paper_to_build_from_has_no_banner() -> None:
    assert not [page for page in read(paper(LONG_TABLE)) if "NOT TO BE BUILT" in page]


def test_a_paper_without_blocks_has_its_head_and_title() -> None:
    (page,) = read(paper(title="Nothing yet"))
    assert "Nothing yet" in page
    assert "page 1 of 1" in page


def test_heads_of_a_table_are_repeated_on_every_page() -> None:
    pages = read(paper(LONG_TABLE))
    assert len(pages) > 2
    assert all("Circuit Load As built" in page for page in pages)
    assert [row for row in ROWS if sum(f"{row[0]} {row[1]}" in page for page in pages) != 1] == []


@pytest.mark.parametrize("text", [LONG_NAME, LONG_WORD], ids=["long-name", "long-word"])
@pytest.mark.parametrize("columns", [1, 3, 12, 40])
def test_every_cell_is_there_however_long(text: str, columns: int) -> None:
    rows = tuple((*(f"{r}x{c}" for c in range(columns - 1)), text) for r in range(3))
    (*short, last) = [Column(head=f"H{c}") for c in range(columns)]
    pages = read(paper(Table(columns=(*short, replace(last, head=text)), rows=rows)))
    whole = pressed(" ".join(pages))
    for row in rows:
        for cell in row[:-1]:
            assert cell in whole
    letters = "".join(sorted(pressed(text)))
    # Cells of one line stand between the lines of a long one, so its letters are counted and not looked for.
    assert all(whole.count(letter) >= 4 * letters.count(letter) for letter in set(letters))


BLOCKS_WITH_A_LONG_TEXT: list[Block] = [
    Heading(text=LONG_NAME, level=1),
    Heading(text=LONG_WORD, level=3),
    Paragraph(text=LONG_NAME),
    Paragraph(text=LONG_NAME * 9, weight=Weight.CAUTION),
    Paragraph(text=LONG_WORD, weight=Weight.STRONG),
    Paragraph(text=LONG_NAME, weight=Weight.SMALL),
    Big(label="Name", figure=LONG_WORD, note=LONG_NAME),
    Items(rows=(LONG_NAME * 40,), boxes=True),
    Signatures(roles=(LONG_NAME,)),
    Diagram(roots=(), alt=LONG_NAME),
    Diagram(roots=(Node(title=LONG_NAME, below=(Node(title="b", note=LONG_WORD),)),), alt="Two things."),
]


@pytest.mark.parametrize("block", BLOCKS_WITH_A_LONG_TEXT, ids=lambda block: type(block).__name__)
def test_a_long_text_is_there_in_full(block: Block) -> None:
    whole = pressed(" ".join(page.split(RUNNING.state)[1].split(RUNNING.foot)[0] for page in read(paper(block))))
    longest = max((text for text in _texts(block)), key=len)
    assert pressed(longest) in whole


def _texts(block: object) -> list[str]:
    match block:
        case str():
            return [block]
        case tuple():
            return [text for each in block for text in _texts(each)]
        case Diagram() | Node():
            return [t for name in block.__dataclass_fields__ for t in _texts(getattr(block, name))]
        case _:
            names = getattr(block, "__dataclass_fields__", {})
            return [t for name in names for t in _texts(getattr(block, name))]


def test_what_is_too_long_for_every_page_is_cut_there_and_stands_in_full_once() -> None:
    running = replace(RUNNING, firm=LONG_NAME, revision=f"revision {LONG_WORD}", state="ordered 18 April 2031")
    pages = read(paper(LONG_TABLE, running=running))
    assert pressed(LONG_NAME) in pressed(pages[0])
    assert LONG_WORD in pressed(pages[0])
    for page in pages:
        assert "ordered 18 April 2031" in page
        assert "0147, the Saturday family" in page
        assert "…" in page


def test_a_diagram_names_every_thing_wire_and_note() -> None:
    (page,) = read(paper(Diagram(roots=(TREE,), alt="From the battery on.")))
    for text in ("Leisure battery", "100 Ah", "16 mm²,", "1.8 m", "Fuse board", "Fridge", "5.5 A", "35 mm²,", "125 A"):
        assert text in page
    assert "From the battery on." in page


def test_a_tree_too_deep_for_the_page_goes_on_with_a_number() -> None:
    node = Node(title="Thing 14", wire="1 mm²")
    for level in reversed(range(14)):
        node = Node(title=f"Thing {level}", wire="1 mm²", below=(node,))
    (page,) = read(paper(Diagram(roots=(node,), alt="A chain.")))
    for level in range(15):
        assert f"Thing {level} " in page
    for number in (1, 2, 3):
        assert f"goes on at ({number})" in page
        assert f"({number}) Thing" in page


def test_a_diagram_over_several_pages_says_what_it_goes_on_from() -> None:
    branches = tuple(Node(title=f"Circuit {i}", wire="1.5 mm²") for i in range(60))
    pages = read(
        paper(Diagram(roots=(Node(title="Battery", below=(Node(title="Panel", below=branches),)),), alt="All."))
    )
    assert len(pages) > 2
    assert all("on from: Battery, Panel" in page for page in pages[1:])


def test_letters_of_europe_show_and_others_have_a_sign() -> None:
    (page,) = read(paper(Paragraph(text="Zażółć Łódź Ångström Ελλάδα Жуковский Đorđe 漢a\x1bb")))
    assert "Zażółć Łódź Ångström Ελλάδα Жуковский Đorđe □a□b" in page


def test_more_letters_than_one_font_table_holds_all_show() -> None:
    letters = [chr(code) for code in (*range(0xC0, 0x180), *range(0x391, 0x3A2), *range(0x410, 0x450))]
    (page,) = read(
        paper(Facts(rows=tuple((letter, letter) for letter in letters[:20])), Paragraph(text=" ".join(letters)))
    )
    assert " ".join(letters) in page


def test_the_letters_travel_with_the_file() -> None:
    page = PdfReader(BytesIO(set_pdf(SAMPLE))).pages[0]
    fonts = [font.get_object() for font in page["/Resources"]["/Font"].values()]
    embedded = [font["/FontDescriptor"] for font in fonts if "/FontDescriptor" in font]
    assert {font["/FontName"].partition("+")[2] for font in embedded} == {"Lato-Regular", "Lato-Bold"}
    assert all("/FontFile2" in font for font in embedded)


def test_the_file_names_paper_job_and_firm_and_no_hour() -> None:
    found = PdfReader(BytesIO(set_pdf(SAMPLE)))
    assert found.metadata is not None
    assert found.metadata.title == "Workshop sheet, 0147, the Saturday family, revision 1"
    assert found.metadata.author == "Harrowden Campers, Ossenthwick"
    assert found.metadata.creator == "specbuilder"
    assert found.metadata.creation_date is not None
    assert found.metadata.creation_date.year == 2000
    assert found.root_object["/Lang"] == "en-GB"


def test_parts_are_listed_beside_the_pages() -> None:
    blocks = [
        Heading(text="Holes", level=1),
        LONG_TABLE,
        Heading(text="Circuits", level=1, new_page=True),
        Heading(text="12 V"),
    ]
    found = PdfReader(BytesIO(set_pdf(paper(*blocks))))
    places = [(entry.title, found.get_destination_page_number(entry)) for entry in found.outline]
    assert [title for title, _ in places] == ["Holes", "Circuits"]
    assert places[0][1] == 0
    assert places[1][1] == len(found.pages) - 1
