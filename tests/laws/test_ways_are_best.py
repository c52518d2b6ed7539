"""The first way out is the best there is: every set of up to three edits is tried by hand and none goes before it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.brief import Answers
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take, Together
from specbuilder.model.ids import BriefKey, GroupId, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings, Goal, LetIn, RankBy, WaysOut
from specbuilder.session.apply import apply
from specbuilder.session.difference import choices_cost
from specbuilder.session.evaluate import evaluate
from specbuilder.session.ways_out import ways_out
from tests.laws.every_build import Build, Piece, judge_of, keeps
from tests.laws.ledger_worlds import QUICK, choice_of, few_builds, ledger_worlds, told

SAID = Answers({BriefKey("adults"): 2, BriefKey("children"): 0, BriefKey("wet"): "yes"})
SAVED_ON = ("total-mass", "price-gross")
MOST_EDITS = 3
MANY = 22
"""With more single edits than this only pairs are tried."""
TWENTY = 20
"""Changing what keeps people safe counts as much as so many changes of anything else."""


@dataclass(frozen=True, slots=True, order=True)
class Rank:
    """What goes before: fewer changes, then less to be signed, then the lower price in pence."""

    changes: int
    signed: int
    pence: int


class ByHand:
    """A goal on a finished build, and what can be done about it."""

    def __init__(self, world: Catalogue, spec: Spec, goal: Goal) -> None:
        self.world, self.spec, self.goal = world, spec, goal
        self.judge = judge_of(world, spec)
        self.stops, self.signs = self._broken(spec, Level.STOP), self._broken(spec, Level.SIGN)
        self.pence = choices_cost(world, spec.choices, RankBy.PRICE)

    def _broken(self, spec: Spec, level: Level) -> frozenset[str]:
        build = tuple(sorted((Piece(c.option, c.place, c.count) for c in spec.choices), key=str))
        (broken,) = self.judge.each(build, level)
        return broken

    def _is_build(self, spec: Spec) -> bool:
        """Whether no group holds more than it takes."""
        many = Counter[GroupId]()
        for choice in spec.choices:
            many[self.world.options[choice.option].group] += choice.count
        return all(number <= self.world.groups[group].max_choices for group, number in many.items())

    def reached(self, spec: Spec) -> bool:
        """The goal is reached, and nothing more is broken at STOP."""
        stops = self._broken(spec, Level.STOP)
        if not self._is_build(spec):
            return False
        if not stops <= self.stops:
            return False
        if isinstance(self.goal, LetIn):
            return spec.has(self.goal.option)
        return stops.isdisjoint(self.goal.rules) and self._broken(spec, Level.SIGN).isdisjoint(self.goal.rules)

    def serves(self, spec: Spec) -> bool:
        """Something else of the same group that gives some of what was wanted came in, and nothing more is broken."""
        if not isinstance(self.goal, LetIn) or not self._broken(spec, Level.STOP) <= self.stops:
            return False
        wanted = self.world.options[self.goal.option]
        came = [self.world.options[c.option] for c in spec.choices if not self.spec.has(c.option)]
        return any(o.group == wanted.group and not set(o.gives).isdisjoint(wanted.gives) for o in came)

    def can_be_reached(self, every: list[Build]) -> bool:
        """Whether some build reaches it that leaves what is found as it is."""
        wanted = self.goal.option if isinstance(self.goal, LetIn) else None
        firm = [c for c in self.spec.choices if self.world.options[c.option].found or self._is_kept_safe(c.option)]
        for build in every:
            spec = self.spec.with_choices(tuple(map(choice_of, build)))
            new = {c.option for c in spec.choices} - {c.option for c in self.spec.choices} - {wanted}
            if any(self.world.options[o].found for o in new) or not keeps(build, firm):
                continue
            if self.reached(spec):
                return True
        return False

    def _is_kept_safe(self, option: OptionId) -> bool:
        """What keeps people safe is no saving."""
        spending = isinstance(self.goal, ClearFindings) and any(r in SAVED_ON for r in self.goal.rules)
        return spending and self.world.options[option].safety

    def rank(self, edits: tuple[Edit, ...], spec: Spec) -> Rank:
        touched = {e.option for e in edits if not isinstance(e, Take)} | self._swapped(edits)  # type: ignore[union-attr]
        safe = sum(self.world.options[o].safety for o in touched)
        signed = len(self._broken(spec, Level.SIGN) - self.signs)
        pence = choices_cost(self.world, spec.choices, RankBy.PRICE) - self.pence
        return Rank(len(edits) + safe * (TWENTY - 1), signed, pence)

    def _swapped(self, edits: tuple[Edit, ...]) -> set[OptionId]:
        """What leaves its group of one answer for another answer; the place of what is let in is no matter."""
        groups = {self.world.options[e.option].group for e in edits if isinstance(e, Take)}
        one = {g for g in groups if self.world.groups[g].pick is Pick.ONE}
        if isinstance(self.goal, LetIn):
            one.discard(self.world.options[self.goal.option].group)
        return {c.option for c in self.spec.choices if self.world.options[c.option].group in one}

    def best(self, *, with_van: bool) -> tuple[Rank, tuple[Edit, ...]] | None:
        """The best of all small sets of edits."""
        single = list(self._single(with_van))
        found: tuple[Rank, tuple[Edit, ...]] | None = None
        for size in range(1, (MOST_EDITS if len(single) <= MANY else 2) + 1):
            for edits in combinations(single, size):
                if not self._asks_for_it(edits):
                    continue
                outcome = apply(self.world, self.spec, Together(edits=edits))
                if outcome.refused is None and self.reached(outcome.spec):
                    rank = self.rank(edits, outcome.spec)
                    if found is None or rank < found[0]:
                        found = rank, edits
        return found

    def _asks_for_it(self, edits: tuple[Edit, ...]) -> bool:
        """What is to be let in is taken, and does not only come along."""
        wanted = self.goal.option if isinstance(self.goal, LetIn) else None
        return wanted is None or any(isinstance(e, Take) and e.option == wanted for e in edits)

    def _single(self, with_van: bool) -> Iterator[Edit]:
        """What leaves goes first, so that it is not in the way of what comes."""
        standing = {c.option for c in self.spec.choices}
        for c in self.spec.choices:
            option = self.world.options[c.option]
            if option.found or self._is_kept_safe(option.id):
                continue
            if self.world.groups[option.group].pick is Pick.ANY:
                yield LeaveOut(option=c.option, place=c.place)
            for place in option.places:
                if place is not c.place:
                    yield Move(option=c.option, to=place, place=c.place)
            for count in range(1, option.max_count + 1):
                if count != c.count:
                    yield SetCount(option=c.option, count=count, place=c.place)
        firm = {
            self.world.options[c.option].group
            for c in self.spec.choices
            if (o := self.world.options[c.option]).found
            or self._is_kept_safe(o.id)
            or (o.van is not None and not with_van)
        }
        wanted = self.goal.option if isinstance(self.goal, LetIn) else None
        for option in self.world.options.values():
            one = self.world.groups[option.group].pick is Pick.ONE
            if (
                option.id in standing
                or (option.found and option.id != wanted)
                or (one and option.group in firm and option.id != wanted)
            ):
                continue
            for place in option.places or (None,):
                yield Take(option=option.id, place=place)


def finished_specs(data: st.DataObject, world: Catalogue, every: list[Build]) -> Spec:
    build = data.draw(st.sampled_from(every))
    return Spec(answers=SAID, choices=tuple(choice_of(piece) for piece in data.draw(st.permutations(build))))


def last(by_hand: ByHand) -> WaysOut:
    """Everything that was found; and what holds of each way, whichever stands first."""
    world, spec, goal = by_hand.world, by_hand.spec, by_hand.goal
    *_, found = ways_out(world, spec, goal)
    for way in found.ways:
        taken = apply(world, spec, Together(edits=way.edits)).spec
        assert taken == way.spec
        assert by_hand.reached(taken) or by_hand.serves(taken), (way.edits, told(world, spec))
        report = evaluate(world, taken)
        assert {f.rule for f in report.broken(Level.STOP)} == by_hand._broken(taken, Level.STOP)
        found_before = {c for c in spec.choices if world.options[c.option].found}
        assert isinstance(goal, LetIn) or found_before <= set(taken.choices), (way.edits, told(world, spec))
        if isinstance(goal, ClearFindings) and any(rule in SAVED_ON for rule in goal.rules):
            safe = {c for c in spec.choices if world.options[c.option].safety}
            assert safe <= set(taken.choices), (way.edits, told(world, spec))
    return found


def check(world: Catalogue, spec: Spec, goal: Goal, every: list[Build]) -> None:
    by_hand = ByHand(world, spec, goal)
    if not by_hand.can_be_reached(every):
        return
    found = last(by_hand)
    if not found.complete:
        return
    ways = [way for way in found.ways if by_hand.reached(way.spec)]
    if len(ways) < len(found.ways) == 3:
        return  # what serves in its place fills the list
    van = {c for c in spec.choices if world.options[c.option].van is not None}
    changes_van = not ways or not van <= set(ways[0].spec.choices)
    best = by_hand.best(with_van=False)
    if isinstance(goal, LetIn) and world.options[goal.option].van is not None:
        best = by_hand.best(with_van=True)
    elif changes_van:
        assert best is None, (best, goal, told(world, spec))
        best = by_hand.best(with_van=True)
    if best is None:
        return
    assert found.ways, (best, goal, told(world, spec))
    first = by_hand.rank(found.ways[0].edits, found.ways[0].spec)
    assert first <= best[0], (first, found.ways[0].edits, best, goal, told(world, spec))


@QUICK
@given(ledger_worlds((Level.STOP, Level.STOP, Level.SIGN)), st.data())
def test_the_first_way_out_of_what_is_broken_is_the_best(world: Catalogue, data: st.DataObject) -> None:
    every = few_builds(world)
    spec = finished_specs(data, world, every)
    broken = tuple(f.rule for f in evaluate(world, spec).broken(Level.STOP))
    if broken:
        check(world, spec, ClearFindings(rules=broken), every)
        check(world, spec, ClearFindings(rules=(RuleId(data.draw(st.sampled_from(broken))),)), every)


@QUICK
@given(ledger_worlds((Level.STOP, Level.STOP, Level.SIGN)), st.data())
def test_the_first_way_to_let_something_in_is_the_best(world: Catalogue, data: st.DataObject) -> None:
    every = few_builds(world)
    spec = finished_specs(data, world, every)
    options = evaluate(world, spec).options
    blocked = [o for o, status in options.items() if status.state is OptionState.BLOCKED]
    for option in blocked[:2]:
        check(world, spec, LetIn(option=option), every)
