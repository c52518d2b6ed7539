"""The state of every option: chosen, follows, open or blocked, sound against rules, structure and zones.

*Blocked* and *follows* are proven; *open* may still turn out otherwise, since unit propagation is not complete.

An option that stands beside the choice of its pick-one group is judged as if it took that choice's place: it is
blocked when one of its own clauses is false for reasons in which that choice has no part.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId, Tag, Zone
from specbuilder.model.kinds import OptionState, Pick, Place
from specbuilder.model.spec import Choice

from .clauses import Clauses, Placement, Why, compile_clauses, no, placements_of, yes
from .graph import RuleGraph, build_graph
from .propagate import UNSET, Trail, propagate
from .standing import zones_at


@dataclass(frozen=True, slots=True)
class Residual:
    """What is left of a clause once an option is taken: one of these literals must hold."""

    clause: int
    lits: tuple[int, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Rulebook:
    """Everything about one catalogue that does not depend on a spec."""

    catalogue: Catalogue
    graph: RuleGraph
    clauses: Clauses
    residuals: Mapping[Placement, tuple[Residual, ...]]
    members: Mapping[GroupId, tuple[Option, ...]]


@dataclass(frozen=True, slots=True)
class Stand:
    """The state of one option."""

    state: OptionState
    place: Place | None
    cause: Cause | None = None
    brings: tuple[OptionId, ...] = ()
    asks: tuple[GroupId, ...] = ()


@dataclass(frozen=True, slots=True)
class Run:
    """A propagation over the choices of one spec."""

    rulebook: Rulebook
    choices: tuple[Choice, ...]
    """The choices that were held, in the order of the mask's bits."""
    trail: Trail

    def culprits(self, mask: int) -> tuple[Choice, ...]:
        """The choices of a mask."""
        return tuple(c for bit, c in enumerate(self.choices) if mask >> bit & 1)


def make_rulebook(catalogue: Catalogue) -> Rulebook:
    """Compile a catalogue."""
    clauses = compile_clauses(catalogue)
    return Rulebook(
        catalogue,
        build_graph(catalogue),
        clauses,
        {placement: _residuals(clauses, variable) for placement, variable in clauses.placement.items()},
        {group: catalogue.options_of(group) for group in catalogue.groups},
    )


def _residuals(clauses: Clauses, variable: int) -> tuple[Residual, ...]:
    taken = {yes(variable)}
    for index in clauses.watching[no(variable)]:
        lits = clauses.lits[index]
        if len(lits) == 2 and clauses.why[index].kind is CauseKind.GIVES:
            taken |= {lit for lit in lits if lit != no(variable)}
    found: dict[int, Residual] = {}
    for lit in taken:
        for index in clauses.watching[lit ^ 1]:
            if taken.isdisjoint(clauses.lits[index]):
                rest = tuple(other for other in clauses.lits[index] if other ^ 1 not in taken)
                found[index] = Residual(index, rest)
    return tuple(found.values())


def run(rulebook: Rulebook, choices: tuple[Choice, ...], answers: tuple[int, ...]) -> Run:
    """Propagate these choices; choices the catalogue does not know are passed over."""
    held = tuple(c for c in choices if _variable(rulebook, c) is not None)
    variables = [v for c in held if (v := _variable(rulebook, c)) is not None]
    return Run(rulebook, held, propagate(rulebook.clauses, variables, answers))


def _variable(rulebook: Rulebook, choice: Choice) -> int | None:
    placement = rulebook.clauses.placement
    exact = placement.get(Placement(choice.option, choice.place))
    option = rulebook.catalogue.options.get(choice.option)
    if exact is not None or option is None:
        return exact
    return placement[placements_of(option)[0]]  # at a place it may not take: the rule about places says so


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
    claims = _Claims.of(run_, spec_choices)
    by_group: dict[GroupId, int] = {}
    for bit, choice in enumerate(run_.choices):
        group = run_.rulebook.catalogue.options[choice.option].group
        by_group[group] = by_group.get(group, 0) | 1 << bit
    chosen = {c.option: c for c in spec_choices}
    result: dict[OptionId, Stand] = {}
    for option_id, option in run_.rulebook.catalogue.options.items():
        swapped = by_group.get(option.group, 0) if run_.rulebook.catalogue.groups[option.group].pick is Pick.ONE else 0
        result[option_id] = _stand(run_, option, chosen.get(option_id), swapped, claims)
    return result


def _stand(run_: Run, option: Option, choice: Choice | None, swapped: int, claims: _Claims) -> Stand:
    variable = run_.rulebook.clauses.option[option.id]
    if choice is not None:
        follows = run_.trail.value[variable] == 1 and choice.came_with
        return Stand(
            OptionState.FOLLOWS if follows else OptionState.CHOSEN,
            choice.place,
            _because(run_, variable) if follows else None,
        )
    if run_.trail.value[variable] == 1:
        return Stand(OptionState.FOLLOWS, _free_place(run_, option.id).place, _because(run_, variable))
    first: Stand | None = None
    for placement in placements_of(option):
        stand = _at(run_, option, placement, swapped, claims)
        if stand.state is OptionState.OPEN:
            return stand
        first = first or stand
    assert first is not None  # every option has a placement
    return first


