"""The brief in words: lines, answers, open things and questions."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.brief import Answer, BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, GroupId, RuleId
from specbuilder.model.kinds import AnswerType, Step
from specbuilder.model.report import Report
from specbuilder.model.spec import OpenQuestion

from . import quantities
from .brief_terms import term
from .names import group_name, key_name, listed, option_name
from .plain import ended
from .states import NOT_KNOWN, UNDECIDED, step_name
from .typed import below_nought, number, plain

_MM_IN = {1000: "m", 10: "cm"}
"""What is typed by habit where millimetres are wanted."""


def answer_words(catalogue: Catalogue, line: BriefLine, value: Answer | None) -> str:
    """An answer: ``2 grown-ups``, ``no barrier``, ``kettle and laptop``; None is ``not known yet``."""
    words = term(line.key)
    match value:
        case None:
            return NOT_KNOWN
        case str():
            return value_word(line, value)
        case tuple():
            return _several(line, value)
        case int() | float():
            if words.none and (value == 0 or value == line.unnamed):
                return words.none
            if words.one and value == 1:
                return words.one
            if words.many:
                return words.many.replace("#", quantities.number_text(value, ""))
            return quantities.quantity(value, line.unit, catalogue.firm.currency)
        case _:
            assert_never(value)


def telling(catalogue: Catalogue, line: BriefLine, value: Answer | None) -> str:
    """An answer that says what it is about where it stands alone: ``2 grown-ups``, ``barrier height 2,100 mm``."""
    words = answer_words(catalogue, line, value)
    known = term(line.key)
    if words == known.none:
        return words
    match value:
        case int() | float() if words != known.one and not known.many:
            return f"{known.name} {words}"
        case str() if value not in known.values:
            return f"{known.name} {words}"
        case tuple() if line.type is AnswerType.LIST:
            return known.many.replace("#", words) if known.many else f"{known.name} {words}"
        case _:
            return words


def choice_word(line: BriefLine, value: str) -> str:
    """A word beside its number where it is picked from a list: a plain yes or no answers the sentence that asks."""
    return value if value in ("yes", "no") else value_word(line, value)


def value_word(line: BriefLine, value: str) -> str:
    """One word a line may take, as it is shown: ``do not mind`` for ``any``."""
    words = term(line.key)
    if value in words.values:
        return words.values[value]
    if value == "none" and words.none:
        return words.none
    if quantities.is_number(value) and line.unit:
        return f"{value} {line.unit}"
    return value.replace("-", " ").replace("_", " ")


def line_words(catalogue: Catalogue, report: Report, key: BriefKey) -> str:
    """The answer as it stands: given, ``assumed: 10 A``, or ``not known yet``."""
    line = catalogue.brief.get(key)
    if line is None:
        return NOT_KNOWN
    words = answer_words(catalogue, line, report.facts.get(key))
    return f"assumed: {words}" if key in report.facts.assumed else words


def assumption(catalogue: Catalogue, report: Report, key: BriefKey) -> str:
    """What is assumed while nobody has answered: ``weight of a child 30 kg``, ``no pets``."""
    line = catalogue.brief.get(key)
    return telling(catalogue, line, report.facts.get(key)) if line else key_name(catalogue, key)


def question_words(catalogue: Catalogue, report: Report, number: int) -> str:
    """All answers of one of the eleven questions: ``2 grown-ups, 2 children; not known yet: sleepers``."""
    group = catalogue.questions[number].group
    lines = [line for line in catalogue.brief.values() if line.question == number]
    given = [_group_words(catalogue, report, GroupId(group))] if group is not None else []
    given += (telling(catalogue, x, said) for x in lines if (said := report.spec.answers.get(x.key)) is not None)
    unknown = [key_name(catalogue, line.key) for line in lines if line.key in report.unknown]
    assumed = [
        telling(catalogue, x, report.facts.get(x.key))
        for x in lines
        if x.key in report.assumed and report.spec.answers.get(x.key) is None
    ]
    parts = [", ".join(given)] if given else []
    if unknown:
        parts.append(f"{NOT_KNOWN}: {listed(unknown)}" if given else NOT_KNOWN)
    if assumed:
        parts.append(f"assumed: {', '.join(assumed)}")
    return "; ".join(parts) or "not asked"


def hint(catalogue: Catalogue, line: BriefLine) -> str:
    """How to answer: ``1 yes  2 no  3 do not mind``, ``from 1 to 6``, ``mm, from 0 to 3,500, 0: no barrier``."""
    match line.type:
        case AnswerType.ONE_OF | AnswerType.LIST:
            return "  ".join(f"{number} {choice_word(line, value)}" for number, value in enumerate(line.values, 1))
        case AnswerType.AGES:
            return "age of each in years, a space between"
        case AnswerType.WHOLE | AnswerType.DECIMAL:
            return _number_hint(catalogue, line)
        case _:
            assert_never(line.type)


def not_an_answer(catalogue: Catalogue, line: BriefLine, typed: str = "") -> str:
    """What is needed where something else was typed: ``A whole number from 0 to 3,500 is needed here, in mm.``"""
    match line.type:
        case AnswerType.WHOLE:
            return f"A whole number {_bounds(catalogue, line)} is needed here{_in_unit(line, typed)}."
        case AnswerType.DECIMAL:
            return f"A number {_bounds(catalogue, line)} is needed here{_in_unit(line, typed)}."
        case AnswerType.ONE_OF:
            return f"One of these is needed here: {listed((choice_word(line, v) for v in line.values), 'or')}."
        case AnswerType.LIST:
            return f"Some of these are needed here: {listed(choice_word(line, v) for v in line.values)}."
        case AnswerType.AGES:
            return f"Ages in whole years {_bounds(catalogue, line)} are needed here, a space between them."
        case _:
            assert_never(line.type)


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
    """One line of the list of open things; with nothing named it is the data of the real van."""
    if key is not None:
        asked = catalogue.brief[key].question
        heading = f"{catalogue.questions[asked].asks}: " if asked is not None else ""
        return f"{heading}{key_name(catalogue, key)}, {NOT_KNOWN}"
    if group is not None:
        return f"{group_name(catalogue, group)}, {UNDECIDED}"
    if rule is not None:
        known = catalogue.rules[rule]
        return f"{known.level.value}, broken: {ended(known.because)}"
    if question is not None:
        return next((open_question(q) for q in report.spec.questions if q.text == question), question)
    return f"Data of the real van, {NOT_KNOWN} ({van_data_lacks(report)})" if step is Step.BASE_VAN else step_name(step)


def van_data_lacks(report: Report) -> str:
    """Which compulsory data of the real van are missing: ``end of the chassis number and year``."""
    data = report.spec.van_data
    return listed(
        name for name, known in (("end of the chassis number", bool(data.vin_tail)), ("year", data.year)) if not known
    )


def open_question(question: OpenQuestion) -> str:
    """``Fabric: customer finds out by 2031-04-28, stops B6``; who or when not named says so."""
    who = f"{question.owner} finds out" if question.owner else "nobody finds out yet"
    when = f"by {question.due}" if question.due else "no date"
    stops = f", stops {question.stops}" if question.stops else ""
    text = question.text if question.text.endswith("?") else f"{question.text}:"
    return f"{text} {who} {when}{stops}" if question.owner else f"{text} {who}, {when}{stops}"


def nothing_open() -> str:
    """What stands where the list of open things is empty."""
    return "Nothing is open: every question has its answer."


def _several(line: BriefLine, values: tuple[str, ...] | tuple[int, ...]) -> str:
    if not values:
        return term(line.key).none or "none"
    if line.type is AnswerType.AGES:
        years = listed(str(value) for value in _counted(values))
        return f"aged {years}"
    return listed(value_word(line, str(value)) for value in values)


def _counted(values: tuple[str, ...] | tuple[int, ...]) -> tuple[str, ...]:
    """Equal ages told once with how many have it, so that twins do not vanish."""
    counts = {value: values.count(value) for value in dict.fromkeys(values)}
    return tuple(f"{value}" if count == 1 else f"{value} ({count} of them)" for value, count in counts.items())


def _group_words(catalogue: Catalogue, report: Report, group: GroupId) -> str:
    status = report.groups.get(group)
    if status is None or not status.choices:
        return NOT_KNOWN
    return listed(option_name(catalogue, choice.option) for choice in status.choices)


def _number_hint(catalogue: Catalogue, line: BriefLine) -> str:
    unit = catalogue.firm.currency if line.unit == quantities.PENCE else quantities.unit_text(line.unit)
    hint = f"{unit}, {_bounds(catalogue, line)}" if unit else _bounds(catalogue, line)
    if below_nought(line):
        hint += f"; - begins one below nought; - and Enter: {NOT_KNOWN}"
    if line.unnamed is not None:
        hint += f", {answer_words(catalogue, line, line.unnamed)}: {line.unnamed}"
    return hint


def _in_unit(line: BriefLine, typed: str) -> str:
    """``, in mm``; of metres and centimetres also what they are: ``, in mm: 2100 for 2.1 m``. Nothing of counts."""
    if not line.unit or line.unit == quantities.PENCE or not quantities.is_sign(line.unit):
        return ""
    told = f", in {quantities.unit_text(line.unit)}"
    value = number(typed)
    if value is None or line.unit != "mm":
        return told
    for many, unit in _MM_IN.items():
        if line.least <= (meant := value * many) <= line.most and meant > 0 and meant == int(meant):
            return f"{told}: {plain(meant)} for {plain(value)} {unit}"
    return told


def _bounds(catalogue: Catalogue, line: BriefLine) -> str:
    if line.unit == quantities.PENCE:
        currency = catalogue.firm.currency
        return f"from {quantities.money(line.least, currency)} to {quantities.money(line.most, currency)}"
    return f"from {quantities.number_text(line.least, '')} to {quantities.number_text(line.most, '')}"
