"""A short form: a few fields with what is usually meant in them, and the line that takes all of it."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import ClassVar

from specbuilder.storage.text_limits import NAME_LONGEST, NOTE_LONGEST, text_fault
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import DATES, NUMBERS, Field, OnDigit, OnField, OnWord
from specbuilder.tui.keys import Act
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.forms import date_hint, date_needed, field_value, field_words, still_needed
from specbuilder.wording.hints import next_line, type_it
from specbuilder.wording.plain import raised
from specbuilder.wording.typed import above_nought, date, days_after

from .fields import field_line
from .page import Host, Page

TAKE = OnWord("take")
_WORDS = frozenset({Field.REMARKS, Field.PROMISE, Field.CALL_ABOUT, Field.READING, Field.REASON})
"""Fields that hold a sentence; the others hold a name, a date or a sum."""
_DAYS = 7
"""The example of a date: so many days from today."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FormField:
    """One field."""

    field: Field
    value: str = ""
    about: str = ""
    """What the form is about, so that a text that was not taken comes back in this form and in no other."""
    own_label: str = ""
    """Set where the field's usual label does not say enough."""
    needed: bool = True
    numbered: tuple[str, ...] = ()
    """Answers of which a digit gives one; nothing else may stand there."""

    @property
    def item(self) -> OnField:
        """Its line."""
        return OnField(self.field, f"{self.about} {self.own_label}".strip())

    @property
    def label(self) -> str:
        """What stands before it."""
        return self.own_label or field_words(self.field).label


class FormPage(Page):
    """Fields, the line that takes them, and what stands below."""

    tall: ClassVar[bool] = True

    def __init__(self, host: Host, fields: Sequence[FormField]) -> None:
        super().__init__(host)
        self.fields = list(fields)
        gap = self._first_gap()
        self.at = gap.item if gap is not None else TAKE

    @abstractmethod
    def title(self) -> str:
        """What is filled in."""

    @abstractmethod
    def take_line(self) -> str:
        """What Enter does at the end of the fields."""

    @abstractmethod
    def put(self) -> None:
        """Take what stands there; nothing that is needed is missing."""

    def sentences(self) -> Sequence[str]:
        """What stands over the fields."""
        return ()

    def below(self, cells: int) -> Sequence[Line]:
        """What stands under the line that takes."""
        return ()

    def value(self, field: Field) -> str:
        """What stands in a field."""
        return next((one.value for one in self.fields if one.field is field), "")

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """Its title."""
        return [line(" ", Bit(cut(self.title(), cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Sentences, fields, the line that takes, and what stands below."""
        told = [line(f" {part}") for text in self.sentences() for part in wrapped(text, cells - 2)]
        rows = [self._row(one, cells) for one in self.fields]
        take = line("   ", Bit(cut(self.take_line(), cells - 4), Ink.HEAD), item=TAKE)
        return [*told, *([EMPTY] if told else []), *rows, take, *self.below(cells)]

    def foot(self, cells: int) -> Sequence[Line]:
        """How to fill the field in."""
        if not isinstance(self.at, OnField):
            return []
        hint = date_hint(self._example()) if self.at.field in DATES else field_words(self.at.field).hint
        return [line(f" {part}") for part in wrapped(hint, cells - 2)]

    def _row(self, one: FormField, cells: int) -> Line:
        typing = self.entry if self.at == one.item else None
        mark = self.host.marks.doubt if one.needed and not one.value else " "
        row = field_line(
            one.item,
            mark,
            field_value(one.field, one.value),
            typing,
            self.host.drafts.get(one.item, ""),
            cells,
            one.label,
        )
        answers = (Bit(f"{number} {each}", hot=OnDigit(number)) for number, each in enumerate(one.numbered, 1))
        return Line((*row.bits, *(bit for each in answers for bit in (Bit("  "), each))), row.item)

    def _example(self) -> str:
        return days_after(self.host.now(), _DAYS)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Begin with the text that stands in the field, or take all of it."""
        one = self._at_field()
        if one is not None and one.numbered:
            self.move(1)
        elif one is not None:
            self.open_text(one.value)
        elif self.at == TAKE and (gap := self._first_gap()) is not None:
            self.at = gap.item
            self.host.say(still_needed(gap.label))
        elif self.at == TAKE:
            self.put()

    def digit(self, number: int) -> None:
        """A numbered answer, or the beginning of a text."""
        one = self._at_field()
        if one is None:
            return
        if not one.numbered:
            self.start_typing(str(number))
        elif 0 < number <= len(one.numbered):
            self._set(one, one.numbered[number - 1])

    def digit_hint(self) -> str:
        """What a digit does on this line."""
        one = self._at_field()
        return f"1-{len(one.numbered)} answer" if one is not None and one.numbered else ""

    def takes_text(self) -> bool:
        """Letters begin a text, but not where only a digit answers."""
        one = self._at_field()
        return super().takes_text() and not (one is not None and one.numbered)

    def hint_of(self, act: Act) -> str | None:
        """Enter begins a text in a field."""
        one = self._at_field()
        if act is not Act.ENTER or one is None:
            return None
        return next_line() if one.numbered else type_it()

    def take_text(self, text: str) -> bool:
        """A field; False and a word on the last line when it does not fit."""
        one = self._at_field()
        if one is None:
            return False
        if (fault := self._fault(one, text)) is not None:
            self.host.say(fault)
            return False
        self._set(one, text)
        return True

    def _fault(self, one: FormField, text: str) -> str | None:
        if not text:
            return None if not one.needed else still_needed(one.label)
        if one.field in DATES:
            return date_needed(self._example()) if date(text) is None else None
        if one.field in NUMBERS:
            return field_words(one.field).needs if above_nought(text) is None else None
        fault = text_fault(text, NOTE_LONGEST if one.field in _WORDS else NAME_LONGEST)
        return raised(fault) if fault is not None else None

    def _set(self, one: FormField, value: str) -> None:
        here = self.fields.index(one)
        self.fields[here] = replace(one, value=value)
        behind = next((each.item for each in self.fields[here + 1 :] if not each.value), None)
        gap = self._first_gap()
        self.at = behind or (gap.item if gap is not None else TAKE)

    def _at_field(self) -> FormField | None:
        return next((one for one in self.fields if one.item == self.at), None)

    def _first_gap(self) -> FormField | None:
        return next((one for one in self.fields if one.needed and not one.value), None)
