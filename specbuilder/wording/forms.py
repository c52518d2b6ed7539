"""Labels and hints of what is typed and is no line of the brief: customer, real van, own part, who finds out."""

from __future__ import annotations

from dataclasses import dataclass

from .plain import lowered
from .quantities import number_text
from .states import NOT_KNOWN


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldWords:
    """Words of one field."""

    label: str
    hint: str
    needs: str = ""
    """Said when something else was typed."""


def field_words(name: str) -> FieldWords:
    """The words of a field by its name, e.g. ``vin-tail``."""
    return _FIELDS[name]


def field_value(name: str, text: str) -> str:
    """What stands beside the label: the text, or ``not known yet``; a note that nobody wrote is no gap."""
    if not text:
        return _MAY_BE_EMPTY.get(name, NOT_KNOWN)
    return f"{number_text(float(text), _UNITS[name], _EXACT)} {_UNITS[name]}" if name in _UNITS else text


def not_taken(text: str) -> str:
    """A text that was typed and left: it stays until it is taken or deleted."""
    return f"not taken: {text}"


def form_title(name: str) -> str:
    """The line over a form: what it is in capitals, so that it is a title without colour and bold letters, too."""
    return _TITLES[name]


def owners() -> tuple[str, ...]:
    """Who may be asked to find something out; what is typed instead counts as well."""
    return ("customer", "counter", "workshop")


def owners_words() -> str:
    """The numbered answers to *who finds out*."""
    return "  ".join(f"{number} {owner}" for number, owner in enumerate(owners(), 1))


def date_hint(example: str) -> str:
    """How a date is written, with one that may well be meant: ``Date as 2031-04-28.``"""
    return f"Date as {example}."


def date_needed(example: str) -> str:
    """Said when something else was typed."""
    return f"A date is needed here, written as {example}."


def still_needed(label: str) -> str:
    """Said when a form is taken with a gap: ``Still needed: signed at.``"""
    return f"Still needed: {lowered(label)}."


def question_take_hint() -> str:
    """What Enter does at the end of the form."""
    return "Enter writes it down as an open question; Esc leaves it"


_EXACT = 2
"""More decimals than a sum is told with: what was typed is shown as it was."""
_UNITS = {"mileage": "km", "weighed-front": "kg", "weighed-rear": "kg"}
_WEIGHED = (
    "In kg, from the scales: empty, before the work, nobody in it, tank nine tenths full (running order). "
    "75 kg for the driver in his seat are added."
)
_MAY_BE_EMPTY = {
    **dict.fromkeys(("choice-note", "job-note", "stops", "remarks"), "none"),
    "reading": "not read yet",
    "expected": "no day yet",
    "reason": "none given",
}
"""What stands in a field that is no gap while it is empty."""
_PLACES = "1 premises  2 home  3 distance"

