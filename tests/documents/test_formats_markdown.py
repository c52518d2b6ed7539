"""Papers as Markdown, read back by a reader of Markdown."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

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
    Running,
    Signatures,
    Table,
    Weight,
)
from specbuilder.documents.formats.markdown import set_markdown
from specbuilder.wording.plain import printable

from .trial_papers import PAPERS, SAMPLE, TYPED, paper

GOLDEN = """\
# Workshop sheet

- Harrowden Campers, Ossenthwick
- 0147, the Saturday family
- revision 1
- draft, 12 April 2031

> **NOT TO BE BUILT: THIS IS A DRAFT**

Price, VAT in: **£24,816**, of that VAT £4,136

## Holes

### Positions

#### By the door

All measures are in millimetres from the datum.

**Sliding door right. Kitchen left.**

> **! CAUTION:** Check behind every mark before drilling.

Source: the template of the part.

- **Base van**: Fenwain Long
- **VIN tail**: \\_\\_\\_\\_\\_\\_\\_\\_

* Removed: awning
* Added: window

- [ ] Plate seen
- [ ] Photos taken

1. First
2. Then

| Hole | From axle mm | As built |
| --- | ---: | --- |
| Window, left | 1,420 | \\_\\_\\_\\_\\_\\_\\_\\_ |
| Hook-up inlet | 3,020 | \\_\\_\\_\\_\\_\\_\\_\\_ |
| **In all** | **2** | **-** |

None.

```
Leisure battery
│  100 Ah
├─ 16 mm², 1.8 m ─ Fuse board
│  ├─ 6 mm², 10 A ─ Fridge
│  │     5.5 A
│  └─ 4 mm², 15 A ─ Heater
└─ 35 mm², 125 A ─ Inverter
      1,000 W
```

From the battery to fridge, heater and inverter.

- Foreman: \\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_ date \\_\\_\\_\\_\\_\\_\\_\\_
- Customer: \\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_ date \\_\\_\\_\\_\\_\\_\\_\\_

---

Planning figures, no certificate. Local codes go first.
"""
READER = MarkdownIt("commonmark").enable(["table", "strikethrough"])
BARE = Running(firm="", job="", revision="", state="")
MARKUP = st.one_of(TYPED, st.text(alphabet="|*_#<>`&~[]()!\\-+=.:1a \"'/$^{}", max_size=20))


def tokens(*blocks: Block) -> list[Token]:
    """What a reader makes of the blocks, without the paper's head and foot."""
    found = READER.parse(set_markdown(paper(*blocks, running=BARE, title="T")).decode())
    return found[3:-1]


def plain(text: str) -> str:
    """A text as it should be read: every hidden character a sign, blanks run together."""
    return " ".join(printable(text).split())


def read(found: list[Token]) -> list[str]:
    """The texts that a reader shows, one for each place where text can stand."""
    return ["".join(shown(token)) for token in found if token.type == "inline"]


def shown(inline: Token) -> Iterator[str]:
    for child in inline.children or ():
        assert child.type in ("text", "strong_open", "strong_close"), child
        yield child.content


def test_a_whole_paper_is_markdown() -> None:
    assert set_markdown(SAMPLE).decode() == GOLDEN


@settings(max_examples=400, deadline=None)
@given(text=MARKUP)
def test_a_text_is_read_as_it_was_typed(text: str) -> None:
    expected = [plain(text)] if plain(text) else []
    for weight in (Weight.PLAIN, Weight.STRONG, Weight.SMALL):
        assert read(tokens(Paragraph(text=text, weight=weight))) == expected
    assert read(tokens(Items(rows=(text,)))) == read(tokens(Items(rows=(text,), numbered=True))) == expected
    assert read(tokens(Heading(text=text))) == [plain(text)]
    assert read(tokens(Paragraph(text=text, weight=Weight.CAUTION))) == [f"! CAUTION: {plain(text)}".strip()]


@settings(max_examples=400, deadline=None)
@given(cells=st.lists(MARKUP, min_size=1, max_size=5), strong=st.booleans())
def test_a_table_has_its_cells_whatever_stands_in_them(cells: list[str], strong: bool) -> None:
    block = Table(
        columns=tuple(Column(head=cell, right=i == 0) for i, cell in enumerate(cells)),
        rows=(tuple(cells), tuple(reversed(cells))),
        strong=frozenset({1} if strong else ()),
    )
    found = tokens(block)
    assert found[0].type == "table_open"
    assert read(found) == [plain(cell) for cell in (*cells, *cells, *reversed(cells))]


@settings(max_examples=100, deadline=None)
@given(any_paper=PAPERS)
def test_nothing_that_was_typed_becomes_markup(any_paper: Paper) -> None:
    found = READER.parse(set_markdown(any_paper).decode())
    kinds = {child.type for token in found for child in token.children or ()}
    assert kinds <= {"text", "strong_open", "strong_close"}
    assert not {token.type for token in found} & {"html_block", "code_block"}


def test_lists_that_follow_each_other_stay_apart() -> None:
    found = tokens(
        Facts(rows=(("a", "1"),)), Items(rows=("b",)), Signatures(roles=("c",)), Items(rows=("d",), boxes=True)
    )
    assert [token.type for token in found].count("bullet_list_open") == 4
    numbered = tokens(Items(rows=("a", "b"), numbered=True), Items(rows=("c",), numbered=True))
    assert [token.type for token in numbered].count("ordered_list_open") == 2


def test_a_tree_is_read_as_it_is_drawn_even_with_fences_in_it() -> None:
    node = Node(title="```", below=(Node(title="a *b* <c>", wire="````"),))
    found = tokens(Diagram(roots=(node,), alt="Two things."))
    assert [token.content for token in found if token.type == "fence"] == ["```\n└─ ```` ─ a *b* <c>\n"]
    assert read(found) == ["Two things."]


def test_what_is_to_be_filled_in_is_a_blank() -> None:
    block = Table(columns=(Column(head="What"), Column(head="Read")), rows=(("Mass", ""),), blank=frozenset({1}))
    assert read(tokens(block)) == ["What", "Read", "Mass", "________"]
    assert read(tokens(Facts(rows=(("VIN tail", ""),)))) == ["VIN tail: ________"]


def test_a_table_without_rows_says_so() -> None:
    assert read(tokens(Table(columns=(Column(head="Who"),), rows=(), empty="None."))) == ["None."]


def test_a_figure_stands_strong_between_its_name_and_its_note() -> None:
    found = set_markdown(paper(Big(label="Left", figure="218 kg", note="with four people"))).decode()
    assert "Left: **218 kg**, with four people\n" in found
