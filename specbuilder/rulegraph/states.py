"""The state of every option: chosen, follows, open or blocked, sound against rules, structure and zones.

*Blocked* and *follows* are proven; *open* may still turn out otherwise, since unit propagation is not complete.

An option that stands beside the choice of its pick-one group is judged as if it took that choice's place: it is
blocked when one of its own clauses is false for reasons in which that choice has no part.
"""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Place
from specbuilder.model.spec import Choice

from .claims import Claims
from .clauses import Placement, Why, placements_of
from .propagate import UNSET
from .rulebook import Row, Seat
from .runs import Run, choice_cause


@dataclass(frozen=True, slots=True)
class Stand:
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


def stands(run_: Run, spec_choices: tuple[Choice, ...]) -> dict[OptionId, Stand]:
    """The state of every option of the catalogue."""
    claims = Claims.of(run_, spec_choices)
    by_group: dict[GroupId, int] = {}
    for bit, choice in enumerate(run_.choices):
        group = run_.rulebook.catalogue.options[choice.option].group
        by_group[group] = by_group.get(group, 0) | 1 << bit
    chosen = {c.option: c for c in spec_choices}
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
                _wants(run_, open_lit >> 1, swapped, brings, asks)
    if row.option.zones and (blocked := claims.against(row.option, seat.place)) is not None:
        return Stand(OptionState.BLOCKED, seat.place, blocked)
    return Stand(OptionState.OPEN, seat.place, None, tuple(dict.fromkeys(brings)), tuple(dict.fromkeys(asks)))


def _wants(run_: Run, variable: int, swapped: int, brings: list[OptionId], asks: list[GroupId]) -> None:
    """A capability that taking the option would demand: who could still give it."""
    names, catalogue = run_.rulebook.clauses.names, run_.rulebook.catalogue
    name = names[variable]
    if isinstance(name, Placement):
        brings.append(name.option)
        return
    if not isinstance(name, str):
        return
    givers = [g for g in run_.rulebook.givers[name] if not run_.is_out(g, swapped)]
    if len(givers) == 1:
        brings.append(givers[0])
    else:
        asks += dict.fromkeys(catalogue.options[g].group for g in givers)


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
