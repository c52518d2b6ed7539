"""From THING and THING=VALUE to the edit that is meant."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import TypeVar, assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import (
    AnswerLine,
    Edit,
    FillVanData,
    LeaveOut,
    Move,
    NameCustomer,
    SetCount,
    Take,
    WriteNote,
)
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import Owner, Pick, Place
from specbuilder.model.spec import Spec, VanData
from specbuilder.storage.text_limits import (
    CONTACT_LONGEST,
    NAME_LONGEST,
    NOTE_LONGEST,
    VAN_TEXT_LONGEST,
    VIN_TAIL_LONGEST,
    text_fault,
)
from specbuilder.wording.brief import not_an_answer

from .of_choice import of_choice, owner_edit, said_of
from .things import CustomerThing, LineThing, NoteThing, OptionThing, Unclear, VanThing, settable
from .values import UNKNOWN_WORDS, answer_of, decimal, whole

_Number = TypeVar("_Number", int, float)
_TEXTS = ("registration", "vin_tail", "paint_code", "damage")
_YEARS = (1950, 2100)
_KILOMETRES = (0, 5_000_000)
_AXLE_KG = (100, 10_000)


def set_edit(catalogue: Catalogue, spec: Spec, text: str, at: str) -> Edit | Unclear:
    """What ``set FILE TEXT`` means for this spec. ``at`` is the time a choice is taken at."""
    name, equals, value = text.partition("=")
    of = of_choice(catalogue, name)
    if isinstance(of, Unclear):
        return of
    if of is not None:
        return said_of(catalogue, spec, of, value.strip(), at) if equals else _needs_value(name)
    meant = settable(catalogue, name)
    match meant:
        case Unclear():
            return meant
        case OptionThing():
            return _option_edit(catalogue, spec, meant, value.strip() if equals else None, at)
        case LineThing() | VanThing() | CustomerThing() | NoteThing() if not equals:
            return _needs_value(name)
        case LineThing(key):
            return _line_edit(catalogue, key, value.strip())
        case VanThing(field):
            return _van_edit(spec, field, value.strip())
        case CustomerThing(field):
            return _customer_edit(spec, field, value.strip())
        case NoteThing():
            return _told(name, value, NOTE_LONGEST) or WriteNote(note=value.strip())
        case _:
            assert_never(meant)


def _needs_value(name: str) -> Unclear:
    return Unclear(f"{name} needs a value: write {name}=VALUE.")


def drop_edit(catalogue: Catalogue, spec: Spec, text: str, at: str) -> Edit | Unclear:
    """What ``drop FILE TEXT`` means for this spec: left out, or not known any more."""
    of = of_choice(catalogue, text)
    if of is not None:
        return of if isinstance(of, Unclear) else said_of(catalogue, spec, of, "", at)
    meant = settable(catalogue, text)
    match meant:
        case Unclear():
            return meant
        case OptionThing(option=option, place=place, count=count):
            if count is None:
                return LeaveOut(option=option, place=place)
            now = next((c.count for c in spec.chosen(option) if place in (None, c.place)), 0)
            return SetCount(option=option, place=place, count=max(0, now - count))
        case LineThing(key):
            return AnswerLine(key=key, value=None)
        case VanThing(field):
            return FillVanData(van_data=_cleared(spec.van_data, field))
        case CustomerThing(field):
            return _customer_edit(spec, field, "")
        case NoteThing():
            return WriteNote(note="")
        case _:
            assert_never(meant)


def _option_edit(catalogue: Catalogue, spec: Spec, meant: OptionThing, value: str | None, at: str) -> Edit | Unclear:
    """``OPTION=left``, ``OPTION=2`` and ``OPTION=theirs`` are understood as well as ``@`` and ``*``."""
    owners = {owner.value: owner for owner in Owner}
    places = {place.value: place for place in Place}
    match value:
        case None:
            pass
        case str() if value in owners:
            return owner_edit(catalogue, spec, meant.option, owners[value], at)
        case str() if value in places:
            meant = replace(meant, place=places[value])
        case str() if value.isascii() and value.isdigit() and len(value) < 4:
            meant = replace(meant, count=int(value))
        case _:
            return Unclear(
                f'{meant.option}: "{value}" is nothing an option takes: use left, right, rear, theirs, ours or a count.'
            )
    return _take(catalogue, spec, meant, at)


def _take(catalogue: Catalogue, spec: Spec, meant: OptionThing, at: str) -> Edit:
    option, standing = catalogue.options[meant.option], spec.chosen(meant.option)
    if meant.place is not None and standing and not any(c.place is meant.place for c in standing):
        one = catalogue.groups[option.group].pick is Pick.ONE or option.max_count == 1
        if one and len(standing) == 1:
            return Move(option=option.id, to=meant.place)
    if meant.count is not None and any(meant.place in (None, c.place) for c in standing):
        return SetCount(option=option.id, count=meant.count, place=meant.place)
    if meant.count == 0:
        return LeaveOut(option=option.id, place=meant.place)
    return Take(option=option.id, place=meant.place, count=meant.count, at=at)


def _line_edit(catalogue: Catalogue, key: BriefKey, value: str) -> Edit | Unclear:
    line = catalogue.brief[key]
    if value.casefold() in UNKNOWN_WORDS:
        return AnswerLine(key=key, value=None)
    try:
        return AnswerLine(key=key, value=answer_of(catalogue, line, value))
    except ValueError:
        return Unclear(f"{key}: {not_an_answer(catalogue, line, value)}")


def _told(name: str, value: str, longest: int, *, lines: bool = True) -> Unclear | None:
    """Why this text cannot be taken; None when it can."""
    fault = text_fault(value.strip(), longest, lines=lines)
    return Unclear(f"{name}: {fault}") if fault else None


def _customer_edit(spec: Spec, field: str, value: str) -> Edit | Unclear:
    contact = field == "contact"
    if fault := _told(field, value, CONTACT_LONGEST if contact else NAME_LONGEST, lines=contact):
        return fault
    if field == "contact":
        return NameCustomer(name=spec.customer.name, contact=value)
    return NameCustomer(name=value, contact=spec.customer.contact)


def _van_edit(spec: Spec, field: str, value: str) -> Edit | Unclear:
    longest = VIN_TAIL_LONGEST if field == "vin_tail" else VAN_TEXT_LONGEST
    if field in _TEXTS and (fault := _told(field, value, longest, lines=field == "damage")):
        return fault
    try:
        return FillVanData(van_data=_filled(spec.van_data, field, value))
    except ValueError:
        return Unclear(f"{field}: {_needed(field)} is needed.")


def _needed(field: str) -> str:
    match field:
        case "year":
            return "a year such as 2029"
        case "mileage_km":
            return f"a whole number from {_KILOMETRES[0]} to {_KILOMETRES[1]}"
        case _:
            return f"a number from {_AXLE_KG[0]} to {_AXLE_KG[1]}"


def _filled(data: VanData, field: str, value: str) -> VanData:
    """The data with one field filled.

    Raises:
        ValueError: if a number is needed and the text is none, or none of that size can be.
    """
    match field:
        case "registration":
            return replace(data, registration=value)
        case "vin_tail":
            return replace(data, vin_tail=value)
        case "year":
            return replace(data, year=_within(whole(value), *_YEARS))
        case "paint_code":
            return replace(data, paint_code=value)
        case "mileage_km":
            return replace(data, mileage_km=_within(whole(value), *_KILOMETRES))
        case "damage":
            return replace(data, damage=value)
        case "weighed_front_kg":
            return replace(data, weighed_front_kg=_within(decimal(value), *_AXLE_KG))
        case "weighed_rear_kg":
            return replace(data, weighed_rear_kg=_within(decimal(value), *_AXLE_KG))
        case _:
            raise AssertionError(field)


def _within(number: _Number, least: int, most: int) -> _Number:
    """The number itself.

    Raises:
        ValueError: if it is outside.
    """
    if not least <= number <= most:
        raise ValueError(number)
    return number


def _cleared(data: VanData, field: str) -> VanData:
    empty = VanData()
    return VanData(**{f.name: getattr(empty if f.name == field else data, f.name) for f in fields(VanData)})
