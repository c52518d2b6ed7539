"""Blocks to strips: how each kind of block stands on the page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TypeAlias, assert_never

from specbuilder.documents.blocks import (
    Big,
    Block,
    Diagram,
    Facts,
    Heading,
    Items,
    Paper,
    Paragraph,
    Signatures,
    Table,
    Weight,
)

from .diagrams import diagram
from .figures import figures
from .fonts import plain, strong
from .pen import Pen
from .rows import WHOLE, Cell, Setting, framed, lines_of, row
from .strips import Draw, Strip, below, kept, stacked, together, white
from .style import (
    ACCENT,
    BODY,
    FIRM,
    GAP,
    HEADING_GAPS,
    HEADINGS,
    LEFT,
    SMALL,
    SOFT,
    THIN,
    TITLE,
    WIDTH,
)
from .tables import facts, table

_BAR = 2.6
"""Thickness of the bar beside a line that must not be missed."""
_BESIDE_BAR = 9.0
_CAUTION_WORD = "CAUTION"
_CAUTION_TEXT = 84.0
"""Where the text of a caution begins, behind sign and word."""
_CAUTION_PADDING = 6.0
_CAUTION_SIGN = 15.0
_INTRODUCES = ":"
"""A paragraph that ends so stands on the page of what it introduces."""
_Piece: TypeAlias = Block | tuple[Big, ...]
"""What is set in one go."""
_ITEM_GAP = 1.8
_SHORT = 150.0
"""What is no higher stands on one page."""
_SIGNING = 30.0
"""Room to sign in."""
_SIGNED_PART = 0.62
_DATED_PART = 0.28


def flowed(paper: Paper) -> list[Strip]:
    """The whole paper as strips, its title first."""
    size, leading = TITLE
    title = together(lines_of(strong().lines(paper.title, size, WIDTH), LEFT, strong(), size, leading, ACCENT))
    strips = [replace(strip, bound=True) for strip in title]
    for before, block, after in _with_neighbours(paper.blocks):
        if isinstance(block, tuple):
            strips += below(figures(block), GAP * 1.6)
            continue
        set_block = _whole(block)
        if set_block and _stays(before, block, after):
            set_block[-1] = replace(set_block[-1], bound=True)
        strips += set_block
    return strips


def _with_neighbours(blocks: Sequence[Block]) -> Iterator[tuple[_Piece | None, _Piece, _Piece | None]]:
    """The blocks, each with those before and behind it. Large figures that follow each other are one piece."""
    pieces: list[_Piece] = []
    for block in blocks:
        if isinstance(block, Big) and pieces and isinstance(pieces[-1], tuple):
            pieces[-1] = (*pieces[-1], block)
        else:
            pieces.append((block,) if isinstance(block, Big) else block)
    for i, piece in enumerate(pieces):
        yield (pieces[i - 1] if i else None), piece, (pieces[i + 1] if i + 1 < len(pieces) else None)


def _stays(before: _Piece | None, block: Block, after: _Piece | None) -> bool:
    """Whether the end of a block stands on the page of the next.

    So does what is signed or ticked below a table, and a paragraph that leads in: one between a heading and what stands
    below it, or one that ends with a colon.
    """
    if isinstance(after, Signatures) or (isinstance(block, Table) and isinstance(after, Items) and after.boxes):
        return True
    if not isinstance(block, Paragraph) or after is None or isinstance(after, Paragraph):
        return False
    if isinstance(after, Heading):
        return isinstance(before, Heading) and after.level > before.level
    return isinstance(before, Heading) or block.text.rstrip().endswith(_INTRODUCES)


def _whole(block: Block) -> list[Strip]:
    """A short table or list to tick is never cut: two ticks alone at the head of a page are overlooked."""
    strips = _block(block)
    ticked = isinstance(block, Table) or (isinstance(block, Items) and block.boxes)
    short = sum(strip.height for strip in strips) <= _SHORT
    return together(strips) if ticked and short else strips


def _block(block: Block) -> list[Strip]:
    match block:
        case Heading():
            return _heading(block)
        case Paragraph():
            return paragraph(block)
        case Big():
            return figures((block,))
        case Facts():
            return below(facts(block), GAP)
        case Items():
            return below(_items(block), GAP)
        case Table():
            return below(table(block), GAP)
        case Signatures():
            return _signatures(block)
        case Diagram():
            return below(diagram(block), GAP * 1.5)
        case _:
            assert_never(block)


def _heading(heading: Heading) -> list[Strip]:
    """Bound to what follows; a part of the paper has a rule above and stands in the list of parts."""
    level = min(max(heading.level, 1), len(HEADINGS))
    size, leading = HEADINGS[level]
    strips = lines_of(strong().lines(heading.text, size, WIDTH), LEFT, strong(), size, leading, ACCENT)
    if level == 1:
        strips[0] = replace(strips[0], draw=_begins_part(strips[0], heading.text), above=_rule)
    strips[0] = replace(strips[0], gap=HEADING_GAPS[level], new_page=heading.new_page)
    return [replace(strip, bound=True) for strip in strips]


def _rule(pen: Pen, top: float) -> None:
    pen.line(LEFT, top + 4, LEFT + WIDTH, top + 4, FIRM, ACCENT)


def _begins_part(strip: Strip, name: str) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        pen.part(name, top + 6)
        strip.draw(pen, top)

    return draw


def paragraph(block: Paragraph) -> list[Strip]:
    """Running text, as much as it calls."""
    match block.weight:
        case Weight.PLAIN:
            size, leading = BODY
            return below(kept(lines_of(plain().lines(block.text, size, WIDTH), LEFT, plain(), size, leading)), GAP)
        case Weight.SMALL:
            size, leading = SMALL
            lines = plain().lines(block.text, size, WIDTH)
            return below(kept(lines_of(lines, LEFT, plain(), size, leading, SOFT)), GAP * 0.6)
        case Weight.STRONG:
            return below(_strong(block.text), GAP)
        case Weight.CAUTION:
            return below(_caution(block.text), GAP)
        case _:
            assert_never(block.weight)


def _strong(text: str) -> list[Strip]:
    """A bar runs beside it."""
    size, leading = BODY
    lines = strong().lines(text, size, WIDTH - _BESIDE_BAR)
    strips = lines_of(lines, LEFT + _BESIDE_BAR, strong(), size, leading)
    strips = [stacked(strips)] if len(strips) <= WHOLE else strips
    return kept(replace(strip, draw=_with_bar(strip)) for strip in strips)


def _with_bar(strip: Strip) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        pen.line(LEFT + _BAR / 2, top, LEFT + _BAR / 2, top - strip.height, _BAR)
        strip.draw(pen, top)

    return draw


def _caution(text: str) -> list[Strip]:
    size, leading = BODY
    lines = plain().lines(text, size, WIDTH - _CAUTION_TEXT - _CAUTION_PADDING)
    strips = lines_of(lines, LEFT + _CAUTION_TEXT, plain(), size, leading)
    strips[0] = replace(strips[0], draw=_with_sign(strips[0]))
    strips = [stacked(strips)] if len(strips) <= WHOLE else strips
    return framed(strips, LEFT, WIDTH, FIRM, _CAUTION_PADDING)


def _with_sign(strip: Strip) -> Draw:
    size, leading = BODY

    def draw(pen: Pen, top: float) -> None:
        pen.caution_sign(LEFT + _CAUTION_PADDING + 1, top - leading / 2, _CAUTION_SIGN)
        word = Cell(x=LEFT + _CAUTION_PADDING + 22, width=0.0, lines=(_CAUTION_WORD,), face=strong())
        row([word], Setting(size=size, leading=leading))[0].draw(pen, top)
        strip.draw(pen, top)

    return draw


def _items(items: Items) -> list[Strip]:
    size, leading = BODY
    signs = [f"{i}." if items.numbered else "–" for i in range(1, len(items.rows) + 1)]
    signs = signs if items.numbered or not items.boxes else [""] * len(signs)
    boxes = 16.0 if items.boxes else 0.0
    widest = max((plain().width(sign) * size for sign in signs), default=0.0)
    x = LEFT + boxes + (widest + 6.0 if widest else 0.0)
    white_beside = _ITEM_GAP * (1.6 if items.boxes else 0.5)
    setting = Setting(size=size, leading=leading, head=white_beside, foot=white_beside)
    strips: list[Strip] = []
    for sign, text in zip(signs, items.rows, strict=True):
        room = LEFT + WIDTH - x
        cells = [
            Cell(x=LEFT + boxes, width=widest, lines=(sign,), face=plain(), right=items.numbered),
            Cell(x=x, width=room, lines=plain().lines(text, size, room), face=plain()),
        ]
        item = row(cells, setting)
        strips += [replace(item[0], draw=_with_box(item[0], setting)), *item[1:]] if items.boxes else item
    return kept(strips)


def _with_box(strip: Strip, setting: Setting) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        pen.tick_box(LEFT + 0.5, top - setting.head - setting.leading / 2)
        strip.draw(pen, top)

    return draw


def _signatures(signatures: Signatures) -> list[Strip]:
    """A line to sign on and one for the date, what each is for below it."""
    size, leading = SMALL
    strips: list[Strip] = []
    signed, dated = WIDTH * _SIGNED_PART, WIDTH * _DATED_PART
    date_x = LEFT + WIDTH - dated
    for role in signatures.roles:
        names = row(
            [
                Cell(x=LEFT, width=signed, lines=plain().lines(role, size, signed), face=plain()),
                Cell(x=date_x, width=dated, lines=("date",), face=plain(), shade=SOFT),
            ],
            Setting(size=size, leading=leading, head=1.5, foot=1.5),
        )
        names[0] = replace(names[0], draw=_below_lines(names[0], ((LEFT, signed), (date_x, dated))))
        strips += together([white(_SIGNING), *names])
    return strips


def _below_lines(strip: Strip, lines: Sequence[tuple[float, float]]) -> Draw:
    def draw(pen: Pen, top: float) -> None:
        for x, width in lines:
            pen.line(x, top, x + width, top, THIN)
        strip.draw(pen, top)

    return draw
