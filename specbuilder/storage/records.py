"""TOML tables to the frozen records of the model, led by the annotations of the records themselves.

A field added to the model is read without a word here: its key is its name, its kind is its annotation, and it may be
left out when it has a default or may be None. What the annotation cannot say is checked in ``rules_checks``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from functools import cache
from operator import attrgetter
from types import MappingProxyType, NoneType, UnionType
from typing import Any, NamedTuple, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from specbuilder.model.ids import BriefKey, CautionId, GroupId, LedgerId, OptionId, PaperId, RuleId, Tag, Zone
from specbuilder.model.parts import Need
from specbuilder.model.rules import AnyOf

from . import converters
from .converters import Convert
from .faults import Spot
from .fields import table_of, told, unknown_key
from .vocabulary import Vocabulary

_T = TypeVar("_T")
_WRITTEN = MappingProxyType({"circuits": "circuit", "holes": "hole", "pass_figures": "pass_figure"})
"""Fields whose key differs: each stands in a ``[[circuit]]`` of its own."""
_NAMED = MappingProxyType(
    {
        "fits_vans": attrgetter("vans"),
        "build_step": attrgetter("steps"),
        "freeze_step": attrgetter("steps"),
        "predecessors": attrgetter("steps"),
        "hold_points": attrgetter("hold_points"),
        "at_hold_point": attrgetter("hold_points"),
        "group": attrgetter("groups"),
        "only_with": attrgetter("tags"),
        "unless_given": attrgetter("tags"),
        "beside": attrgetter("tags"),
    }
)
"""Fields whose annotation does not say, or not closely enough, which words they hold; each to the words it may."""


class _Key(NamedTuple):
    """How one field stands in a file."""

    field: str
    key: str
    convert: Convert
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
            convert=_field_converter(field.name, hints[field.name]),
            needs=_needs(hints[field.name]),
            may_lack=NoneType in get_args(hints[field.name]),
            has_default=field.default is not MISSING or field.default_factory is not MISSING,
        )
        for field in fields(kind)
    )


def _field_converter(name: str, hint: object) -> Convert:
    names_of = _NAMED.get(name)
    if names_of is None:
        return _converter(hint)
    word = converters.named(names_of)
    return converters.listed(word) if get_origin(hint) is tuple else word


def _converter(hint: object) -> Convert:
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
        return converters.listed(_converter(args[0]))
    if origin is Mapping:
        return converters.keyed(_converter(args[1]))
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return converters.word(hint)
    if isinstance(hint, type) and is_dataclass(hint):
        return _nested(hint)
    raise TypeError(f"no way to read {hint}")


def _nested(kind: type[Any]) -> Convert:
    def convert(value: object, spot: Spot, words: Vocabulary) -> object:
        table = table_of(value, spot)
        return None if table is None else record(kind, table, spot, words, {})

    return convert


def _either(hints: tuple[object, ...]) -> Convert:
    """The first annotation whose TOML kind fits; each list counts by its first item."""
    if len(hints) == 1:
        return _converter(hints[0])
    ways = tuple((hint, _converter(hint)) for hint in hints)

    def convert(value: object, spot: Spot, words: Vocabulary) -> object:
        for hint, way in ways:
            if _fits(value, hint):
                return way(value, spot, words)
        needs = " or ".join(dict.fromkeys(_needs(hint) for hint in hints if not (hint is int and float in hints)))
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


_PLAIN = MappingProxyType[object, Convert](
    {
        str: converters.text,
        int: converters.whole,
        float: converters.number,
        bool: converters.yes_no,
        AnyOf: converters.expression,
        Need: converters.need,
        Tag: converters.placed,
        Zone: converters.placed,
        BriefKey: converters.text,
        OptionId: converters.named(attrgetter("options")),
        GroupId: converters.named(attrgetter("groups")),
        LedgerId: converters.named(attrgetter("ledgers")),
        CautionId: converters.named(attrgetter("cautions")),
        PaperId: converters.named(attrgetter("papers")),
        RuleId: converters.text,
    }
)
