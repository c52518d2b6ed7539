"""On which line of a TOML file a path stands: ``tomllib`` gives values only, so the text is looked through again."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

Path: TypeAlias = tuple[str | int, ...]
"""Keys from the top of the file down; items of a list are counted from 0."""

_HEAD = re.compile(r"^[ \t]*(\[\[?)([A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+)*)\]", re.MULTILINE)
_TOKEN = re.compile(
    r"""(?P<skip>[ \t\r]+|\#[^\n]*)
    |(?P<newline>\n)
    |(?P<long>\"{3}(?:[^"\\]|\\.|"{1,2}(?!"))*"{3,5}|'{3}(?:[^']|'{1,2}(?!'))*'{3,5})
    |(?P<short>"(?:[^"\\\n]|\\.)*"|'[^'\n]*')
    |(?P<sign>[\[\]{}=,.])
    |(?P<bare>[^\s\[\]{}=,.\#"']+)""",
    re.VERBOSE | re.DOTALL,
)


class TomlLines:
    """Lines of one text that ``tomllib`` has already accepted. Nothing is looked up before it is asked for."""

    def __init__(self, text: str) -> None:
        self.text = text
        self._heads: dict[Path, int] | None = None
        self._all: dict[Path, int] | None = None

    def line(self, path: Path) -> int:
        """The line of this key, item or table, counted from 1; of what encloses it when it does not stand there."""
        if self._all is None:
            self._all = _Index(self.text).lines
        while path and path not in self._all:
            path = path[:-1]
        return self._all.get(path, 1)

    def head_line(self, path: Path) -> int:
        """The line of a table's ``[head]``: as ``line``, but quick, since every table of the catalogue asks."""
        if self._heads is None:
            self._heads = _heads(self.text)
        return self._heads.get(path) or self.line(path)

    def knows(self, path: Path) -> bool:
        """True when this very path stands in the file."""
        self.line(path)
        return self._all is not None and path in self._all


def _heads(text: str) -> dict[Path, int]:
    """Lines of plainly written heads.

    A long string could hold a line that looks like one: such a text gives none, and the whole index answers.
    An item of a list cannot look like a head that anybody asks for: only numbers may stand there unquoted.
    """
    heads: dict[Path, int] = {}
    if '"""' in text or "'''" in text:
        return heads
    counts: dict[Path, int] = {}
    line, done = 1, 0
    for match in _HEAD.finditer(text):
        start = match.start(1)
        line += text.count("\n", done, start)
        done = start
        heads.setdefault(_head_path(tuple(match[2].split(".")), match[1] == "[[", counts), line)
    return heads


def _head_path(keys: tuple[str, ...], is_item: bool, counts: dict[Path, int]) -> Path:
    """The path of a head with the item numbers put in; ``counts`` holds the last item of each list of tables."""
    path: Path = ()
    for number, key in enumerate(keys, 1):
        path += (key,)
        if is_item and number == len(keys):
            counts[path] = counts.get(path, -1) + 1
        if path in counts:
            path += (counts[path],)
    return path


@dataclass(slots=True)
class _Open:
    """A list or an inline table whose end has not come yet."""

    path: Path
    is_list: bool
    item: int = 0


class _Index:
    """One pass over the tokens of a text, noting where each path first stands."""

    def __init__(self, text: str) -> None:
        self.lines: dict[Path, int] = {}
        self._counts: dict[Path, int] = {}
        self._tokens = _tokens(text)
        here: Path = ()
        for token in self._tokens:
            if token.text == "[":
                here = self._head(token.line)
            elif token.kind != "newline":
                self._value(self._key(here, token))

    def _note(self, path: Path, line: int, known: int) -> None:
        """Notes the path and what lies between its first ``known`` keys and it: a dotted key opens tables as well."""
        for end in range(known + 1, len(path) + 1):
            self.lines.setdefault(path[:end], line)

    def _head(self, line: int) -> Path:
        """The rest of a ``[head]`` or ``[[head]]``."""
        keys: list[str] = []
        is_item = False
        for token in self._tokens:
            if token.kind != "sign":
                keys.append(_plain(token))
            elif token.text == "[":
                is_item = True
            elif token.text == "]":
                break
        if is_item:
            next(self._tokens, None)
        path = _head_path(tuple(keys), is_item, self._counts)
        self._note(path, line, 0)
        return path

    def _key(self, here: Path, first: _Token) -> Path:
        """A key, dotted or not, that starts with this token, up to and with its ``=``."""
        path: Path = (*here, _plain(first))
        for token in self._tokens:
            if token.text == "=":
                break
            if token.kind != "sign":
                path += (_plain(token),)
        self._note(path, first.line, len(here))
        return path

    def _value(self, path: Path) -> None:
        """The rest of the statement. What is open stands on a list: a deep value must not exhaust Python's stack."""
        opened: list[_Open] = []
        awaits_item = False
        for token in self._tokens:
            if token.kind == "newline":
                if not opened:
                    return
                continue
            is_sign = token.kind == "sign"
            if is_sign and token.text in "]}":
                opened.pop()
                awaits_item = False
                continue
            if is_sign and token.text == "," and opened:
                opened[-1].item += 1
                awaits_item = True
                continue
            if awaits_item:
                awaits_item = False
                inside = opened[-1]
                if not inside.is_list:
                    path = self._key(inside.path, token)
                    continue
                path = (*inside.path, inside.item)
                self._note(path, token.line, len(inside.path))
            if is_sign and token.text in "[{":
                opened.append(_Open(path, is_list=token.text == "["))
                awaits_item = True


class _Token(NamedTuple):
    kind: str
    text: str
    line: int


def _tokens(text: str) -> Iterator[_Token]:
    """What the text is made of, without blanks and remarks."""
    line = 1
    for match in _TOKEN.finditer(text):
        kind, token = match.lastgroup or "", match[0]
        if kind != "skip":
            yield _Token(kind, token, line)
        if kind in ("newline", "long"):
            line += token.count("\n")


def _plain(token: _Token) -> str:
    """The key itself, without quotes and escapes."""
    if token.kind == "bare":
        return token.text
    if token.text.startswith('"') and "\\" in token.text:
        return str(tomllib.loads(f"key = {token.text}")["key"])
    return token.text[1:-1]
