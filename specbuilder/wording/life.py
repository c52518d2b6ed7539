"""The steps of a job, and what stands in their way, in sentences with their cure."""

from __future__ import annotations

from collections.abc import Iterable
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.life import Hindrance, HindranceCode, LifeStep
from specbuilder.model.plain_text import one_line
from specbuilder.model.record import RecordKind
from specbuilder.model.report import Pence
from specbuilder.model.spec import Spec

from .dates import written_day
from .key_names import pressed
from .names import group_name, key_name, option_name, rule_name
from .quantities import money_range

_STEP = {
    LifeStep.QUOTE: "quoted",
    LifeStep.ORDER: "signed",
    LifeStep.PASS: "passed",
    LifeStep.BUILT: "handed over as built",
}
_WRONG_STATE = {
    LifeStep.QUOTE: "only a draft is quoted",
    LifeStep.ORDER: "only what is quoted is signed",
    LifeStep.PASS: "hold points are passed in a build that is ordered",
    LifeStep.BUILT: "only what is ordered can be handed over",
}
_SIGNED = "signed already, and what was signed stays as it is: change begins the next revision"
_QUOTED = "quoted already, and what was quoted stays as it is"
_STANDS = {
    (LifeStep.QUOTE, JobState.QUOTED): f"{_QUOTED}: order signs it; change begins the next revision, to be quoted anew",
    (LifeStep.QUOTE, JobState.ORDERED): f"{_SIGNED}, which order signs",
    (LifeStep.QUOTE, JobState.CHANGED): f"{_SIGNED}, which order signs",
    (LifeStep.ORDER, JobState.ORDERED): f"{_SIGNED}, which order signs",
    (LifeStep.ORDER, JobState.CHANGED): f"{_SIGNED}, which order signs",
    (LifeStep.ORDER, JobState.DRAFT): "a draft: quote makes a quote of it, and order signs that",
}
"""What stands, and which commands lead on; on the screens these steps are not offered then."""


def hindrance_lines(catalogue: Catalogue, step: LifeStep, found: Iterable[Hindrance]) -> tuple[str, ...]:
    """One sentence for each."""
    return tuple(dict.fromkeys(_words(catalogue, step, hindrance) for hindrance in found))


def not_yet(step: LifeStep, count: int) -> str:
    """``This cannot be signed as it is now: 3 things stand in the way.``"""
    things = "1 thing stands" if count == 1 else f"{count} things stand"
    when = "as it is now" if step in (LifeStep.QUOTE, LifeStep.ORDER) else "yet"
    return f"This cannot be {_STEP[step]} {when}: {things} in the way."


def not_current(number: str, revision: int, by: int) -> tuple[str, str]:
    """Why an old revision does not leave the house."""
    return (
        f"Revision {revision} of job {number} was replaced by revision {by}: it is not to be built.",
        f"Take revision {by}. The old one can be read: show, check, compare and paper name it as {number}@{revision}.",
    )


def _words(catalogue: Catalogue, step: LifeStep, hindrance: Hindrance) -> str:
    text = one_line(hindrance.text)
    match hindrance.code:
        case HindranceCode.WRONG_STATE:
            return f"The job is {_stands(step, text)}."
        case HindranceCode.NAMELESS:
            return "The customer has no name yet: ask for it."
        case HindranceCode.EMPTY:
            return "Nothing is chosen yet."
        case HindranceCode.STRANGER:
            name = option_name(catalogue, hindrance.option) if hindrance.option else text
            return f"{name}: take another or leave it out."
        case HindranceCode.STOP_BROKEN:
            return f"STOP: {_rule(catalogue, hindrance)}"
        case HindranceCode.STOP_UNKNOWN:
            return f"Cannot tell yet, at STOP: {_rule(catalogue, hindrance)}"
        case HindranceCode.NOT_ACCEPTED:
            return f"Not accepted in writing: {_rule(catalogue, hindrance)}"
        case HindranceCode.NOT_CHOSEN:
            name = group_name(catalogue, hindrance.group) if hindrance.group else text
            return f"Not chosen yet: {name}."
        case HindranceCode.NOBODY_ASKED:
            name = key_name(catalogue, hindrance.key) if hindrance.key else text
            return f"Not known, and nobody is named who finds it out: {name}."
        case HindranceCode.QUESTION_STOPS:
            return f'An open question stops the signing: "{text}".'
        case HindranceCode.QUOTE_RAN_OUT:
            return f"The quote was valid until {written_day(text)}: quote again with the prices of today."
        case HindranceCode.NOT_CHANGED:
            return "Nothing is changed: there is nothing to sign."
        case HindranceCode.HOLD_OPEN:
            return f"Hold point {text} is not passed yet."
        case HindranceCode.HOLD_PASSED:
            return f"Hold point {text} is passed already; what is recorded stays."
        case HindranceCode.HOLD_UNKNOWN:
            points = [work.hold_point for work in catalogue.work.values() if work.hold_point]
            return f'"{text}" is no hold point: use one of {", ".join(points)}.'
        case HindranceCode.EARLIER:
            return f"The last record is of {text}, later than the clock of this machine: set the clock."
        case HindranceCode.NO_NAME_SIGNED:
            return "A signature needs the name of the customer and of whoever signs for the firm."
        case HindranceCode.NO_PLACE:
            return f'"{text}" is no place of signing: use premises, home or distance.'
        case _:
            assert_never(hindrance.code)


