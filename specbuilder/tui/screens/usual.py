"""The house usual of a step: the list first, taken by a second key."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import TakeUsual
from specbuilder.model.kinds import Step
from specbuilder.session.walk import usual_takes
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnOption
from specbuilder.tui.keys import Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, wrapped
from specbuilder.wording.forms import form_title
from specbuilder.wording.states import step_name
from specbuilder.wording.usual import usual_lines, usual_total

from .page import Host, Page


class UsualPage(Page):
    """What the house would take in this step, never over a choice."""

    where: ClassVar[Where] = Where.USUAL

    def __init__(self, host: Host, step: Step) -> None:
        super().__init__(host)
        self.step = step
        self.takes = usual_takes(host.catalogue, host.report.spec, step)

    def head(self, cells: int) -> Sequence[Line]:
        """Which step."""
        return [line(" ", Bit(cut(f"{form_title('usual')}: {step_name(self.step)}", cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Each option it would take, and all together."""
        catalogue, report = self.host.catalogue, self.host.report
        options = tuple(t.option for t in self.takes)
        rows = [
            line(f" {self.host.marks.open} " + left(words, cells - 3), item=OnOption(option))
            for option, words in zip(options, usual_lines(catalogue, report, options, cells - 3), strict=True)
        ]
        total = wrapped(usual_total(catalogue, report, options), cells - 4)
        return [*rows, EMPTY, *(line("   ", Bit(text, Ink.HEAD)) for text in total)]

    def enter(self) -> None:
        """Take all of it."""
        if self.takes:
            self.host.edit(TakeUsual(step=self.step, at=self.host.now()))
        self.host.close()
