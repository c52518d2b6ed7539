"""Figures to be read from afar, with what each is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from specbuilder.documents.blocks import Big

from .fonts import plain, shown, strong
from .pen import Pen
from .rows import Cell, Setting, baseline, lines_of, row
from .strips import Strip, kept
from .style import BIG_SIZES, GAP, INK, LEFT, RULE, SMALL, SOFT, THIN, WIDTH

_BESIDE = 3
"""So many stand beside each other at most."""
_APART = 22.0
_LEADING = 1.16
_WORDS_MOST = 4
"""Lines of label and note; with more of them each figure stands alone."""


@dataclass(frozen=True, slots=True)
class _Shape:
    """How figures of a row are set."""

    beside: int
    size: float

    @property
    def width(self) -> float:
        """Of each."""
        return (WIDTH - _APART * (self.beside - 1)) / self.beside


def figures(bigs: Sequence[Big]) -> list[Strip]:
    """The figures, as many beside each other as are readable so."""
    shape = _shape(bigs)
    if shape is None:
        return [strip for big in bigs for strip in _long(big)]
    rows = [bigs[i : i + shape.beside] for i in range(0, len(bigs), shape.beside)]
    return [replace(_row(bigs_beside, shape), gap=GAP) for bigs_beside in rows]


def _shape(bigs: Sequence[Big]) -> _Shape | None:
    """Most beside each other before largest; None where a figure is no figure but a long text."""
    even = 2 if len(bigs) == _BESIDE + 1 else min(len(bigs), _BESIDE)
    for beside in range(even, 0, -1):
        for size in BIG_SIZES:
            shape = _Shape(beside, size)
            if all(_fits(big, shape) for big in bigs):
                return shape
    return None


def _fits(big: Big, shape: _Shape) -> bool:
    words = max(len(_words(big.label, shape)), len(_words(big.note, shape)))
    return words <= _WORDS_MOST and strong().width(shown(big.figure)) * shape.size <= shape.width


def _words(text: str, shape: _Shape) -> tuple[str, ...]:
    return plain().lines(text, SMALL[0], shape.width)


def _row(bigs: Sequence[Big], shape: _Shape) -> Strip:
    """Labels above, figures on one line, notes below."""
    xs = [LEFT + i * (shape.width + _APART) for i in range(len(bigs))]
    small = Setting(size=SMALL[0], leading=SMALL[1])
    labels = row([_cell(x, big.label, shape) for x, big in zip(xs, bigs, strict=True)], small)[0]
    notes = row([_cell(x, big.note, shape) for x, big in zip(xs, bigs, strict=True)], small)[0]
    leading = shape.size * _LEADING

    def draw(pen: Pen, top: float) -> None:
        labels.draw(pen, top)
        for x, big in zip(xs, bigs, strict=True):
            y = baseline(top - labels.height, shape.size, leading)
            pen.text(x, y, shown(big.figure), strong(), shape.size, INK)
        notes.draw(pen, top - labels.height - leading)
        for x in xs[1:]:
            pen.line(x - _APART / 2, top, x - _APART / 2, top - labels.height - leading - notes.height, THIN, RULE)

    return Strip(height=labels.height + leading + notes.height, draw=draw)


def _cell(x: float, text: str, shape: _Shape) -> Cell:
    return Cell(x=x, width=shape.width, lines=_words(text, shape), face=plain(), shade=SOFT)


def _long(big: Big) -> list[Strip]:
    size = BIG_SIZES[-1]
    small, small_leading = SMALL
    strips = [
        *lines_of(plain().lines(big.label, small, WIDTH), LEFT, plain(), small, small_leading, SOFT),
        *lines_of(strong().lines(big.figure, size, WIDTH), LEFT, strong(), size, size * _LEADING, INK),
        *lines_of(plain().lines(big.note, small, WIDTH), LEFT, plain(), small, small_leading, SOFT),
    ]
    return kept(strips)
