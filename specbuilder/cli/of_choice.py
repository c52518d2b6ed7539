"""``OPTION.note``, ``OPTION.mass_kg`` and ``OPTION=theirs``: what is said of a choice beside place and count."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, SetNote, SetOwner
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner
from specbuilder.model.own_parts import RANGES, SheetLine, is_brought, is_theirs, kinds_of, lines_of
from specbuilder.model.spec import Spec
from specbuilder.office.own_parts import brought, read_line, said_edit
from specbuilder.storage.text_limits import NOTE_LONGEST, VAN_TEXT_LONGEST, text_fault
from specbuilder.wording.lines import ours_first, range_needed, sheet_asks
from specbuilder.wording.names import listed, option_name
from specbuilder.wording.own_parts import only_theirs

from .things import OptionThing, Unclear, thing
from .values import UNKNOWN_WORDS

_NOTE = "note"
_FIELDS = (_NOTE, *(line.value for line in SheetLine))


@dataclass(frozen=True, slots=True)
class OfChoice:
    """A field of a choice."""

    option: OptionId
    field: str


def of_choice(catalogue: Catalogue, text: str) -> OfChoice | Unclear | None:
    """The field that is meant by ``OPTION.FIELD``; None where nothing of the kind was typed."""
    name, dot, field = text.strip().rpartition(".")
    if not dot or field not in _FIELDS:
        return None
    meant = thing(catalogue, name)
    if isinstance(meant, OptionThing):
        return OfChoice(meant.option, field)
    return meant if isinstance(meant, Unclear) else Unclear(f"{name} is no option, so it has no {field}.")


def said_of(catalogue: Catalogue, spec: Spec, meant: OfChoice, value: str, at: str) -> Edit | Unclear:
    """What saying this of a choice does; nothing said makes it blank again."""
    typed = f"{meant.option}.{meant.field}"
    longest = NOTE_LONGEST if meant.field == _NOTE else VAN_TEXT_LONGEST
    if fault := text_fault(value, longest, lines=meant.field == _NOTE):
        return Unclear(f"{typed}: {fault}")
    if meant.field == _NOTE:
        return SetNote(option=meant.option, note=value)
    return _on_sheet(catalogue, spec, meant, "" if value.casefold() in UNKNOWN_WORDS else value, at)


def owner_edit(catalogue: Catalogue, spec: Spec, option: OptionId, owner: Owner, at: str) -> Edit | Unclear:
    """The part is theirs, with its sheet and the questions its blanks are; or it is ours again."""
    if owner is Owner.HOUSE:
        if is_brought(catalogue.options[option]):
            return Unclear(f"{option}: {only_theirs()}.")
        return SetOwner(option=option, owner=owner)
    meant, edit = brought(catalogue, spec, option, at)
    if edit is not None:
        return edit
    there = spec.chosen(meant)[0]  # theirs already: said so, and its sheet stays
    return SetOwner(option=meant, owner=owner, own_part=there.own_part, place=there.place)


def _on_sheet(catalogue: Catalogue, spec: Spec, meant: OfChoice, value: str, at: str) -> Edit | Unclear:
    option, line, typed = meant.option, SheetLine(meant.field), f"{meant.option}.{meant.field}"
    known, name = catalogue.options[option], option_name(catalogue, option)
    choice = next((one for one in spec.chosen(option) if is_theirs(known, one)), None)
    if choice is None:
        return Unclear(ours_first(name, option))
    if line not in lines_of(known):
        return Unclear(sheet_asks(name, typed, [each.value for each in lines_of(known)]))
    said = read_line(catalogue, option, line, value, at) if value else None
    if value and said is None:
        return Unclear(f"{typed}: {_needed(catalogue, option, line)}")
    return said_edit(catalogue, choice, line, said, at)[1]


def _needed(catalogue: Catalogue, option: OptionId, line: SheetLine) -> str:
    match line:
        case SheetLine.KIND:
            return f"{listed(kinds_of(catalogue.options[option]), 'or')} is needed here."
        case SheetLine.ARRIVES:
            return "a day such as 2031-04-28 is needed here."
        case _:
            return range_needed(RANGES[line])
