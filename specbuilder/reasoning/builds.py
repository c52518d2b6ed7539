"""Builds, and the store of old ones.

A build is kept twice over: as bytes indexed by literal, for the search, and as one great whole number with bit v set
where variable v is true, so that a question to hundreds of builds at once is a few operations on whole numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

BITS_ONE_BY_ONE_MAX = 60_000
"""Up to so many literals times variables, a mask is put together bit by bit."""
LOOKED_AT = 60
"""So many builds are looked at for one that is near."""

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
    sums: tuple[int, ...]
    """Of each limit: what the build draws."""


@dataclass(frozen=True, slots=True)
class Cover:
    """Some literals as masks: what is held, or the beginning of a trail."""

    care: int
    """Bit v: variable v has a value."""
    want: int
    """Bit v: it is true."""
    upto: int = 0
    """How much of the trail it covers."""


def cover_of(lits: Sequence[int], count: int, before: Cover | None = None) -> Cover:
    """The cover of some literals more than ``before``."""
    care, want, upto = (before.care, before.want, before.upto) if before else (0, 0, 0)
    if len(lits) * count < BITS_ONE_BY_ONE_MAX:
        for lit in lits:
            if lit > 0:
                bit = 1 << lit
                care |= bit
                want |= bit
            else:
                care |= 1 << -lit
    else:
        true = bytearray(b"0" * (count + 1))
        some = bytearray(b"0" * (count + 1))
        for lit in lits:
            if lit > 0:
                true[count - lit] = some[count - lit] = 49
            else:
                some[count + lit] = 49
        care |= int(some, 2)
        want |= int(true, 2)
    return Cover(care, want, upto + len(lits))


def mask_of(build: bytes | bytearray, count: int) -> int:
    """The variables true in a build, as a whole number."""
    return int(bytes(build[count::-1]).translate(_TO_DIGITS), 2) & ~1


def row_of(mask: int, count: int) -> bytes:
    """The values of the variables 0 to ``count``, a byte each."""
    return bin(mask)[:1:-1].encode().translate(_TO_VALUES).ljust(count + 1, b"\0")


def build_of(mask: int, count: int) -> Build:
    """The build in which just these variables are true."""
    values = row_of(mask, count)
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
    """Old builds, the newest last."""

    def __init__(self, most: int) -> None:
        self._most = most
        self.kept: list[Kept] = []
        self._known: set[int] = set()

    def __len__(self) -> int:
        return len(self.kept)

    def add(self, kept: Kept) -> None:
        """Keep a build, once."""
        if kept.mask in self._known or len(self.kept) >= 2 * self._most:
            return
        self._known.add(kept.mask)
        self.kept.append(kept)

    def trim(self) -> None:
        """Thin the older half if there are too many."""
        if len(self.kept) > self._most:
            half = len(self.kept) // 2
            self.kept = self.kept[:half:2] + self.kept[half:]
            self._known = {old.mask for old in self.kept}

    def nearest(self, held: Cover) -> Kept | None:
        """Of the newest builds the one that breaks least of some literals."""
        care, want = held.care, held.want
        newest = self.kept[: -1 - LOOKED_AT : -1]
        return min(newest, key=lambda kept: ((kept.mask ^ want) & care).bit_count(), default=None)

    def keeping(self, held: Cover) -> list[Kept]:
        """The builds that keep all of some literals, oldest first."""
        care, want = held.care, held.want
        return [kept for kept in self.kept if kept.mask & care == want]

    def first_keeping(self, held: Cover) -> Kept | None:
        """The newest build that keeps all of some literals."""
        care, want = held.care, held.want
        for kept in reversed(self.kept):
            if kept.mask & care == want:
                return kept
        return None

    def nearly(self, held: Cover, most: int) -> list[Kept]:
        """The builds that break one to ``most`` of some literals, newest first."""
        care, want = held.care, held.want
        return [kept for kept in reversed(self.kept) if 0 < ((kept.mask ^ want) & care).bit_count() <= most]
