"""The papers of a full build, made and set, and the largest of them as PDF beside the PDF library's own story."""

from __future__ import annotations

import gc
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO
from statistics import median
from xml.sax.saxutils import escape

from specbuilder.documents.blocks import (
    Big,
    Block,
    Diagram,
    Facts,
    Heading,
    Items,
    Node,
    Paper,
    Paragraph,
    Signatures,
    Table,
)
from specbuilder.documents.formats import FORMATS, text_lines
from specbuilder.documents.sheets import SHEETS
from specbuilder.model.kinds import JobState
from specbuilder.model.papers import Case
from tests.documents.cases import case

BUILDS = ("saturday-family", "off-grid-pair", "winter-walkers")
_FRESH = """
import time
from specbuilder.documents.formats import FORMATS
from tests.documents.trial_papers import SAMPLE
began = time.perf_counter()
FORMATS[-1].set(SAMPLE)
print((time.perf_counter() - began) * 1000)
"""


def run(rounds: int = 15) -> None:
    """Measure and print."""
    cases = [case(name, state=JobState.ORDERED) for name in BUILDS]
    whole, pages, ours, alone = list[float](), list[float](), list[float](), list[float]()
    for each in cases:
        papers = _papers(each)
        largest = max(papers, key=lambda paper: len(FORMATS[-1].set(paper)))
        story = partial(_library_alone, largest)
        story()
        gc.collect()
        for _ in range(rounds):
            whole.append(_timed(partial(_all_papers, each)))
            pages.append(_timed(partial(text_lines, largest)))
            ours.append(_timed(partial(FORMATS[-1].set, largest)))
            alone.append(_timed(story))
    fresh = [float(_fresh()) for _ in range(5)]
    names = ", ".join(form.name for form in FORMATS)
    print(f"all papers    {_spread(whole)}   (bound 1000), made and set as {names}")
    print(f"preview       {_spread(pages)}   (bound 200), the largest paper as lines")
    print(f"largest PDF   {_spread(ours)}")
    print(f"              {median(ours) / median(alone):4.2f}x the library's own story, {_spread(alone)}")
    print(f"first PDF     {_spread(fresh)}   in a fresh process: library and letters are loaded")


def _papers(of: Case) -> list[Paper]:
    return [sheet.make(of) for sheet in SHEETS if sheet.called_for(of)]


def _all_papers(of: Case) -> list[bytes]:
    return [form.set(paper) for paper in _papers(of) for form in FORMATS]


def _fresh() -> str:
    return subprocess.run([sys.executable, "-c", _FRESH], capture_output=True, text=True, check=True).stdout


def _library_alone(paper: Paper) -> bytes:
    """The same texts as paragraphs and tables of the library, with head and page number, and nothing else."""
    from reportlab.lib.pagesizes import A4
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.pdfgen.canvas import Canvas
    from reportlab.platypus import BaseDocTemplate, SimpleDocTemplate
    from reportlab.platypus import Paragraph as Words
    from reportlab.platypus import Table as Grid

    style = ParagraphStyle("body", fontName="Lato-Regular", fontSize=9.2, leading=12.6)

    def words(text: str) -> Words:
        return Words(escape(text), style)

    def head(canvas: Canvas, document: BaseDocTemplate) -> None:
        canvas.setFont("Lato-Regular", 9)
        canvas.drawString(57, 805, f"{paper.running.firm} {paper.running.job} {paper.running.state}")
        canvas.drawString(57, 30, f"page {document.page}")

    story: list[Words | Grid] = []
    for block in paper.blocks:
        rows = _rows(block)
        if isinstance(block, Table | Facts) and rows:
            widths = [490 / len(rows[0])] * len(rows[0])
            story.append(Grid([[words(cell) for cell in row] for row in rows], colWidths=widths, repeatRows=1))
        else:
            story += [words(text) for row in rows for text in row]
    file = BytesIO()
    document = SimpleDocTemplate(file, pagesize=A4, leftMargin=57, rightMargin=45, topMargin=70, bottomMargin=50)
    document.build(story, onFirstPage=head, onLaterPages=head)
    return file.getvalue()


def _rows(block: Block) -> list[tuple[str, ...]]:
    """The texts of a block; what stands beside each other in one row."""
    match block:
        case Heading(text=text) | Paragraph(text=text):
            return [(text,)]
        case Big(label=label, figure=figure, note=note):
            return [(label, figure, note)]
        case Facts(rows=pairs):
            return list(pairs)
        case Items(rows=texts) | Signatures(roles=texts):
            return [(text,) for text in texts]
        case Table(columns=columns, rows=rows):
            return [tuple(column.head for column in columns), *rows]
        case Diagram(roots=roots, alt=alt):
            return [*((text,) for root in roots for text in _texts(root)), (alt,)]


def _texts(node: Node) -> Iterator[str]:
    yield from (text for text in (node.wire, node.title, node.note) if text)
    for below in node.below:
        yield from _texts(below)


def _timed(work: Callable[[], object]) -> float:
    began = time.perf_counter()
    work()
    return (time.perf_counter() - began) * 1000


def _spread(times: list[float]) -> str:
    ordered = sorted(times)
    return f"median {median(ordered):5.1f} ms, p95 {ordered[int(0.95 * (len(ordered) - 1))]:5.1f} ms, n={len(ordered)}"


if __name__ == "__main__":
    run()
