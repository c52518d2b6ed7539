"""TOML tables to the frozen records of the model, led by the annotations of the records themselves.

A field added to the model is read without a word here: its key is its name, its kind is its annotation, and it may be
left out when it has a default or may be None. What the annotation cannot say is checked in ``rules_checks``.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from functools import cache
from operator import attrgetter
from types import MappingProxyType, NoneType, UnionType
from typing import Any, NamedTuple, TypeAlias, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from specbuilder.model.catalogue import Need
from specbuilder.model.ids import BriefKey, CautionId, GroupId, LedgerId, OptionId, PaperId, RuleId, Tag, Zone
from specbuilder.model.rules import AnyOf

from .expressions import parse_expression
from .faults import Spot, quotable
from .fields import list_of, number_of, table_of, text_of, told, unknown_key, whole_of, word_of, yes_no_of
from .vocabulary import Names, Vocabulary

_T = TypeVar("_T")
_Convert: TypeAlias = Callable[[object, Spot, Vocabulary], object]
"""A TOML value to the value of a field; None after a fault was noted."""

_WRITTEN = MappingProxyType({"circuits": "circuit", "holes": "hole"})
"""Fields whose key differs: each stands in a ``[[circuit]]`` of its own."""
FREE_NAME = re.compile(r"[a-z][a-z0-9_]*")
"""How keys of the brief and names of settings are written."""
_PLACED = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*(?:@(?:side|left|right|rear))?")


class _Key(NamedTuple):
    """How one field stands in a file."""

    field: str
    key: str
    convert: _Convert
    needs: str
    may_lack: bool
    has_default: bool


def record(
    kind: Callable[..., _T], table: Mapping[str, object], spot: Spot, words: Vocabulary, given: Mapping[str, object]
) -> _T | None:
    """The record written in this table; None when faults were noted.

    ``given`` holds the fields that stand elsewhere (the id, from the head); they are no keys of the table.
    """
    values = dict(given)
    known: list[str] = []
    sound = True
    for key in _keys(kind):
        if key.field in given:
            continue
        if key.field == "origin":
            values["origin"] = spot.origin
            continue
        known.append(key.key)
        if key.key in table:
            value = key.convert(table[key.key], spot.at(key.key), words)
            values[key.field] = value
            sound = sound and value is not None
        elif key.may_lack and not key.has_default:
            values[key.field] = None
        elif not key.has_default:
            spot.at(key.key).fault(f"is missing: add it ({key.needs}).")
            sound = False
    for written in table:
        if written not in known:
            unknown_key(written, tuple(known), spot)
            sound = False
    return kind(**values) if sound else None


@cache
def _keys(kind: Any) -> tuple[_Key, ...]:
    """The fields of a record; worked out once, since annotations do not change while the program runs."""
    hints = get_type_hints(kind)
    return tuple(
        _Key(
            field=field.name,
            key=_WRITTEN.get(field.name, field.name),
            convert=_converter(hints[field.name]),
            needs=_needs(hints[field.name]),
            may_lack=NoneType in get_args(hints[field.name]),
            has_default=field.default is not MISSING or field.default_factory is not MISSING,
        )
        for field in fields(kind)
    )


def _converter(hint: object) -> _Convert:
    """How a value of this annotation is read.

    Raises:
        TypeError: if the model holds a kind of field that no file can; a mistake in the program, not in a file.
    """
    if hint in _PLAIN:
        return _PLAIN[hint]
    origin, args = get_origin(hint), get_args(hint)
    if origin in (Union, UnionType):
        return _either(tuple(arg for arg in args if arg is not NoneType))
    if origin is tuple and args[-1] is Ellipsis:
        return _listed(_converter(args[0]))
    if origin is Mapping:
        return _keyed(_converter(args[1]))
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return _word(hint)
    if isinstance(hint, type) and is_dataclass(hint):
        return _nested(hint)
    raise TypeError(f"no way to read {hint}")


def _text(value: object, spot: Spot, words: Vocabulary) -> str | None:
    return text_of(value, spot)


def _whole(value: object, spot: Spot, words: Vocabulary) -> int | None:
    return whole_of(value, spot)


def _number(value: object, spot: Spot, words: Vocabulary) -> float | None:
    return number_of(value, spot)


def _yes_no(value: object, spot: Spot, words: Vocabulary) -> bool | None:
    return yes_no_of(value, spot)


def _placed(value: object, spot: Spot, words: Vocabulary) -> str | None:
    """A tag or a zone, which the table itself makes."""
    text = text_of(value, spot)
    if text is None or _PLACED.fullmatch(text):
        return text
    form = "small letters, digits and hyphens, and at most one @side, @left, @right or @rear at the end"
    spot.fault(f'"{quotable(text)}" is not written as tags and zones are: use {form}.')
    return None


def _named(names_of: Callable[[Vocabulary], Names]) -> _Convert:
    """An id that another table must bear."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> str | None:
        text = text_of(value, spot)
        return text if text is None or known(text, names_of(words), spot) else None

    return convert


