"""What stands beside the walk where there is room: ledgers, what is broken, what is open."""

from __future__ import annotations

from specbuilder.model.kinds import Level
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnFinding
from specbuilder.tui.keys import Act
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording.findings import finding_line, findings_none
from specbuilder.wording.margin import broken_head, open_count_head

from .ledgers import bar_line, told
from .open_things import thing_lines
from .page import Host

LINES_EACH = 3


def ledger_lines(host: Host, cells: int, most: int) -> list[Line]:
    """The worst ledgers as bars."""
    return [bar_line(host, reading, cells) for reading in told(host)[:most]]


def broken_lines(host: Host, cells: int) -> list[Line]:
    """What is broken, in the customer's words."""
    findings = host.report.broken(Level.STOP, Level.SIGN)
    rows = [line(" ", Bit(broken_head(len(findings)), Ink.HEAD))]
    if not findings:
        rows.append(line(f"   {findings_none()}"))
    for finding in findings:
        first, *rest = wrapped(finding_line(host.catalogue, host.report, finding), cells - 4, LINES_EACH)
        mark = host.marks.of_verdict(finding.verdict)
        rows.append(line(f" {mark} ", Bit(first, Ink.CARE), item=OnFinding(finding.rule)))
        rows += [line("   ", Bit(text, Ink.CARE), item=OnFinding(finding.rule)) for text in rest]
    return rows


def open_lines(host: Host, cells: int) -> list[Line]:
    """What is undecided and not known."""
    rows = [row for row in thing_lines(host, cells, who=False) if not isinstance(row.item, OnFinding)]
    return [line(" ", Bit(open_count_head(len(rows)), Ink.HEAD, Act.OPEN_THINGS)), *rows]


def beside(host: Host, cells: int, rows: int, third: bool) -> list[Line]:
    """The right pane while nothing is opened in it."""
    bars = max(rows // 2 if not third else rows * 2 // 3, 4)
    result = [*ledger_lines(host, cells, bars), EMPTY, *broken_lines(host, cells)]
    return result if third else [*result, EMPTY, *open_lines(host, cells)]


def below(host: Host, cells: int) -> list[Line]:
    """Under the walk in a small window: six ledgers in three lines of two."""
    half = (cells - 1) // 2
    bars = [bar_line(host, reading, half) for reading in told(host)[:6]]
    return [_side_by_side(one, other, half) for one, other in zip(bars[::2], [*bars[1::2], EMPTY], strict=False)]


def worst(host: Host, cells: int) -> list[Line]:
    """Under the walk in the lowest windows: the one ledger that must not be missed."""
    return ledger_lines(host, cells, 1)


def _side_by_side(one: Line, other: Line, cells: int) -> Line:
    gap = Bit(" " * max(cells - len(one.text), 0))
    first = [Bit(bit.text, bit.ink, one.item) for bit in one.bits]
    second = [Bit(bit.text, bit.ink, other.item) for bit in other.bits]
    return Line((*first, gap, *second))
