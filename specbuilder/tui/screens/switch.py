"""Another base van or roof, before it is taken: what stays, what does not fit, what has to be asked again."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.model.edits import Edit, Take
from specbuilder.model.report import Report
from specbuilder.model.ways import Switch
from specbuilder.session.evaluate import evaluate
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, width, wrapped
from specbuilder.wording.switch import (
    ask_again_head,
    ask_again_line,
    came_lines,
    cannot_tell_head,
    cannot_tell_line,
    stays_head,
    stays_lines,
    switch_heads,
    switch_hint,
    switch_not_complete,
    switch_rows,
    switch_taken,
    switch_title,
    unfit_head,
    unfit_words,
    went_lines,
)
from specbuilder.wording.what_if import switch_asked

from .page import Host
from .proposed import ProposedPage, heading, sentences

IN_COLUMNS = 66
"""From this width on now, then and change stand in columns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Switched:
    """What the switch does, and everything that follows from it."""

    switch: Switch
    after: Report


class SwitchPage(ProposedPage[Switched]):
    """The table of one switch."""

    where: ClassVar[Where] = Where.SWITCH

    def __init__(self, host: Host, take: Take) -> None:
        super().__init__(host)
        self.take = take

    def subject(self) -> Hashable:
        """Which option."""
        return self.take

    def search(self) -> Callable[[Stop], Iterator[Switched]]:
        """What stays and what takes the place of what does not fit."""
        catalogue, spec, take, switch = (
            self.host.catalogue,
            self.host.editable.spec,
            self.take,
            self.host.searches.switch,
        )

        def work(stop: Stop) -> Iterator[Switched]:
            found = switch(catalogue, spec, take, stop)
            yield Switched(switch=found, after=evaluate(catalogue, found.spec))

        return work

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """From what to what."""
        answer, catalogue = self.question.answer, self.host.catalogue
        title = switch_title(catalogue, self.host.report, answer.switch) if answer is not None else ""
        if not title or width(title) > cells - 2:
            title = switch_asked(catalogue, self.take.option)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def told(self, answer: Switched, cells: int) -> Sequence[Line]:
        """What does not fit stands right under the sums: it is what has to be read."""
        catalogue, switch = self.host.catalogue, answer.switch
        rows = self._sums(answer, cells)
        rows += sentences(came_lines(catalogue, switch), cells, Ink.CARE)
        rows.append(heading(stays_head(switch)))
        if switch.unfit:
            rows += [heading(unfit_head(switch)), *self._unfit(switch, cells)]
        if switch.undecided:
            rows += [heading(ask_again_head(switch)), *sentences([ask_again_line(catalogue, switch)], cells)]
        if switch.cannot_tell:
            rows += [heading(cannot_tell_head(switch)), *sentences([cannot_tell_line(catalogue, switch)], cells)]
        rows += sentences(went_lines(catalogue, switch), cells)
        closing = [switch_not_complete(switch), switch_hint(catalogue, self.host.report, switch)]
        rows += sentences([text for text in closing if text], cells, indent=" ")
        return [*rows, EMPTY, heading(stays_head(switch)), *sentences(stays_lines(catalogue, switch), cells)]

    def _sums(self, answer: Switched, cells: int) -> list[Line]:
        rows = switch_rows(self.host.catalogue, self.host.report, answer.after, answer.switch)
        if cells >= IN_COLUMNS:
            return [line("   ", row.in_columns(cells - 5)) for row in (switch_heads(), *rows)]
        return sentences([f"{row.name}: {row.now} now, {row.then} then, {row.change}" for row in rows], cells)

    def _unfit(self, switch: Switch, cells: int) -> list[Line]:
        rows = list[Line]()
        for unfit in switch.unfit:
            words = unfit_words(self.host.catalogue, unfit)
            first, *rest = wrapped(f"{words.name}: {words.why}".removesuffix(": "), cells - 5)
            rows.append(line(f" {self.host.marks.broken} ", Bit(first, Ink.CARE)))
            rows += sentences(rest, cells)
            rows += sentences([words.instead], cells, indent="     ")
        return rows

    # -- acts ------------------------------------------------------------------------------------------------------

    def proposal(self, answer: Switched) -> tuple[tuple[Edit, ...], str]:
        """The switch with what takes the place of what does not fit."""
        return answer.switch.edits, switch_taken(self.host.catalogue, answer.switch)

    def act(self, act: Act) -> bool:
        """Take only the van or the roof, and leave open what does not fit."""
        if act is not Act.ANYWAY:
            return False
        take = Take(option=self.take.option, place=self.take.place, at=self.host.now())
        self.host.close()
        self.host.edit(take)
        return True
