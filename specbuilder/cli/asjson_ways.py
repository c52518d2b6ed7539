"""Ways out, finished builds and switches as JSON for other programs."""

from __future__ import annotations

from typing import Any, assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take
from specbuilder.model.kinds import Place
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import ClearFindings, Difference, Goal, LetIn, Proposal, RankBy, Switch, WayOut, WaysOut
from specbuilder.wording.edits import done, single
from specbuilder.wording.proposal import proven_words
from specbuilder.wording.switch import unfit_words
from specbuilder.wording.ways import way_sentence

from .asjson import FORMAT, json_text, price_value


def ways_json(catalogue: Catalogue, before: Spec, ways: WaysOut, closing: str) -> str:
    """All that was found, as ``fix --json`` prints it."""
    return json_text(
        {
            "format": FORMAT,
            "goal": _goal(ways.goal),
            "rank": ways.rank_by.value,
            "ways": [_way(catalogue, before, ways.goal, way, number) for number, way in enumerate(ways.ways, 1)],
            "within": ways.within,
            "complete": ways.complete,
            "words": closing,
        }
    )


def nothing_json(rank_by: RankBy, words: str) -> str:
    """The same where nothing need be done: nothing to reach, no way, and that is all there is."""
    return json_text(
        {
            "format": FORMAT,
            "goal": None,
            "rank": rank_by.value,
            "ways": [],
            "within": 0,
            "complete": True,
            "words": words,
        }
    )


def way_json(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut, number: int) -> str:
    """The way that was taken, as ``fix --take --json`` prints it."""
    return json_text({"format": FORMAT, "taken": _way(catalogue, before, goal, way, number)})


def proposal_json(catalogue: Catalogue, before: Spec, after: Report, proposal: Proposal | None, words: str) -> str:
    """A finished build, as ``finish --json`` prints it; None: nothing is open."""
    if proposal is None:
        return json_text({"format": FORMAT, "open": False, "edits": [], "takes": [], "words": words})
    return json_text(
        {
            "format": FORMAT,
            "open": True,
            "by": proposal.aim.value,
            "edits": [_edit(catalogue, before, edit) for edit in single(proposal.edits)],
            "takes": [_choice(choice) for choice in proposal.takes],
            **_difference(proposal.difference),
            "price_then": price_value(after.price),
            "verdict_then": after.verdict.value,
            "proven": proposal.proven,
            "still_broken": list(proposal.still_broken),
            "unanswered": list(proposal.unanswered),
            "words": proven_words(proposal),
        }
    )


def switch_json(catalogue: Catalogue, before: Report, after: Report, switch: Switch, words: str) -> str:
    """What another base van or roof would do, as ``switch --json`` prints it."""
    return json_text(
        {
            "format": FORMAT,
            "option": switch.take.option,
            "edits": [_edit(catalogue, before.spec, edit) for edit in single(switch.edits)],
            **_difference(switch.difference),
            "price_now": price_value(before.price),
            "price_then": price_value(after.price),
            "verdict_then": after.verdict.value,
            "stays": [_choice(choice) for choice in switch.stays],
            "does_not_fit": [
                {
                    **_choice(unfit.choice),
                    "instead": list(unfit.instead),
                    "words": unfit_words(catalogue, unfit, switch.take.option).why,
                }
                for unfit in switch.unfit
            ],
            "breaks": list(switch.came),
            "clears": list(switch.went),
            "cannot_tell": list(switch.cannot_tell),
            "ask_again": list(switch.undecided),
            "complete": switch.complete,
            "words": words,
        }
    )


def _way(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut, number: int) -> dict[str, Any]:
    return {
        "number": number,
        "words": way_sentence(catalogue, before, goal, way),
        "edits": [_edit(catalogue, before, edit) for edit in single(way.edits)],
        **_difference(way.difference),
        "clears": list(way.clears),
        "breaks": list(way.breaks),
        "brings": list(way.brought),
        "loses": list(way.left),
    }


def _goal(goal: Goal) -> dict[str, Any]:
    match goal:
        case ClearFindings(rules=rules):
            return {"clear": list(rules)}
        case LetIn(option=option, place=place):
            return {"let_in": option, "place": _place(place)}
        case _:
            assert_never(goal)


def _difference(difference: Difference) -> dict[str, Any]:
    return {
        "price_gross_pence": difference.gross_pence,
        "mass_kg": round(difference.mass_kg, 3),
        "hours": round(difference.hours, 3),
        "weeks": round(difference.weeks, 3),
    }


def _choice(choice: Choice) -> dict[str, Any]:
    return {"option": choice.option, "place": _place(choice.place), "count": choice.count}


def _edit(catalogue: Catalogue, before: Spec, edit: Edit) -> dict[str, Any]:
    """``set`` and ``drop`` can do each; ``words`` says it where it is about no choice."""
    match edit:
        case Take(option=option, place=place, count=count):
            return {"edit": "take", "option": option, "place": _place(place), "count": count or 1}
        case LeaveOut(option=option, place=place):
            return {"edit": "leave out", "option": option, "place": _place(place)}
        case SetCount(option=option, count=count, place=place):
            return {"edit": "count", "option": option, "place": _place(place), "count": count}
        case Move(option=option, to=to, place=place):
            return {"edit": "move", "option": option, "place": _place(place), "to": to.value}
        case _:
            return {"edit": "other", "words": done(catalogue, edit, before, before)}


def _place(place: Place | None) -> str | None:
    return place.value if place else None
