"""Frozen records of the model to JSON values and back, led by their annotations.

A record becomes ``{"is": "Take", "option": "side-galley", "place": "left"}``: its class by name, and every field that
differs from its default. A field added to the model later reads with its default from what was written before.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from enum import Enum
from functools import cache
from types import MappingProxyType, NoneType, UnionType
from typing import Any, NewType, TypeAlias, TypeVar, Union, cast, get_args, get_origin, get_type_hints

from .faults import quotable

Json: TypeAlias = "str | int | float | bool | list[Json] | dict[str, Json] | None"
_T = TypeVar("_T")
_CLASS = "is"


class NotReadableError(ValueError):
    """A value that no record of the wanted kind was ever written as. ``str()`` says which and why."""


def to_json(value: object) -> Json:
    """The value as JSON: records, enums, tuples, mappings, texts and numbers."""
    match value:
        case Enum():
            return to_json(value.value)
        case None | str() | int() | float():
            return value
        case tuple():
            return [to_json(item) for item in cast("tuple[object, ...]", value)]
        case Mapping():
            return {str(key): to_json(item) for key, item in cast("Mapping[object, object]", value).items()}
        case _ if is_dataclass(value) and not isinstance(value, type):
            return _record_to_json(value)
        case _:
            raise TypeError(f"{type(value).__name__} has no form in a journal")


def from_json(kind: type[_T], value: Json) -> _T:
    """The record of this class that was written so.

    Raises:
        NotReadableError: it is none.
    """
    return cast("_T", _read(kind, value))


def one_from_json(kinds: Iterable[type[_T]], value: Json) -> _T:
    """The record of one of these classes that was written so.

    Raises:
        NotReadableError: it is none of them.
    """
    return cast("_T", _read_one(tuple(kinds), value))


def _record_to_json(value: Any) -> Json:
    written: dict[str, Json] = {_CLASS: type(value).__name__}
    for field in fields(value):
        item = getattr(value, field.name)
        if not _is_default(field, item):
            written[field.name] = to_json(item)
    return written


def _is_default(field: Field[Any], item: object) -> bool:
    """``1`` and ``1.0`` are equal and yet read back differently, so the class counts as well."""
    if field.default is not MISSING:
        return type(item) is type(field.default) and bool(item == field.default)
    return field.default_factory is not MISSING and bool(item == field.default_factory())


@cache
def _hints(kind: type[Any]) -> Mapping[str, object]:
    return MappingProxyType(get_type_hints(kind))


def _read(hint: object, value: Json) -> object:
    """The value of this annotation."""
    if isinstance(hint, NewType):
        return _read(hint.__supertype__, value)
    origin, args = get_origin(hint), get_args(hint)
    if origin in (Union, UnionType):
        return _read_one(args, value)
    if origin is tuple:
        return tuple(_read(args[0], item) for item in _as_list(value))
    if origin is not None and issubclass(origin, Mapping):
        return MappingProxyType({_read(args[0], key): _read(args[1], item) for key, item in _as_dict(value).items()})
    if hint is None or hint is NoneType:
        return _plain(value is None, "nothing", value)
    if isinstance(hint, type):
        return _read_class(hint, value)
    raise TypeError(f"{hint!r} has no form in a journal")


def _read_class(kind: type[Any], value: Json) -> object:
    if is_dataclass(kind):
        return _read_record(cast("type[Any]", kind), _as_dict(value))
    if issubclass(kind, Enum):
        try:
            return kind(value)
        except ValueError:
            raise NotReadableError(f"{_told(value)} is no {kind.__name__}") from None
    if kind is str:
        return _plain(isinstance(value, str), "a text", value)
    if kind is int:
        return _plain(isinstance(value, int) and not isinstance(value, bool), "a whole number", value)
    if kind is float:
        return _plain(isinstance(value, int | float) and not isinstance(value, bool), "a number", value)
    raise TypeError(f"{kind!r} has no form in a journal")


def _read_one(hints: tuple[object, ...], value: Json) -> object:
    """The first of these annotations that the value fits; records are told apart by their name."""
    if isinstance(value, dict) and _CLASS in value:
        for hint in hints:
            if isinstance(hint, type) and hint.__name__ == value[_CLASS]:
                return _read_record(hint, value)
        raise NotReadableError(f"{_told(value[_CLASS])} is not known here")
    for hint in hints:
        if isinstance(hint, type) and is_dataclass(hint):
            continue
        try:
            return _read(hint, value)
        except NotReadableError:
            continue
    raise NotReadableError(f"{_told(value)} fits nothing that may stand here")


def _read_record(kind: type[_T], value: Mapping[str, Json]) -> _T:
    if value.get(_CLASS) != kind.__name__:
        raise NotReadableError(f"{kind.__name__} is needed, not {_told(value.get(_CLASS))}")
    hints = _hints(cast("Any", kind))
    unknown = [key for key in value if key != _CLASS and key not in hints]
    if unknown:
        raise NotReadableError(f"{kind.__name__} has no {_told(unknown[0])}")
    given = {key: _read(hints[key], item) for key, item in value.items() if key != _CLASS}
    for name in _without_default(kind):
        if name not in given:
            raise NotReadableError(f"{kind.__name__} lacks {name}")
    return kind(**given)


def _without_default(kind: type[Any]) -> tuple[str, ...]:
    return tuple(f.name for f in fields(kind) if f.default is MISSING and f.default_factory is MISSING)


def _plain(fits: bool, needed: str, value: Json) -> Json:
    if not fits:
        raise NotReadableError(f"{needed} is needed, not {_told(value)}")
    return value


def _as_list(value: Json) -> list[Json]:
    if not isinstance(value, list):
        raise NotReadableError(f"a list is needed, not {_told(value)}")
    return value


def _as_dict(value: Json) -> dict[str, Json]:
    if not isinstance(value, dict):
        raise NotReadableError(f"a record is needed, not {_told(value)}")
    return value


def _told(value: Json) -> str:
    return f'"{quotable(value)}"' if isinstance(value, str) else quotable(str(value))
