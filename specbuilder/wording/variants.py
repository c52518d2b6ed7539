"""Words of the table of two variants, and of what is done from it."""

from __future__ import annotations

from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import Spec

from .key_names import pressed

TITLE = "SIDE BY SIDE"
INTO_A, INTO_B = "<-", "->"
"""Between the columns, where the line under the cursor goes."""
WHAT_IF = "what if"


def side_name(spec: Spec, *, revision: bool) -> str:
    """``0147b``; of two revisions of one job ``0147, revision 1``."""
    number = one_line(spec.number) or "new job"
    return f"{number}, revision {spec.revision}" if revision else number


def column(letter: str, name: str) -> str:
    """``A  0147``."""
    return f"{letter}  {name}"


def nothing_beside() -> tuple[str, str]:
    """Where a job has nothing it could be laid beside."""
    return (
        "There is no other variant of this job yet, and no earlier revision.",
        f"{pressed('new-variant')} makes a variant: a copy of the job as it stands. It is open then; change it, "
        f"and {pressed('side-by-side')} lays both side by side.",
    )


def no_number() -> str:
    """A job of which nothing was said."""
    return "There is nothing to copy yet: say something of the job first."


def choose() -> str:
    """Over the list of what it may be laid beside."""
    return "Lay it beside:"


def candidate(number: str, revision: int, *, own: bool) -> str:
    """``variant 0147b``, ``revision 1 of this job, as it left the house``."""
    if own:
        return f"revision {revision} of this job, as it was left"
    return f"variant {number}"


def candidate_job() -> str:
    """While a what-if is on: the job without it."""
    return "the job as it is, without what is tried out"


def answers_head(name: str) -> str:
    """The name of a line of the brief in the table."""
    return f"brief: {name}"


def nothing_differs() -> str:
    """Two that are alike."""
    return "Nothing differs between the two. Esc goes back: change something, and it stands here."


def direction_first() -> str:
    """Enter without an arrow."""
    return "Left or Right says first which way the line goes; Enter then takes it"


def follows() -> str:
    """A line that is no choice."""
    return "This line follows from the others: it cannot be taken by itself"


def stays_as_it_was(name: str) -> str:
    """What cannot be changed any more."""
    return f"{name} stays as it was: a line goes only into the other one"


def changed_meanwhile(number: str) -> str:
    """Somebody else was at it."""
    return f"{number} was changed meanwhile and is shown as it stands now: look again, then take the line"


def brought(number: str, told: str) -> str:
    """A line was taken into a variant that is not open."""
    return f"In {number}: {told}"


def back_there() -> str:
    """How that is undone."""
    return f"there {pressed('undo')} takes it back"


def variant_begun(number: str, of: str) -> str:
    """A variant was made, and is open."""
    return f"{number} is a copy of {of} and open now: change it, then v lays both side by side"


def variant_stays(number: str) -> str:
    """A variant was made before the disk failed, and could not be taken away again."""
    return f"{number} was made before"


def why_of_a_choice() -> str:
    """Why on a line that is no choice."""
    return "w tells why of a line that was chosen"
