"""Words that only the customer's copy needs: plain, whole sentences without a code or a column."""

from __future__ import annotations

import math
import re
from dataclasses import replace

from specbuilder.model.catalogue import Catalogue, Group, Option
from specbuilder.model.findings import Finding
from specbuilder.model.kinds import Level, Owner, Pick, Place
from specbuilder.model.plain_text import one_line
from specbuilder.model.report import Pence, Report
from specbuilder.model.span import Span
from specbuilder.model.spec import Acceptance, Choice

from . import lengths, quantities
from .dates import written_day
from .findings import finding_head, finding_line, named_answers
from .findings_plain import without_level
from .names import chosen_name, listed, place_name
from .plain import ended, lowered, raised
from .readings import ESTIMATE

NOT_LISTED = "a part that is not on our list any more, to be named before you sign"
VAN_DATA = "The van: the end of its chassis number, and its year"
MANY_NIGHTS = 30
"""So many nights and more are told as that: figures for planning say nothing beyond."""
_FEW = 4
_LONGEST = 130
"""Of what is said of one part; a longer description is cut where a clause ends."""
_LONG_WORDS = re.compile(r"[^\W\d_]{4,}")
_CLAUSE_ENDS = re.compile(r"[;:,.](?= )")


def pounds(pence: int, currency: str) -> str:
    """``£17,532``; with the pence where there are any: ``£17,532.40``."""
    return quantities.money_exact(pence, currency) if pence % 100 else quantities.money(pence, currency)


def pounds_range(pence: Pence, currency: str) -> str:
    """``£17,532 to £24,024``; one figure when it is settled."""
    least, most = pounds(pence.least, currency), pounds(pence.most, currency)
    return least if least == most else f"{least} to {most}"


def percent(share: float) -> str:
    """``20 %``."""
    return quantities.quantity(share, "%", "")


def part_sentence(option: Option, choice: Choice) -> str:
    """``Side galley (on the right): kitchen along one wall with sink, tap and drawers.``"""
    name, told = part_name(option, choice), shortened(option.description)
    if not told or not _adds(option.name, told):
        return ended(name)
    return ended(f"{ended(name)} {raised(told)}" if ":" in name else f"{name}: {inside(told)}")


def part_short(option: Option, choice: Choice, group: Group) -> str:
    """By name alone; with its question where the name does not say it: ``Moss-green weave (seat cloth)``."""
    name = part_name(option, choice)
    said = group.pick is Pick.ANY or any(word in option.name.lower() for word in group.name.lower().split())
    return name if said else f"{name} ({lowered(group.name)})"


def part_name(option: Option, choice: Choice) -> str:
    """``Air heater, diesel, 2 kW (exhaust on the right)``, ``2 x Opening window``; the customer's own says so."""
    name = f"{choice.count} x {option.name}" if choice.count > 1 else option.name
    if choice.place is not None:
        name = f"{name} ({_side(option, choice.place)})"
    return f"{name} (yours, fitted by us)" if choice.owner is Owner.CUSTOMER and not _says_own(option) else name


def shortened(text: str, room: int = _LONGEST) -> str:
    """The text whole, or cut where a clause ends within the room; never in the middle of one."""
    text = text.rstrip().rstrip(".")
    if len(text) <= room:
        return text
    ends = [found.start() for found in _CLAUSE_ENDS.finditer(text, 0, room)]
    main = [at for at in ends if text[at] in ";."]
    return text[: (main or ends)[-1]] if ends else text


def main_part(text: str) -> str:
    """What stands before the first colon or semicolon: ``Cut roof, windows and vents``."""
    return re.split("[:;]", text)[0]


def inside(sentence: str) -> str:
    """The sentence behind a colon: its first letter small, unless that is a name or a sign."""
    first, _, rest = sentence.partition(" ")
    return f"{first.lower()} {rest}" if first in ("A", "An", "The") else lowered(sentence)


