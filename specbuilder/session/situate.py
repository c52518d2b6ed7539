"""A spec over a catalogue: what was run, where every option stands, and the situation that is judged."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.facts import Facts
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Owner, Pick, Truth
from specbuilder.model.own_parts import is_theirs
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.spec import Choice, Spec
from specbuilder.rulegraph.clauses import no, yes
from specbuilder.rulegraph.rulebook import Rulebook
from specbuilder.rulegraph.runs import Run, choice_cause, run
from specbuilder.rulegraph.states import Stand, stands
from specbuilder.rulegraph.truth import brief_truth

from .exact import Proven, make_peace, proven
from .facts import facts_of
from .rulebooks import rulebook_of
from .same import remembered


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A spec laid over a catalogue."""

    facts: Facts
    run: Run
    """Over the choices that are in no conflict."""
    stands: dict[OptionId, Stand]
    unsettled: frozenset[OptionId]
    """Options whose state was not settled in the time; they count as open."""
    situation: Situation


def lay(catalogue: Catalogue, spec: Spec, *, exact: bool = True) -> Laid:
    """Propagate, settle the states, and resolve one spec; not ``exact``: states by propagation alone.

    The same object for the same objects while they are among the last few.
    """
    return _lay(catalogue, spec, exact)


@remembered(4)
def _lay(catalogue: Catalogue, spec: Spec, exact: bool) -> Laid:
    rulebook = rulebook_of(catalogue)
    facts = facts_of(catalogue, spec)
    run_ = run_of(rulebook, spec.choices, facts)
    if not exact:
        standing = stands(run_, spec.choices)
        situation = _situation(catalogue, spec, facts, standing)
        return Laid(facts=facts, run=run_, stands=standing, unsettled=frozenset(), situation=situation)
    peace = make_peace(catalogue, facts, run_.choices)
    if len(peace.kept) < len(run_.choices):
        run_ = run_of(rulebook, peace.kept, facts)
    standing = stands(run_, spec.choices, run_.choices)
    open_ = [o for o, stand in standing.items() if stand.state is OptionState.OPEN]
    found = proven(peace, open_)
    for option in open_:
        standing[option] = _told(catalogue, standing[option], found[option])
    return Laid(
        facts=facts,
        run=run_,
        stands=standing,
        unsettled=frozenset(o for o, p in found.items() if p.state is None),
        situation=_situation(catalogue, spec, facts, standing),
    )


def _told(catalogue: Catalogue, stand: Stand, found: Proven) -> Stand:
    """What propagation left open, as it was proven."""
    match found.state:
        case None:
            return stand
        case OptionState.OPEN:
            return stand if stand.place is found.place else stand._replace(place=found.place)
        case _:
            below = tuple(choice_cause(catalogue, c) for c in dict.fromkeys(found.blocked_by))
            return Stand(found.state, found.place or stand.place, Cause(kind=CauseKind.TOGETHER, because=below))


def run_of(rulebook: Rulebook, choices: tuple[Choice, ...], facts: Facts) -> Run:
    """Hold what was asked for; followers are held only where they do not follow by themselves."""
    answers = answer_literals(rulebook, facts)
    asked_for = tuple(c for c in choices if not c.came_with)
    first = _run(rulebook, answers, *asked_for)
    variables, value = rulebook.clauses.option, first.trail.value
    loose = [c for c in choices if c.came_with and c.option in variables and value[variables[c.option]] != 1]
    return _run(rulebook, answers, *asked_for, *loose) if loose else first


@remembered(32)
def _run(rulebook: Rulebook, answers: tuple[int, ...], *choices: Choice) -> Run:
    """A memo of the last few runs: an edit ends where the next one begins."""
    return run(rulebook, choices, answers)


@remembered(32)
def answer_literals(rulebook: Rulebook, facts: Facts) -> tuple[int, ...]:
    """The atoms of the brief that are settled, as literals.

    The state of the job (a line without a question) is left open: it moves on by itself and blocks no option.
    """
    settled: list[int] = []
    for atom, variable in rulebook.clauses.atom.items():
        if rulebook.catalogue.brief[atom.key].question is None:
            continue
        truth = brief_truth(atom, facts)
        if truth is not Truth.MAYBE:
            settled.append(yes(variable) if truth is Truth.YES else no(variable))
    return tuple(settled)


def _situation(catalogue: Catalogue, spec: Spec, facts: Facts, standing: dict[OptionId, Stand]) -> Situation:
    placed = tuple(
        Placed(
            option=option,
            count=c.count,
            place=c.place,
            owner=Owner.CUSTOMER if is_theirs(option, c) else c.owner,
            own_part=c.own_part,
        )
        for c in spec.choices
        if (option := catalogue.options.get(c.option)) is not None
    )
    answered = {p.option.group for p in placed}
    undecided: dict[GroupId, tuple[Option, ...]] = {}
    free: list[Option] = []
    for group, members in rulebook_of(catalogue).members.items():
        if catalogue.groups[group].pick is Pick.ANY:
            free += (o for o in members if standing[o.id].state in (OptionState.OPEN, OptionState.FOLLOWS))
        elif group not in answered:
            undecided[group] = _live(members, standing)
    chosen = {c.option for c in spec.choices}
    return Situation(
        catalogue=catalogue,
        facts=facts,
        van=next((p.option for p in placed if p.option.van is not None), None),
        placed=placed,
        undecided=undecided,
        free=tuple(o for o in free if o.id not in chosen),
    )


def _live(members: tuple[Option, ...], standing: dict[OptionId, Stand]) -> tuple[Option, ...]:
    follows = tuple(o for o in members if standing[o.id].state is OptionState.FOLLOWS)
    return follows or tuple(o for o in members if standing[o.id].state is OptionState.OPEN)
