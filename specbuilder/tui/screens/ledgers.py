"""The ledgers as bars, and one ledger with its entries, formula and source."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.findings import Finding
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Report
from specbuilder.session.beside import figures_beside
from specbuilder.session.power_notes import power_notes
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnGroup, OnOption, OnReading, OnText
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, width, wrapped
from specbuilder.tui.marks import Marks
from specbuilder.wording.findings import silent_words
from specbuilder.wording.forms import form_title
from specbuilder.wording.ledger_detail import reading_detail
from specbuilder.wording.power import power_lines
from specbuilder.wording.readings import ESTIMATED, Bar, bar_legends, is_noted, reading_bar, worst_first
from specbuilder.wording.why import why_needs_nothing

from .circuits import CIRCUITS, CircuitsPage, circuits_lines
from .page import Host, Page
from .why import WhyPage

NAME_CELLS = 12
BAR_CELLS = ((56, 10), (44, 6), (0, 4))
"""Length of a bar from that width on."""


def bar_bits(bar: Bar, cells: int, marks: Marks) -> tuple[Bit, ...]:
    """A bar of so many cells: used, what may come, free, and whether it goes past the bound."""
    if bar.used is None or bar.may is None:
        return (Bit(marks.novalue * cells),)
    full = cells - 1
    past = bar.may > 1 and bar.verdict is not Verdict.HOLDS
    used = min(round(bar.used * full), full) if bar.used < 1 else full
    may = max(min(round(bar.may * full), full) - used, 0)
    if bar.may > bar.used and may == 0 and used < full:
        may = 1
    if bar.used >= 1 and not past:
        return (Bit(marks.chosen * cells, Ink.MINE),)
    end = marks.past if past else marks.open if bar.may >= 1 else marks.free
    return Bit(marks.chosen * used, Ink.MINE), Bit(marks.open * may + marks.free * (full - used - may) + end)


def bar_line(host: Host, reading: Reading, cells: int) -> Line:
    """Mark, short name, bar and verdict of one ledger or figure."""
    bar_cells = next(length for least, length in BAR_CELLS if cells >= least)
    bar = reading_bar(host.catalogue, reading)
    ink = {Verdict.BROKEN: Ink.CARE, Verdict.CANNOT_TELL: Ink.DOUBT, Verdict.HOLDS: Ink.PLAIN}[reading.verdict]
    mark = host.marks.of_verdict(reading.verdict)
    if is_noted(host.catalogue, reading):
        ink, mark = Ink.PLAIN, host.marks.mind
    estimate = ESTIMATED if bar.estimate else " "
    start = Bit(f" {mark}{estimate} {left(bar.short, NAME_CELLS)} ")
    room = max(cells - NAME_CELLS - bar_cells - 6, 0)
    ways = [f"{words} {bar.level}".rstrip() for words in (bar.words, *bar.shorter)]
    words = next((way for way in ways if width(way) <= room), ways[-1])
    return line(
        start, *bar_bits(bar, bar_cells, host.marks), " ", Bit(cut(words, room), ink), item=OnReading(reading.id)
    )


def ledgers_head(cells: int) -> Line:
    """The line over the bars, with as much of what their signs mean as there is room for."""
    title = Bit(form_title("ledgers"), Ink.HEAD, Act.LEDGERS)
    room = cells - width(title.text) - 5
    legend = next((told for told in bar_legends() if width(told) <= room), "")
    return line(" ", title, "   ", legend)


def told(host: Host) -> tuple[Reading, ...]:
    """The readings there is something to say about, worst first."""
    readings = tuple(r for r in host.report.readings.values() if r.applies)
    return worst_first(host.catalogue, readings)


class LedgersPage(Page):
    """All of them, worst first."""

    where: ClassVar[Where] = Where.LEDGERS
    tall: ClassVar[bool] = True

    def head(self, cells: int) -> Sequence[Line]:
        """Its name, and what the sign beside a figure means."""
        return [ledgers_head(cells)]

    def lines(self, cells: int) -> Sequence[Line]:
        """One bar a ledger; then the circuits, and what is not summed yet."""
        bars = [bar_line(self.host, reading, cells) for reading in told(self.host)]
        bars += circuits_lines(self.host, cells)
        silent = silent_words(self.host.catalogue, self.host.report)
        rest = [line(f"   {text}", item=OnText(i)) for i, text in enumerate(wrapped(silent, cells - 4))]
        return [*bars, EMPTY, *rest] if rest else bars

    def enter(self) -> None:
        """Open it."""
        if isinstance(self.at, OnReading):
            self.host.show(LedgerPage(self.host, self.at.ledger))
        elif self.at == CIRCUITS:
            self.host.show(CircuitsPage(self.host))

    def act(self, act: Act) -> bool:
        """Why it is broken."""
        if act is Act.WHY and isinstance(self.at, OnReading):
            show_why(self.host, self.at.ledger)
            return True
        return act is Act.WHY

    def hint_of(self, act: Act) -> str | None:
        """Only a ledger and the circuits can be opened; why is asked of what does not hold."""
        if act is Act.ENTER:
            return None if isinstance(self.at, OnReading) or self.at == CIRCUITS else ""
        asked = asked_about(self.host, self.at.ledger) if isinstance(self.at, OnReading) else None
        return None if act is not Act.WHY or asked is not None else ""


class LedgerPage(Page):
    """One of them, entry by entry."""

    where: ClassVar[Where] = Where.LEDGER
    tall: ClassVar[bool] = True

    def __init__(self, host: Host, ledger: LedgerId) -> None:
        super().__init__(host)
        self.ledger = ledger
        self._beside: tuple[Report, tuple[Reading, ...], tuple[str, ...]] | None = None

    def head(self, cells: int) -> Sequence[Line]:
        """Its bar."""
        reading = self.host.report.readings.get(self.ledger)
        return [bar_line(self.host, reading, cells)] if reading is not None else [EMPTY]

    def lines(self, cells: int) -> Sequence[Line]:
        """Every entry, the sum, the bound, the formula, the source."""
        reading = self.host.report.readings.get(self.ledger)
        if reading is None:
            return ()
        result: list[Line] = []
        figures, notes = self._beside_it()
        for index, told_line in enumerate(reading_detail(self.host.catalogue, reading, figures, notes)):
            text, entry = told_line.text, told_line.entry
            item: Item = OnText(index)
            if entry is not None and entry.option is not None:
                item = OnOption(entry.option)
            elif entry is not None and entry.group is not None:
                item = OnGroup(entry.group)
            mark = self.host.marks.doubt if isinstance(item, OnGroup) else " "
            parts = wrapped(text, cells - 6)
            result += [
                line(f" {mark if i == 0 else ' '} {'  ' if i else ''}{part}", item=item if i == 0 else None)
                for i, part in enumerate(parts)
            ]
        return result

    def _beside_it(self) -> tuple[tuple[Reading, ...], tuple[str, ...]]:
        """The figures and the lines told beside it, worked out once for each report."""
        report, catalogue = self.host.report, self.host.catalogue
        if self._beside is None or self._beside[0] is not report:
            notes = power_lines(catalogue, power_notes(catalogue, report.spec, self.ledger))
            self._beside = report, figures_beside(catalogue, report.spec, self.ledger), notes
        return self._beside[1:]

    def enter(self) -> None:
        """Go to the choice or the group an entry comes from; a line to read leads nowhere."""
        match self.at:
            case OnOption(option):
                step = self.host.catalogue.groups[self.host.catalogue.options[option].group].step
                self.host.walk_to(step, self.at)
            case OnGroup(group):
                self.host.walk_to(self.host.catalogue.groups[group].step, self.at)
            case _:
                pass

    def hint_of(self, act: Act) -> str | None:
        """Enter leads somewhere from a choice and a group; why is asked of what does not hold."""
        if act is Act.ENTER:
            return None if isinstance(self.at, OnOption | OnGroup) else ""
        return None if act is not Act.WHY or asked_about(self.host, self.ledger) is not None else ""

    def act(self, act: Act) -> bool:
        """Why it is broken."""
        if act is Act.WHY:
            show_why(self.host, self.ledger)
            return True
        return False


def asked_about(host: Host, ledger: LedgerId) -> Finding | None:
    """The finding about a ledger that needs explaining most; None where all of them hold."""
    about = [f for f in host.report.findings if f.reading == ledger and f.verdict is not Verdict.HOLDS]
    levels = tuple(Level)
    return min(about, key=lambda f: (f.verdict is not Verdict.BROKEN, levels.index(f.level)), default=None)


def show_why(host: Host, ledger: LedgerId) -> None:
    """Why a ledger does not hold; where it does, the last line says so."""
    if (found := asked_about(host, ledger)) is not None:
        host.show(WhyPage(host, found))
    elif (reading := host.report.readings.get(ledger)) is not None:
        host.say(why_needs_nothing(host.catalogue, reading))
