"""A reason is one: under what it names nothing else can be. And nothing of it can be left out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Level, OptionState, Pick, Place
from specbuilder.model.spec import Choice, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.explain import reasons
from tests.laws.every_build import Build, judge_of, keeps
from tests.laws.ledger_worlds import QUICK, WET, ledger_worlds, told, worked_out

Member = Choice | BriefKey
"""What a reason may name: a choice, or a line of the brief."""
MOST = 9


def named(cause: Cause) -> Iterator[tuple[OptionId, Place | None] | BriefKey]:
    """The choices and answers at the ends of a tree."""
    if cause.kind in (CauseKind.CHOICE, CauseKind.VAN) and cause.option is not None:
        yield cause.option, cause.place
    if cause.kind is CauseKind.ANSWER and cause.key == WET.key:
        yield cause.key
    for below in cause.because:
        yield from named(below)


def members(cause: Cause, spec: Spec) -> frozenset[Member]:
    """The ends of a tree as choices of the spec and lines of the brief."""
    by_seat = {(c.option, c.place): c for c in spec.choices}
    return frozenset(by_seat[end] if isinstance(end, tuple) else end for end in named(cause))


def allows(
    world: Catalogue, every: Sequence[Build], spec: Spec, wanted: Callable[[Build], bool]
) -> Callable[[frozenset[Member]], bool]:
    """Whether some good build is as wanted when only these choices and answers hold."""

    def possible(held: frozenset[Member]) -> bool:
        said = spec.answers if WET.key in held else spec.answers.with_answer(WET.key, None)
        judge = judge_of(world, replace(spec, answers=said))
        choices = [c for c in held if isinstance(c, Choice)]
        return any(keeps(build, choices) and wanted(build) and judge.good(build) for build in every)

    return possible


def minimal(held: Sequence[Member], possible: Callable[[frozenset[Member]], bool]) -> set[frozenset[Member]]:
    """Every minimal set of members under which it is not possible."""
    found: set[frozenset[Member]] = set()
    for size in range(len(held) + 1):
        for part in map(frozenset, combinations(held, size)):
            if not any(known <= part for known in found) and not possible(part):
                found.add(part)
    return found


def holding(spec: Spec, out: Sequence[Choice]) -> list[Member]:
    """All that a reason may name."""
    said: list[Member] = [WET.key] if spec.answers.get(WET.key) is not None else []
    return [*said, *(c for c in spec.choices if c not in out)]


def has(option: OptionId) -> Callable[[Build], bool]:
    return lambda build: any(piece.option == option for piece in build)


def lacks(option: OptionId) -> Callable[[Build], bool]:
    return lambda build: all(piece.option != option for piece in build)


@QUICK
@given(ledger_worlds(), st.data())
def test_why_something_is_blocked_or_follows(world: Catalogue, data: st.DataObject) -> None:
    every, spec = worked_out(data, world)
    judge = judge_of(world, spec)
    if not judge.can_finish(every, spec.choices):
        return
    for option, status in evaluate(world, spec).options.items():
        if status.state not in (OptionState.BLOCKED, OptionState.FOLLOWS):
            continue
        mine = world.options[option]
        one = world.groups[mine.group].pick is Pick.ONE
        rivals = [c for c in spec.choices if one and world.options[c.option].group == mine.group]
        wanted = has(option) if status.state is OptionState.BLOCKED else lacks(option)
        expected = minimal(holding(spec, rivals), allows(world, every, spec, wanted))
        found = reasons(world, spec, option, MOST)
        assert found is not None, (option, told(world, spec))
        shown = [members(cause, spec) for cause in found.causes]
        assert set(shown) <= expected, (option, shown, expected, told(world, spec))
        assert not found.complete or set(shown) == expected, (option, shown, expected, told(world, spec))


@QUICK
@given(ledger_worlds(), st.data())
def test_why_a_choice_clashes(world: Catalogue, data: st.DataObject) -> None:
    every, spec = worked_out(data, world)
    if not any(judge_of(world, spec).good(build) for build in every):
        return
    report = evaluate(world, spec)
    clashing = {s for f in report.broken(Level.STOP) for s in f.subjects}
    for choice in spec.choices:
        if choice.option not in clashing or sum(c.option == choice.option for c in spec.choices) > 1:
            continue  # of one that stands at two places the two together are asked about
        rest = holding(spec, [choice])
        possible = allows(world, every, spec, lambda build, me=choice: keeps(build, [me]))  # type: ignore[misc]
        expected = minimal(rest, possible)
        found = reasons(world, spec, choice.option, MOST)
        for cause in found.causes if found else ():
            shown = members(cause, spec) - {choice}
            assert shown in expected, (choice, shown, expected, told(world, spec))
