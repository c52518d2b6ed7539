"""One word each for states, verdicts, levels, steps, places, owners and groups."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from specbuilder.model.kinds import JobState, Level, OptionState, Owner, Pick, Place, Step, Verdict

from . import quantities

if TYPE_CHECKING:  # the first frame needs these words before any catalogue is there
    from specbuilder.model.catalogue import Catalogue
    from specbuilder.model.report import GroupStatus, StepStatus

CHECKING = "checking"
"""Stands in place of *open* and *follows* while the report is older than the spec."""
UNDECIDED = "undecided"
NOT_KNOWN = "not known yet"
USUAL = "usual"
TO_MIND = "to mind"
"""Beside the sign of what needs no settling."""
THEIRS = "theirs"
ACCEPTED = "accepted"


def state_word(state: OptionState) -> str:
    """``chosen``, ``follows``, ``open``, ``blocked``."""
    match state:
        case OptionState.CHOSEN:
            return "chosen"
        case OptionState.FOLLOWS:
            return "follows"
        case OptionState.OPEN:
            return "open"
        case OptionState.BLOCKED:
            return "blocked"
        case _:
            assert_never(state)


def verdict_word(verdict: Verdict, accepted: bool = False) -> str:
    """``holds``, ``broken``, ``cannot tell``; a broken finding that was accepted in writing says ``accepted``."""
    match verdict:
        case Verdict.HOLDS:
            return "holds"
        case Verdict.BROKEN:
            return ACCEPTED if accepted else "broken"
        case Verdict.CANNOT_TELL:
            return "cannot tell"
        case _:
            assert_never(verdict)


def to_be_said() -> str:
    """What is broken at level NOTE stops nothing."""
    return "to be said"


def level_words(level: Level) -> str:
    """What it means when broken: ``cannot be signed``, ``can be accepted in writing``, ``said and printed``."""
    match level:
        case Level.STOP:
            return "cannot be signed"
        case Level.SIGN:
            return "can be accepted in writing"
        case Level.NOTE:
            return "said and printed"
        case _:
            assert_never(level)


def step_name(step: Step) -> str:
    """The word on the step line: ``brief``, ``van``, ``roof`` ..."""
    return "van" if step is Step.BASE_VAN else step.value


def step_title(step: Step) -> str:
    """The line over a step: ``Kitchen and water: where do you cook, what keeps cold, how much water?``."""
    return _TITLES[step]


def step_tab(status: StepStatus) -> str:
    """The step on the step line with its counts: ``kitchen?2!1``; a brief counts what is not known."""
    open_count = status.undecided + status.unknown
    doubt = f"?{open_count}" if open_count else ""
    broken = f"!{status.broken}" if status.broken else ""
    return step_name(status.step) + doubt + broken


def step_tab_short(status: StepStatus, letters: int = 0) -> str:
    """The same without numbers, for narrow windows: ``kitchen?!``; with ``letters`` the name is cut: ``kitc?!``.

    Five letters and more are a short name of the house: ``kitch?!``.
    """
    name = _SHORT.get(status.step, step_name(status.step))[: letters or None] if letters else step_name(status.step)
    doubt = "?" if status.undecided + status.unknown else ""
    return name + doubt + ("!" if status.broken else "")


def place_explained(place: Place, country: str | None, doors: tuple[Place, ...]) -> str:
    """``left (kerb side in the UK, sliding-door side)``. ``country`` as in the brief; None leaves the kerb out."""
    remarks = []
    if country is not None and place in (Place.LEFT, Place.RIGHT):
        kerb = Place.LEFT if country in _KERB_LEFT else Place.RIGHT
        if country == "GB":
            where = "in the UK"
        elif country == "IE":
            where = "in Ireland"
        else:
            where = "on the mainland"
        if place is kerb:
            remarks.append(f"kerb side {where}")
    if place in doors:
        remarks.append("sliding-door side")
    return f"{place.value} ({', '.join(remarks)})" if remarks else place.value


def owner_word(owner: Owner) -> str:
    """``ours`` or ``theirs``."""
    return owner.value


def job_state_word(state: JobState) -> str:
    """``draft``, ``quoted``, ``ordered``, ``changed``, ``as built``, ``expired``."""
    return state.value


def group_kind(catalogue: Catalogue, status: GroupStatus) -> str:
    """``one of 4``, ``any number``, ``up to 6``."""
    group = catalogue.groups[status.group]
    match group.pick:
        case Pick.ONE:
            return f"one of {len(catalogue.options_of(group.id))}"
        case Pick.ANY:
            return "any number" if group.max_choices <= 1 else f"up to {group.max_choices}"
        case _:
            assert_never(group.pick)


def group_state(catalogue: Catalogue, status: GroupStatus) -> str:
    """``decided``, ``decided, 1 clash``, ``undecided: adds £0 to £1,968 and 0 to 21 kg``; a pick-any group counts."""
    currency = catalogue.firm.currency
    if not status.decided:
        price = quantities.money_range(status.gross_added, currency)
        mass = quantities.span(status.mass_added_kg, "kg", currency)
        return f"{UNDECIDED}: adds {price} and {mass}"
    if catalogue.groups[status.group].pick is Pick.ANY:
        count = sum(choice.count for choice in status.choices)
        words = f"{count} chosen" if count else "none chosen"
    else:
        words = "decided"
    return f"{words}, {clash_count(len(status.clashes))}" if status.clashes else words


def clash_count(count: int) -> str:
    """``1 clash``, ``2 clashes``."""
    return "1 clash" if count == 1 else f"{count} clashes"


_SHORT = {Step.SEATING: "seats", Step.KITCHEN: "kitch", Step.HEATING: Step.HEATING.value[:4]}
_KERB_LEFT = ("GB", "IE")

_TITLES: dict[Step, str] = {
    Step.BRIEF: "Brief: who travels and sleeps, where, when, and for how much?",
    Step.BASE_VAN: "Base van: which van, whose is it, and what do we find on it?",
    Step.ROOF: "Roof: does it lift, who sleeps up there, what stands on top?",
    Step.SEATING: "Seats and beds: who travels belted, who sleeps where?",
    Step.KITCHEN: "Kitchen and water: where do you cook, what keeps cold, how much water?",
    Step.HEATING: "Heating: what keeps you warm, and what does it burn?",
    Step.POWER: "Power: what must run, where, and what fills it again?",
    Step.FINISH: "Finish: walls, windows, cloth, and what goes on the outside?",
    Step.CHECK: "Check: what is broken, what is open, what was said?",
}
