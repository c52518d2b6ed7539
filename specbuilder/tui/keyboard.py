"""The keyboard in use: the table of keys as shipped, or with the keys a house chose for some acts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum

from .acts import Act, Where
from .keys import TABLE, KeyLine, clashes_of

_CHARACTERS = {"plus": "+", "minus": "-", "slash": "/", "question_mark": "?"}
"""What the toolkit calls the characters of the table that are no letters."""
_NAMES = {character: name for name, character in _CHARACTERS.items()}
_GIVEN = frozenset({"enter", "escape", "up", "down", "left", "right", "pageup", "pagedown", "home", "end"})
"""Keys that lead about on every screen: an act that has one keeps its keys, so that every screen can be left."""
_FUNCTION = frozenset(f"f{number}" for number in range(1, 10))
"""F10 and up belong to terminals and desktops."""

FIXED = frozenset(entry.act for entry in TABLE if _GIVEN & {*entry.keys, *entry.always})
"""Acts whose keys are always the same."""


class SlipCode(StrEnum):
    """What is wrong with a key a house chose."""

    NO_ACT = "no act"
    FIXED_ACT = "fixed act"
    NO_KEY = "no key"
    TWO_ACTS = "two acts"


@dataclass(frozen=True, slots=True)
class Slip:
    """One wrong line of a house's own keys."""

    code: SlipCode
    act: str
    key: str = ""
    other: str = ""
    """The other act of the key."""
    where: str = ""


class Keyboard:
    """What every key asks for, by place."""

    def __init__(self, table: Iterable[KeyLine] = TABLE) -> None:
        self.table = tuple(table)
        self._by_key: dict[tuple[Where, str], tuple[Act, bool]] = {
            (where, _CHARACTERS.get(key, key)): (entry.act, key in entry.always)
            for entry in self.table
            for where in entry.where
            for key in (*entry.keys, *entry.always)
        }

    def act_of(self, key: str, where: Where, typing: bool = False, character: str | None = None) -> Act | None:
        """What the key asks for there; while something is typed only the keys that are no text."""
        found = self._by_key.get((where, _CHARACTERS.get(key, key)))
        if found is None and character is not None:
            found = self._by_key.get((where, character))
        if found is None or (typing and not found[1]):
            return None
        return found[0]

    def places_of(self, character: str) -> tuple[str, ...]:
        """Names of the places where this sign is a command."""
        return tuple(where for where, key in sorted(self._by_key) if key == character)

    def lines_of(self, where: Where) -> tuple[KeyLine, ...]:
        """The lines of the table that work there, in table order."""
        return tuple(entry for entry in self.table if where in entry.where)

    def hints_of(self, where: Where, typing: bool = False) -> tuple[KeyLine, ...]:
        """The lines for the hint line there."""
        return tuple(entry for entry in self.lines_of(where) if entry.hint and (entry.always or not typing))

    def names(self) -> Mapping[str, str]:
        """How a sentence calls the key of each act: the first that people read in the table."""
        return {entry.act.value: entry.shown.split()[0] for entry in reversed(self.table) if entry.shown}


def slips_of(chosen: Mapping[str, tuple[str, ...]]) -> tuple[Slip, ...]:
    """Everything that is wrong with keys chosen by the names of acts."""
    slips: list[Slip] = []
    acts = {act.value for act in Act}
    for act, keys in chosen.items():
        if act not in acts:
            slips.append(Slip(SlipCode.NO_ACT, act))
        elif act in FIXED:
            slips.append(Slip(SlipCode.FIXED_ACT, act))
        slips += (Slip(SlipCode.NO_KEY, act, key) for key in keys if not _is_key(key))
        slips += [] if keys else [Slip(SlipCode.NO_KEY, act)]
    if slips:
        return tuple(slips)
    return tuple(dict.fromkeys(_clashing(chosen)))


def _clashing(chosen: Mapping[str, tuple[str, ...]]) -> Iterable[Slip]:
    for clash in clashes_of(rebound(chosen)):
        mine, other = (clash.one, clash.other) if clash.one in chosen else (clash.other, clash.one)
        yield Slip(SlipCode.TWO_ACTS, mine, _CHARACTERS.get(clash.key, clash.key), other, clash.where)


def rebound(chosen: Mapping[str, tuple[str, ...]]) -> tuple[KeyLine, ...]:
    """The table with these keys. Characters take the place of characters, function keys that of function keys."""
    return tuple(_rebound(entry, chosen[entry.act]) if entry.act in chosen else entry for entry in TABLE)


def _rebound(entry: KeyLine, keys: tuple[str, ...]) -> KeyLine:
    """A place that has only function keys for an act is one for text, and keeps to them."""
    plain = tuple(_NAMES.get(key, key) for key in keys if key not in _FUNCTION)
    function = tuple(key for key in keys if key in _FUNCTION) or entry.always
    if not plain or (entry.always and not entry.keys):
        plain = entry.keys
    shown = " ".join((*(_CHARACTERS.get(key, key) for key in plain), *(key.upper() for key in function)))
    return replace(entry, keys=plain, always=function, shown=shown)


def _is_key(key: str) -> bool:
    """One character that is no digit and no blank, or a function key; backspace and the rest are the program's own."""
    return key in _FUNCTION or (len(key) == 1 and key.isprintable() and not key.isspace() and not key.isdecimal())