_FIELDS: dict[str, FieldWords] = {
    "name": FieldWords(label="Customer's name", hint="As it goes on the papers. Enter begins, Enter takes it."),
    "contact": FieldWords(label="Contact", hint="Telephone, mail or address. Enter begins, Enter takes it."),
    "job-note": FieldWords(label="Our note", hint="For the house only: on no paper and no customer view."),
    "registration": FieldWords(label="Registration", hint="The number plate, as on its papers."),
    "vin-tail": FieldWords(
        label="Chassis number, end",
        hint="The last six characters of the chassis number. Needed before signing.",
        needs="The last six characters of the chassis number are needed here: letters and figures.",
    ),
    "year": FieldWords(
        label="Year",
        hint="The year it was made. Needed before signing.",
        needs="A year is needed here, four figures.",
    ),
    "paint-code": FieldWords(label="Paint code", hint="From the plate on the van."),
    "mileage": FieldWords(label="Mileage", hint="In kilometres.", needs="Whole kilometres are needed here."),
    "damage": FieldWords(label="Damage found", hint="What was there before we touched it, in words."),
    "weighed-front": FieldWords(
        label="Weighed, front axle",
        hint=_WEIGHED,
        needs="Kilograms are needed here, above nought.",
    ),
    "weighed-rear": FieldWords(
        label="Weighed, rear axle",
        hint=_WEIGHED,
        needs="Kilograms are needed here, above nought.",
    ),
    "choice-note": FieldWords(label="Note for the workshop", hint="Printed on the workshop sheet. Enter begins."),
    "part-mass": FieldWords(
        label="Their part weighs",
        hint="In kilograms. Empty: an open question.",
        needs="Kilograms are needed here.",
    ),
    "part-watts": FieldWords(
        label="Their part draws", hint="In watts; 0 for none. Empty: an open question.", needs="Watts are needed here."
    ),
    "part-cut-out": FieldWords(
        label="Cut-out, or its size", hint="Width by height in mm, as its paper says. Empty: an open question."
    ),
    "part-arrives": FieldWords(
        label="Arrives",
        hint="Date as 2031-04-28, or day and month: 2804. Empty: an open question.",
        needs="A date is needed here, written as 2031-04-28, or day and month as 2804.",
    ),
    "part-door": FieldWords(
        label="Its door is long",
        hint="In mm, as it swings out; 0 for a drawer or a lid. Empty: an open question.",
        needs="Millimetres are needed here; 0 for a drawer or a lid.",
    ),
    "part-day": FieldWords(
        label="Takes in a day",
        hint="In Wh at 25 degrees, where its paper says so; else we reckon with its watts.",
        needs="Watt-hours are needed here.",
    ),
    "part-amps": FieldWords(
        label="Gives for good",
        hint="In amps, the continuous ones on its label. Empty: nothing can be said of an inverter.",
        needs="Amps are needed here.",
    ),
    "part-capacity": FieldWords(
        label="Amp-hours",
        hint="From its label. Empty: nothing can be said of nights and charging.",
        needs="Amp-hours are needed here.",
    ),
    "part-kind": FieldWords(label="Kind of battery", hint=""),
    "who": FieldWords(label="Who finds out", hint="A number, or Enter and a name."),
    "due": FieldWords(
        label="By when", hint="Date as 2031-04-28.", needs="A date is needed here, written as 2031-04-28."
    ),
    "stops": FieldWords(label="What it stops", hint="A build step such as B4, or signing. May stay empty."),
    "by": FieldWords(label="Accepted by", hint="Who gives their word. Enter begins, Enter takes it."),
    "quotes": FieldWords(label="Quoted by", hint="Whom the customer asks for. Enter begins, Enter takes it."),
    "customer-signs": FieldWords(label="Customer signs as", hint="The name as it is signed. Enter begins."),
    "firm-signs": FieldWords(label="For the firm", hint="Who signs for the firm. Enter begins."),
    "sign-place": FieldWords(label="Signed at", hint=f"{_PLACES}. Other law may hold away from the firm's premises."),
    "done-by": FieldWords(label="By", hint="Who did it and signs for it. Enter begins."),
    "said-by": FieldWords(label="Said by", hint="Who of the firm said it. Enter begins."),
    "taken-by": FieldWords(label="Written down by", hint="Who of the firm saw it come in. Enter begins."),
    "calls": FieldWords(label="Who calls", hint="Enter begins, Enter takes it."),
    "reason": FieldWords(label="Why it is changed", hint="In the words of who asked for it. May stay empty."),
    "supply": FieldWords(label="Where it is", hint="1 ordered  2 due  3 in store  4 received."),
    "reading": FieldWords(label="Read", hint="What was read, with its unit. May stay empty."),
    "remarks": FieldWords(label="Remarks", hint="Who was present, what was seen. May stay empty."),
    "amount": FieldWords(
        label="Received", hint="In whole units of money, as it came in.", needs="A sum above nought is needed here."
    ),
    "expected": FieldWords(label="Expected", hint="The day it is expected; may stay empty. Written as 2031-04-28."),
    "promise": FieldWords(label="Promise", hint="In the words that were used. Enter begins."),
    "call-about": FieldWords(label="About", hint="What the call is about. Enter begins."),
    "call-due": FieldWords(label="On", hint="The day, written as 2031-04-28."),
}

_TITLES: dict[str, str] = {
    "customer": "WHO IT IS FOR",
    "van": "THE REAL VAN, from the vehicle itself",
    "who": "WHO FINDS OUT, by when",
    "accept": "ACCEPT in writing",
    "details": "DETAILS",
    "usual": "HOUSE USUAL for this step",
    "open": "OPEN THINGS",
    "find": "FIND",
    "actions": "ACTIONS",
    "keys": "KEYS",
    "ledgers": "LEDGERS, worst first",
    "jobs": "JOBS",
    "job-state": "STATE OF THE JOB",
    "build": "Build",
}