def _at(run_: Run, option: Option, placement: Placement, swapped: int, claims: _Claims) -> Stand:
    trail, clauses = run_.trail, run_.rulebook.clauses
    variable = clauses.placement[placement]
    if trail.value[variable] == -1 and not trail.mask[variable] & swapped:
        return Stand(OptionState.BLOCKED, placement.place, _because(run_, variable))
    brings: list[OptionId] = []
    asks: list[GroupId] = []
    for residual in run_.rulebook.residuals[placement]:
        open_lit, open_count, mask = 0, 0, 0
        for lit in residual.lits:
            other = lit >> 1
            state = trail.value[other]
            if state == UNSET or trail.mask[other] & swapped:
                open_lit, open_count = lit, open_count + 1
            elif (state == 1) == (not lit & 1):
                break
            else:
                mask |= trail.mask[other]
        else:
            if open_count == 0:
                return Stand(OptionState.BLOCKED, placement.place, _cause(run_, clauses.why[residual.clause], mask))
            if open_count == 1 and not open_lit & 1:
                _wants(run_, open_lit >> 1, swapped, brings, asks)
    if (blocked := claims.against(option, placement.place)) is not None:
        return Stand(OptionState.BLOCKED, placement.place, blocked)
    return Stand(OptionState.OPEN, placement.place, None, tuple(dict.fromkeys(brings)), tuple(dict.fromkeys(asks)))


def _wants(run_: Run, variable: int, swapped: int, brings: list[OptionId], asks: list[GroupId]) -> None:
    """A capability that taking the option would demand: who could still give it."""
    names, catalogue = run_.rulebook.clauses.names, run_.rulebook.catalogue
    name = names[variable]
    if isinstance(name, Placement):
        brings.append(name.option)
        return
    if not isinstance(name, str):
        return
    givers = [g for g in run_.rulebook.graph.givers(name) if not _out(run_, g, swapped)]
    if len(givers) == 1:
        brings.append(givers[0])
    else:
        asks += dict.fromkeys(catalogue.options[g].group for g in givers)


def _out(run_: Run, option: OptionId, swapped: int) -> bool:
    variable = run_.rulebook.clauses.option[option]
    return run_.trail.value[variable] == -1 and not run_.trail.mask[variable] & swapped


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


def choice_cause(catalogue: Catalogue, choice: Choice) -> Cause:
    """A choice as the end of a chain; a base van is told apart from the rest."""
    is_van = catalogue.options[choice.option].van is not None
    return Cause(kind=CauseKind.VAN if is_van else CauseKind.CHOICE, option=choice.option, place=choice.place)


@dataclass(slots=True)
class _Claims:
    """Who claims which zone, and what may still free it."""

    run: Run
    claimed: Counter[Zone]
    by: dict[Zone, list[Choice]]
    freed: Counter[Zone]
    of_group: dict[GroupId, Counter[Zone]]

    @classmethod
    def of(cls, run_: Run, choices: tuple[Choice, ...]) -> _Claims:
        catalogue = run_.rulebook.catalogue
        me = cls(run_, Counter(), {}, Counter(), {})
        for choice in choices:
            option = catalogue.options.get(choice.option)
            if option is None:
                continue
            if option.van is not None:
                me.claimed.update(option.van.zones_taken)
            for zone in zones_at(option.zones, choice.place.value if choice.place else None):
                me.claimed[zone] += choice.count
                me.by.setdefault(zone, []).append(choice)
                me.of_group.setdefault(option.group, Counter())[zone] += choice.count
        for option in catalogue.options.values():
            if option.frees_zones and not _out(run_, option.id, 0):
                me.freed.update(option.frees_zones)
        return me

    def against(self, option: Option, place: Place | None) -> Cause | None:
        """Why the option cannot stand there; None when its zones are free."""
        if not option.zones:
            return None
        one = self.run.rulebook.catalogue.groups[option.group].pick is Pick.ONE
        own: Counter[Zone] = self.of_group.get(option.group, Counter()) if one else Counter()
        mine = Counter(zones_at(option.zones, place.value if place else None))
        for zone, count in mine.items():
            if self.claimed[zone] - own[zone] - self.freed[zone] + count > 1:
                others = [c for c in self.by.get(zone, []) if not one or self._group(c) != option.group]
                catalogue = self.run.rulebook.catalogue
                return Cause(
                    kind=CauseKind.ZONE,
                    option=option.id,
                    tag=Tag(zone),
                    because=tuple(choice_cause(catalogue, c) for c in others) or self._van(),
                )
        return None

    def _group(self, choice: Choice) -> GroupId:
        return self.run.rulebook.catalogue.options[choice.option].group

    def _van(self) -> tuple[Cause, ...]:
        catalogue = self.run.rulebook.catalogue
        return tuple(
            choice_cause(catalogue, c) for c in self.run.choices if catalogue.options[c.option].van is not None
        )