def told_words(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """What is said of a caution: the words of the rule, and the figure behind it, if there is one."""
    because, named = catalogue.rules[finding.rule].because, _named(catalogue, finding)
    reading = report.readings.get(finding.reading) if finding.reading else None
    if reading is None or reading.value is None:
        return f"{ended(because)} It is about: {named}." if named else ended(because)
    plain = replace(finding, accepted=False)
    head = finding_head(catalogue, report, plain)
    figure = finding_line(catalogue, report, plain).removeprefix(head).strip()
    return _calm(f"{ended(because)} {figure}".strip())


def _named(catalogue: Catalogue, finding: Finding) -> str:
    """Which of the things the customer named it is about; empty where it is about no such list."""
    return listed(filter(None, (named_answers(catalogue, finding, key) for key in finding.keys)))


def stop_words(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """Why something cannot be built, with the choices or the figure behind it and what would mend it."""
    told, because = told_words(catalogue, report, finding), ended(catalogue.rules[finding.rule].because)
    named = _named(catalogue, finding)
    if told not in (because, f"{because} It is about: {named}."):
        return told
    about = "; ".join(filter(None, (*(chosen_name(catalogue, report.spec, o) for o in finding.subjects), named)))
    missing = finding_line(catalogue, report, finding).partition(" Missing: ")[2]
    parts = (because, f"It is about: {ended(about)}" if about else "", f"Missing: {missing}" if missing else "")
    return " ".join(part for part in parts if part)


def waiting_words(catalogue: Catalogue, report: Report) -> str:
    """How many checks wait for what is open, and which figures among them; empty when none does."""
    waiting = report.cannot_tell(*Level)
    if not waiting:
        return ""
    ledgers = [catalogue.ledgers.get(finding.reading) for finding in waiting if finding.reading is not None]
    figures = listed((lowered(ledger.name) for ledger in ledgers if ledger is not None), most=_FEW)
    count = "One of our checks waits" if len(waiting) == 1 else f"{len(waiting)} of our checks wait"
    among = f", among them {figures}" if figures else ""
    return f"{count} for these answers{among}. Nothing counts as right before it is checked."


def accepted_words(acceptance: Acceptance) -> str:
    """``Accepted by M. Hale on 14 April 2031.``"""
    who = one_line(acceptance.by).strip() or "the customer"
    when = f" on {written_day(one_line(acceptance.at))}" if acceptance.at else ""
    return f"Accepted by {who}{when}."


def asked(question: str) -> str:
    """The question alone, without the hint how it is typed in."""
    before, mark, _ = question.partition("?")
    return f"{before}{mark}"


def in_the_words(acceptance: Acceptance) -> str:
    """The words it was accepted in, where the rule says it otherwise today."""
    return f'The words then: "{_words_of(acceptance)}"'


def no_longer_words(acceptance: Acceptance) -> str:
    """What was accepted once and does not concern this build any more."""
    return f"{ended(_words_of(acceptance))} {accepted_words(acceptance)} It is no longer so."


def _words_of(acceptance: Acceptance) -> str:
    return _calm(without_level(one_line(acceptance.words)))


def working_days(count: int) -> str:
    """``1 working day``, ``12 working days``."""
    return "1 working day" if count == 1 else f"{quantities.number_text(count, 'days')} working days"


def people(count: Span) -> str:
    """``4 people``, ``2 to 4 people``."""
    return quantities.span(count, "people", "")


def about_people(mass_kg: float, person_kg: float) -> str:
    """What a mass is in people: ``or 3 grown-ups``; begun ones do not count."""
    many = math.floor(mass_kg / person_kg) if person_kg > 0 else 0
    if many < 1:
        return "less than one grown-up"
    return "or one grown-up" if many == 1 else f"or {many} grown-ups"


def weight_left(room: Span | None) -> str:
    """``about 223 kg``, ``nothing: about 12 kg too much``; told as about, for it is a planning figure."""
    if room is None:
        return "cannot tell yet"
    if room.most < 0:
        return f"nothing: about {quantities.span(room * -1, 'kg', '')} too much"
    if room.least < 0:
        return f"between about {quantities.kilograms(-room.least)} too much and {quantities.kilograms(room.most)} left"
    return f"about {quantities.span(room, 'kg', '')}"


def height(length_mm: Span) -> str:
    """``2.04 m (at most 6 ft 9 in)``: rounded up; of what is open the highest."""
    most = length_mm.most
    told = f"{lengths.metres_up(most)} (at most {lengths.feet_and_inches(most)})"
    return told if length_mm.settled else f"up to {told}"


def barrier(limit_mm: float) -> str:
    """``2.00 m (6 ft 6 in)``: what the van must pass under, rounded down."""
    return f"{lengths.metres_below(limit_mm)} ({lengths.feet_and_inches_below(limit_mm)})"


def nights(count: Span | None) -> str:
    """``about 2.2 nights``, ``30 nights or more``."""
    if count is None:
        return "cannot tell yet"
    most = f"{MANY_NIGHTS} nights or more"
    if count.least >= MANY_NIGHTS:
        return most
    if count.most >= MANY_NIGHTS:
        return f"between about {quantities.quantity(count.least, 'nights', '')} and {most}"
    return f"about {quantities.span(count, 'nights', '')}"


def _side(option: Option, place: Place) -> str:
    about = "exhaust " if option.exhaust_outlet is not None else ""
    return f"{about}{place_name(place)}"


def _adds(name: str, description: str) -> bool:
    """Whether a description says more than the name does."""
    said = {word.lower() for word in _LONG_WORDS.findall(name)}
    return len({word.lower() for word in _LONG_WORDS.findall(description)} - said) > 1


def _says_own(option: Option) -> bool:
    """Its name says already whose it is."""
    return "your own" in option.name.lower()


def _calm(text: str) -> str:
    """The word for an estimate in small letters: capitals shout on a paper."""
    return text.replace(ESTIMATE, ESTIMATE.lower())
