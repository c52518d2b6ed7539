"""Sentences of line commands about a job as a whole: the list, revisions, variants, build and papers."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import Spec
from specbuilder.workshop.progress import HoldPoint

from .jobs import NO_NAME, state_and_revision
from .lines import COMMAND
from .plain import ended, fitted
from .states import job_state_word

_LONGEST_NAME = 40


# -- the list


def new_command(words: str) -> str:
    """The words of an empty list, with the command in place of the key."""
    return words.replace("Press n", f"Use {COMMAND} new")


def job_line(
    number: str, customer: str, state: JobState, revision: int, van: str, changed: str, price: str = ""
) -> str:
    """One line of the list; what is missing says so."""
    name = fitted(one_line(customer), _LONGEST_NAME) or NO_NAME
    facts = (state_and_revision(state, revision), van or "van not known", price, changed and f"changed {changed}")
    return ended(f"{number} {name}: {', '.join(fact for fact in facts if fact)}")


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


def begins_next(number: str) -> str:
    """How the next revision of what has left the house is begun."""
    return f"{COMMAND} change {number} begins it; set and drop with --try show what it would do."


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


# -- what stands when a disk failed in the middle


def is_in_journal(number: str) -> str:
    """It is written down, and its file is not written yet."""
    return f"What was asked for is kept in the journal of job {number}: it is written with the next change."


def could_not_be_written(number: str) -> str:
    """It did not even get into the journal, or the disk may have lost it there."""
    return f"What was asked for could not be written down: look at job {number} before it is done again."


def out_of_sight(number: str, folder: str) -> str:
    """The folder went away or failed in the middle, so that nobody can see what of it was written."""
    look = f"look with {COMMAND} revisions {number} once the folder {folder} is there and sound"
    return f"What was asked for may be written or not: {look}, before it is done again."


def may_be_given_up(spec: Spec, folder: str) -> str:
    """The same of a draft that was being given up."""
    look = f"look with {COMMAND} revisions {spec.number} once the folder {folder} is there and sound"
    return f"Revision {spec.revision} may be given up or not: {look}."


def not_given_up(spec: Spec) -> str:
    """A draft could not be laid aside."""
    return f"Revision {spec.revision} is not given up: it stands as it was."
