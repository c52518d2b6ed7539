"""Chains of reasons, on worlds of a few options."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState, Place, RuleKind
from specbuilder.model.spec import Choice
from specbuilder.rulegraph.explain import why_option
from specbuilder.rulegraph.rulebook import make_rulebook
from specbuilder.rulegraph.runs import run
from specbuilder.rulegraph.states import stands
from tests import worlds
from tests.worlds import group, option, rule, tags


def why(world: Catalogue, taken: tuple[Choice, ...], of: str) -> tuple[OptionState, Cause | None]:
    run_ = run(make_rulebook(world), taken, ())
    stand = stands(run_, taken)[OptionId(of)]
    return stand.state, why_option(run_, OptionId(of), stand)


def kinds(cause: Cause | None) -> list[CauseKind]:
    """The chain from top to bottom, first branch first."""
    return [] if cause is None else [cause.kind, *(k for below in cause.because for k in kinds(below))]


def ends(cause: Cause | None) -> set[OptionId]:
    """The choices at the ends of the chain."""
    if cause is None:
        return set()
    mine = {cause.option} if cause.kind is CauseKind.CHOICE and cause.option else set()
    return mine.union(*(ends(below) for below in cause.because))


def test_a_rule_and_the_choice_it_starts_from_are_named() -> None:
    world = worlds.catalogue(
        (group("a"), group("b")),
        (option("red", "a", gives="x"), option("blue", "a"), option("up", "b", gives="y"), option("down", "b")),
        (rule("not-both", RuleKind.EXCLUDES, tags("x"), tags("y")),),
    )
    state, cause = why(world, (Choice(option=OptionId("red")),), "up")
    assert state is OptionState.BLOCKED
    assert ends(cause) == {"red"}
    assert CauseKind.RULE in kinds(cause)


def test_a_need_that_nothing_left_can_give_leads_back_to_what_was_chosen() -> None:
    world = worlds.catalogue(
        (group("a"), group("b")),
        (
            option("can", "a"),
            option("tank", "a", gives="water"),
            option("tap", "b", needs=("water",)),
            option("no", "b"),
        ),
    )
    state, cause = why(world, (Choice(option=OptionId("can")),), "tap")
    assert state is OptionState.BLOCKED
    assert cause is not None
    assert cause.kind is CauseKind.NEEDS
    assert ends(cause) == {"can"}


def test_an_option_beside_the_choice_of_its_group_is_explained_without_that_choice() -> None:
    world = worlds.catalogue(
        (group("a"), group("b")),
        (option("red", "a"), option("blue", "a", gives="x"), option("up", "b", gives="y"), option("down", "b")),
        (rule("not-both", RuleKind.EXCLUDES, tags("x"), tags("y")),),
    )
    taken = (Choice(option=OptionId("red")), Choice(option=OptionId("up")))
    state, cause = why(world, taken, "blue")
    assert state is OptionState.BLOCKED
    assert ends(cause) == {"up"}


def test_two_claims_on_one_place_name_who_has_it() -> None:
    world = worlds.catalogue(
        (group("a", any_=2), group("b")),
        (
            option("cupboard", "a", zones="wall@side", places="left right"),
            option("galley", "b", zones="wall@side", places="right"),
            option("no", "b"),
        ),
    )
    state, cause = why(world, (Choice(option=OptionId("cupboard"), place=Place.RIGHT),), "galley")
    assert state is OptionState.BLOCKED
    assert cause is not None
    assert (cause.kind, cause.tag) == (CauseKind.ZONE, "wall@right")
    assert ends(cause) == {"cupboard"}


def test_what_follows_says_from_what() -> None:
    world = worlds.catalogue(
        (group("a"), group("b", any_=2)),
        (option("burner", "a", gives="flame"), option("no", "a"), option("alarm", "b", gives="alarm")),
        (rule("flame-needs-alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm")),),
    )
    state, cause = why(world, (Choice(option=OptionId("burner")),), "alarm")
    assert state is OptionState.FOLLOWS
    assert ends(cause) == {"burner"}
