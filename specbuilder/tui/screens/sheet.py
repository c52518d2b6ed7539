"""The sheet of a part the customer brings: a line for everything it asks, and an open question for every blank."""

from __future__ import annotations

from specbuilder.model.edits import SetOwner
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import SheetLine, blanks_of, is_brought, is_theirs, kinds_of, lines_of
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.office.own_parts import DAYS, brought, read_line, said_edit
from specbuilder.tui.entry import Entry
from specbuilder.tui.items import Field, Item, OnField
from specbuilder.tui.line import Line
from specbuilder.wording.forms import field_words
from specbuilder.wording.own_parts import (
    brought_words,
    kinds_hint,
    kinds_needed,
    line_words,
    only_theirs,
    said_words,
)
from specbuilder.wording.typed import days_after, plain

from .fields import field_line
from .page import Host

_FIELDS: dict[Field, SheetLine] = {
    Field.PART_MASS: SheetLine.MASS,
    Field.PART_WATTS: SheetLine.WATTS,
    Field.PART_CUT_OUT: SheetLine.CUT_OUT,
    Field.PART_ARRIVES: SheetLine.ARRIVES,
    Field.PART_DOOR: SheetLine.DOOR,
    Field.PART_DAY: SheetLine.DAY,
    Field.PART_AMPS: SheetLine.AMPS,
    Field.PART_CAPACITY: SheetLine.CAPACITY,
    Field.PART_KIND: SheetLine.KIND,
}
_FIELD_OF = {line: field for field, line in _FIELDS.items()}


class Sheet:
    """The lines of one part's sheet among the details of its option."""

    def __init__(self, host: Host, option: OptionId) -> None:
        self.host = host
        self.option = host.catalogue.options[option]

    def choice(self) -> Choice | None:
        """The part, while it stands and is the customer's."""
        chosen = self.host.report.spec.chosen(self.option.id)
        return chosen[0] if chosen and is_theirs(self.option, chosen[0]) else None

    # -- lines -----------------------------------------------------------------------------------------------------

    def lines(self, cells: int, at: Item | None, entry: Entry | None) -> list[Line]:
        """One line each; nothing while the part is ours."""
        choice = self.choice()
        if choice is None:
            return []
        blank = blanks_of(self.option, choice.own_part)
        result: list[Line] = []
        for line in lines_of(self.option):
            item = OnField(_FIELD_OF[line], self.option.id)
            mark = self.host.marks.doubt if line in blank else " "
            told = line_words(line, choice.own_part or OwnPart())
            draft = self.host.drafts.get(item, "")
            result.append(field_line(item, mark, told, entry if at == item else None, draft, cells))
        return result

    def first_blank(self) -> Item | None:
        """Where the cursor begins."""
        choice = self.choice()
        blank = blanks_of(self.option, choice.own_part) if choice is not None else ()
        return OnField(_FIELD_OF[blank[0]], self.option.id) if blank else None

    def hint(self, field: Field) -> str:
        """How a line is filled in."""
        return kinds_hint(kinds_of(self.option)) if field is Field.PART_KIND else field_words(field).hint

    def value(self, field: Field) -> str:
        """The text of a line as it stands, as it would be typed."""
        choice = self.choice()
        return self._value(choice, _FIELDS[field]) if choice is not None and field in _FIELDS else ""

    # -- acts ------------------------------------------------------------------------------------------------------

    def takes_digit(self, field: Field, digit: int) -> bool | None:
        """A numbered kind of battery, and whether it was taken; None where a digit begins a text."""
        if field is not Field.PART_KIND:
            return None
        return self.take(field, f"{digit}")

    def take(self, field: Field, text: str) -> bool:
        """Take a typed line; False and a word on the last line when it does not fit."""
        line = _FIELDS[field]
        value = self._read(line, text)
        if value is None and text:
            self.host.say(kinds_needed() if line is SheetLine.KIND else field_words(field).needs)
            return False
        return self._put(line, value)

    def _put(self, line: SheetLine, value: str | float | None) -> bool:
        choice = self.choice()
        if choice is None:
            return False
        after, edit = said_edit(self.host.catalogue, choice, line, value, self.host.now())
        return after == choice.own_part or self.host.edit(edit, said_words(self.option, line, after))

    def _read(self, line: SheetLine, text: str) -> str | float | None:
        return read_line(self.host.catalogue, self.option.id, line, text, self.host.now()) if text else None

    def _value(self, choice: Choice, line: SheetLine) -> str:
        value: str | float | None = getattr(choice.own_part or OwnPart(), line.value)
        return value if isinstance(value, str) else "" if value is None else plain(value)


def of_sheet(field: Field) -> bool:
    """Whether a field is a line of the sheet."""
    return field in _FIELDS


def bring(host: Host, option: OptionId) -> OptionId | None:
    """The customer brings this part. Which option then stands for it; None when it was refused.

    A part that is the customer's already stays as it is.
    """
    meant, edit = brought(host.catalogue, host.report.spec, option, host.now())
    if edit is None:
        return meant
    told = brought_words(host.catalogue.options[meant], days_after(host.now(), DAYS))
    return meant if host.edit(edit, told) else None


def ours_again(host: Host, option: OptionId) -> None:
    """The part is ours; one that the house has none of cannot be."""
    if is_brought(host.catalogue.options[option]):
        host.say(only_theirs())
    else:
        host.edit(SetOwner(option=option, owner=Owner.HOUSE))
