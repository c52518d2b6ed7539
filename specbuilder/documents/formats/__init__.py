"""The formats of a paper. Each turns the same blocks into bytes; the sheets know none of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from specbuilder.documents.blocks import Paper

from .markdown import set_markdown
from .spoken import set_spoken, spoken_blocks, spoken_lines
from .text import block_lines, set_text, text_lines

__all__ = ["FORMATS", "Format", "block_lines", "spoken_blocks", "spoken_lines", "text_lines"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Format:
    """A way to set a paper."""

    name: str
    suffix: str
    """Of the file, with its dot."""
    set: Callable[[Paper], bytes]
    """The same paper gives the same bytes."""


def _set_pdf(paper: Paper) -> bytes:
    """The PDF library takes a while to load, so it is loaded with the first PDF and not with the program."""
    from .pdf import set_pdf

    return set_pdf(paper)


FORMATS = (
    Format(name="text", suffix=".txt", set=set_text),
    Format(name="spoken", suffix=".spoken.txt", set=set_spoken),
    Format(name="Markdown", suffix=".md", set=set_markdown),
    Format(name="PDF", suffix=".pdf", set=_set_pdf),
)
