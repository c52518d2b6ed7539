"""``keys``: the keys of the screens, from the one table the screens read them from."""

from __future__ import annotations

from pathlib import Path

from specbuilder.tui.acts import Where
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import DIGITS, KeyLine
from specbuilder.wording.help import digits_words
from specbuilder.wording.plain import ended

from .answers import Answer
from .output import Exit, StopError
from .own_keys import unusable_keys


def keys(where: str | None, own: Path | None) -> Answer:
    """The keys of one screen; without a name of every one, screen by screen. The act stands in brackets.

    ``own`` is a file of a house's own keys.

    Raises:
        StopError: no screen is called so.
    """
    keyboard = _keyboard(own)
    if where is None:
        return Answer(tuple(f"{one.value}, {line}" for one in Where for line in _lines(keyboard, one)))
    found = next((one for one in Where if one.value == where.strip().casefold()), None)
    if found is None:
        names = ", ".join(one.value for one in Where)
        raise StopError(Exit.UNUSABLE, f'"{where[:60]}" is no screen: use one of {names}.')
    return Answer(_lines(keyboard, found))


def _keyboard(own: Path | None) -> Keyboard:
    if own is None:
        return Keyboard()
    from specbuilder.tui.own_keys import own_keyboard

    with unusable_keys():
        return own_keyboard(own)


def _lines(keyboard: Keyboard, where: Where) -> tuple[str, ...]:
    shown = (line for line in keyboard.lines_of(where) if line.shown)
    return (*map(_line, shown), ended(f"{DIGITS}: {digits_words()}"))


def _line(line: KeyLine) -> str:
    keys = " or ".join(line.shown.split())
    return f"{ended(f'{keys}: {line.words}')} [{line.act.value}]"
