"""The tables of all files of a catalogue, before their contents are read: which there are and which words they make."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import NamedTuple, cast

from specbuilder.model.ids import CUSTOMER_PART
from specbuilder.model.kinds import AnswerType, Place

from .converters import FREE_NAME
from .expressions import RESERVED_WORDS
from .faults import Source, Spot, meant, quotable
from .fields import table_of
from .vocabulary import Asked, Names, Vocabulary

FIRM_FILE = "firm.toml"
_HYPHENED = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_ID_FORM = MappingProxyType(
    {
        "question": (re.compile(r"[1-9][0-9]{0,2}"), "a whole number from 1"),
        "brief": (FREE_NAME, "small letters, digits and _, a letter first"),
        "job": (FREE_NAME, "small letters, digits and _, a letter first"),
        "work": (re.compile(r"[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*"), "letters, digits and hyphens"),
    }
)
_SHARED = MappingProxyType({"van": "option", "job": "brief"})
"""Kinds whose ids must differ from those of another kind: a van is an option, a job key is a line like any other."""

SECTIONS = (
    "question",
    "brief",
    "job",
    "ledger",
    "van",
    "group",
    "option",
    "rule",
    "work",
    "caution",
    "paper",
    "collection",
    "table",
)
"""Kinds of tables that any file may hold. ``firm`` stands alone in its file."""


class Entry(NamedTuple):
    """One table ``[section.id]``."""

    section: str
    id: str
    table: Mapping[str, object]
    spot: Spot


def entries_of(documents: Iterable[tuple[Source, Mapping[str, object]]]) -> tuple[Entry, ...]:
    """All tables in the order of the files; what is no such table, and every id that stands twice, is noted."""
    found: list[Entry] = []
    first: dict[tuple[str, str], Entry] = {}
    for source, document in documents:
        for section, value in document.items():
            if section == "firm" and source.file == FIRM_FILE:
                continue
            for entry in _section_entries(section, value, source.top.at(section)):
                earlier = first.setdefault((_SHARED.get(section, section), entry.id), entry)
                if earlier is entry:
                    found.append(entry)
                else:
                    entry.spot.fault(
                        f"the id {earlier.section}.{entry.id} stands already in {earlier.spot.origin}: "
                        "give one of the two another id."
                    )
    return tuple(found)


def _section_entries(section: str, value: object, spot: Spot) -> Iterable[Entry]:
    if section == "firm":
        spot.fault(f"the firm is told in {FIRM_FILE} only: move this table there.")
        return
    if section not in SECTIONS:
        cure = meant(section, SECTIONS, f"use one of {', '.join(SECTIONS)}.")
        spot.fault(f'there is no kind of table called "{quotable(section)}"; {cure}')
        return
    for id_, inner in (table_of(value, spot) or {}).items():
        table = table_of(inner, spot.at(id_))
        if table is not None and _is_good_id(section, id_, spot.at(id_)):
            yield Entry(section, id_, table, spot.at(id_))


def _is_good_id(section: str, id_: str, spot: Spot) -> bool:
    """True when the id is written as ids of its kind are; else that is noted."""
    form, told = _ID_FORM.get(section, (_HYPHENED, "small letters, digits and single hyphens"))
    if not form.fullmatch(id_):
        spot.fault(f'"{quotable(id_)}" is not written as an id of this kind is: use {told}.')
        return False
    if section in ("option", "van") and id_ in RESERVED_WORDS:
        spot.fault(f'"{id_}" is a word of the rules themselves: give this one another id.')
        return False
    return True


def vocabulary_of(entries: Iterable[Entry], *, complete: bool) -> Vocabulary:
    """The words these tables make. Faulty values make none; their faults are noted when the tables are read."""
    by_section: dict[str, list[Entry]] = {section: [] for section in SECTIONS}
    for entry in entries:
        by_section[entry.section].append(entry)
    options, vans, work = by_section["option"], by_section["van"], by_section["work"]

    def names(lack: str, words: Iterable[str], where: str) -> Names:
        return Names(lack, frozenset(words), where, complete)

    def ids(lack: str, section: str) -> Names:
        return names(lack, (entry.id for entry in by_section[section]), f"a [{section}.ID] table")

    return Vocabulary(
        options=names("there is no option", (entry.id for entry in (*options, *vans)), "an [option.ID] table"),
        vans=ids("there is no base van", "van"),
        groups=ids("there is no group", "group"),
        ledgers=ids("there is no ledger", "ledger"),
        cautions=ids("there is no caution", "caution"),
        papers=ids("there is no paper", "paper"),
        steps=ids("there is no step of the build", "work"),
        hold_points=names("there is no hold point", _points(work), "work.ID.hold_point"),
        questions=ids("there is no question", "question"),
        tags=names("nothing gives the tag", _tags((*options, *vans)), "gives of an option or a van"),
        zones=names("nothing claims the zone", _zones(options, vans), "zones of an option"),
        brief=_asked(by_section["brief"]),
        job=_asked(by_section["job"]),
        complete=complete,
    )


def _tags(entries: Iterable[Entry]) -> Iterable[str]:
    """Every tag with and without its place."""
    yield CUSTOMER_PART
    for entry in entries:
        for tag in _texts(entry.table.get("gives")):
            yield tag.partition("@")[0]
            yield from _placed(tag, entry)


def _zones(options: Iterable[Entry], vans: Iterable[Entry]) -> Iterable[str]:
    for entry in options:
        for zone in _texts(entry.table.get("zones")):
            yield from _placed(zone, entry)
    for entry in vans:
        yield from _texts(entry.table.get("zones_taken"))


def _points(work: Iterable[Entry]) -> Iterable[str]:
    """Hold points; a step may have none."""
    for entry in work:
        point = entry.table.get("hold_point")
        if isinstance(point, str) and point:
            yield point


def _placed(word: str, entry: Entry) -> tuple[str, ...]:
    """``word@side`` once for each place the option may take; any other word as it is."""
    bare, at, place = word.partition("@")
    places = _texts(entry.table.get("places")) if at and place == "side" else ()
    return tuple(f"{bare}@{side.value}" for side in Place if side.value in places) or (word,)


def _asked(entries: Iterable[Entry]) -> Mapping[str, Asked | None]:
    types = {kind.value: kind for kind in AnswerType}
    asked: dict[str, Asked | None] = {}
    for entry in entries:
        told = entry.table.get("type")
        kind = types.get(told) if isinstance(told, str) else None
        asked[entry.id] = Asked(kind, _texts(entry.table.get("values"))) if kind else None
    return MappingProxyType(asked)


def _texts(value: object) -> tuple[str, ...]:
    """The texts of a list; whatever else stands there makes no word."""
    items = cast("list[object]", value) if isinstance(value, list) else []
    return tuple(item for item in items if isinstance(item, str))
