"""Everything that is still open, in the order it is walked."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.edits import CloseQuestion
from specbuilder.model.kinds import Level
from specbuilder.session.walk import OpenThing, open_things
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, Item, OnAnswer, OnField, OnFinding, OnGroup, OnQuestion
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import Bit, Line, left, line, wrapped
from specbuilder.wording.brief import nothing_open, open_thing
from specbuilder.wording.forms import form_title
from specbuilder.wording.open_things import asked_of, asked_words, question_text, then_the_papers, who_and_when
from specbuilder.wording.states import step_name

from .accept import AcceptPage
from .page import Host, Page
from .who import WhoPage
from .why import WhyPage

STEP_CELLS = 9


def item_of(thing: OpenThing) -> Item:
    """The item an open thing is."""
    if thing.key is not None:
        return OnAnswer(thing.key)
    if thing.group is not None:
        return OnGroup(thing.group)
    if thing.rule is not None:
        return OnFinding(thing.rule)
    if thing.question is not None:
        return OnQuestion(thing.question)
    return OnField(Field.VIN_TAIL)


def question_of(host: Host, item: Item) -> str | None:
    """The words of the open question about an item; None for what is broken and cannot be asked."""
    match item:
        case OnQuestion(text):
            return text
        case OnGroup(group):
            return question_text(host.catalogue, group=group)
        case OnAnswer(key):
            return question_text(host.catalogue, key=key)
        case OnField():
            return question_text(host.catalogue)
        case _:
            return None


def open_points(host: Host) -> int:
    """How much is undecided, not known or asked; a question about a thing that is open itself is no second one."""
    asked = {question_of(host, item_of(thing)) for thing in open_things(host.catalogue, host.report)}
    return len(asked - {None})


def thing_lines(host: Host, cells: int, *, who: bool = True) -> list[Line]:
    """One line for each open thing; a question about a thing that is listed itself stands on its line."""
    catalogue, report, result = host.catalogue, host.report, list[Line]()
    things = open_things(catalogue, report)
    told = {question_of(host, item_of(t)) for t in things if t.question is None}
    for thing in things:
        if thing.question is not None and thing.question in told:
            continue
        item = item_of(thing)
        words = open_thing(
            catalogue,
            report,
            step=thing.step,
            group=thing.group,
            key=thing.key,
            rule=thing.rule,
            question=thing.question,
        )
        mark, ink = (host.marks.broken, Ink.CARE) if thing.rule else (host.marks.doubt, Ink.PLAIN)
        text = question_of(host, item)
        asked = who_and_when(asked_of(report, text)) if who and text is not None else ""
        if thing.question is not None:
            words = asked_words(report, thing.question)
        room = cells - STEP_CELLS - 5 - len(asked)
        result.append(
            line(
                f" {mark} ",
                left(step_name(thing.step), STEP_CELLS),
                Bit(left(words, room), ink),
                f" {asked}",
                item=item,
            )
        )
    return result


class OpenPage(Page):
    """The list, with who finds it out."""

    where: ClassVar[Where] = Where.OPEN
    tall: ClassVar[bool] = True

    def head(self, cells: int) -> Sequence[Line]:
        """Its name."""
        return [line(" ", Bit(form_title("open"), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """One line a thing."""
        told = (nothing_open(), then_the_papers())
        empty = (line(f"   {part}") for text in told for part in wrapped(text, cells - 4))
        return thing_lines(self.host, cells) or list(empty)

    def hint_of(self, act: Act) -> str | None:
        """Where nothing is open nobody finds it out, and there is nowhere to go."""
        return "" if self.at is None and act in (Act.ENTER, Act.NEXT, Act.WHY, Act.ACCEPT) else None

    def takes_text(self) -> bool:
        """Nowhere: what is open is answered on its own page, and letters are commands on every line."""
        return False

    def enter(self) -> None:
        """Why, for what is broken; who and when, for the rest."""
        match self.at:
            case OnFinding(rule):
                self._why(rule)
            case None:
                pass
            case _ if (text := question_of(self.host, self.at)) is not None:
                self.move(1)
                self.host.show(WhoPage(self.host, text))
            case _:
                pass

    def act(self, act: Act) -> bool:
        """Go there, why, accept, close."""
        match act:
            case Act.NEXT:
                self._go()
            case Act.WHY:
                if isinstance(self.at, OnFinding):
                    self._why(self.at.rule)
            case Act.ACCEPT:
                self._accept()
            case Act.LESS:
                if isinstance(self.at, OnQuestion):
                    self.host.edit(CloseQuestion(text=self.at.text))
            case _:
                return False
        return True

    def _go(self) -> None:
        thing = next((t for t in open_things(self.host.catalogue, self.host.report) if item_of(t) == self.at), None)
        if thing is not None:
            self.host.walk_to(thing.step, self.at)

    def _why(self, rule: str) -> None:
        found = next((f for f in self.host.report.findings if f.rule == rule), None)
        if found is not None:
            self.host.show(WhyPage(self.host, found))

    def _accept(self) -> None:
        found = next((f for f in self.host.report.findings if OnFinding(f.rule) == self.at), None)
        if found is not None and found.level is not Level.STOP:
            self.host.show(AcceptPage(self.host, found.rule))
