"""The guided first job: what it says, one thing to do at a time."""

from __future__ import annotations

from .key_names import pressed


def lesson(number: int, lessons: int, words: str) -> str:
    """``Practice 3 of 16: ...``."""
    return f"Practice {number} of {lessons}: {words}"


def begin() -> str:
    """On the empty list of jobs."""
    return f"nothing here is real. A customer begins to speak: press {pressed('new-job')}."


def answer() -> str:
    """At the first question of the brief."""
    return "two grown-ups will travel: press 2. Whatever is not asked yet simply stays not known."


def find() -> str:
    """Anything is found by its letters."""
    return f"they like a short van: press {pressed('find')}, type short, press Enter."


def take() -> str:
    """On the row of a van."""
    return "each row says what it costs and weighs before you press. Enter takes the one with the cursor."


def roof() -> str:
    """The same once more."""
    return f"now the roof, the Larchlid: {pressed('find')}, lar, Enter goes there, and Enter takes it."


def step() -> str:
    """From one step to the next."""
    return "nine steps stand in the third line of the screen, and Right goes to the next: go to seating."


def usual() -> str:
    """The usual of a step."""
    return f"{pressed('usual')} lists what the house usually builds at this step, and Enter takes all of it."


def clash() -> str:
    """A choice that would clash."""
    return f"they want a big solar panel: {pressed('find')}, fra, Enter, then Enter on its row."


def way_out() -> str:
    """Beside the ways out."""
    return "it would clash, and here is why. Below stand ways out: a digit takes one, Esc leaves it."


def undo() -> str:
    """After a way was taken."""
    return f"the line below says what was done. Press {pressed('undo')}: it names what it takes back."


def finish() -> str:
    """While questions are open."""
    return f"press {pressed('finish')}: an answer for all that is undecided, the cheapest first, with what it comes to."


def aims() -> str:
    """Beside the proposal."""
    return "cheapest, lightest, soonest, or as the house usually builds: press 4 for that."


def finished() -> str:
    """Before all of it is taken."""
    return "what was chosen stays as it is. Enter takes all of it, as one step of undo."


def sums() -> str:
    """The ledgers."""
    return f"{pressed('ledgers')} lists the sums, worst first, and Enter opens one: what it is made of."


def back() -> str:
    """From a ledger."""
    return "Esc goes back one page and keeps everything: press it until you stand on the walk."


def turn() -> str:
    """Before the customer view."""
    return f"turn the screen round: {pressed('customer-view')} shows what the customer may read, and nothing private."


def turn_back() -> str:
    """In the customer view."""
    return "no other key leaves it by mistake: Esc and then Enter bring you back."


def papers() -> str:
    """Before the papers."""
    return f"{pressed('papers')} lists the papers, and where the job stands between draft and collection day."


def leave() -> str:
    """On the papers."""
    return "Esc until the list of jobs. Nothing is ever saved by hand: all of it is written as you press."


def over() -> str:
    """On the list of jobs again."""
    return f"that is all. F1 shows the keys anywhere. {pressed('practise')} ends the practice; the job goes with it."


def new_here() -> str:
    """On the list of jobs while it is empty."""
    return f"New here? {pressed('practise')} opens a guided job to practise on; it takes two minutes."


def cannot_practise(why: str) -> str:
    """The demo catalogue or a folder for it is not to be had."""
    return f"No practice now: {why}"
