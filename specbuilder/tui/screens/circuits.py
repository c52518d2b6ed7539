"""The circuit schedule: a row for every cable run, what protects the 230 V side, and one run by itself."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.circuits import CircuitLine
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnCircuit, OnOption, OnText, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, fitted, left, line, width, wrapped
from specbuilder.wording.circuit_rows import (
    LONG_HEAD,
    SHORT_HEAD,
    CircuitCells,
    backed_up_words,
    circuit_told,
    circuits_count,
    circuits_title,
    estimate_sign,
    legend,
    long_cells,
    minded,
    no_circuits,
    point_mark,
    short_cells,
    side_head,
)
from specbuilder.wording.circuits import CAUTION, circuit_name, sides
from specbuilder.wording.hints import go_back
from specbuilder.wording.mains import CAUTION as MAINS_CAUTION
from specbuilder.wording.mains import TITLE, mains_line
from specbuilder.wording.names import option_name

from .page import Host, Page
from .unfolding import UnfoldingPage

CIRCUITS = OnWord("circuits")
"""The line that counts them and leads here."""
SIGNS = OnWord("signs")
"""The line over the rows, where the cursor begins: what the signs mean."""
SIGN_CELLS = 4
LEAST_NAME, MOST_NAME = 12, 32
GAP = 1


def circuits_lines(host: Host, cells: int) -> list[Line]:
    """The line that counts the circuits, for the pages that lead here; none where no cable is run."""
    if not host.report.circuits:
        return []
    return [EMPTY, line("   ", Bit(cut(circuits_count(host.report), cells - 4)), item=CIRCUITS)]


def sign_of(host: Host, one: CircuitLine) -> str:
    """What is to be done about a circuit, as a sign."""
    return host.marks.broken if one.serious else host.marks.mind if minded(one) else " "


class CircuitsPage(UnfoldingPage):
    """All of them; the one under the cursor says more below its row."""

    where: ClassVar[Where] = Where.CIRCUITS
    tall: ClassVar[bool] = True
    heads: ClassVar[int] = 2

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self._table: tuple[tuple[CircuitLine, ...], int, list[str]] | None = None

    def head(self, cells: int) -> Sequence[Line]:
        """How many there are, and the names of the columns."""
        title = cut(circuits_title(self.host.report), cells - 2)
        return [line(" ", Bit(title, Ink.HEAD)), line(" " * SIGN_CELLS, Bit(self._rows(cells)[0], Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Both sides with the row under the cursor unfolded, the protection, the caution."""
        told = self.host.report.circuits
        texts = dict(zip((one.label for one in told), self._rows(cells)[1:], strict=True))
        marks = self.host.marks
        result = [line(" ", cut(legend(marks.broken, marks.mind), cells - 2), item=SIGNS)]
        self.below = 0
        if not told:
            result += [EMPTY, *_read(no_circuits(), cells, first=70)]
        for side in sides(told):
            if side:
                result += [EMPTY, line(" ", Bit(side_head(side), Ink.HEAD))]
            for one in side:
                result += [self._row(one, texts[one.label]), *self._under(one, cells)]
        shared = backed_up_words(told)
        result += [EMPTY, *_read(shared, cells, first=80, sign=self.host.marks.mind)] if shared else []
        return [*result, *self._protection(cells), EMPTY, *_read(CAUTION, cells, first=100)]

    def enter(self) -> None:
        """Show it by itself."""
        if isinstance(self.at, OnCircuit):
            self.host.show(CircuitPage(self.host, self.at.label))

    def hint_of(self, act: Act) -> str | None:
        """Only a run can be opened."""
        return "" if act is Act.ENTER and not isinstance(self.at, OnCircuit) else None

    # -- lines -----------------------------------------------------------------------------------------------------

    def _rows(self, cells: int) -> list[str]:
        """Head and rows: in full where there is room for them. A key that moves the cursor does not lay them anew."""
        told = self.host.report.circuits
        if self._table is None or self._table[0] is not told or self._table[1] != cells:
            rows = [LONG_HEAD, *(long_cells(one) for one in told)]
            if sum(_widest(rows)) + GAP * len(LONG_HEAD.all) + SIGN_CELLS > cells:
                rows = [SHORT_HEAD, *(short_cells(one) for one in told)]
            widths = _widths(rows, cells)
            self._table = told, cells, [_cells(row, widths) for row in rows]
        return self._table[2]

    def _row(self, one: CircuitLine, text: str) -> Line:
        ink = Ink.CARE if one.serious else Ink.PLAIN
        return line(f" {sign_of(self.host, one)}{estimate_sign(one)} ", Bit(text, ink), item=OnCircuit(one.label))

    def _under(self, one: CircuitLine, cells: int) -> list[Line]:
        """What the row under the cursor says, as far as the window is high."""
        if self.at != OnCircuit(one.label):
            return []
        texts = [part for text in circuit_told(one) for part in wrapped(text, cells - 7)]
        found = fitted([line(f"      {text}") for text in texts], max(self.host.rows_high - 1, 1), cells)
        self.below = len(found)
        return found

    def _protection(self, cells: int) -> list[Line]:
        marks, points = self.host.marks, self.host.report.mains
        if not points:
            return []
        rows = [EMPTY, line(" ", Bit(TITLE.upper(), Ink.HEAD))]
        for index, point in enumerate(points):
            mark = point_mark(point, marks.holds, marks.mind, marks.broken)
            first, *rest = wrapped(mains_line(self.host.catalogue, point), cells - 5)
            ink = Ink.CARE if mark == marks.broken else Ink.PLAIN
            rows.append(line(f" {mark}  ", Bit(first, ink), item=OnText(index)))
            rows += [line("    ", Bit(text, ink)) for text in rest]
        return [*rows, *_read(MAINS_CAUTION, cells, first=90)]


