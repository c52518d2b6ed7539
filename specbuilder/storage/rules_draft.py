"""The records of a catalogue as they were read, each with its place in the files, before they are held together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Generic, TypeVar

from specbuilder.model.brief import BriefLine, Question
from specbuilder.model.catalogue import Caution, CollectionNote, Firm, Group, Option, Paper, Table, WorkStep
from specbuilder.model.ids import BASE_VAN_GROUP, OptionId
from specbuilder.model.ledger import LedgerSpec
from specbuilder.model.rules import Rule
from specbuilder.model.vans import Van

from .faults import Spot
from .records import record
from .rules_tables import Entry
from .vocabulary import Vocabulary

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class Found(Generic[_T]):
    """A record and where it was read."""

    record: _T
    spot: Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """All records that could be read, in the order of the files. A table with a fault has none."""

    questions: tuple[Found[Question], ...]
    brief: tuple[Found[BriefLine], ...]
    groups: tuple[Found[Group], ...]
    options: tuple[Found[Option], ...]
    """The base vans among them."""
    rules: tuple[Found[Rule], ...]
    ledgers: tuple[Found[LedgerSpec], ...]
    work: tuple[Found[WorkStep], ...]
    cautions: tuple[Found[Caution], ...]
    papers: tuple[Found[Paper], ...]
    collection: tuple[Found[CollectionNote], ...]
    tables: tuple[Found[Table], ...]


def draft_of(entries: Iterable[Entry], words: Vocabulary) -> Draft:
    """Reads every table; faults are noted at their spots."""
    known = tuple(entries)

    def read(
        section: str, kind: Callable[..., _T], given: Callable[[Entry], Mapping[str, object]] = _id
    ) -> tuple[Found[_T], ...]:
        return tuple(
            found for entry in known if entry.section == section for found in _found(kind, entry, words, given(entry))
        )

    return Draft(
        questions=read("question", Question, lambda entry: {"number": int(entry.id)}),
        brief=(
            *read("brief", BriefLine, lambda entry: {"key": entry.id}),
            *read("job", BriefLine, lambda entry: {"key": entry.id, "question": None}),
        ),
        groups=read("group", Group),
        options=tuple(_options(known, words)),
        rules=read("rule", Rule),
        ledgers=read("ledger", LedgerSpec),
        work=read("work", WorkStep),
        cautions=read("caution", Caution),
        papers=read("paper", Paper),
        collection=read("collection", CollectionNote),
        tables=read("table", Table),
    )


def _id(entry: Entry) -> Mapping[str, object]:
    return {"id": entry.id}


def firm_of(table: Mapping[str, object], spot: Spot, words: Vocabulary) -> Firm | None:
    """The firm; None after faults."""
    return record(Firm, table, spot, words, {})


def with_fitting_parts(options: Iterable[Option]) -> Iterator[Option]:
    """The options with every van added whose own table says that the part fits it.

    A part that names no van fits all of them and stays so.
    """
    kept = tuple(options)
    vans_of: dict[OptionId, list[OptionId]] = {}
    for option in kept:
        for part in option.van.fitting_parts if option.van else ():
            vans_of.setdefault(part, []).append(option.id)
    for option in kept:
        more = tuple(van for van in vans_of.get(option.id, ()) if van not in option.fits_vans)
        yield replace(option, fits_vans=option.fits_vans + more) if more and option.fits_vans else option


def _options(entries: Iterable[Entry], words: Vocabulary) -> Iterator[Found[Option]]:
    for entry in entries:
        if entry.section == "option":
            yield from _found(Option, entry, words, {"id": entry.id, "van": None})
        elif entry.section == "van":
            for found in _found(Van, entry, words, {}):
                yield Found(_van_option(OptionId(entry.id), found.record, entry.spot), entry.spot)


def _van_option(id_: OptionId, van: Van, spot: Spot) -> Option:
    """A base van as an option: it has no price, mass or weeks of its own, since ``calc`` takes these from the van."""
    return Option(
        id=id_,
        group=BASE_VAN_GROUP,
        name=van.name,
        description=van.remark,
        gives=van.gives,
        cautions=van.cautions,
        basis=van.basis,
        source=van.source,
        van=van,
        origin=spot.origin,
    )


def _found(
    kind: Callable[..., _T], entry: Entry, words: Vocabulary, given: Mapping[str, object]
) -> Iterator[Found[_T]]:
    """The one record of an entry, or none after faults."""
    read = record(kind, entry.table, entry.spot, words, given)
    if read is not None:
        yield Found(read, entry.spot)
