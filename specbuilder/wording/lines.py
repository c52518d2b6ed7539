"""Sentences that only line commands say: one fact a line, complete when read aloud."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState, Owner, Step
from specbuilder.model.own_parts import SheetLine
from specbuilder.model.plain_text import one_line
from specbuilder.model.plausible import Range
from specbuilder.model.report import Report
from specbuilder.model.spec import OpenQuestion, OwnPart, Spec
from specbuilder.model.ways import Difference
from specbuilder.workshop.progress import HoldPoint

from .differences import amounts_spoken
from .edits import VAN_FIELDS
from .names import group_name, listed, option_name
from .own_parts import line_name, line_words
from .plain import ended, raised
from .quantities import number_text
from .states import NOT_KNOWN, job_state_word, owner_word, step_name
from .typed import plain

COMMAND = "specbuilder"


# -- jobs


def new_command(words: str) -> str:
    """The words of an empty list, with the command in place of the key."""
    return words.replace("Press n", f"Use {COMMAND} new")


def no_such_job() -> str:
    """Where no line of the list has the words."""
    return "No job has these letters. Fewer letters find more."


def only_a_job_is_undone() -> str:
    """Said of a file: what was done to it is written nowhere."""
    return "only a job keeps what was done to it"


def only_a_job_stands() -> str:
    """Said of a file where a job is meant."""
    return "only a job has revisions, variants and records"


def variant_copied(number: str, of: str) -> str:
    """Behind the number of a new variant."""
    return f"{number} is a copy of {of} as it stands. {COMMAND} compare {of} {number} says what differs."


def variant_line(number: str, state: JobState) -> str:
    """A variant below the revisions of a job."""
    return f"Variant {number}: {job_state_word(state)}."


def revision_line(revision: int, state: str, told: str) -> str:
    """``Revision 2: draft, takes the place of revision 1 (the newest).``"""
    return ended(f"Revision {revision}: {state}, {told}")


def look_back(number: str, revision: int) -> str:
    """How an earlier revision is looked at."""
    return f"{COMMAND} show {number}@{revision} looks at it. What was replaced is not to be built."


def stands_on_today(number: str) -> str:
    """Where nothing is to be moved."""
    return f"Job {number} is held against the rules of today already."


def older_line(spec: Spec, own: Catalogue, today: Catalogue) -> str:
    """Which rules it was written under."""
    then, now = own.firm.catalogue_version, today.firm.catalogue_version
    version = f"an earlier state of {then}" if then == now else then
    return f"Job {one_line(spec.number)} was written under {version}; the rules and prices of today are {now}."


def to_move(move: str) -> str:
    """How it is moved; the words of the line on the screens."""
    return f"Nothing was changed. With --move: {ended(move)}"


def moved_to_today(number: str, version: str) -> str:
    """It was."""
    return f"Job {number} goes on under the rules and prices of {version}."


def can_be_read(number: str) -> str:
    """Where nothing is to be restored."""
    return f"Job {number} can be read: there is nothing to restore."


def restored(number: str, instead: str) -> str:
    """Where it was."""
    return f"Job {number} was restored from its {'copy of yesterday' if instead == 'yesterday' else instead}."


def no_such_copy(text: str, known: Sequence[str]) -> str:
    """What was typed is not kept."""
    return f'--instead: "{text}" is not kept of this job: use {" or ".join(known)}.'


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
    when = f"by {question.due}" if question.due else "no date"
    stops = f" It stops {question.stops}." if question.stops else ""
    return f"{raised(one_line(question.owner))} finds it out {when}.{stops}"


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


def same_in_both(name: str) -> str:
    """A line that differs in nothing."""
    return f"{name} is the same in both."


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


# -- the build


def build_head(spec: Spec) -> str:
    """The first line."""
    return f"Build of job {one_line(spec.number)}, revision {spec.revision}."


def hold_line(point: HoldPoint, state: str) -> str:
    """``Hold point H3, next, about Mon 3 May: the roof is cut and sealed.``"""
    return ended(f"Hold point {point.step.hold_point}{f', {state}' if state else ''}: {point.step.hold_text}")


def part_line(name: str, state: str, option: OptionId) -> str:
    """``Side galley, right: to be ordered. [side-galley]``"""
    return f"{ended(f'{name}: {state}')} [{option}]"


def promise_line(text: str) -> str:
    """A promise, with who gave it."""
    return ended(f"Promised: {text}")


def next_call_line(text: str) -> str:
    """The next call that was agreed on."""
    return ended(f"Next call: {text}")


# -- papers


def paper_line(title: str, about: str, called_for: str, name: str) -> str:
    """``Customer's copy, called for: what the customer takes along. [customer]``"""
    return f"{title}, {called_for}: {about} [{name}]"


def next_step_line(text: str) -> str:
    """What comes next in the life of the job."""
    return ended(f"Next: {text}")


def how_read_out(file: str) -> str:
    """Below the list of papers."""
    return f"{COMMAND} paper {file} NAME reads one out; with --to DIR it is written."
