"""A value typed on the command line, read for the line or field it is meant for."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import AnswerType
from specbuilder.wording import typed
from specbuilder.wording.brief import value_word
from specbuilder.wording.states import NOT_KNOWN

UNKNOWN_WORDS = ("unknown", "not known", NOT_KNOWN)
"""Typed instead of a value these make an answer unknown again."""


def answer_of(catalogue: Catalogue, line: BriefLine, text: str) -> Answer | None:
    """The answer, as the line's type has it; bounds are not looked at here.

    Money may be typed with the firm's sign, as in ``£18,000``; a plain number is pence, as the key says. Numbers are
    read as on the screens.

    Raises:
        ValueError: if the text is no such answer.
    """
    match line.type:
        case AnswerType.WHOLE:
            return _money(catalogue, text) if text.startswith(catalogue.firm.currency) else whole(text)
        case AnswerType.DECIMAL:
            return decimal(text)
        case AnswerType.ONE_OF:
            return _word(line, text)
        case AnswerType.LIST:
            return tuple(_word(line, part) for part in text.split(",") if part.strip())
        case AnswerType.AGES:
            return tuple(whole(part) for part in text.replace(",", " ").split())
        case _:
            assert_never(line.type)


def whole(text: str) -> int:
    """A whole number.

    Raises:
        ValueError: if it is none, or longer than any number here can be.
    """
    number = decimal(text)
    if number != int(number):
        raise ValueError(text)
    return int(number)


def decimal(text: str) -> float:
    """A number with or without decimals.

    Raises:
        ValueError: if it is none, or longer than any number here can be.
    """
    number = typed.number(text)
    if number is None:
        raise ValueError(text)
    return number


def _money(catalogue: Catalogue, text: str) -> int:
    pence = typed.pence(text.removeprefix(catalogue.firm.currency))
    if pence is None:
        raise ValueError(text)
    return pence


def _word(line: BriefLine, text: str) -> str:
    wanted = text.strip().casefold()
    for value in line.values:
        if wanted in (value.casefold(), value_word(line, value).casefold()):
            return value
    raise ValueError(text)
