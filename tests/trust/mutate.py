"""What can happen to a text file: bytes, lines, values, words, and texts nobody wants to read."""

from __future__ import annotations

import json
import random
import re
from collections.abc import Callable

NUMBERS = ("nan", "inf", "-inf", "-1", "0", "1e308", "-1e308", "99999999999999999999", "1e-9", "0.1", "1_000", "0x10")
KINDS = ("true", '""', "[]", "{}", '"text"', "[[1]]", "1979-05-27", "[true, 1]", '["a", "a"]', "'''\n'''", "07:32:00")
HOSTILE = (
    "[bold]x[/] [@click=app.quit]y[/]",
    "=1+1",
    "\x1b]0;owned\x07\x9b2J",
    "\u202eright to left\u2066",
    "a\u0301\u0323" * 40,
    "\u200b\ufeff",
    "x" * 500,
    "one\ntwo\r\nthree\ttab",
    "שלום وعليكم",
    "\U0001f690\U000e0001",
    "{} %s {0} $HOME `id` ${x}",
    "../../etc/x",
    '\\ " \'\'\' """',
)
_VALUE = re.compile(r"^(\s*[\w.\"-]+\s*=\s*)(.*)$")
_WORD = re.compile(r'"([^"\\\n]*)"')
Mutation = Callable[[random.Random, str], str]


def mutated(dice: random.Random, data: bytes) -> tuple[str, bytes]:
    """What was done, and the file after it; now and then two things at once."""
    name, change = dice.choice(CHANGES)
    if dice.random() < 0.2:
        place = dice.randrange(max(1, len(data)))
        mask = 1 << dice.randrange(8)
        spoilt = data[:place] + bytes([data[place] ^ mask]) + data[place + 1 :] if data else b"\0"
        return f"byte {place} ^ {mask:#x}", spoilt
    text = change(dice, data.decode(errors="replace"))
    if dice.random() < 0.15:
        other, more = dice.choice(CHANGES)
        name, text = f"{name} and {other}", more(dice, text)
    return name, text.encode(errors="surrogatepass")


def _at(dice: random.Random, text: str, does: Callable[[list[str], int], None]) -> str:
    lines = text.split("\n")
    does(lines, dice.randrange(len(lines)))
    return "\n".join(lines)


def _deleted(dice: random.Random, text: str) -> str:
    return _at(dice, text, lambda lines, place: lines.__delitem__(place))


def _doubled(dice: random.Random, text: str) -> str:
    return _at(dice, text, lambda lines, place: lines.insert(place, lines[place]))


def _swapped(dice: random.Random, text: str) -> str:
    def does(lines: list[str], place: int) -> None:
        other = dice.randrange(len(lines))
        lines[place], lines[other] = lines[other], lines[place]

    return _at(dice, text, does)


def _cut(dice: random.Random, text: str) -> str:
    return text[: dice.randrange(len(text) + 1)]


def _values(text: str) -> list[int]:
    return [number for number, line in enumerate(text.split("\n")) if _VALUE.match(line)]


def _with_value(dice: random.Random, text: str, value: str) -> str:
    places = _values(text)
    if not places:
        return text + f"\nx = {value}"
    lines = text.split("\n")
    place = dice.choice(places)
    lines[place] = _VALUE.sub(lambda found: found[1] + value, lines[place])
    return "\n".join(lines)


def _number(dice: random.Random, text: str) -> str:
    return _with_value(dice, text, dice.choice(NUMBERS))


def _kind(dice: random.Random, text: str) -> str:
    return _with_value(dice, text, dice.choice(KINDS))


def _other_value(dice: random.Random, text: str) -> str:
    places = _values(text)
    lines = text.split("\n")
    found = _VALUE.match(lines[dice.choice(places)]) if places else None
    return _with_value(dice, text, found[2] if found else "1")


def _hostile(dice: random.Random, text: str) -> str:
    written = json.dumps(dice.choice(HOSTILE), ensure_ascii=dice.random() < 0.5)
    places = [match.span() for match in _WORD.finditer(text)]
    if not places:
        return text
    begin, end = dice.choice(places)
    return text[:begin] + written + text[end:]


def _unknown(dice: random.Random, text: str) -> str:
    places = [match.span() for match in _WORD.finditer(text)]
    if not places:
        return text
    begin, end = dice.choice(places)
    return text[:begin] + '"no-such-thing"' + text[end:]


def _renamed_key(dice: random.Random, text: str) -> str:
    places = _values(text)
    if not places:
        return text
    lines = text.split("\n")
    place = dice.choice(places)
    lines[place] = dice.choice(("zzz", "Mass_kg", '"a b"', "name")) + " = " + lines[place].partition("=")[2]
    return "\n".join(lines)


def _head(dice: random.Random, text: str) -> str:
    heads = [number for number, line in enumerate(text.split("\n")) if line.startswith("[")]
    if not heads:
        return text
    lines = text.split("\n")
    lines[dice.choice(heads)] = dice.choice(("[x]", "[[x]]", "[option]", "[job]", "[a.b.c.d]", "[]", "[option.Up Per]"))
    return "\n".join(lines)


def _empty(dice: random.Random, text: str) -> str:
    return dice.choice(("", "\n", "\ufeff", "# nothing", "\0", "x" * 100_000, "[" * 3000, "a = " + "[" * 3000))


CHANGES: tuple[tuple[str, Mutation], ...] = (
    ("a line deleted", _deleted),
    ("a line doubled", _doubled),
    ("two lines swapped", _swapped),
    ("cut off", _cut),
    ("a number put in", _number),
    ("a number put in", _number),
    ("another kind of value", _kind),
    ("the value of another line", _other_value),
    ("hostile text", _hostile),
    ("an unknown word", _unknown),
    ("a key renamed", _renamed_key),
    ("a head changed", _head),
    ("emptied", _empty),
)
