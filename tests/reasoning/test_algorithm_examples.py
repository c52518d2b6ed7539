"""Worked examples of ``specbuilder/reasoning/ALGORITHM.md``: each built from its table, every number checked.

The first example starts from a catalogue: ``tests/session/test_algorithm_examples.py``.
"""

from __future__ import annotations

from collections.abc import Mapping

from specbuilder.reasoning.best import Completer
from specbuilder.reasoning.budget import Budget
from specbuilder.reasoning.conflicts import minimal_conflicts
from specbuilder.reasoning.costs import Costs, Count
from specbuilder.reasoning.descent import Descent
from specbuilder.reasoning.hitting import Elements, HittingSets, elements_of
from specbuilder.reasoning.problem import Problem
from specbuilder.reasoning.reasoner import Implied, Reasoner, States, Swap
from specbuilder.reasoning.reasons import minimal_reason, minimal_reasons
from specbuilder.reasoning.repairs import Ending, repairs


class Named:
    """A problem whose variables have names."""

    def __init__(self, names: str) -> None:
        self.problem = Problem()
        self.of = {name: self.problem.new() for name in names.split()}

    def lits(self, names: str) -> list[int]:
        """Literals by name; a minus sign in front: it is false."""
        return [-self.of[name[1:]] if name.startswith("-") else self.of[name] for name in names.split()]

    def names(self, lits: object) -> set[str]:
        """The names of literals."""
        by_number = {number: name for name, number in self.of.items()}
        assert isinstance(lits, frozenset | tuple | list | set)
        return {by_number[lit] if lit > 0 else "-" + by_number[-lit] for lit in lits}

    def clause(self, names: str) -> None:
        self.problem.add_clause(self.lits(names))

    def pick_one(self, names: str) -> None:
        self.clause(names)
        self.problem.add_at_most_one(self.lits(names))

    def limit(self, weights: Mapping[str, int], bound: int) -> None:
        self.problem.add_limit([(weight, self.of[name]) for name, weight in weights.items()], bound)


# ---- Kilograms leave only the lightest ----------------------------------------------------------------------------


def test_kilograms_leave_only_the_lightest() -> None:
    it = Named("steel ash ply compressor cool-box tank awning foot electric battery slow fast")
    it.pick_one("steel ash ply")
    it.pick_one("compressor cool-box")
    it.clause("-battery slow fast")
    it.clause("-tank foot electric")
    kg = dict(zip(it.of, (30, 22, 14, 21, 9, 40, 32, 2, 3, 1, 3, 4), strict=True))
    it.limit(kg, 100)
    reasoner = Reasoner(it.problem)
    engine = reasoner.engine
    assert engine.bound == [100 - 14 - 9] == [77]
    restated = {name: weight for weight, lit in engine.terms[0] for name in it.names([lit])}
    assert restated == {
        name: weight
        for name, weight in (kg | {"steel": 16, "ash": 8, "ply": 0, "compressor": 12, "cool-box": 0}).items()
        if weight
    }

    def follows(held: str) -> set[str]:
        found = reasoner.implied(it.lits(held))
        assert isinstance(found, Implied)
        return it.names(found.literals) - set(held.split())

    assert follows("tank") == set()
    assert engine.slack == [37]
    assert follows("tank awning") == {"-steel", "-compressor", "-ash", "ply", "cool-box", "-fast"}
    assert engine.slack == [5]
    assert kg["ash"] < 100 - kg["tank"] - kg["awning"] == 28

    states = reasoner.states(it.lits("tank awning"))
    assert isinstance(states, States)
    blocked = {name for name, lit in it.of.items() if states.can_be(lit) is False}
    assert blocked == {"steel", "compressor", "ash", "fast", "battery"}
    lightest = it.lits("ply cool-box tank awning foot slow")
    assert sum(kg[name] for name in it.names(lightest)) == 100
    assert isinstance(reasoner.consistent(lightest), bytes)

    core = reasoner.implied(it.lits("tank awning battery"))
    assert isinstance(core, frozenset)
    assert it.names(core) == {"tank", "awning", "battery"}
    found = minimal_reasons(reasoner, it.lits("tank awning"), it.of["battery"], 9)
    assert found.is_complete
    assert [it.names(reason) for reason in found.found] == [{"tank", "awning"}]
    follows("awning")
    assert engine.slack == [45]