def known(word: str, names: Names, spot: Spot) -> bool:
    """True for a word of this catalogue; any other is noted."""
    unknown = names.unknown(word)
    if unknown is not None:
        spot.fault(unknown)
    return unknown is None


def _expression(value: object, spot: Spot, words: Vocabulary) -> AnyOf | None:
    text = text_of(value, spot)
    if text is None:
        return None
    parsed = parse_expression(text, words)
    for fault in parsed.faults:
        spot.fault(f"at column {fault.column}: {fault.words}")
    return None if parsed.faults else parsed.expression


def _need(value: object, spot: Spot, words: Vocabulary) -> Need | None:
    """``a | b``: tags of which one must be given."""
    text = text_of(value, spot)
    if text is None:
        return None
    tags = tuple(tag.strip() for tag in text.split("|"))
    if not all(_PLACED.fullmatch(tag) for tag in tags):
        spot.fault(f'"{quotable(text)}" is not written as a need is: write tags without #, with | between them.')
        return None
    met = [known(tag, words.tags, spot) for tag in tags]
    return Need(any_of=tuple(Tag(tag) for tag in tags)) if all(met) else None


def _word(kind: type[StrEnum]) -> _Convert:
    def convert(value: object, spot: Spot, words: Vocabulary) -> StrEnum | None:
        return word_of(value, spot, kind)

    return convert


def _nested(kind: type[Any]) -> _Convert:
    def convert(value: object, spot: Spot, words: Vocabulary) -> object:
        table = table_of(value, spot)
        return None if table is None else record(kind, table, spot, words, {})

    return convert


def _listed(item: _Convert) -> _Convert:
    def convert(value: object, spot: Spot, words: Vocabulary) -> tuple[object, ...] | None:
        values = list_of(value, spot)
        if values is None:
            return None
        read = tuple(item(each, spot.at(number), words) for number, each in enumerate(values))
        return None if None in read else read

    return convert


def _keyed(item: _Convert) -> _Convert:
    """A table whose keys are free names, such as the settings of a ledger."""

    def convert(value: object, spot: Spot, words: Vocabulary) -> Mapping[str, object] | None:
        table = table_of(value, spot)
        if table is None:
            return None
        read: dict[str, object] = {}
        for key, each in table.items():
            read[key] = item(each, spot.at(key), words)
            if not FREE_NAME.fullmatch(key):
                spot.at(key).fault("the name may hold small letters, digits and _ only: rename it.")
                read[key] = None
        return None if None in read.values() else MappingProxyType(read)

    return convert


def _either(hints: tuple[object, ...]) -> _Convert:
    """The first annotation whose TOML kind fits; each list counts by its first item."""
    if len(hints) == 1:
        return _converter(hints[0])
    ways = tuple((hint, _converter(hint)) for hint in hints)

    def convert(value: object, spot: Spot, words: Vocabulary) -> object:
        for hint, way in ways:
            if _fits(value, hint):
                return way(value, spot, words)
        needs = " or ".join(dict.fromkeys(_needs(hint) for hint in hints))
        spot.fault(f"needs {needs}, but this is {told(value)}: write one of these.")
        return None

    return convert


def _fits(value: object, hint: Any) -> bool:
    """True when the kind of the value is that of the annotation."""
    if isinstance(value, list):
        items = cast("list[object]", value)
        args = get_args(hint)
        return get_origin(hint) is tuple and (not items or _fits(items[0], args[0]))
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        return False
    return hint is type(value) or (hint is float and isinstance(value, int))


_TOLD = MappingProxyType[object, str]({str: "a text", int: "a whole number", float: "a number", bool: "true or false"})


def _needs(hint: Any) -> str:
    """What a value of this annotation is called."""
    args = tuple(arg for arg in get_args(hint) if arg is not NoneType)
    if get_origin(hint) in (Union, UnionType):
        return _needs(args[0])
    if get_origin(hint) is tuple:
        return "a list"
    if get_origin(hint) is Mapping or (is_dataclass(hint) and hint not in (AnyOf, Need)):
        return "a table"
    told_as = _TOLD.get(hint, "a text")
    return f"one of {', '.join(hint)}" if isinstance(hint, type) and issubclass(hint, StrEnum) else told_as


_PLAIN = MappingProxyType[object, _Convert](
    {
        str: _text,
        int: _whole,
        float: _number,
        bool: _yes_no,
        AnyOf: _expression,
        Need: _need,
        Tag: _placed,
        Zone: _placed,
        BriefKey: _text,
        OptionId: _named(attrgetter("options")),
        GroupId: _named(attrgetter("groups")),
        LedgerId: _named(attrgetter("ledgers")),
        CautionId: _named(attrgetter("cautions")),
        PaperId: _named(attrgetter("papers")),
        RuleId: _text,
    }
)
