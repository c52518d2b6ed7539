"""Details of one option: place, how many, whose part, note, and the sheet of a part the customer brings."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from specbuilder.model.catalogue import Option
from specbuilder.model.edits import LeaveOut, Move, SetCount, SetNote, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Pick, Place
from specbuilder.model.spec import Choice
from specbuilder.tui.entry import WHOLE
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import DATES, NUMBERS, Field, OnField, OnPlace, OnText, OnWord
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.circuit_rows import circuit_short
from specbuilder.wording.details import count_line, detail_lines, place_line, whose_line
from specbuilder.wording.forms import field_value, field_words, form_title
from specbuilder.wording.hints import forget_it
from specbuilder.wording.names import option_name
from specbuilder.wording.rows import row_sentence
from specbuilder.wording.typed import whole

from .fields import field_line
from .numbered import numbered_bits
from .page import Host, Page
from .sheet import Sheet, bring, of_sheet, ours_again

COUNT = OnWord("count")
WHOSE = OnWord("whose")


class DetailsPage(Page):
    """What can be said about one option beyond yes and no."""

    where: ClassVar[Where] = Where.DETAILS

    def __init__(self, host: Host, option: OptionId) -> None:
        super().__init__(host)
        self.option = option
        self.sheet = Sheet(host, option)
        self.at = self.sheet.first_blank()

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
        texts = [part for text in told for part in wrapped(text, cells - 4)]
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
        result.append(line(*numbered_bits(f"   {whose_line(choice.owner)}"), item=WHOSE))
        note = OnField(Field.CHOICE_NOTE, self.option)
        typing_here, draft = self.entry if self.at == note else None, self.host.drafts.get(note, "")
        told = field_value(Field.CHOICE_NOTE, choice.note)
        return [
            *result,
            field_line(note, " ", told, typing_here, draft, cells),
            *self.sheet.lines(cells, self.at, self.entry),
        ]

    def foot(self, cells: int) -> Sequence[Line]:
        """How to fill the field in."""
        match self.at:
            case OnField(field=field) if of_sheet(field):
                text = self.sheet.hint(field)
            case OnField(field=field):
                text = field_words(field).hint
            case _:
                text = ""
        return [line(f" {part}") for part in wrapped(text, cells - 2)]

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Take the place under the cursor, or begin to type."""
        match self.at:
            case OnPlace(place=place):
                self._take_place(place)
            case OnField(field=field) if of_sheet(field) and (self._numbered(field) or not self._stands_there(field)):
                self.move(1)  # a blank is left: it is an open question already
            case OnField(field=field):
                self.open_text(self._stands_there(field))
            case OnWord() if self.at == COUNT:
                self.start_typing()
            case OnWord() if self.at == WHOSE and self._chosen:
                self._turn_owner()
            case _:
                self.host.close()

    def act(self, act: Act) -> bool:
        """One more, one fewer, whose."""
        match act:
            case Act.LESS if isinstance(self.at, OnField):
                self._clear(self.at.field)
            case Act.MORE | Act.LESS:
                self._count_by(1 if act is Act.MORE else -1)
            case Act.THEIRS:
                if self._chosen:
                    self._turn_owner()
            case _:
                return False
        return True

    def digit(self, number: int) -> None:
        """A numbered place or owner, a count, or the beginning of a typed text."""
        if isinstance(self.at, OnField):
            taken = self.sheet.takes_digit(self.at.field, number)
            if taken is None:
                self.start_typing(str(number))
            elif taken:
                self.move(1)
        elif self.at == WHOSE:
            if number in (1, 2):
                self._set_owner(number == 2)
        elif self.at == COUNT:
            self.host.edit(SetCount(option=self.option, count=number, place=self._chosen[0].place))
        elif 0 < number <= len(self._known.places):
            self._take_place(self._known.places[number - 1])

    def takes_text(self) -> bool:
        """On the figures of a sheet letters stay commands: whose part it is, undo, the next open thing."""
        return isinstance(self.at, OnField) and self.at.field not in NUMBERS | DATES

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
        field = self.at.field
        taken = self.sheet.take(field, text) if of_sheet(field) else self._take_note(text)
        if taken:
            self.move(1)
        return taken

    def _take_note(self, text: str) -> bool:
        return self._chosen[0].note == text or self.host.edit(SetNote(option=self.option, note=text))

    def _stands_there(self, field: Field) -> str:
        """What a field holds, or what was typed into it and not taken."""
        draft = self.host.drafts.get(OnField(field, self.option), "")
        value = self.sheet.value(field) if of_sheet(field) else self._chosen[0].note
        return draft or value

    def hint_of(self, act: Act) -> str | None:
        """Minus empties a field and leaves nothing out."""
        return forget_it() if act is Act.LESS and isinstance(self.at, OnField) else None

    def _clear(self, field: Field) -> None:
        if of_sheet(field):
            self.sheet.take(field, "")
        elif self._chosen:
            self._take_note("")

    def _numbered(self, field: Field) -> bool:
        """A line that is answered by a number of a list, and not typed."""
        return field is Field.PART_KIND

    def _turn_owner(self) -> None:
        self._set_owner(self._chosen[0].owner is Owner.HOUSE)

    def _set_owner(self, theirs: bool) -> None:
        if not theirs:
            ours_again(self.host, self.option)
        elif (meant := bring(self.host, self.option)) is not None:
            self.host.show(DetailsPage(self.host, meant))

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
