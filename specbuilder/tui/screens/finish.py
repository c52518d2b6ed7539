"""Finish it for me: an answer to every open question by one aim, shown before it is taken."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from specbuilder.model.edits import Edit
from specbuilder.model.report import Report
from specbuilder.model.ways import Aim, Proposal
from specbuilder.session.evaluate import evaluate
from specbuilder.tui.errands import Stop
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import OnDigit
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, packed
from specbuilder.wording.proposal import (
    nothing_open,
    proposal_hint,
    proposal_lines,
    proposal_remarks,
    proposal_taken,
    proposal_title,
    proposal_total,
)
from specbuilder.wording.what_if import aims_line, choose_aim, finish_title

from .page import Host
from .proposed import ProposedPage, sentences


@dataclass(frozen=True, slots=True, kw_only=True)
class Finished:
    """What is proposed, with everything that follows from it; None: nothing is open."""

    found: tuple[Proposal, Report] | None


class FinishPage(ProposedPage[Finished]):
    """The proposal for one aim; a digit chooses another."""

    where: ClassVar[Where] = Where.FINISH
    tall: ClassVar[bool] = True

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.aim = Aim.PRICE

    def subject(self) -> Hashable:
        """By which aim."""
        return self.aim

    def search(self) -> Callable[[Stop], Iterator[Finished]]:
        """Answer what is open."""
        catalogue, spec, aim, finish = self.host.catalogue, self.host.editable.spec, self.aim, self.host.searches.finish

        def work(stop: Stop) -> Iterator[Finished]:
            found = finish(catalogue, spec, aim, stop)
            yield Finished(found=(found, evaluate(catalogue, found.spec)) if found is not None else None)

        return work

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """What is proposed, and by which aim."""
        answer = self.question.answer
        proposal = answer.found[0] if answer is not None and answer.found is not None else None
        title = proposal_title(proposal) if proposal is not None else finish_title(self.aim)
        return [line(" ", Bit(cut(title, cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The aims by their digits, then the proposal."""
        pieces = [
            Bit(f"{number} {word}", Ink.HERE if aim is self.aim else Ink.PLAIN, OnDigit(number))
            for number, aim, word in aims_line()
        ]
        aims = [Line((Bit(" "), *row.bits)) for row in packed(pieces, cells - 2)]
        return [*aims, *super().lines(cells)]

    def told(self, answer: Finished, cells: int) -> Sequence[Line]:
        """Totals first, then what is proven, then choice by choice."""
        if answer.found is None:
            return sentences([nothing_open()], cells)
        proposal, after = answer.found
        catalogue = self.host.catalogue
        rows = sentences([proposal_total(catalogue, after, proposal)], cells, Ink.HEAD, indent=" ")
        proven, *broken = proposal_remarks(catalogue, proposal)
        rows += sentences([proven], cells, indent=" ")
        rows += sentences(broken, cells, Ink.CARE, indent=f" {self.host.marks.broken} ")
        rows += [
            line(f" {self.host.marks.open} {text}") for text in proposal_lines(catalogue, after, proposal, cells - 4)
        ]
        return [*rows, EMPTY, *sentences([proposal_hint()], cells, indent=" ")]

    # -- acts ------------------------------------------------------------------------------------------------------

    def digit(self, number: int) -> None:
        """Another aim."""
        self.aim = next((aim for at, aim, _ in aims_line() if at == number), self.aim)

    def digit_hint(self) -> str:
        """The digits choose the aim."""
        return choose_aim()

    def hint_of(self, act: Act) -> str | None:
        """Enter only where there is something to take."""
        answer = self.question.answer
        return "" if act is Act.ENTER and (answer is None or answer.found is None) else None

    def proposal(self, answer: Finished) -> tuple[tuple[Edit, ...], str]:
        """All that is proposed."""
        if answer.found is None:
            return (), ""
        return answer.found[0].edits, proposal_taken(self.host.catalogue, answer.found[0])
