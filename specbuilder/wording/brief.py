"""The brief in words: lines, answers, open things and questions."""

from __future__ import annotations

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, RuleId
from specbuilder.model.kinds import Step
from specbuilder.model.report import Report
from specbuilder.model.spec import OpenQuestion


def answer_words(catalogue: Catalogue, line: BriefLine, value: Answer | None) -> str:
    """An answer: ``2 grown-ups``, ``no barrier``, ``fridge and kettle``; None is ``not known yet``."""
    raise NotImplementedError


def value_word(line: BriefLine, value: str) -> str:
    """One word a line may take, as it is shown: ``do not mind`` for ``any``."""
    raise NotImplementedError


def line_words(catalogue: Catalogue, report: Report, key: BriefKey) -> str:
    """The answer as it stands: given, ``assumed: 10 A``, or ``not known yet``."""
    raise NotImplementedError


def question_words(catalogue: Catalogue, report: Report, number: int) -> str:
    """The answers of one of the eleven questions in one line: ``2 grown-ups, 2 children``."""
    raise NotImplementedError


def hint(catalogue: Catalogue, line: BriefLine) -> str:
    """How to answer: ``1 yes  2 no  3 do not mind``, ``how many, 1 to 6``, ``height in mm``."""
    raise NotImplementedError


def not_an_answer(catalogue: Catalogue, line: BriefLine) -> str:
    """Why something typed is no answer: ``A whole number from 1 to 6 is needed here``."""
    raise NotImplementedError


def open_thing(
    catalogue: Catalogue,
    report: Report,
    *,
    step: Step,
    group: GroupId | None = None,
    key: BriefKey | None = None,
    rule: RuleId | None = None,
    question: str | None = None,
) -> str:
    """One line of the list of open things."""
    raise NotImplementedError


def open_question(question: OpenQuestion) -> str:
    """``Fabric: customer finds out by 2031-04-28; stops B6``."""
    raise NotImplementedError