# ---- Beside the bench that stands ---------------------------------------------------------------------------------


def test_beside_the_bench_that_stands() -> None:
    it = Named("side l-shape u-shape rear galley rails no-rails")
    it.pick_one("side l-shape u-shape")
    it.pick_one("rear galley")
    it.pick_one("rails no-rails")
    it.clause("-u-shape rails")
    it.limit({"u-shape": 1, "rear": 1}, 1)
    assert list(it.of.values()) == [1, 2, 3, 4, 5, 6, 7]
    reasoner = Reasoner(it.problem)
    plain = reasoner.states([1, 4, 7])
    assert isinstance(plain, States)
    assert (plain.can_be(2), plain.can_be(3)) == (False, False)

    l_shape, u_shape = Swap(2, (1,)), Swap(3, (1,))

    def shown(swap: Swap) -> set[int]:
        build = reasoner.build_beside(swap)
        assert build is not None
        return {v for v in it.of.values() if build[v]}

    assert reasoner.beside([1, 4, 7], [l_shape, u_shape]) == [True, {3, 4}]
    assert shown(l_shape) == {2, 4, 7}
    every = minimal_reasons(reasoner, [4, 7], 3, 9)
    assert (every.found, every.is_complete) == (((4,), (7,)), True)
    assert minimal_reason(reasoner, [4, 7], 3) == (4,)

    assert reasoner.beside([1, 5, 7], [l_shape, u_shape]) == [True, {3, 7}]
    assert shown(l_shape) == {2, 5, 7}
    assert reasoner.beside([1, 5, 6], [l_shape, u_shape]) == [True, True]
    assert shown(u_shape) == {3, 5, 6}


# ---- Two findings and three repairs -------------------------------------------------------------------------------


def test_two_findings_and_three_repairs() -> None:
    it = Named("kitchen wet-room rack panels")
    kg = dict(zip(it.of, (20, 45, 35, 30), strict=True))
    costs = dict(zip(it.of, (5, 9, 2, 4), strict=True))
    it.clause("-kitchen -wet-room")
    it.limit(kg, 100)
    held = list(it.of.values())
    reasoner = Reasoner(it.problem)
    assert sum(kg.values()) == 130
    conflicts = minimal_conflicts(reasoner, held, 9)
    assert conflicts.is_complete
    assert [it.names(c) for c in conflicts.found] == [{"kitchen", "wet-room"}, {"wet-room", "rack", "panels"}]
    assert kg["wet-room"] + kg["rack"] + kg["panels"] == 110
    assert kg["kitchen"] + kg["wet-room"] + kg["rack"] == 100

    found = repairs(reasoner, held, {it.of[name]: cost for name, cost in costs.items()}, 9)
    assert found.ending is Ending.NONE_LEFT
    assert [(it.names(way.dropped), way.cost) for way in found.ways] == [
        ({"kitchen", "rack"}, 7),
        ({"wet-room"}, 9),
        ({"kitchen", "panels"}, 9),
    ]
    kept = [sum(kg[name] for name in set(kg) - it.names(way.dropped)) for way in found.ways]
    assert kept == [75, 85, 80]


