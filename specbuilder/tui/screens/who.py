"""Who finds an open thing out, by when, and what it stops."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import ClassVar

from specbuilder.model.edits import PutQuestion
from specbuilder.model.spec import OpenQuestion
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, OnField, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording.forms import (
    date_hint,
    date_needed,
    field_value,
    field_words,
    form_title,
    owners,
    owners_words,
    question_take_hint,
)
from specbuilder.wording.hints import type_it
from specbuilder.wording.typed import date, days_after

from .fields import field_line
from .numbered import numbered_bits
from .page import Host, Page

TAKE = OnWord("put")
DAYS = 7
"""The date that is proposed: so many days from today."""


class WhoPage(Page):
    """A form of three fields about one question."""

    where: ClassVar[Where] = Where.WHO

    def __init__(self, host: Host, text: str) -> None:
        super().__init__(host)
        known = next((q for q in host.report.spec.questions if q.text == text), None)
        self.question = known or OpenQuestion(text=text, due=days_after(host.now(), DAYS))

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """What is asked."""
        return [line(" ", Bit(form_title("who"), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """The question, its three fields, and the line that takes it."""
        question = self.question
        result = [*(line(f"   {part}") for part in wrapped(question.text, cells - 5)), EMPTY]
        for field, value in self._values().items():
            item = OnField(field, question.text)
            typing = self.entry if self.at == item else None
            row = field_line(item, " ", field_value(field, value), typing, self.host.drafts.get(item, ""), cells)
            if field is Field.WHO and not value and typing is None:
                row = line(*row.bits, *numbered_bits(f"   {owners_words()}"), item=item)
            result.append(row)
        return [*result, line(f"   {question_take_hint()}", item=TAKE)]

    def foot(self, cells: int) -> Sequence[Line]:
        """How to fill the field in."""
        if not isinstance(self.at, OnField):
            return []
        due = self.at.field is Field.DUE
        return [line(f" {date_hint(self._example()) if due else field_words(self.at.field).hint}")]

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Write it down, or begin with the text that stands in the field."""
        if isinstance(self.at, OnField):
            self.open_text(self._values()[self.at.field])
        else:
            self._put()

    def digit(self, number: int) -> None:
        """A numbered person, or the beginning of a date."""
        if isinstance(self.at, OnField) and self.at.field is not Field.WHO:
            self.start_typing(str(number))
        elif 0 < number <= len(owners()):
            self._set(Field.WHO, owners()[number - 1])
            self.at = TAKE

    def take_text(self, text: str) -> bool:
        """A field."""
        if not isinstance(self.at, OnField):
            return False
        if self.at.field is Field.DUE and text and date(text, self.host.now()) is None:
            self.host.say(date_needed(self._example()))
            return False
        self._set(self.at.field, (date(text, self.host.now()) or "") if self.at.field is Field.DUE else text)
        if self.at.field is Field.WHO and text:
            self.at = TAKE
        else:
            self.move(1)
        return True

    def hint_of(self, act: Act) -> str | None:
        """Enter begins a text in a field."""
        return type_it() if act is Act.ENTER and isinstance(self.at, OnField) else None

    def _example(self) -> str:
        return days_after(self.host.now(), DAYS)

    def _values(self) -> dict[Field, str]:
        question = self.question
        return {Field.WHO: question.owner, Field.DUE: question.due, Field.STOPS: question.stops}

    def _set(self, field: Field, value: str) -> None:
        match field:
            case Field.WHO:
                self.question = replace(self.question, owner=value)
            case Field.DUE:
                self.question = replace(self.question, due=value)
            case _:
                self.question = replace(self.question, stops=value)

    def _put(self) -> None:
        self.host.close()
        self.host.edit(PutQuestion(question=self.question))
