"""Text in columns, for terminals, mail and the preview on screen. No line is wider than asked."""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from specbuilder.documents.blocks import (
    Big,
    Block,
    Diagram,
    Facts,
    Heading,
    Items,
    Paper,
    Paragraph,
    Running,
    Signatures,
    Table,
    Weight,
)
from specbuilder.wording.plain import printable

from .cells import BLANK, boxed, broken, cells, hanging, padded
from .tables import fact_lines, table_lines
from .trees import diagram_lines

_NARROWEST = 24
"""Columns that a paper needs; a narrower screen cuts its lines."""
_LIGHT = "┌┐┘└─│"
_HEAVY = "┏┓┛┗━┃"
_UNDER = {1: "═", 2: "─"}
"""What stands below a heading of that level."""
_STRONG = "▌ "
_NOTE = "  "
_FIXED_BLANK = "\N{NO-BREAK SPACE}"
"""Has done its work when the lines are broken; whoever searches a file looks for a plain one."""
_CAUTION = "! CAUTION: "


def set_text(paper: Paper) -> bytes:
    """The paper as a text file."""
    return ("\n".join(text_lines(paper)) + "\n").encode()


def text_lines(paper: Paper, width: int = 80) -> tuple[str, ...]:
    """The paper in lines of at most so many columns, but never of fewer than 24."""
    width = max(width, _NARROWEST)
    return _plain([*_head(paper, width), *_blocks(paper.blocks, width), *_foot(paper.running, width)])


def block_lines(blocks: Sequence[Block], width: int) -> tuple[str, ...]:
    """Some blocks of a paper alone, without what stands on every page."""
    return _plain(_blocks(blocks, max(width, _NARROWEST)))


def _blocks(blocks: Sequence[Block], width: int) -> list[str]:
    lines: list[str] = []
    for before, block in zip((None, *blocks), blocks, strict=False):
        set_block = _block(block, width)
        if set_block and not _runs_on(before, block):
            lines.append("")
        lines += set_block
    return lines


def _plain(lines: Sequence[str]) -> tuple[str, ...]:
    return tuple(line.replace(_FIXED_BLANK, " ").rstrip() for line in lines)


def _head(paper: Paper, width: int) -> list[str]:
    """Whose paper, which job, which revision and in what state."""
    running = paper.running
    title, firm = printable(paper.title).strip(), printable(running.firm).strip()
    lines = [padded(firm, width - cells(title)) + title] if cells(firm) + cells(title) + 2 <= width else []
    lines = lines or [*broken(firm, width), *broken(title, width)]
    for text in (running.job, running.revision, running.state):
        lines += broken(printable(text), width)
    rule = "━" * width
    banner = printable(running.banner).strip().upper()
    return [rule, *lines, rule, *(["", *boxed([banner], width, _HEAVY)] if banner else [])]


def _foot(running: Running, width: int) -> list[str]:
    foot = printable(running.foot).strip()
    return ["", "─" * width, *(broken(foot, width) if foot else ())]


def _runs_on(before: Block | None, block: Block) -> bool:
    """A small note stands right below what it belongs to, and what a group holds right below its heading."""
    if isinstance(before, Heading):
        return before.level not in _UNDER and not isinstance(block, Heading)
    return isinstance(block, Paragraph) and block.weight is Weight.SMALL and isinstance(before, Paragraph | Big)


def _block(block: Block, width: int) -> list[str]:
    match block:
        case Heading():
            return _heading(block, width)
        case Paragraph():
            return _paragraph(block, width)
        case Big():
            return _big(block, width)
        case Facts():
            return fact_lines(block, width)
        case Items():
            return _items(block, width)
        case Table():
            return table_lines(block, width)
        case Signatures():
            return _signatures(block, width)
        case Diagram():
            return diagram_lines(block, width)
        case _:
            assert_never(block)


def _heading(heading: Heading, width: int) -> list[str]:
    lines = broken(printable(heading.text), width)
    under = _UNDER.get(heading.level)
    return [*([""] if heading.level == 1 else []), *lines, *([under * max(map(cells, lines))] if under else [])]


def _paragraph(paragraph: Paragraph, width: int) -> list[str]:
    text = printable(paragraph.text).strip()
    match paragraph.weight:
        case Weight.PLAIN:
            return list(broken(text, width))
        case Weight.STRONG:
            return [f"{_STRONG}{line}" for line in broken(text, width - cells(_STRONG))]
        case Weight.CAUTION:
            return boxed([f"{_CAUTION}{text}"], width, _LIGHT)
        case Weight.SMALL:
            return [f"{_NOTE}{line}" for line in broken(text, width - cells(_NOTE))]
        case _:
            assert_never(paragraph.weight)


def _big(big: Big, width: int) -> list[str]:
    """A terminal has one size of letters: what is large elsewhere stands in a box."""
    texts = (printable(text).strip() for text in (big.label, big.figure, big.note))
    return boxed([text for text in texts if text], width, _LIGHT)


def _items(items: Items, width: int) -> list[str]:
    numbers = [f"{i}." for i in range(1, len(items.rows) + 1)]
    longest = max(map(len, numbers), default=0)
    lines: list[str] = []
    for number, text in zip(numbers, items.rows, strict=True):
        box = "[ ] " if items.boxes else ""
        sign = f"{number.rjust(longest)} " if items.numbered else ("" if items.boxes else "- ")
        lines += hanging(f"{box}{sign}", printable(text).strip(), width)
    return lines


def _signatures(signatures: Signatures, width: int) -> list[str]:
    """Room to write above each line."""
    date = f"  date {BLANK * max(width // 6, 4)}"
    lines: list[str] = []
    for role in signatures.roles:
        *above, last = broken(printable(role).strip(), width // 3)
        name = padded(last, width // 3)
        lines += ["", *above, f"{name}  {BLANK * (width - cells(name) - 2 - cells(date))}{date}"]
    return lines
