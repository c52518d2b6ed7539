"""What a PDF draws and where: letters, lines and boxes of each page, taken down while they are drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any
from unittest.mock import patch

from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas

from specbuilder.documents.blocks import Paper
from specbuilder.documents.formats.pdf import pen, set_pdf

_CAPITALS, _TAILS = 0.72, 0.2
"""How far letters reach above and below the line they stand on, of their size."""


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle on a page, in points from its lower left corner."""

    left: float
    foot: float
    right: float
    top: float
    text: str = ""

    def meets(self, other: Area, white: float = 0.0) -> bool:
        """Whether the two lie over each other by more than that."""
        return (
            min(self.right, other.right) - max(self.left, other.left) > white
            and min(self.top, other.top) - max(self.foot, other.foot) > white
        )


@dataclass(slots=True)
class Page:
    """What was drawn on a page."""

    texts: list[Area] = field(default_factory=list)
    lines: list[Area] = field(default_factory=list)

    @property
    def areas(self) -> list[Area]:
        """All of it."""
        return [*self.texts, *self.lines]

    def overlapping(self) -> Iterator[tuple[Area, Area]]:
        """Letters over letters, and lines through letters."""
        found = sorted(self.texts, key=lambda area: area.foot)
        for i, one in enumerate(found):
            for other in found[i + 1 :]:
                if other.foot >= one.top:
                    break
                if one.meets(other, 0.05):
                    yield one, other
            yield from ((one, line) for line in self.lines if one.meets(line))


def drawn(paper: Paper) -> list[Page]:
    """The pages of a paper as they were drawn."""
    pages = [Page()]

    class Watched(Canvas):  # type: ignore[misc,unused-ignore]
        def drawString(self, x: float, y: float, text: str, *more: Any, **named: Any) -> None:  # noqa: N802
            size = self._fontsize
            width = stringWidth(text, self._fontname, size)
            pages[-1].texts.append(Area(x, y - _TAILS * size, x + width, y + _CAPITALS * size, text))
            super().drawString(x, y, text, *more, **named)

        def line(self, x1: float, y1: float, x2: float, y2: float) -> None:
            half = self._lineWidth / 2
            # A level line is as thick as its pen, and no longer than it is drawn.
            across, along = (half, 0.0) if x1 == x2 else (0.0, half)
            pages[-1].lines.append(
                Area(min(x1, x2) - across, min(y1, y2) - along, max(x1, x2) + across, max(y1, y2) + along)
            )
            super().line(x1, y1, x2, y2)

        def rect(self, x: float, y: float, width: float, height: float, **named: Any) -> None:
            half = self._lineWidth / 2
            for left, foot, right, top in (
                (x, y, x + width, y),
                (x, y + height, x + width, y + height),
                (x, y, x, y + height),
                (x + width, y, x + width, y + height),
            ):
                pages[-1].lines.append(Area(left - half, foot - half, right + half, top + half))
            super().rect(x, y, width, height, **named)

        def showPage(self) -> None:  # noqa: N802
            pages.append(Page())
            super().showPage()

    with patch.object(pen, "Canvas", Watched):
        set_pdf(paper)
    return pages[:-1]