def _stands(step: LifeStep, state: str) -> str:
    known = next((words for (asked, has), words in _STANDS.items() if asked is step and has.value == state), None)
    return known or f"{state}: {_WRONG_STATE[step]}"


def _rule(catalogue: Catalogue, hindrance: Hindrance) -> str:
    """What the customer hears of a rule, and what helps."""
    rule = catalogue.rules.get(hindrance.rule) if hindrance.rule else None
    if rule is None:
        return f"{rule_name(catalogue, hindrance.rule)}." if hindrance.rule else ""
    helps = f" {rule.fixes[0]}." if rule.fixes else ""
    return f"{rule.because}{helps}"


def quoted(spec: Spec, currency: str) -> str:
    """``Quoted: £24,300, valid until 9 May 2031.``"""
    record = spec.recorded(RecordKind.QUOTED)[-1]
    price = money_range(Pence(least=record.pence or 0, most=round(record.figure or 0)), currency)
    return f"Quoted, revision {spec.revision}: {price} VAT in, valid until {written_day(record.due)}."


def signed(spec: Spec) -> str:
    """``Signed by ...: revision 2 is what the workshop builds, and takes the place of revision 1.``"""
    record = spec.recorded(RecordKind.SIGNED)[-1]
    instead = f", and takes the place of revision {spec.replaces}" if spec.replaces else ""
    who = f"{one_line(record.by)} and {one_line(record.words)}"
    return f"Signed by {who}: revision {spec.revision} is what the workshop builds{instead}."


def quoted_short(spec: Spec, currency: str) -> str:
    """The same for the last line of a small window."""
    record = spec.recorded(RecordKind.QUOTED)[-1]
    price = money_range(Pence(least=record.pence or 0, most=round(record.figure or 0)), currency)
    return f"Quoted; it stays done. {price} VAT in, valid until {written_day(record.due)}."


def signed_short(spec: Spec) -> str:
    """The same for the last line of a small window."""
    instead = f", no longer revision {spec.replaces}" if spec.changes_signed else ""
    return f"Signed; it stays done. The workshop builds revision {spec.revision}{instead}."


def not_kept(reason: str) -> str:
    """Said when spec and papers could not be kept as they left the house; what was done holds."""
    return f"Not kept as it left the house yet ({reason}): opening the job once more tries again."


def not_kept_yet() -> str:
    """The same where the reason stands before it."""
    return "It stands, and is not kept as it left the house yet: the next step in the job tries again."


def begun(spec: Spec, today: Catalogue | None = None) -> str:
    """A draft of the next revision. ``today``: it is held against these rules, and its quote was not."""
    if spec.changes_signed:
        return (
            f"Change order begun: revision {spec.revision} is a draft. "
            f"Until it is signed the workshop builds revision {spec.replaces}."
        )
    prices = f" with the prices of today ({today.firm.catalogue_version})" if today is not None else ""
    return (
        f"Revision {spec.revision} is begun as a draft{prices}; "
        f"what was quoted as revision {spec.replaces} stays as it was."
    )


def only_looked_at(spec: Spec) -> str:
    """Said when somebody wants to change what is only looked at."""
    return f"Revision {spec.revision} is only looked at: nothing is changed in it. Esc leads to the jobs."


def begun_short(spec: Spec, today: Catalogue | None = None) -> str:
    """The same in front of what was done in it."""
    if spec.changes_signed:
        return f"Change order begun, revision {spec.revision}."
    prices = f" with the prices of today ({today.firm.catalogue_version})" if today is not None else ""
    return f"Revision {spec.revision} begun{prices}."


def begun_stays(spec: Spec) -> str:
    """Before a step back that leaves a revision with nothing changed in it."""
    return f"Revision {spec.revision} stays: {pressed('papers')}, then {pressed('give-up-change')} gives it up. "


def given_up(spec: Spec) -> str:
    """A draft laid aside."""
    return f"Revision {spec.revision} is given up; its files are kept aside. Revision {spec.revision - 1} holds."


def cannot_give_up(spec: Spec) -> str:
    """Why a revision stays."""
    if spec.revision == 1:
        return "This is the first revision: there is none to go back to."
    return f"Revision {spec.revision} has left the house ({spec.state.value}): it is not given up."


def is_draft(spec: Spec) -> str:
    """Nothing to begin."""
    return f"Revision {spec.revision} is a draft: change it as it is, with set, drop or at the counter."


def not_newest(number: str, revision: int, newest: int) -> str:
    """Steps are taken in the newest revision."""
    return f"Job {number} is at revision {newest}: revision {revision} stays as it is."


def not_ordered(spec: Spec) -> str:
    """Money, parts and readings belong to an order."""
    return f"The job is {spec.state.value}: deposits, parts and readings are recorded once it is ordered."


def replaced_on_paper(revision: int, by: int) -> str:
    """Said when papers of an old revision are made."""
    return f"Revision {revision} was replaced by revision {by}: every page says so."


def reason_given(reason: str) -> str:
    """What a change order says of itself."""
    return f'Reason: "{one_line(reason)}".'
