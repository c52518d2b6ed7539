"""The state of every option: chosen, follows, open or blocked, sound against rules, structure and zones.

*Blocked* and *follows* are proven here; *open* only says that propagation did not decide it;
``session.exact`` does.

An option that stands beside the choice of its pick-one group is judged as if it took that choice's place: it is
blocked when one of its own clauses is false for reasons in which that choice has no part.
"""

from __future__ import annotations

from typing import NamedTuple

from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Place
from specbuilder.model.rules import BriefIs
from specbuilder.model.spec import Choice

from .claims import Claims
from .clauses import Placement, Why, placements_of
from .propagate import UNSET
from .rulebook import Row, Seat
from .runs import Run, choice_cause


class Stand(NamedTuple):
    """The state of one option."""

    state: OptionState
    place: Place | None
    cause: Cause | None = None
    brings: tuple[OptionId, ...] = ()
    asks: tuple[GroupId, ...] = ()


def forced(run_: Run) -> tuple[Placement, ...]:
    """Options that are not among the held choices and stand in every completion, at the place they must take."""
    held = {c.option for c in run_.choices}
    names, value = run_.rulebook.clauses.names, run_.trail.value
    found: dict[OptionId, Placement] = {}
    for option, variable in run_.rulebook.clauses.option.items():
        if value[variable] == 1 and option not in held:
            name = names[variable]
            found[option] = name if isinstance(name, Placement) else _free_place(run_, option)
    return tuple(found.values())


def _free_place(run_: Run, option: OptionId) -> Placement:
    places = placements_of(run_.rulebook.catalogue.options[option])
    variables = run_.rulebook.clauses.placement
    return next((p for p in places if run_.trail.value[variables[p]] != -1), places[0])


def stands(
    run_: Run, spec_choices: tuple[Choice, ...], kept: tuple[Choice, ...] | None = None
) -> dict[OptionId, Stand]:
    """The state of every option of the catalogue; ``kept`` are the choices that are in no conflict (None: all)."""
    claims = Claims.of(run_, spec_choices if kept is None else kept)
    by_group: dict[GroupId, int] = {}
    for bit, choice in enumerate(run_.choices):
        group = run_.rulebook.catalogue.options[choice.option].group
        by_group[group] = by_group.get(group, 0) | 1 << bit
    chosen: dict[OptionId, Choice] = {}
    for choice in sorted(spec_choices, key=lambda c: c.place.value if c.place else ""):
        chosen.setdefault(choice.option, choice)  # one that stands twice shows the same place whatever was taken first
    return {
        option: _stand(run_, row, chosen.get(option), by_group.get(row.option.group, 0) if row.pick_one else 0, claims)
        for option, row in run_.rulebook.rows.items()
    }


def _stand(run_: Run, row: Row, choice: Choice | None, swapped: int, claims: Claims) -> Stand:
    variable = row.variable
    if choice is not None:
        follows = run_.trail.value[variable] == 1 and choice.came_with
        return Stand(
            OptionState.FOLLOWS if follows else OptionState.CHOSEN,
            choice.place,
            _because(run_, variable) if follows else None,
        )
    if run_.trail.value[variable] == 1:
        return Stand(OptionState.FOLLOWS, _free_place(run_, row.option.id).place, _because(run_, variable))
    first: Stand | None = None
    for seat in row.seats:
        stand = _at(run_, row, seat, swapped, claims)
        if stand.state is OptionState.OPEN:
            return stand
        first = first or stand
    assert first is not None  # every option has a placement
    return first


def _at(run_: Run, row: Row, seat: Seat, swapped: int, claims: Claims) -> Stand:
    value, masks = run_.trail.value, run_.trail.mask
    if value[seat.variable] == -1 and not masks[seat.variable] & swapped:
        return Stand(OptionState.BLOCKED, seat.place, _because(run_, seat.variable))
    brings: list[OptionId] = []
    asks: list[GroupId] = []
    for residual in seat.residuals:
        open_lit, open_count, mask = 0, 0, 0
        for lit in residual.lits:
            other = lit >> 1
            state = value[other]
            if state == UNSET or masks[other] & swapped:
                open_lit, open_count = lit, open_count + 1
            elif (state == 1) == (not lit & 1):
                break
            else:
                mask |= masks[other]
        else:
            if open_count == 0:
                why = run_.rulebook.clauses.why[residual.clause]
                return Stand(OptionState.BLOCKED, seat.place, _cause(run_, why, mask))
            if open_count == 1 and not open_lit & 1:
                wanted = _wanted(run_, row, open_lit >> 1, swapped)
                if wanted is None:
                    continue
                if not wanted:
                    why = run_.rulebook.clauses.why[residual.clause]
                    return Stand(OptionState.BLOCKED, seat.place, _cause(run_, why, mask))
                if len(wanted) == 1:
                    brings += wanted
                else:
                    asks += (run_.rulebook.catalogue.options[o].group for o in wanted)
    if row.option.zones and (blocked := claims.against(row.option, seat.place)) is not None:
        return Stand(OptionState.BLOCKED, seat.place, blocked)
    return Stand(OptionState.OPEN, seat.place, None, tuple(dict.fromkeys(brings)), tuple(dict.fromkeys(asks)))


def _wanted(run_: Run, row: Row, variable: int, swapped: int) -> tuple[OptionId, ...] | None:
    """Who could still give what taking the option would demand; None when it is an answer of the brief.

    Another answer of its own pick-one question cannot: it would have to stand beside it.
    """
    clauses = run_.rulebook.clauses
    name = clauses.names[variable]
    if isinstance(name, BriefIs):
        return None
    if isinstance(name, Placement):
        return (name.option,)
    if clauses.option.get(OptionId(name)) == variable:
        return (OptionId(name),)
    givers = run_.rulebook.givers[name]
    options, mine = run_.rulebook.catalogue.options, row.option
    return tuple(
        giver
        for giver in givers
        if not run_.is_out(giver, swapped)
        and (giver == mine.id or not (row.pick_one and options[giver].group == mine.group))
    )


def _because(run_: Run, variable: int) -> Cause:
    index = run_.trail.reason[variable]
    why = (
        run_.rulebook.clauses.why[index]
        if index >= 0
        else Why(kind=CauseKind.ONE_ANSWER, group=run_.rulebook.clauses.group_of.get(variable))
    )
    return _cause(run_, why, run_.trail.mask[variable])


def _cause(run_: Run, why: Why, mask: int) -> Cause:
    """A chain in short form: what connects, and the choices it rests on. ``explain.py`` tells the whole."""
    return node(why, tuple(choice_cause(run_.rulebook.catalogue, c) for c in run_.culprits(mask)))


def node(why: Why, because: tuple[Cause, ...]) -> Cause:
    """A node of a chain from what put a clause there."""
    return Cause(kind=why.kind, rule=why.rule, option=why.option, group=why.group, tag=why.tag, because=because)