def test_two_findings_and_three_repairs_step_by_step() -> None:
    from_last = ("panels", "rack", "wet-room", "kitchen")
    cost = {"kitchen": 5, "wet-room": 9, "rack": 2, "panels": 4}
    conflicts = ({"kitchen", "wet-room"}, {"wet-room", "rack", "panels"})
    asked: list[tuple[set[str], int | None]] = []

    def ask(chosen: Elements) -> Elements | None:
        names = {from_last[at] for at in elements_of(chosen)}
        asked.append((names, sets.floor))
        missed = next((c for c in conflicts if not c & names), None)
        return None if missed is None else sum(1 << at for at, name in enumerate(from_last) if name in missed)

    sets = HittingSets([cost[name] for name in from_last], ask, lambda: None)
    assert len(list(sets)) == 3
    assert sets.floor is None
    assert asked == [
        (set(), 0),
        ({"kitchen"}, 5),
        ({"kitchen", "rack"}, 7),
        ({"wet-room"}, 9),
        ({"kitchen", "panels"}, 9),
    ]


# ---- Finished with a proof ----------------------------------------------------------------------------------------


def kitchens() -> tuple[Named, dict[int, int]]:
    it = Named("induction gas-hob diesel gas-heater big small locker")
    it.pick_one("induction gas-hob")
    it.pick_one("diesel gas-heater")
    it.pick_one("big small")
    it.clause("-induction big")
    it.clause("-gas-hob locker")
    it.clause("-gas-heater locker")
    return it, dict(zip(it.of.values(), (500, 300, 900, 700, 800, 400, 150), strict=True))


def test_finished_with_a_proof() -> None:
    it, costs = kitchens()
    completer = Completer(Reasoner(it.problem))
    seen: list[tuple[int, int | None]] = []

    def look() -> bool:
        now = search.floor, search.best[0] if search.best else None
        if not seen or seen[-1] != now:
            seen.append(now)
        return False

    search = Descent(completer.prepare(), [], costs, Budget(cancelled=look), None)
    search.run()
    look()
    assert seen == [(0, None), (0, 2200), (700, 2200), (1100, 2200), (1400, 2200), (1550, 1550)]

    found = completer.best([], costs)
    assert (found.cost, found.floor, found.is_proved) == (1550, 1550, True)
    assert found.build is not None
    taken = {name for name, lit in it.of.items() if found.build[lit]}
    assert taken == {"gas-hob", "gas-heater", "small", "locker"}
    called_off = completer.best([], costs, budget=Budget(steps=3))
    assert (called_off.cost, called_off.floor, called_off.is_proved) == (2200, 700, False)


def test_finished_with_a_proof_step_by_step() -> None:
    it, prices = kitchens()
    costs = Costs(prices, it.problem.at_most_one)
    supposed = Reasoner(it.problem).implied(it.lits("-diesel -big"))
    assert isinstance(supposed, Implied)
    for name, rests_on, others, floor, left in (
        ("gas-heater", "-diesel", "diesel gas-heater", 700, {"diesel": 200}),
        ("small", "-big", "big small", 1100, {"big": 400}),
        ("gas-hob", "-big", "big gas-hob", 1400, {"big": 100}),
        ("locker", "-diesel", "diesel locker", 1550, {"diesel": 50}),
    ):
        assert it.names(supposed.because[it.of[name]]) == {rests_on}
        costs.raise_floor(it.lits(others))
        assert costs.floor == floor
        assert name not in it.names(list(costs.left))
        assert all(costs.left[it.of[other]] == cost for other, cost in left.items())
    rest = {name: costs.left[lit] for name, lit in it.of.items() if lit in costs.left}
    assert rest == {"induction": 500, "big": 100, "diesel": 50}
    both = {
        Count(tuple(sorted(it.lits("big gas-hob"))), 2): 300,
        Count(tuple(sorted(it.lits("diesel locker"))), 2): 150,
    }
    assert costs.due == both
    dearer = sum(prices[lit] for lit in it.lits("gas-hob diesel big locker"))
    assert dearer == costs.floor + rest["diesel"] + rest["big"] + sum(both.values()) == 2150
    assert isinstance(Reasoner(it.problem).consistent(it.lits("gas-hob diesel big locker")), bytes)
