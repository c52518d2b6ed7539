"""Whether an answer that a line of the brief itself names (assumed, closed, unnamed) is one the line can take."""

from __future__ import annotations

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.kinds import AnswerType

from .faults import meant, quotable


def answer_fault(line: BriefLine, answer: Answer) -> str | None:
    """What is wrong with an answer to this line, as a sentence; None when nothing is.

    The least and most of a number do not bind the answers that mean *not asked* or *not named*, which may be nought.
    """
    match line.type:
        case AnswerType.WHOLE:
            return None if isinstance(answer, int) else "this line is answered with a whole number: write one."
        case AnswerType.DECIMAL:
            return None if isinstance(answer, (int, float)) else "this line is answered with a number: write one."
        case AnswerType.ONE_OF:
            if isinstance(answer, str):
                return _word_fault(line, answer)
            return "this line is answered with one word: write it in quotes."
        case AnswerType.LIST:
            if isinstance(answer, tuple):
                return next(filter(None, (_word_fault(line, word) for word in answer)), None)
            return "this line is answered with a list of words: put them in [ ]."
        case AnswerType.AGES:
            if isinstance(answer, tuple) and all(isinstance(age, int) for age in answer):
                return None
            return "this line is answered with a list of ages in years: put whole numbers in [ ]."


def _word_fault(line: BriefLine, word: str | int) -> str | None:
    if word in line.values:
        return None
    cure = meant(str(word), line.values, "write one of its values.")
    return f'"{quotable(str(word))}" is no answer of this line; {cure}'
