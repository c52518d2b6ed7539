"""What ``specbuilder/reasoning/ALGORITHM.md`` works out from a catalogue: the first example, two rows of section 3."""

from __future__ import annotations

from math import inf

from specbuilder.calc.limits.shape import Shape
from specbuilder.calc.measuring.states import Fold, Folding
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import BASE_VAN_GROUP, OptionId
from specbuilder.model.kinds import OptionState, Place
from specbuilder.model.spec import Choice, Spec
from specbuilder.reasoning.problem import Limit, Problem
from specbuilder.reasoning.reasoner import Implied
from specbuilder.session.exact import make_peace, proven
from specbuilder.session.explain import reasons
from specbuilder.session.facts import facts_of
from specbuilder.session.limit_rows import UNIT, Amounting, add_rows
from specbuilder.session.machine import machine_of
from tests import worlds

SOCKETS = worlds.catalogue(
    (worlds.group("sockets", any_=1), worlds.group("inverter"), worlds.group("hook-up")),
    (
        worlds.option("socket", "sockets", needs=("mains",), places="left right"),
        worlds.option("big-inverter", "inverter", gives="mains"),
        worlds.option("no-inverter", "inverter"),
        worlds.option("inlet", "hook-up", gives="mains"),
        worlds.option("no-hook-up", "hook-up"),
    ),
)
LEFT_SOCKET = Choice(option=OptionId("socket"), place=Place.LEFT)
NO_INVERTER, NO_HOOK_UP = Choice(option=OptionId("no-inverter")), Choice(option=OptionId("no-hook-up"))


def proven_states(world: Catalogue, *choices: Choice) -> dict[str, OptionState | None]:
    spec = Spec(choices=choices)
    asked = [option for option in world.options if not spec.has(option)]
    found = proven(make_peace(world, facts_of(world, spec), choices), asked)
    return {str(option): found[option].state for option in asked}


def ends(cause: Cause) -> set[str]:
    own = {str(cause.option)} if cause.kind is CauseKind.CHOICE else set[str]()
    return own.union(*map(ends, cause.because))


def test_a_socket_needs_mains() -> None:
    machine = machine_of(SOCKETS, facts_of(SOCKETS, Spec()), ())
    problem = machine.compiled.problem
    assert problem.count == 8
    wherever, answers = [(-1, 3), (-2, 3), (-3, 1, 2)], [(4, 5), (6, 7)]
    mains = [(-4, 8), (-6, 8), (-8, 4, 6)]
    assert problem.clauses == [*wherever, *answers, *mains, (-3, 8)]
    assert problem.at_most_one == [(4, 5), (6, 7)]
    assert problem.limits == [Limit(((1, 1), (1, 2)), 1)] * 2

    followed = machine.reasoner.implied([1])
    assert isinstance(followed, Implied)
    assert set(followed.literals) == {1, 3, -2, 8}
    states = proven_states(SOCKETS, LEFT_SOCKET)
    assert set(states.values()) == {OptionState.OPEN}
    assert len(states) == 4

    followed = machine.reasoner.implied([1, 5])
    assert isinstance(followed, Implied)
    assert followed.literals == (1, 3, -2, 8, 5, -4, 6, -7)
    assert followed.because[6] == followed.because[-7] == {1, 5}
    assert proven_states(SOCKETS, LEFT_SOCKET, NO_INVERTER) == {
        "big-inverter": OptionState.OPEN,
        "inlet": OptionState.FOLLOWS,
        "no-hook-up": OptionState.BLOCKED,
    }

    followed = machine.reasoner.implied([5, 7])
    assert isinstance(followed, Implied)
    assert set(followed.literals) == {5, -4, 7, -6, -8, -3, -1, -2}
    assert proven_states(SOCKETS, NO_INVERTER, NO_HOOK_UP)["socket"] is OptionState.BLOCKED
    why = reasons(SOCKETS, Spec(choices=(NO_INVERTER, NO_HOOK_UP)), OptionId("socket"))
    assert why is not None
    assert why.complete
    assert [ends(cause) for cause in why.causes] == [{"no-inverter", "no-hook-up"}]


# ---- Rows of section 3 --------------------------------------------------------------------------------------------


def row(world: Catalogue, shape: Shape) -> tuple[dict[str, int], float]:
    """The one row of a shape: weight by option, and bound, in the ledger's unit."""
    problem = Problem()
    lits = {option: (problem.new(),) for option in world.options}
    (index,) = add_rows(problem, world, Amounting(lits), shape, [()])
    name = {lit: str(option) for option, (lit,) in lits.items()}
    limit = problem.limits[index]
    return {name[lit]: weight // UNIT for weight, lit in limit.terms}, limit.bound / UNIT


def test_the_base_van_is_a_term_of_the_row() -> None:
    world = worlds.catalogue(
        (worlds.group(BASE_VAN_GROUP), worlds.group("bench")),
        tuple(worlds.option(*words) for words in (("long", BASE_VAN_GROUP), ("short", BASE_VAN_GROUP)))
        + tuple(worlds.option(name, "bench") for name in ("steel", "ply")),
    )
    long, short, steel, ply = world.options
    shape = Shape(
        vans=(long, short),
        amounts={steel: 30.0, ply: 14.0},
        states={},
        folding=Folding((), ()),
        starts=((),),
        room=lambda van, _: 40.0 if van == long else 25.0,
    )
    assert row(world, shape) == ({"steel": 30, "ply": 14, "short": 15}, 40)


def test_the_least_allowance_is_followed_by_states() -> None:
    world = worlds.catalogue(
        (worlds.group("rack"), worlds.group("roof", any_=2)),
        (
            worlds.option("bars", "rack"),
            worlds.option("rails", "rack"),
            worlds.option("box", "roof"),
            worlds.option("panel", "roof"),
        ),
    )
    bars, rails, box, panel = world.options
    shape = Shape(
        vans=(None,),
        amounts={box: 40.0, panel: 30.0},
        states={bars: (60.0,), rails: (80.0,)},
        folding=Folding((Fold.LEAST,), (inf,)),
        starts=((inf,),),
        room=lambda _, joint: joint[0],
    )
    assert row(world, shape) == ({"box": 40, "panel": 30, "bars": 20}, 80)
