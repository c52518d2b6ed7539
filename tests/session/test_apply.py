"""What an edit does to a spec, on worlds of a few options."""

from __future__ import annotations

from specbuilder.model.brief import BriefLine
from specbuilder.model.edits import AnswerLine, LeaveOut, Move, SetCount, Take, Together
from specbuilder.model.ids import BriefKey, OptionId, Zone
from specbuilder.model.kinds import AnswerType, Place, RuleKind
from specbuilder.model.outcome import Refusal
from specbuilder.model.rules import ALWAYS, AllOf, AnyOf, ZonesFree
from specbuilder.model.spec import Choice, Spec
from specbuilder.session.apply import apply
from specbuilder.session.state import Session, do, redo, undo
from tests.worlds import catalogue, group, option, rule, tags

an = OptionId


def world():  # type: ignore[no-untyped-def]
    """A heater that burns needs an alarm, of which there is one kind; a galley of either side; sockets by number."""
    return catalogue(
        (group("heat"), group("alarms", any_=4), group("galley"), group("sockets", any_=5)),
        (
            option("burner", "heat", gives="flame"),
            option("no-heat", "heat", is_none=True),
            option("alarm", "alarms", gives="alarm"),
            option("galley", "galley", places="right left", zones="wall@side"),
            option("no-galley", "galley", is_none=True),
            option("socket", "sockets", max_count=3),
            option("cupboard", "sockets", places="right left", zones="wall@side"),
        ),
        (
            rule("flame-needs-alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm")),
            rule(
                "one-place",
                RuleKind.LIMIT,
                ALWAYS,
                AnyOf((AllOf((ZonesFree((Zone("wall@left"), Zone("wall@right"))),)),)),
            ),
        ),
        brief=(BriefLine(key=BriefKey("adults"), ask="How many?", type=AnswerType.WHOLE, question=1, least=1, most=6),),
    )


def take(spec: Spec, *ids: str) -> Spec:
    for id_ in ids:
        outcome = apply(world_, spec, Take(option=an(id_)))
        assert outcome.refused is None
        spec = outcome.spec
    return spec


world_ = world()


def test_what_follows_comes_along_in_the_same_step_and_leaves_with_its_cause() -> None:
    outcome = apply(world_, Spec(), Take(option=an("burner")))
    assert outcome.brought == (an("alarm"),)
    assert outcome.spec.choices == (
        Choice(option=an("burner")),
        Choice(option=an("alarm"), came_with=(an("burner"),)),
    )
    swapped = apply(world_, outcome.spec, Take(option=an("no-heat")))
    assert swapped.spec.choices == (Choice(option=an("no-heat")),)
    assert set(swapped.left) == {an("burner"), an("alarm")}


def test_a_bundle_cannot_be_half_removed() -> None:
    spec = take(Spec(), "burner")
    outcome = apply(world_, spec, LeaveOut(option=an("alarm")))
    assert outcome.refused is Refusal.COMES_WITH
    assert outcome.refused_by == (an("burner"),)
    assert outcome.spec is spec


def test_what_an_older_file_lacks_is_not_repaired_silently_by_another_edit() -> None:
    spec = Spec(choices=(Choice(option=an("burner")),))
    assert apply(world_, spec, Take(option=an("galley"))).brought == ()


def test_taking_what_is_in_already_changes_nothing() -> None:
    spec = take(Spec(), "burner")
    assert apply(world_, spec, Take(option=an("burner"))).refused is Refusal.IN_ALREADY
    assert apply(world_, spec, Take(option=an("nothing"))).refused is Refusal.UNKNOWN_OPTION


def test_an_option_goes_to_the_first_place_that_is_free() -> None:
    spec = take(Spec(), "cupboard", "galley")
    assert [c.place for c in spec.choices] == [Place.RIGHT, Place.LEFT]


def test_moving_needs_a_place_the_option_may_take() -> None:
    spec = take(Spec(), "galley")
    assert apply(world_, spec, Move(option=an("galley"), to=Place.LEFT)).spec.choices[0].place is Place.LEFT
    assert apply(world_, spec, Move(option=an("galley"), to=Place.REAR)).refused is Refusal.PLACE_NOT_ALLOWED


def test_counts_stop_at_what_the_option_and_its_group_allow() -> None:
    spec = take(Spec(), "socket")
    three = apply(world_, spec, SetCount(option=an("socket"), count=3)).spec
    assert three.choices[0].count == 3
    assert apply(world_, three, SetCount(option=an("socket"), count=4)).refused is Refusal.TOO_MANY
    assert apply(world_, three, SetCount(option=an("socket"), count=0)).spec.choices == ()


def test_an_answer_outside_its_line_is_refused() -> None:
    for wrong in (0, 7, "two", 2.5, True):
        outcome = apply(world_, Spec(), AnswerLine(key=BriefKey("adults"), value=wrong))
        assert outcome.refused is Refusal.NOT_AN_ANSWER, wrong
    known = apply(world_, Spec(), AnswerLine(key=BriefKey("adults"), value=2)).spec
    assert known.answers.get(BriefKey("adults")) == 2
    assert apply(world_, known, AnswerLine(key=BriefKey("adults"), value=None)).spec == Spec()


def test_several_edits_are_one_step_of_undo() -> None:
    session = Session(catalogue=world_, spec=Spec())
    session, _ = do(session, Together(edits=(Take(option=an("burner")), Take(option=an("galley")))))
    assert len(session.past) == 1
    back, done = undo(session)
    assert back.spec == Spec()
    assert done is not None
    assert done.brought == (an("alarm"),)
    again, _ = redo(back)
    assert again.spec == session.spec


def test_undo_after_undo_reaches_the_first_spec_and_redo_the_last() -> None:
    session = Session(catalogue=world_, spec=Spec())
    for edit in (
        Take(option=an("burner")),
        Take(option=an("no-heat")),
        Take(option=an("galley")),
        LeaveOut(option=an("galley")),
    ):
        session, _ = do(session, edit)
    last = session.spec
    for _ in range(4):
        session, done = undo(session)
        assert done is not None
    assert session.spec == Spec()
    assert undo(session)[1] is None
    for _ in range(4):
        session, _ = redo(session)
    assert session.spec == last
