"""``keys``: the keys of the screens, from the one table the screens read them from."""

from __future__ import annotations

from specbuilder.tui.acts import Where
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import DIGITS, KeyLine
from specbuilder.wording.help import digits_words
from specbuilder.wording.plain import ended

from .answers import Answer
from .output import Exit, StopError


def keys(where: str | None) -> Answer:
    """The keys of one screen; without a name of every one, screen by screen. The act stands in brackets.

    Raises:
        StopError: no screen is called so.
    """
    if where is None:
        return Answer(tuple(f"{one.value}, {line}" for one in Where for line in _lines(one)))
    found = next((one for one in Where if one.value == where.strip().casefold()), None)
    if found is None:
        names = ", ".join(one.value for one in Where)
        raise StopError(Exit.UNUSABLE, f'"{where[:60]}" is no screen: use one of {names}.')
    return Answer(_lines(found))


def _lines(where: Where) -> tuple[str, ...]:
    shown = (line for line in Keyboard().lines_of(where) if line.shown)
    return (*map(_line, shown), ended(f"{DIGITS}: {digits_words()}"))


def _line(line: KeyLine) -> str:
    keys = " or ".join(line.shown.split())
    return f"{ended(f'{keys}: {line.words}')} [{line.act.value}]"
