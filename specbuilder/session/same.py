"""A memo for things that are large or cannot be hashed: asked with the very same objects, the same answer."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import lru_cache, wraps
from typing import ParamSpec, TypeVar

_P = ParamSpec("_P")
_T = TypeVar("_T")


@lru_cache(maxsize=1_000)
def _first(value: Hashable) -> Hashable:
    return value


def as_before(value: _T) -> _T:
    """The first of equal values: what is made anew of the same parts is then the same object."""
    return _first(value)  # type: ignore[return-value]  # of the same type


class _Same:
    """Some objects as a key. They live as long as it does, so no other object can be taken for one of them."""

    __slots__ = ("_ids", "things")

    def __init__(self, things: tuple[object, ...]) -> None:
        self.things = things
        self._ids = tuple(map(id, things))

    def __hash__(self) -> int:
        return hash(self._ids)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other._ids == self._ids


def remembered(most: int) -> Callable[[Callable[_P, _T]], Callable[_P, _T]]:
    """The last ``most`` answers of a pure function are at hand, each for the very same objects, given in order."""

    def decorate(work: Callable[_P, _T]) -> Callable[_P, _T]:
        @lru_cache(maxsize=most)
        def answer(key: _Same) -> _T:
            return work(*key.things)  # type: ignore[arg-type, call-arg]  # given below

        @wraps(work)
        def asked(*things: _P.args, **named: _P.kwargs) -> _T:
            assert not named, "a memo knows things by their order"
            return answer(_Same(things))

        return asked

    return decorate
