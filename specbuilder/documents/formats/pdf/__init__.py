"""PDF on A4, portrait. The same paper gives the same bytes: no hour of the day, nothing by chance."""

from __future__ import annotations

from threading import Lock

from specbuilder.documents.blocks import Paper, Paragraph, Weight

from .flow import flowed, paragraph
from .frame import framed_by
from .pen import Pen
from .strips import in_pages

_ONE_AT_A_TIME = Lock()
"""The library reads its letters from one place in one file, whoever asks."""


def set_pdf(paper: Paper) -> bytes:
    """The paper as a PDF file."""
    with _ONE_AT_A_TIME:
        return _set(paper)


def _set(paper: Paper) -> bytes:
    frame = framed_by(paper)
    in_full = [s for text in frame.whole for s in paragraph(Paragraph(text=f"In full: {text}", weight=Weight.SMALL))]
    pages = in_pages([*in_full, *flowed(paper)], frame.room)
    pen = Pen(title=f"{paper.title}, {paper.running.job}, {paper.running.revision}", author=paper.running.firm)
    for number, page in enumerate(pages, start=1):
        frame.draw_head(pen, number, len(pages))
        for placed in page:
            placed.draw(pen, frame.top)
        frame.draw_foot(pen)
        pen.turn()
    return pen.written()
