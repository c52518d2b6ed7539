"""Answers of the brief and of the job state from a spec's file, held against the lines of the catalogue."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import assert_never

from specbuilder.model.brief import Answer, Answers, BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import AnswerType

from .faults import Spot, meant, quotable
from .fields import Fields, list_of, number_of, table_of, text_of, unknown_key, whole_of

_BRIEF = "brief"
_JOB_STATE = "job_state"
_TAKE_OUT = "correct it, or take the line out and it is not known yet."


def answers(top: Fields, catalogue: Catalogue | None) -> Answers:
    """What stands in ``[brief]`` and ``[job_state]``. Without a catalogue every key and value is taken as it is."""
    given: dict[BriefKey, Answer] = {}
    for head in (_BRIEF, _JOB_STATE):
        spot = top.spot.at(head)
        table = (table_of(top.value(head), spot) or {}) if top.has(head) else {}
        for key, value in table.items():
            at = spot.at(key)
            if key in given:
                at.fault(f"stands in [{_BRIEF}] as well: take one of the two out.")
                continue
            answer = _plain(value, at) if catalogue is None else _held(key, value, head, catalogue.brief, spot)
            if answer is not None:
                given[BriefKey(key)] = answer
    return Answers(MappingProxyType(given))


def _held(key: str, value: object, head: str, lines: Mapping[BriefKey, BriefLine], spot: Spot) -> Answer | None:
    """The answer to a line of the catalogue; None after a fault was noted."""
    line = lines.get(BriefKey(key))
    if line is None:
        known = tuple(str(k) for k, other in lines.items() if _head_of(other) == head)
        unknown_key(key, known, spot)
        return None
    if _head_of(line) != head:
        spot.at(key).fault(f"belongs into [{_head_of(line)}]: move it there.")
        return None
    return _answer(line, value, spot.at(key))


def _head_of(line: BriefLine) -> str:
    return _JOB_STATE if line.question is None else _BRIEF


def _answer(line: BriefLine, value: object, spot: Spot) -> Answer | None:
    match line.type:
        case AnswerType.WHOLE:
            return _within(line, whole_of(value, spot), spot)
        case AnswerType.DECIMAL:
            return _within(line, number_of(value, spot), spot)
        case AnswerType.ONE_OF:
            return _word(line, value, spot)
        case AnswerType.LIST:
            items = list_of(value, spot)
            words = [_word(line, item, spot.at(n)) for n, item in enumerate(items or ())]
            return None if items is None else tuple(word for word in words if word is not None)
        case AnswerType.AGES:
            items = list_of(value, spot)
            ages = [_within(line, whole_of(item, spot.at(n)), spot.at(n)) for n, item in enumerate(items or ())]
            return None if items is None else tuple(int(age) for age in ages if age is not None)
        case _:
            assert_never(line.type)


def _within(line: BriefLine, value: float | None, spot: Spot) -> int | float | None:
    """The number when it lies within the bounds of the line."""
    if value is None or line.least <= value <= line.most:
        return value
    unit = f" {line.unit}" if line.unit else ""
    spot.fault(f"{value:.12g} does not lie between {line.least:.12g} and {line.most:.12g}{unit}: {_TAKE_OUT}")
    return None


def _word(line: BriefLine, value: object, spot: Spot) -> str | None:
    """The word when the line takes it."""
    text = text_of(value, spot)
    if text is None or text in line.values:
        return text
    spot.fault(f'"{quotable(text)}" is no answer here; {meant(text, line.values, _TAKE_OUT)}')
    return None


def _plain(value: object, spot: Spot) -> Answer | None:
    """Any answer, for reading without a catalogue."""
    match value:
        case str():
            return text_of(value, spot)
        case list():
            items = list_of(value, spot) or ()
            if all(isinstance(item, str) for item in items):
                return tuple(text for n, item in enumerate(items) if (text := text_of(item, spot.at(n))) is not None)
            return tuple(age for n, item in enumerate(items) if (age := whole_of(item, spot.at(n))) is not None)
        case int() if not isinstance(value, bool):
            return whole_of(value, spot)
        case _:
            return number_of(value, spot)
