"""What stands on every page: firm, job, revision, state, which page of how many, and whether it may be built."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.documents.blocks import Paper, Running

from .fonts import Face, plain, shown, strong
from .pen import Pen
from .rows import Cell, Setting, baseline, row
from .strips import Strip
from .style import BANNER, BOTTOM, FIRM, FOOT, HEAVY, LEFT, PAGE_HEIGHT, RUNNING, RUNNING_JOB, SOFT, THIN, TOP, WIDTH

_MOST_LINES = 3
"""Of each text in head, banner and foot: they must leave room for the paper."""
_FEWER_LINES = 2
"""Of revision and state where they do not fit into one text."""
_CUT = "…"
_BESIDE = 0.62
"""Part of the width for what stands left in the head, the rest is for what stands right."""
_HEAD_RULE = 4.0
_BELOW_HEAD = 15.0
_ABOVE_FOOT = 12.0
_ABOVE_BANNER = 7.0
_BANNER_PADDING = 4.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Head, banner and foot of a paper."""

    firm: Strip
    job: Cell
    state: Strip
    banner: tuple[str, ...]
    foot: Strip
    whole: tuple[str, ...]
    """Texts that are too long to stand on every page, in full."""

    @property
    def top(self) -> float:
        """Where the paper itself begins, from the foot of the page."""
        head = self.firm.height + _job_row(self.job, "").height + self.state.height + _HEAD_RULE
        return PAGE_HEIGHT - TOP - head - self._banner_height - _BELOW_HEAD

    @property
    def room(self) -> float:
        """Height for the paper itself."""
        return self.top - BOTTOM - self.foot.height - _ABOVE_FOOT

    @property
    def _banner_height(self) -> float:
        return _ABOVE_BANNER + len(self.banner) * BANNER[1] + 2 * _BANNER_PADDING if self.banner else 0.0

    def draw_head(self, pen: Pen, number: int, of: int) -> None:
        """Draws head and banner on one page, before all else: a page is read aloud in the order it was drawn in."""
        top = PAGE_HEIGHT - TOP
        for strip in (self.firm, _job_row(self.job, f"page {number} of {of}"), self.state):
            strip.draw(pen, top)
            top -= strip.height
        top -= _HEAD_RULE
        pen.line(LEFT, top, LEFT + WIDTH, top, FIRM)
        if self.banner:
            self._draw_banner(pen, top - _ABOVE_BANNER)

    def draw_foot(self, pen: Pen) -> None:
        """Draws the foot, after all else."""
        foot = BOTTOM + self.foot.height
        pen.line(LEFT, foot + 3.0, LEFT + WIDTH, foot + 3.0, THIN)
        self.foot.draw(pen, foot)

    def _draw_banner(self, pen: Pen, top: float) -> None:
        size, leading = BANNER
        height = len(self.banner) * leading + 2 * _BANNER_PADDING
        pen.box(LEFT + HEAVY / 2, top - height, WIDTH - HEAVY, height, HEAVY)
        for i, line in enumerate(self.banner):
            x = LEFT + (WIDTH - strong().width(line) * size) / 2
            pen.text(x, baseline(top - _BANNER_PADDING - i * leading, size, leading), line, strong(), size)


def framed_by(paper: Paper) -> Frame:
    """The frame of all pages of a paper."""
    running = paper.running
    cutter = _Cutter()
    left, right = WIDTH * _BESIDE, WIDTH * (1 - _BESIDE) - 10.0
    size, leading = RUNNING
    firm = [
        Cell(x=LEFT, width=left, lines=cutter.cut(running.firm, plain(), size, left), face=plain(), shade=SOFT),
        Cell(
            x=LEFT + WIDTH - right,
            width=right,
            lines=cutter.cut(paper.title, plain(), size, right),
            face=plain(),
            shade=SOFT,
            right=True,
        ),
    ]
    told = Cell(x=LEFT, width=WIDTH, lines=_state(running, cutter), face=plain())
    job_lines = cutter.cut(running.job, strong(), RUNNING_JOB[0], left)
    banner = cutter.cut(running.banner.upper(), strong(), BANNER[0], WIDTH - 24.0)
    foot = Cell(x=LEFT, width=WIDTH, lines=cutter.cut(running.foot, plain(), FOOT[0], WIDTH), face=plain(), shade=SOFT)
    return Frame(
        firm=row(firm, Setting(size=size, leading=leading))[0],
        job=Cell(x=LEFT, width=left, lines=job_lines, face=strong()),
        state=row([told], Setting(size=size, leading=leading))[0],
        banner=() if banner == ("",) else banner,
        foot=row([foot], Setting(size=FOOT[0], leading=FOOT[1]))[0],
        whole=tuple(cutter.whole),
    )


def _state(running: Running, cutter: _Cutter) -> tuple[str, ...]:
    """Revision and state in one text; each by itself where they are so long that one would push out the other."""
    texts = [shown(text) for text in (running.revision, running.state) if text]
    size = RUNNING[0]
    lines = plain().lines(" \N{MIDDLE DOT} ".join(texts), size, WIDTH)
    if len(lines) <= _MOST_LINES:
        return lines
    return tuple(line for text in texts for line in cutter.cut(text, plain(), size, WIDTH, _FEWER_LINES))


def _job_row(job: Cell, page: str) -> Strip:
    size, leading = RUNNING_JOB
    number = Cell(x=LEFT, width=WIDTH, lines=(page,), face=strong(), right=True)
    return row([job, number], Setting(size=size, leading=leading))[0]


class _Cutter:
    """Cuts what is too long for every page, and remembers it."""

    def __init__(self) -> None:
        self.whole: list[str] = []

    def cut(self, text: str, face: Face, size: float, room: float, most: int = _MOST_LINES) -> tuple[str, ...]:
        """The text in at most so many lines."""
        lines = face.lines(text, size, room)
        if len(lines) <= most:
            return lines
        self.whole.append(text)
        last = lines[most - 1]
        while last and face.width(f"{last}{_CUT}") * size > room:
            last = last[:-1]
        return (*lines[: most - 1], f"{last}{_CUT}")
