"""Words, numbers and signs of a written expression, taken from left to right."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import NoReturn

from .faults import quotable

_BLANKS = re.compile(r"[ \t]*")
_SIGN = re.compile(r"!=|<=|>=|[!-/:-@\[-`{-~]")
WORD = re.compile(r"[A-Za-z0-9_][A-Za-z0-9_.-]*")
NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?")
UNSIGNED = re.compile(r"[0-9]+(?:\.[0-9]+)?")
VALUE = re.compile(r"[A-Za-z0-9_.-]+")


@dataclass(frozen=True, slots=True)
class ExpressionFault:
    """What is wrong with a written expression."""

    column: int
    """Counted from 1 within the expression."""
    words: str


class GrammarError(Exception):
    """Nothing after this fault can be trusted. Never leaves the parser."""

    def __init__(self, fault: ExpressionFault) -> None:
        super().__init__(fault.words)
        self.fault = fault


class Scanner:
    """The text and how far it has been read; blanks are passed over by themselves."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._at = 0
        self._skip()

    @property
    def column(self) -> int:
        """Of the next character, counted from 1."""
        return self._at + 1

    @property
    def at_end(self) -> bool:
        """True when nothing is left."""
        return self._at == len(self._text)

    @property
    def next_sign(self) -> str:
        """The sign that comes next; empty when something else does."""
        match = _SIGN.match(self._text, self._at)
        return match[0] if match else ""

    def comes(self, pattern: re.Pattern[str]) -> bool:
        """True when this comes next."""
        return pattern.match(self._text, self._at) is not None

    def take(self, sign: str) -> bool:
        """Passes over the sign if it comes next."""
        if not sign or self.next_sign != sign:
            return False
        self._at += len(sign)
        self._skip()
        return True

    def need(self, sign: str) -> None:
        """Passes over the sign.

        Raises:
            GrammarError: if something else comes next.
        """
        if not self.take(sign):
            self.expected(sign)

    def matched(self, pattern: re.Pattern[str], what: str) -> str:
        """What comes next, in this pattern.

        Raises:
            GrammarError: if something else comes next.
        """
        match = pattern.match(self._text, self._at)
        if match is None:
            self.expected(what)
        self._at = match.end()
        self._skip()
        return match[0]

    def number(self, pattern: re.Pattern[str] = NUMBER) -> float:
        """A finite number.

        Raises:
            GrammarError: if something else comes next.
        """
        column = self.column
        number = float(self.matched(pattern, "a number"))
        if not math.isfinite(number):
            self.stop(column, "the number is larger than anything counted here: check it.")
        return number

    def expected(self, what: str) -> NoReturn:
        """Ends the reading at the next character."""
        if self.at_end:
            self.stop(self.column, f"expected {what}, but the text ends.")
        found = WORD.match(self._text, self._at)
        here = found[0] if found else self.next_sign or self._text[self._at]
        self.stop(self.column, f'expected {what}, but found "{quotable(here)}".')

    def stop(self, column: int, words: str) -> NoReturn:
        """Ends the reading."""
        raise GrammarError(ExpressionFault(column, words))

    def _skip(self) -> None:
        match = _BLANKS.match(self._text, self._at)
        self._at = match.end() if match else self._at