class CircuitPage(Page):
    """One run: all that is said of it, and the part it belongs to."""

    where: ClassVar[Where] = Where.CIRCUIT
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, label: str) -> None:
        super().__init__(host)
        self.label = label

    @property
    def _line(self) -> CircuitLine | None:
        return next((one for one in self.host.report.circuits if one.label == self.label), None)

    def head(self, cells: int) -> Sequence[Line]:
        """Its name and mark."""
        one = self._line
        return [line(" ", Bit(cut(circuit_name(one), cells - 2), Ink.HEAD))] if one is not None else [EMPTY]

    def lines(self, cells: int) -> Sequence[Line]:
        """Each sentence, each line of it to be stood on; then the part."""
        one = self._line
        if one is None:
            return ()
        texts = [part for text in circuit_told(one) for part in wrapped(text, cells - 5)]
        sign = sign_of(self.host, one)
        rows = [line(f" {' ' if i else sign}  {text}", item=OnText(i)) for i, text in enumerate(texts)]
        name = cut(option_name(self.host.catalogue, one.option), cells - 5)
        return [*rows, EMPTY, line("    ", Bit(name), item=OnOption(one.option))]

    def enter(self) -> None:
        """Go to the part, else back."""
        if isinstance(self.at, OnOption):
            step = self.host.catalogue.groups[self.host.catalogue.options[self.at.option].group].step
            self.host.walk_to(step, self.at)
        else:
            self.host.close()

    def hint_of(self, act: Act) -> str | None:
        """Enter leads somewhere from the last line only."""
        return None if act is not Act.ENTER or isinstance(self.at, OnOption) else go_back()


def _read(text: str, cells: int, first: int, sign: str = " ") -> list[Line]:
    """A sentence to read, behind its sign; the cursor may stand on its first line."""
    return [
        line(f" {' ' if i else sign}  {part}", item=None if i else OnText(first))
        for i, part in enumerate(wrapped(text, cells - 5))
    ]


def _widest(rows: Sequence[CircuitCells]) -> list[int]:
    columns = zip(*(row.all for row in rows), strict=True)
    return [max(width(cell) for cell in column) for column in columns]


def _widths(rows: Sequence[CircuitCells], cells: int) -> list[int]:
    """Widths of the columns; the mark is left out where the circuit would get too little, and stands below its row."""
    circuit, *rest, mark = _widest(rows)
    room = cells - SIGN_CELLS - 1 - sum(rest) - GAP * (len(rest) + 1)
    if room - mark - GAP >= min(circuit, MOST_NAME):
        return [min(circuit, room - mark - GAP), *rest, mark]
    if room - mark - GAP >= LEAST_NAME + 6:
        return [room - mark - GAP, *rest, mark]
    return [max(min(circuit, room), 4), *rest, 0]


def _cells(row: CircuitCells, widths: Sequence[int]) -> str:
    return (" " * GAP).join(left(cell, cells) for cell, cells in zip(row.all, widths, strict=True) if cells).rstrip()
