"""Builds, and the store of old ones.

A build is kept twice over: as bytes indexed by literal, for the search, and as one great whole number with bit v set
where variable v is true, so that a question to hundreds of builds at once is a few operations on whole numbers.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

Build = bytes
"""``build[lit]`` is 1 where the literal holds, else 0, for every ``v`` and ``-v``; ``build[0]`` is not looked at."""

_TO_DIGITS = bytes([48, 49, *([48] * 254)])
_TO_VALUES = bytes([0] * 49 + [1] + [0] * 206)
_OPPOSITE = bytes([1, 0, *([0] * 254)])


@dataclass(frozen=True, slots=True)
class Kept:
    """A build in the store."""

    mask: int
    """Bit v: variable v is true."""
    build: Build
    sums: tuple[int, ...]
    """Of each limit: what the build draws."""


@dataclass(frozen=True, slots=True)
class Held:
    """The literals held, as masks."""

    care: int
    """Bit v: variable v is held, either way."""
    want: int
    """Bit v: it is held true."""


def held_masks(lits: Iterable[int]) -> Held:
    """Masks of some literals."""
    care = want = 0
    for lit in lits:
        if lit > 0:
            bit = 1 << lit
            care |= bit
            want |= bit
        else:
            care |= 1 << -lit
    return Held(care, want)


def mask_of(build: bytes | bytearray, count: int) -> int:
    """The variables true in a build, as a whole number."""
    return int(bytes(build[count::-1]).translate(_TO_DIGITS), 2) & ~1


def build_of(mask: int, count: int) -> Build:
    """The build in which just these variables are true."""
    values = bin(mask)[:1:-1].encode().translate(_TO_VALUES).ljust(count + 1, b"\0")
    return values + values[:0:-1].translate(_OPPOSITE)


def variables_of(mask: int) -> list[int]:
    """The variables whose bits are set, in rising order."""
    found: list[int] = []
    if mask.bit_count() * 12 < mask.bit_length():
        while mask:
            low = mask & -mask
            found.append(low.bit_length() - 1)
            mask ^= low
        return found
    digits = bin(mask)[:1:-1]
    at = digits.find("1")
    while at >= 0:
        found.append(at)
        at = digits.find("1", at + 1)
    return found


class Store:
    """Old builds, the newest last. When full, the older half is thinned to every second one."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._kept: list[Kept] = []
        self._known: set[int] = set()

    def __len__(self) -> int:
        return len(self._kept)

    def add(self, kept: Kept) -> None:
        """Keep a build, once."""
        if kept.mask in self._known:
            return
        self._known.add(kept.mask)
        self._kept.append(kept)
        if len(self._kept) > self._most:
            half = len(self._kept) // 2
            self._kept = self._kept[:half:2] + self._kept[half:]
            self._known = {old.mask for old in self._kept}

    def last(self) -> Kept | None:
        """The newest build."""
        return self._kept[-1] if self._kept else None

    def keeping(self, held: Held) -> list[Kept]:
        """The builds that keep all of some literals, oldest first."""
        care, want = held.care, held.want
        return [kept for kept in self._kept if kept.mask & care == want]

    def first_keeping(self, held: Held) -> Kept | None:
        """The newest build that keeps all of some literals."""
        care, want = held.care, held.want
        for kept in reversed(self._kept):
            if kept.mask & care == want:
                return kept
        return None

    def nearly(self, held: Held, most: int) -> list[Kept]:
        """The builds that break one to ``most`` of some literals, newest first."""
        care, want = held.care, held.want
        return [kept for kept in reversed(self._kept) if 0 < ((kept.mask ^ want) & care).bit_count() <= most]
