"""Markdown with pipe tables and task lists. What somebody typed comes out as he typed it, never as markup."""

from __future__ import annotations

import re
import string
from collections.abc import Iterator, Sequence
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
    Signatures,
    Table,
    Weight,
)
from specbuilder.wording.plain import printable

from .text.trees import tree_lines

_HARMLESS = frozenset("\"%',./:;?@^-+=(){}!")
"""Punctuation that says nothing inside a line; ``+ - =`` and numbers with a dot do at its beginning."""
_ESCAPED = re.compile(f"[{re.escape(''.join(set(string.punctuation) - _HARMLESS))}]")
_BEGINS = re.compile(r"^([-+=]|\d+(?=[.)]))")
_LIST = re.compile(r"^(?:- |\d+\. )", re.MULTILINE)
_BLANK = r"\_\_\_\_\_\_\_\_"
_TREE_WIDTH = 96
_DEEPEST = 6


def set_markdown(paper: Paper) -> bytes:
    """The paper as a Markdown file."""
    parts = [*_head(paper), *(text for block in paper.blocks for text in _block(block)), *_foot(paper)]
    return ("\n\n".join(_kept_apart([part for part in parts if part])) + "\n").encode()


def _kept_apart(parts: Sequence[str]) -> Iterator[str]:
    """Lists that follow each other have other signs in turn, or they would be one list."""
    before = ""
    for part in parts:
        sign = _LIST.match(part)
        if sign is not None and _LIST.match(before) is not None and before[: sign.end()] == part[: sign.end()]:
            part = _LIST.sub(_other, part)
        before = part
        yield part


def _other(sign: re.Match[str]) -> str:
    """``*`` in place of ``-``, ``1)`` in place of ``1.``."""
    return sign[0].replace("-", "*").replace(".", ")")


def _plain(text: str) -> str:
    """The text inside a line of Markdown."""
    return _ESCAPED.sub(r"\\\g<0>", " ".join(printable(text).split()))


def _begun(text: str) -> str:
    """The text where a line begins with it."""
    plain = _plain(text)
    found = _BEGINS.match(plain)
    if found is None:
        return plain
    sign = found[1]
    return f"{sign}\\{plain[len(sign) :]}" if sign.isdigit() else f"\\{plain}"


def _strong(text: str) -> str:
    plain = _plain(text)
    return f"**{plain}**" if plain else ""


def _head(paper: Paper) -> list[str]:
    running = paper.running
    banner = _strong(running.banner.upper())
    facts = (running.firm, running.job, running.revision, running.state)
    return [
        f"# {_plain(paper.title)}",
        "\n".join(f"- {_begun(fact)}" for fact in facts if fact),
        f"> {banner}" if banner else "",
    ]


def _foot(paper: Paper) -> list[str]:
    return ["---", _begun(paper.running.foot)]


def _block(block: Block) -> list[str]:
    """The block in parts that stand apart."""
    match block:
        case Heading():
            return [f"{'#' * min(block.level + 1, _DEEPEST)} {_plain(block.text)}"]
        case Paragraph():
            return [_paragraph(block)]
        case Big():
            return [_big(block)]
        case Facts():
            return ["\n".join(f"- {_strong(name)}: {_plain(value) or _BLANK}" for name, value in block.rows)]
        case Items():
            return ["\n".join(_items(block))]
        case Table():
            return ["\n".join(_table(block)) if block.rows else _begun(block.empty)]
        case Signatures():
            return ["\n".join(f"- {_begun(role)}: {_BLANK}{_BLANK}{_BLANK} date {_BLANK}" for role in block.roles)]
        case Diagram():
            return _diagram(block)
        case _:
            assert_never(block)


def _paragraph(paragraph: Paragraph) -> str:
    match paragraph.weight:
        case Weight.PLAIN | Weight.SMALL:
            return _begun(paragraph.text)
        case Weight.STRONG:
            return _strong(paragraph.text)
        case Weight.CAUTION:
            return f"> **! CAUTION:** {_plain(paragraph.text)}"
        case _:
            assert_never(paragraph.weight)


def _big(big: Big) -> str:
    parts = [f"{_begun(big.label)}: {_strong(big.figure)}", _plain(big.note)]
    return ", ".join(part for part in parts if part)


def _items(items: Items) -> list[str]:
    box = "[ ] " if items.boxes else ""
    return [
        f"{f'{number}.' if items.numbered else '-'} {box}{_begun(text)}"
        for number, text in enumerate(items.rows, start=1)
    ]


def _table(table: Table) -> list[str]:
    lines = [
        _pipes([_plain(column.head) for column in table.columns]),
        _pipes(["---:" if column.right else "---" for column in table.columns]),
    ]
    for i, row in enumerate(table.rows):
        text = _strong if i in table.strong else _plain
        lines.append(_pipes([text(cell) or (_BLANK if c in table.blank else "") for c, cell in enumerate(row)]))
    return lines


def _pipes(row: list[str]) -> str:
    return f"| {' | '.join(row)} |"


def _diagram(diagram: Diagram) -> list[str]:
    """The trees as they stand in text, where nothing is markup, and what they show."""
    lines = tree_lines(diagram.roots, _TREE_WIDTH)
    fence = "`" * max((len(run) + 1 for line in lines for run in re.findall("`+", line)), default=3)
    fence = fence if len(fence) > len("``") else "```"
    tree = "\n".join([fence, *(line.rstrip() for line in lines), fence])
    return [tree if lines else "", _begun(diagram.alt)]
