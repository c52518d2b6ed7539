"""Fields that are typed on the walk: the customer on the brief, the real van on its step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from specbuilder.model.edits import Edit, FillVanData, NameCustomer, WriteNote
from specbuilder.model.kinds import Step
from specbuilder.model.spec import Spec, VanData
from specbuilder.storage.text_limits import CONTACT_LONGEST, NAME_LONGEST, NOTE_LONGEST, VAN_TEXT_LONGEST, text_fault
from specbuilder.tui.entry import Entry
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, Item, OnField
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line
from specbuilder.wording.forms import field_value, field_words, form_title, not_taken
from specbuilder.wording.plain import raised
from specbuilder.wording.typed import above_nought, plain, whole
from specbuilder.wording.weighed import other_axle, weighed_words

from .page import Host

LABEL_CELLS = 27

_CUSTOMER = (Field.NAME, Field.CONTACT, Field.JOB_NOTE)
_VAN = (
    Field.REGISTRATION,
    Field.VIN_TAIL,
    Field.YEAR,
    Field.PAINT,
    Field.MILEAGE,
    Field.DAMAGE,
    Field.WEIGHED_FRONT,
    Field.WEIGHED_REAR,
)
_FIELDS: dict[Step, tuple[str, tuple[Field, ...]]] = {Step.BRIEF: ("customer", _CUSTOMER), Step.BASE_VAN: ("van", _VAN)}
_NEEDED = frozenset({Field.VIN_TAIL, Field.YEAR})


FIELDS = tuple((step, field) for step, (_, fields) in _FIELDS.items() for field in fields)
"""Every field of the walk, with its step."""


class FieldLines:
    """The fields at the end of a step."""

    def __init__(self, host: Host, step: Step) -> None:
        self.host = host
        self.title, self.fields = _FIELDS.get(step, ("", ()))

    def lines(self, cells: int, at: Item | None, entry: Entry | None) -> Sequence[Line]:
        """A heading and one line a field; nothing where the step has none."""
        if not self.fields:
            return ()
        spec, marks = self.host.report.spec, self.host.marks
        result = [EMPTY, line("   ", Bit(form_title(self.title), Ink.HEAD))]
        for field in self.fields:
            item, value = OnField(field), value_of(spec, field)
            mark = marks.doubt if field in _NEEDED and not value else " "
            typing = entry if item == at else None
            draft = self.host.drafts.get(item, "")
            told = field_value(field, value)
            if needed := other_axle(spec.van_data, field):
                mark, told = marks.doubt, f"{told}, {needed}"
            result.append(field_line(item, mark, told, typing, draft, cells))
        return result

    def hint(self, item: OnField) -> str:
        """How to fill it in."""
        return field_words(item.field).hint

    def take(self, item: OnField, text: str) -> bool:
        """Take a typed text; False and a word on the last line when it does not fit."""
        if (fault := text_fault(text, _longest(item.field))) is not None:
            self.host.say(raised(fault))
            return False
        edit = edit_of(self.host.report.spec, item.field, text)
        if edit is None:
            self.host.say(field_words(item.field).needs)
            return False
        if value_of(self.host.report.spec, item.field) == text:
            return True
        told = weighed_words(self.host.catalogue, self.host.report, self.host.would_be(edit))
        return self.host.edit(edit, told)

    def clear(self, item: OnField) -> bool:
        """Make a field not known again."""
        return self.take(item, "")


def field_line(
    item: OnField, mark: str, value: str, entry: Entry | None, draft: str, cells: int, label: str = ""
) -> Line:
    """Label (the field's own, unless another is given) and value, or the text being typed."""
    named = Bit(f" {mark} " + left(cut(label or field_words(item.field).label, LABEL_CELLS - 1), LABEL_CELLS))
    room = max(cells - LABEL_CELLS - 4, 4)
    if entry is not None:
        return line(named, *entry.bits(room), item=item)
    if draft:
        return line(named, Bit(cut(not_taken(draft), room), Ink.DOUBT), item=item)
    return line(named, Bit(cut(value, room)), item=item)


def _longest(field: Field) -> int:
    """How long a text of this field may be."""
    return {Field.NAME: NAME_LONGEST, Field.CONTACT: CONTACT_LONGEST, Field.JOB_NOTE: NOTE_LONGEST}.get(
        field, VAN_TEXT_LONGEST
    )


def value_of(spec: Spec, field: Field) -> str:
    """The text of a field as it stands."""
    van, customer = spec.van_data, spec.customer
    texts: dict[Field, str | float | None] = {
        Field.NAME: customer.name,
        Field.CONTACT: customer.contact,
        Field.JOB_NOTE: spec.note,
        Field.REGISTRATION: van.registration,
        Field.VIN_TAIL: van.vin_tail,
        Field.YEAR: van.year,
        Field.PAINT: van.paint_code,
        Field.MILEAGE: van.mileage_km,
        Field.DAMAGE: van.damage,
        Field.WEIGHED_FRONT: van.weighed_front_kg,
        Field.WEIGHED_REAR: van.weighed_rear_kg,
    }
    value = texts[field]
    return value if isinstance(value, str) else "" if value is None else plain(value)


def edit_of(spec: Spec, field: Field, text: str) -> Edit | None:
    """What taking this text does; None when the text is none for this field."""
    match field:
        case Field.NAME:
            return NameCustomer(name=text, contact=spec.customer.contact)
        case Field.CONTACT:
            return NameCustomer(name=spec.customer.name, contact=text)
        case Field.JOB_NOTE:
            return WriteNote(note=text)
        case _:
            data = _van_data(spec.van_data, field, text)
            return FillVanData(van_data=data) if data is not None else None


def _van_data(data: VanData, field: Field, text: str) -> VanData | None:
    match field:
        case Field.REGISTRATION:
            return replace(data, registration=text)
        case Field.VIN_TAIL:
            good = not text or (len(text) == 6 and text.isascii() and text.isalnum())
            return replace(data, vin_tail=text.upper()) if good else None
        case Field.YEAR:
            good = not text or (len(text) == 4 and whole(text) is not None)
            return replace(data, year=whole(text)) if good else None
        case Field.PAINT:
            return replace(data, paint_code=text)
        case Field.MILEAGE:
            return replace(data, mileage_km=whole(text)) if not text or whole(text) is not None else None
        case Field.DAMAGE:
            return replace(data, damage=text)
        case Field.WEIGHED_FRONT:
            return replace(data, weighed_front_kg=above_nought(text)) if _mass(text) else None
        case Field.WEIGHED_REAR:
            return replace(data, weighed_rear_kg=above_nought(text)) if _mass(text) else None
        case _:
            return None


def _mass(text: str) -> bool:
    return not text or above_nought(text) is not None
