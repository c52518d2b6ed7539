"""Every state after every edit is exactly what writing all builds down says: blocked in none, follows in all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Pick
from specbuilder.model.spec import Choice, Spec
from specbuilder.session.evaluate import evaluate
from tests.laws.every_build import Build, Judge, judge_of, keeps
from tests.laws.ledger_worlds import LEDGERS, SLOW, WET, answers, few_builds, ledger_worlds, specs, told


def let_go(judge: Judge, every: Sequence[Build], choices: Sequence[Choice]) -> frozenset[str]:
    """The ledgers that the choices overdraw by themselves: no build that holds them keeps such a limit."""
    holding = [build for build in every if keeps(build, choices)]
    limits = [rule.id for rule in judge.world.rules.values() if rule.id in LEDGERS]
    return frozenset(rule for rule in limits if not any(judge.can_keep(build, rule) for build in holding))


def in_no_conflict(world: Catalogue, good: Sequence[Build], choices: Sequence[Choice]) -> tuple[Choice, ...]:
    """The choices that take part in no minimal conflict; the base van stands before the others."""
    vans = [c for c in choices if world.options[c.option].van is not None]
    vans = vans if any(keeps(build, vans) for build in good) else []
    rest = [c for c in choices if world.options[c.option].van is None]
    conflicts: list[set[int]] = []
    for size in range(1, len(rest) + 1):
        for part in combinations(range(len(rest)), size):
            if not any(known <= set(part) for known in conflicts):
                held = (*vans, *(rest[at] for at in part))
                if not any(keeps(build, held) for build in good):
                    conflicts.append(set(part))
    out = set().union(*conflicts)
    return (*vans, *(c for at, c in enumerate(rest) if at not in out))


def states_by_hand(world: Catalogue, every: Sequence[Build], spec: Spec) -> dict[OptionId, OptionState] | None:
    """The state of every option, with what is in no conflict held.

    None where no build is good at all, or where the answers and the base van do not agree.
    """
    judge = judge_of(world, spec)
    good = [build for build in every if judge.good(build)]
    if not good:
        return None
    kept, van = spec.choices, [c for c in spec.choices if world.options[c.option].van is not None]
    if not any(keeps(build, van) for build in good):
        unsaid = judge_of(world, replace(spec, answers=spec.answers.with_answer(WET.key, None)))
        if any(unsaid.good(build) for build in every if keeps(build, van)):
            return None
    if not any(keeps(build, kept) for build in good):
        without = let_go(judge, every, spec.choices)
        good = [build for build in every if judge.good(build, without)]
        kept = in_no_conflict(world, good, spec.choices)
    return _states(world, good, kept, {c.option for c in spec.choices})


def _states(
    world: Catalogue, good: Sequence[Build], kept: Sequence[Choice], chosen: set[OptionId]
) -> dict[OptionId, OptionState]:
    rivals: dict[GroupId, Choice] = {
        group: c for c in kept if world.groups[group := world.options[c.option].group].pick is Pick.ONE
    }
    found: dict[OptionId, OptionState] = {}
    for option in world.options.values():
        if option.id in chosen:
            found[option.id] = OptionState.CHOSEN
            continue
        held = [c for c in kept if c is not rivals.get(option.group)]
        completions = [build for build in good if keeps(build, held)]
        having = [build for build in completions if any(p.option == option.id for p in build)]
        if not having:
            found[option.id] = OptionState.BLOCKED
        elif len(having) == len(completions) and option.group not in rivals:
            found[option.id] = OptionState.FOLLOWS
        else:
            found[option.id] = OptionState.OPEN
    return found


def states_of(world: Catalogue, spec: Spec) -> dict[OptionId, OptionState]:
    return {option: status.state for option, status in evaluate(world, spec).options.items()}


def difference(world: Catalogue, spec: Spec, by_hand: dict[OptionId, OptionState]) -> str:
    """What differs, in words."""
    found = states_of(world, spec)
    wrong = [f"{o} is {found[o]}, should be {state}" for o, state in by_hand.items() if found[o] is not state]
    return "; ".join(wrong)


@SLOW
@given(ledger_worlds(), st.data())
def test_every_state_is_what_all_builds_written_down_say(world: Catalogue, data: st.DataObject) -> None:
    every = few_builds(world)
    said = data.draw(answers())
    for _ in range(4):
        spec = data.draw(specs(world, every, said))
        by_hand = states_by_hand(world, every, spec)
        if by_hand is not None:
            wrong = difference(world, spec, by_hand)
            assert not wrong, f"{wrong}\n{told(world, spec)}"
