"""``details``: all that can be said of one option beyond yes and no."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.own_parts import is_theirs, lines_of
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice, OwnPart
from specbuilder.wording import details as words
from specbuilder.wording.circuit_rows import circuit_short
from specbuilder.wording.lines import note_line, place_words, sheet_line, whose_words
from specbuilder.wording.plain import ended
from specbuilder.wording.rows import row_sentence
from specbuilder.wording.spoken import option_words

from .answers import Answer
from .asjson_reading import details_json
from .output import Exit, StopError
from .things import OptionThing, Unclear, thing


def details(catalogue: Catalogue, report: Report, name: str, *, json: bool) -> Answer:
    """A line for each fact, or all of it as JSON.

    Raises:
        StopError: no option is called so.
    """
    match thing(catalogue, name):
        case OptionThing(option=option):
            lines = tuple(_lines(catalogue, report, option))
            return Answer((details_json(catalogue, report, option, lines),) if json else lines)
        case Unclear(text):
            raise StopError(Exit.UNUSABLE, text)
        case _:
            raise StopError(Exit.UNUSABLE, f"{name} is no option: show lists the options of a step or a group.")


def _lines(catalogue: Catalogue, report: Report, option: OptionId) -> Iterator[str]:
    known, chosen = catalogue.options[option], report.spec.chosen(option)
    yield f"{ended(option_words(catalogue, report, option))} [{option}]"
    if sentence := row_sentence(catalogue, report, option, keys=False):
        yield sentence
    for place in known.places:
        taken = any(choice.place is place for choice in chosen)
        yield place_words(words.place_line(catalogue, report, option, place), taken=taken)
    if chosen and (count := words.count_line(catalogue, report, option)):
        yield ended(count)
    for choice in chosen[:1]:
        yield from _choice(catalogue, option, choice)
    yield from words.detail_lines(catalogue, option)
    yield from (ended(circuit_short(one)) for one in report.circuits if one.option == option)


def _choice(catalogue: Catalogue, option: OptionId, choice: Choice) -> Iterator[str]:
    """Whose it is, the note on it, and what is known of a part the customer brings."""
    yield whose_words(choice.owner)
    yield note_line(option, choice.note)
    if is_theirs(catalogue.options[option], choice):
        sheet = choice.own_part or OwnPart()
        yield from (sheet_line(option, line, sheet) for line in lines_of(catalogue.options[option]))
