"""Details of one option: place, how many, whose part, note, and the sheet of a part the customer brings."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import ClassVar

from specbuilder.model.catalogue import Option
from specbuilder.model.edits import LeaveOut, Move, SetCount, SetNote, SetOwner, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Pick, Place
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.tui.entry import WHOLE
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, OnField, OnPlace, OnText, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.circuit_rows import circuit_short
from specbuilder.wording.details import count_line, detail_lines, place_line, whose_line
from specbuilder.wording.forms import field_value, field_words, form_title
from specbuilder.wording.names import option_name
from specbuilder.wording.rows import row_sentence
from specbuilder.wording.typed import date, number, plain, whole

from .fields import field_line
from .page import Host, Page

COUNT = OnWord("count")
WHOSE = OnWord("whose")
_PART = (Field.PART_MASS, Field.PART_WATTS, Field.PART_CUT_OUT, Field.PART_ARRIVES)


class DetailsPage(Page):
    """What can be said about one option beyond yes and no."""

    where: ClassVar[Where] = Where.DETAILS

    def __init__(self, host: Host, option: OptionId) -> None:
        super().__init__(host)
        self.option = option

    @property
    def _known(self) -> Option:
        return self.host.catalogue.options[self.option]

    @property
    def _chosen(self) -> tuple[Choice, ...]:
        return self.host.report.spec.chosen(self.option)

    # -- lines -----------------------------------------------------------------------------------------------------

    def head(self, cells: int) -> Sequence[Line]:
        """The option's name."""
        name = option_name(self.host.catalogue, self.option)
        return [line(" ", Bit(cut(f"{form_title('details')}: {name}", cells - 2), Ink.HEAD))]

    def lines(self, cells: int) -> Sequence[Line]:
        """Places, count, whose, note, the sheet, what the catalogue says, and its cables."""
        result = self._places(cells)
        if self._chosen:
            result += self._about_choice(cells)
        told = [row_sentence(self.host.catalogue, self.host.report, self.option)]
        told += detail_lines(self.host.catalogue, self.option)
        told += (circuit_short(one) for one in self.host.report.circuits if one.option == self.option)
        texts = [part for text in told for part in wrapped(text, cells - 3)]
        return [*result, EMPTY, *(line(f"   {text}", item=OnText(i)) for i, text in enumerate(texts))]

    def _places(self, cells: int) -> list[Line]:
        catalogue, report = self.host.catalogue, self.host.report
        taken = {c.place for c in self._chosen}
        result: list[Line] = []
        for number_, place in enumerate(self._known.places, 1):
            words = place_line(catalogue, report, self.option, place)
            here = place in taken
            mark = self.host.marks.chosen if here else self.host.marks.open
            bits = (Bit(f" {mark} ", Ink.MINE if here else Ink.PLAIN), Bit(cut(f"{number_} {words}", cells - 4)))
            result.append(line(*bits, item=OnPlace(self.option, place)))
        return result

    def _about_choice(self, cells: int) -> list[Line]:
        choice, catalogue = self._chosen[0], self.host.catalogue
        result: list[Line] = []
        if count := count_line(catalogue, self.host.report, self.option):
            typing = self.entry.bits(8) if self.entry is not None and self.at == COUNT else ()
            result.append(line(f"   {count} ", *typing, item=COUNT))
        result.append(line(f"   {whose_line(choice.owner)}", item=WHOSE))
        fields = [Field.CHOICE_NOTE, *(_PART if choice.owner is Owner.CUSTOMER else ())]
        for field in fields:
            item, value = OnField(field, self.option), _value(choice, field)
            mark = self.host.marks.doubt if field in _PART and not value else " "
            typing_here = self.entry if self.at == item else None
            draft = self.host.drafts.get(item, "")
            result.append(field_line(item, mark, field_value(field, value), typing_here, draft, cells))
        return result

    def foot(self, cells: int) -> Sequence[Line]:
        """How to fill the field in."""
        text = field_words(self.at.field).hint if isinstance(self.at, OnField) else ""
        return [line(f" {part}") for part in wrapped(text, cells - 2)]

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Take the place under the cursor, or begin to type."""
        match self.at:
            case OnPlace(place=place):
                self._take_place(place)
            case OnField(field=field):
                self.open_text(_value(self._chosen[0], field))
            case OnWord() if self.at == COUNT:
                self.start_typing()
            case OnWord() if self.at == WHOSE and self._chosen:
                self._set_owner(self._chosen[0].owner is Owner.HOUSE)
            case _:
                self.host.close()

    def act(self, act: Act) -> bool:
        """One more, one fewer, whose."""
        match act:
            case Act.MORE | Act.LESS:
                self._count_by(1 if act is Act.MORE else -1)
            case Act.THEIRS:
                if self._chosen:
                    self._set_owner(self._chosen[0].owner is Owner.HOUSE)
            case _:
                return False
        return True

    def digit(self, number: int) -> None:
        """A numbered place or owner, a count, or the beginning of a typed text."""
        if isinstance(self.at, OnField):
            self.start_typing(str(number))
        elif self.at == WHOSE:
            if number in (1, 2):
                self._set_owner(number == 2)
        elif self.at == COUNT:
            self.host.edit(SetCount(option=self.option, count=number, place=self._chosen[0].place))
        elif 0 < number <= len(self._known.places):
            self._take_place(self._known.places[number - 1])

    def letters(self) -> frozenset[str]:
        """Digits for how many."""
        return WHOLE if self.at == COUNT else super().letters()

    def take_text(self, text: str) -> bool:
        """A note, a count or a field of the sheet."""
        if self.at == COUNT:
            count = whole(text)
            return count is not None and self.host.edit(
                SetCount(option=self.option, count=count, place=self._chosen[0].place)
            )
        if not isinstance(self.at, OnField) or not self._chosen:
            return False
        taken = self._take_field(self.at.field, text)
        if taken:
            self.move(1)
        else:
            self.host.say(field_words(self.at.field).needs)
        return taken

    def _take_field(self, field: Field, text: str) -> bool:
        if field is Field.CHOICE_NOTE:
            return self._chosen[0].note == text or self.host.edit(SetNote(option=self.option, note=text))
        part = _with(self._chosen[0].own_part or OwnPart(), field, text)
        if part is None:
            return False
        same = part == self._chosen[0].own_part
        return same or self.host.edit(SetOwner(option=self.option, owner=Owner.CUSTOMER, own_part=part))

    def _set_owner(self, theirs: bool) -> None:
        owner = Owner.CUSTOMER if theirs else Owner.HOUSE
        self.host.edit(SetOwner(option=self.option, owner=owner, own_part=OwnPart() if theirs else None))

    def _take_place(self, place: Place) -> None:
        chosen = self._chosen
        several = self.host.catalogue.groups[self._known.group].pick is Pick.ANY and self._known.max_count > 1
        if not chosen or several:
            self.host.edit(Take(option=self.option, place=place, at=self.host.now()))
        else:
            self.host.edit(Move(option=self.option, to=place, place=chosen[0].place))

    def _count_by(self, by: int) -> None:
        place = self.at.place if isinstance(self.at, OnPlace) else None
        chosen = [c for c in self._chosen if place is None or c.place is place]
        if not chosen:
            if by > 0:
                self.host.edit(Take(option=self.option, place=place, at=self.host.now()))
            else:
                self.host.edit(LeaveOut(option=self.option, place=place))
            return
        count = chosen[0].count + by
        if count > 0:
            self.host.edit(SetCount(option=self.option, count=count, place=chosen[0].place))
        else:
            self.host.edit(LeaveOut(option=self.option, place=chosen[0].place if len(self._chosen) > 1 else None))


def _value(choice: Choice, field: Field) -> str:
    part = choice.own_part or OwnPart()
    values: dict[Field, str | float | None] = {
        Field.CHOICE_NOTE: choice.note,
        Field.PART_MASS: part.mass_kg,
        Field.PART_WATTS: part.watts_w,
        Field.PART_CUT_OUT: part.cut_out_mm,
        Field.PART_ARRIVES: part.arrives,
    }
    value = values[field]
    return value if isinstance(value, str) else "" if value is None else plain(value)


def _with(part: OwnPart, field: Field, text: str) -> OwnPart | None:
    """The sheet with this field; None when the text is none for it."""
    amount = number(text)
    match field:
        case Field.PART_MASS:
            good = not text or (amount is not None and amount >= 0)
            return replace(part, mass_kg=amount) if good else None
        case Field.PART_WATTS:
            good = not text or (amount is not None and amount >= 0)
            return replace(part, watts_w=amount) if good else None
        case Field.PART_CUT_OUT:
            return replace(part, cut_out_mm=text)
        case Field.PART_ARRIVES:
            return replace(part, arrives=date(text) or "") if not text or date(text) else None
        case _:
            return None
