"""A finished build before it is taken: what would be taken, what it comes to, and whether it is proved best."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, RuleId
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice
from specbuilder.model.ways import Aim, Proposal

from . import quantities
from .differences import difference_short, difference_spoken
from .glance import price_words, weight_words
from .names import choice_name, group_name, listed, option_name, rule_name
from .plain import ended, fitted
from .states import step_name

_MONEY = 9
_MASS = 10
_FEW = 4


def aim_word(aim: Aim) -> str:
    """``cheapest``, ``lightest``, ``soonest``, ``nearest to the house usual``."""
    match aim:
        case Aim.PRICE:
            return "cheapest"
        case Aim.MASS:
            return "lightest"
        case Aim.WEEKS:
            return "soonest"
        case Aim.USUAL:
            return "nearest to the house usual"
        case _:
            assert_never(aim)


def proposal_title(proposal: Proposal) -> str:
    """``FINISH IT, cheapest: 7 answers``."""
    answers = "1 answer" if len(proposal.takes) == 1 else f"{len(proposal.takes)} answers"
    return f"FINISH IT, {aim_word(proposal.aim)}: {answers}"


def proposal_lines(catalogue: Catalogue, after: Report, proposal: Proposal, width: int) -> tuple[str, ...]:
    """``Cooking: Gas bundle      £936     21 kg``, one for each choice; ``after``: with all of it taken."""
    return tuple(_line(catalogue, after, choice, width) for choice in proposal.takes)


def proposal_total(catalogue: Catalogue, after: Report, proposal: Proposal) -> str:
    """``Together +£4,512, +61 kg. Then £21,108 VAT in, van not included; 246 kg left.``"""
    together = f"Together {difference_short(catalogue, proposal.difference)}"
    if counted := _counted_before(catalogue, after, proposal):
        together += f": the lines come to {counted}, and what was least before held a part of it"
    return f"{together}. Then {price_words(catalogue, after.price)}; {weight_words(catalogue, after)}."


def _counted_before(catalogue: Catalogue, after: Report, proposal: Proposal) -> str:
    """What the lines come to, where it is more than the least price or weight rises by: that held the cheapest.

    A weight may rise by more than the lines, as luggage comes with a seat: that needs no such words.
    """
    effects = [after.options[choice.option].effect for choice in proposal.takes]
    pence, mass = sum(effect.gross_pence for effect in effects), sum(effect.mass_kg for effect in effects)
    rise, currency = proposal.difference, catalogue.firm.currency
    told = [quantities.money(pence, currency)] if pence > rise.gross_pence else []
    if mass > rise.mass_kg and quantities.kilograms(mass) != quantities.kilograms(rise.mass_kg):
        told.append(quantities.kilograms(mass))
    return " and ".join(told)


def proposal_remarks(catalogue: Catalogue, proposal: Proposal) -> tuple[str, ...]:
    """Whether it is proved, what stays broken and what found no answer: one sentence each."""
    lines = [proven_words(proposal)]
    lines += (f"Still broken after it: {ended(_level_name(catalogue, rule))}" for rule in proposal.still_broken)
    lines += (f"Nothing fits: {ended(_where(catalogue, group))}" for group in proposal.unanswered)
    return tuple(lines)


def proven_words(proposal: Proposal) -> str:
    """``Proved: no other way to answer these is cheaper.``, or that it is the best found in the time."""
    better = _better(proposal.aim)
    if proposal.proven:
        return f"Proved: no other way to answer these questions is {better}."
    return f"Not proved: the search stopped before it knew whether another way is {better}."


def proposal_hint() -> str:
    """What the keys do while it is shown."""
    return "Enter takes all of it, Esc none; one undo takes it back."


def proposal_taken(catalogue: Catalogue, proposal: Proposal) -> str:
    """What the last line says once it is taken; no full stop, so that a hint may follow."""
    names = listed((option_name(catalogue, choice.option) for choice in proposal.takes), most=_FEW)
    return f"Finished, {aim_word(proposal.aim)}: took {names}"


def nothing_open() -> str:
    """Said when every question has its answer."""
    return "No question is undecided: there is nothing to finish."


def proposal_spoken(catalogue: Catalogue, after: Report, proposal: Proposal) -> tuple[str, ...]:
    """The proposal one fact a line, for line commands."""
    heading = f"Finished, {aim_word(proposal.aim)}: {_counted(len(proposal.takes))}."
    taken = (f"{_asked(catalogue, choice)}: {ended(choice_name(catalogue, choice))}" for choice in proposal.takes)
    then = f"Then: {price_words(catalogue, after.price)}; {weight_words(catalogue, after)}."
    together = f"Together: {ended(difference_spoken(catalogue, proposal.difference))}"
    counted = _counted_before(catalogue, after, proposal)
    lines = (
        (f"Their prices and weights come to {counted}; the least price before held a part of it.",) if counted else ()
    )
    return (heading, *taken, *lines, together, then, *proposal_remarks(catalogue, proposal))


def _line(catalogue: Catalogue, after: Report, choice: Choice, width: int) -> str:
    effect = after.options[choice.option].effect
    money, mass = quantities.money(effect.gross_pence, catalogue.firm.currency), quantities.kilograms(effect.mass_kg)
    room = max(width - _MONEY - _MASS - 1, 8)
    name = fitted(f"{_asked(catalogue, choice)}: {choice_name(catalogue, choice)}", room)
    return f"{name:<{room}} {money:>{_MONEY}}{mass:>{_MASS}}"


def _asked(catalogue: Catalogue, choice: Choice) -> str:
    known = catalogue.options.get(choice.option)
    return group_name(catalogue, known.group) if known else "Not in this catalogue"


def _counted(count: int) -> str:
    return "1 choice would be taken" if count == 1 else f"{count} choices would be taken"


def _better(aim: Aim) -> str:
    match aim:
        case Aim.PRICE:
            return "cheaper"
        case Aim.MASS:
            return "lighter"
        case Aim.WEEKS:
            return "sooner"
        case Aim.USUAL:
            return "nearer to the house usual"
        case _:
            assert_never(aim)


def _level_name(catalogue: Catalogue, rule: RuleId) -> str:
    known = catalogue.rules.get(rule)
    return f"{known.level.value}, {rule_name(catalogue, rule)}" if known else rule_name(catalogue, rule)


def _where(catalogue: Catalogue, group: GroupId) -> str:
    known = catalogue.groups.get(group)
    name = group_name(catalogue, group)
    return f"{name} (step {step_name(known.step)})" if known else name
