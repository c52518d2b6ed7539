"""A page is laid from strips: what goes right across it and is never cut. Where pages end is settled here."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from .pen import Pen

_LOW = 60.0
"""What is higher than this may stand alone at the end of a page."""

Draw: TypeAlias = Callable[[Pen, float], None]
"""Draws a strip, given the height on the page where it begins."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A piece of page that stands whole."""

    height: float
    draw: Draw
    gap: float = 0.0
    """White above; a page does not begin with it."""
    above: Draw | None = None
    """Drawn in that white."""
    bound: bool = False
    """Stands on the page of the strip after it."""
    heads: tuple[Strip, ...] = ()
    """Stand above it where a page begins with it."""
    new_page: bool = False


@dataclass(frozen=True, slots=True)
class Placed:
    """A strip and how far below the head of the page it begins."""

    strip: Strip
    below: float

    def draw(self, pen: Pen, top: float) -> None:
        """Draws it on a page that begins there."""
        if self.strip.above is not None and self.below > 0:
            self.strip.above(pen, top - self.below)
        self.strip.draw(pen, top - self.below)


def in_pages(strips: Sequence[Strip], room: float) -> tuple[tuple[Placed, ...], ...]:
    """The strips on pages of that height. What is bound together stands together, if a page can hold it at all."""
    pages = _Pages(room)
    for run in _runs(strips):
        pages.add(run)
    return tuple(tuple(page) for page in pages.done)


def white(height: float) -> Strip:
    """White that stands as it is, also on top of a page."""
    return Strip(height=height, draw=lambda pen, top: None)


def stacked(strips: Sequence[Strip]) -> Strip:
    """The strips as one."""

    def draw(pen: Pen, top: float) -> None:
        for strip in strips:
            strip.draw(pen, top)
            top -= strip.height

    return replace(strips[0], height=sum(strip.height for strip in strips), draw=draw, bound=strips[-1].bound)


def together(strips: Iterable[Strip]) -> list[Strip]:
    """The strips bound to one another; the last is free, or bound as it was."""
    found = list(strips)
    return [*(replace(strip, bound=True) for strip in found[:-1]), *found[-1:]]


def kept(strips: Iterable[Strip]) -> list[Strip]:
    """Never the first of them alone at the foot of a page, never the last alone at the head of the next.

    What is high by itself may stand alone.
    """
    found = list(strips)
    if len(found) > 1 and found[0].height < _LOW:
        found[0] = replace(found[0], bound=True)
    if len(found) > 1 and found[-1].height < _LOW:
        found[-2] = replace(found[-2], bound=True)
    return found


def below(strips: Sequence[Strip], gap: float) -> list[Strip]:
    """The strips with white above the first."""
    return [replace(strip, gap=gap) if i == 0 else strip for i, strip in enumerate(strips)]


def _runs(strips: Sequence[Strip]) -> Iterator[list[Strip]]:
    """Strips that are bound together."""
    run: list[Strip] = []
    for strip in strips:
        if run and (strip.new_page or not run[-1].bound):
            yield run
            run = []
        run.append(strip)
    if run:
        yield run


class _Pages:
    """Pages as they fill."""

    def __init__(self, room: float) -> None:
        self.done: list[list[Placed]] = [[]]
        self._room = room
        self._used = 0.0

    def add(self, run: list[Strip]) -> None:
        if self._used and (run[0].new_page or not self._fits(run)):
            self._turn()
        for strip in run:
            if self._used and not self._fits([strip]):
                self._turn()
            self._put(strip)

    def _fits(self, run: list[Strip]) -> bool:
        return self._used + sum(strip.gap + strip.height for strip in run) <= self._room

    def _turn(self) -> None:
        self.done.append([])
        self._used = 0.0

    def _put(self, strip: Strip) -> None:
        for head in strip.heads if not self._used else ():
            self._set(head)
        self._set(strip)

    def _set(self, strip: Strip) -> None:
        self._used += strip.gap if self._used else 0.0
        self.done[-1].append(Placed(strip, self._used))
        self._used += strip.height
