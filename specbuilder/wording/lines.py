"""Sentences that only line commands say: one fact a line, complete when read aloud."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Owner, Step
from specbuilder.model.own_parts import SheetLine
from specbuilder.model.plain_text import one_line
from specbuilder.model.plausible import Range
from specbuilder.model.report import Report
from specbuilder.model.spec import OpenQuestion, OwnPart, Spec
from specbuilder.model.ways import Difference

from .differences import amounts_spoken
from .edits import VAN_FIELDS
from .names import group_name, listed, option_name
from .own_parts import line_name, line_words
from .plain import ended, raised
from .quantities import number_text
from .states import NOT_KNOWN, owner_word, step_name
from .typed import plain

COMMAND = "specbuilder"


# -- the brief and the real van


def customer_lines(spec: Spec) -> Iterator[str]:
    """Customer, contact and the private note, as the brief has them below its questions."""
    yield ended(f"Customer: {one_line(spec.customer.name) or NOT_KNOWN}")
    yield ended(f"Contact: {one_line(spec.customer.contact) or NOT_KNOWN}")
    yield ended(f"Note of the job, private: {one_line(spec.note) or 'none'}")


def van_lines(spec: Spec) -> Iterator[str]:
    """What only the real van can tell, a line for each."""
    for field, name in VAN_FIELDS.items():
        value = getattr(spec.van_data, field)
        told = plain(value) if isinstance(value, int | float) else one_line(value or "")
        yield ended(f"The real van, {name}: {told or NOT_KNOWN}")


# -- open things and what was found


def open_line(step: Step, words: str, asked: str, handle: str) -> str:
    """``Step kitchen: Cooking, undecided. Nobody finds it out yet. [cooking]``"""
    parts = (f"Step {step_name(step)}: {ended(words)}", asked, f"[{handle}]" if handle else "")
    return " ".join(part for part in parts if part)


def asked_words(question: OpenQuestion | None) -> str:
    """``customer finds it out by 2031-04-28. It stops B6.``"""
    if question is None or not question.owner:
        return "Nobody finds it out yet."
    when = f" by {question.due}" if question.due else ", no date named"
    stops = f" It stops {question.stops}." if question.stops else ""
    return f"{raised(one_line(question.owner))} finds it out{when}.{stops}"


def no_such_question(text: str) -> str:
    """Where nothing of the kind was asked."""
    return f'"{text}" is no open question of this spec: {COMMAND} open lists them.'


def several_questions(text: str) -> str:
    """Where more than one begins so."""
    return f'More than one open question begins with "{text}": type more of it.'


def found_line(step: Step, kind: str, name: str, handle: str) -> str:
    """``Step seating, open: Bench Three [bench-three]``."""
    return f"Step {step_name(step)}{f', {kind}' if kind else ''}: {ended(name)} [{handle}]"


# -- proposals


def usual_spoken(catalogue: Catalogue, report: Report, options: Sequence[OptionId]) -> Iterator[str]:
    """Each option that the house would take, then all together; or that there is nothing to take."""
    if not options:
        yield "Nothing is undecided here, or the house has no usual for it."
        return
    effects = [report.options[option].effect for option in options]
    for option, effect in zip(options, effects, strict=True):
        name = f"{group_name(catalogue, catalogue.options[option].group)}: {option_name(catalogue, option)}"
        yield ended(f"{name}, {_does(catalogue, effect.gross_pence, effect.mass_kg)}")
    pence, mass = sum(effect.gross_pence for effect in effects), sum(effect.mass_kg for effect in effects)
    yield ended(f"Together {_does(catalogue, pence, mass)}")


def _does(catalogue: Catalogue, pence: int, mass_kg: float) -> str:
    difference = Difference(gross_pence=pence, mass_kg=mass_kg, hours=0, weeks=0)
    return amounts_spoken(catalogue, difference) or "adds nothing"


def to_take_all() -> str:
    """Below a proposal that was only shown."""
    return "To take all of it, add --take."


def only_tried() -> str:
    """Below what was only tried."""
    return "Nothing was changed: it was only tried. Without --try it is done."


def differs_nowhere(name: str, known: Sequence[str]) -> str:
    """No line of the comparison is called so."""
    told = f" What differs is: {', '.join(known)}." if known else " Nothing that can be brought over differs."
    return f"{name} does not differ.{told}"


# -- details


def place_words(words: str, *, taken: bool) -> str:
    """A place an option may take, as the details explain it."""
    return ended(f"{'Stands' if taken else 'Can stand'}: {words}")


def whose_words(owner: Owner) -> str:
    """``Whose part: ours.``"""
    return ended(f"Whose part: {owner_word(owner)}")


def note_line(option: OptionId, note: str) -> str:
    """The note for the workshop, and how it is written."""
    told = ended(f"Note: {one_line(note) or 'none'}")
    return f"{told} [{option}.note]"


def sheet_line(option: OptionId, line: SheetLine, sheet: OwnPart) -> str:
    """A line of the sheet of a part the customer brings, and how it is filled in."""
    told = ended(f"{raised(line_name(line))}: {line_words(line, sheet)}")
    return f"{told} [{option}.{line.value}]"


# -- parts the customer brings


def ours_first(name: str, option: OptionId) -> str:
    """A sheet is only of a part the customer brings."""
    return f"{name} is no part the customer brings: say {option}=theirs first."


def sheet_asks(name: str, typed: str, lines: Sequence[str]) -> str:
    """The sheet has no such line."""
    return f"{typed}: the sheet of {name} asks {listed(lines)}."


def range_needed(range_: Range) -> str:
    """``a number from 0.1 to 500 is needed here.``"""
    above = "above" if range_.open else "from"
    return f"a number {above} {number_text(range_.least, '')} to {number_text(range_.most, '')} is needed here."
