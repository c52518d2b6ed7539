"""A change after signing: what is done already, what undoing it costs, what comes too late, which revision holds."""

from __future__ import annotations

from specbuilder.model.edits import LeaveOut, Move, Take, Together
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import JobState, Place
from specbuilder.model.life import LifeStep
from specbuilder.model.record import RecordKind
from specbuilder.office.steps import in_the_way
from specbuilder.session.change_order import freeze_points, undoing
from specbuilder.workshop.items import item_numbers

from .scene import Scene

GAS, HOB = OptionId("gas-bundle"), OptionId("induction-single")
WINDOW = OptionId("window-mid-opening")


def base_and_spec(scene: Scene):  # type: ignore[no-untyped-def]
    session = scene.session()
    assert session.base is not None
    return session.base, session.spec


def test_nothing_is_undone_while_nothing_is_done(ordered: Scene) -> None:
    ordered.begin_next()
    ordered.edit(Take(option=HOB))
    base, spec = base_and_spec(ordered)
    assert undoing(base, spec) == ()
    assert not any(point.late for point in freeze_points(base, spec))
    assert spec.answers.get(BriefKey("past_freeze")) == "no"


def test_a_hole_that_is_cut_is_made_good_in_the_hours_and_at_the_rate_of_the_firm(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    gross_before = ordered.house.stand_of(ordered.house.jobs.files(ordered.number)).report.price.gross.least
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    base, spec = base_and_spec(ordered)
    option, firm = base.catalogue.options[WINDOW], base.catalogue.firm
    taken_out, holes = undoing(base, spec)
    assert (taken_out.hours, taken_out.net_pence) == (
        option.labour_h,
        round(option.labour_h * firm.undo_rate_net_pence_per_h),
    )
    assert (holes.words, holes.hours) == (f"make good 1 hole of {option.name}, cut at B2", firm.undo_h_per_hole)
    assert holes.holes == tuple(hole.id for hole in option.holes)
    assert taken_out.holes == ()
    assert holes.net_pence == firm.undo_h_per_hole * firm.undo_rate_net_pence_per_h
    after = ordered.house.stand_of(ordered.house.jobs.files(ordered.number)).report.price
    net = -option.price_net_pence + taken_out.net_pence + holes.net_pence
    assert abs(after.gross.least - gross_before - round(net * 1.2)) <= 1
    assert spec.answers.get(BriefKey("past_freeze")) == "yes"


def test_taking_it_back_undoes_nothing(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    ordered.edit(Take(option=WINDOW, place=Place.LEFT))
    base, spec = base_and_spec(ordered)
    assert undoing(base, spec) == ()
    assert spec.undone == ()


def test_a_part_that_moves_leaves_its_hole_where_it_was(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    ordered.begin_next()
    ordered.edit(Together(edits=(LeaveOut(option=OptionId("window-mid-fixed")), Move(option=WINDOW, to=Place.RIGHT))))
    base, spec = base_and_spec(ordered)
    words = [work.words for work in undoing(base, spec)]
    assert any("make good 1 hole of" in each and base.catalogue.options[WINDOW].name in each for each in words)


def test_every_step_is_told_with_what_is_touched_and_when_it_was_passed(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    ordered.begin_next()
    ordered.edit(Take(option=HOB))
    base, spec = base_and_spec(ordered)
    points = {point.step: point for point in freeze_points(base, spec)}
    assert list(points) == list(base.catalogue.work)
    assert points["B2"].passed == "2031-04-14"
    assert points["B2"].late
    gas, hob = base.catalogue.options[GAS].name, base.catalogue.options[HOB].name
    assert gas in points["B2"].touched
    assert {gas, hob} <= set(points["B7"].touched)
    assert not points["B7"].late
    assert any("cut at B2" in words for words in points["B2"].done)


def test_the_signed_revision_holds_until_the_change_is_signed_and_its_undoing_stays_paid(ordered: Scene) -> None:
    ordered.pass_holds("H0", "H1", "H2")
    before = ordered.path(1).read_bytes()
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    assert ordered.house.replaced_by(ordered.spec(1)) is None
    ordered.sign()
    second = ordered.spec(2)
    assert second.state is JobState.CHANGED
    assert second.undone
    assert any(work.holes for work in second.undone)
    assert {work.order for work in second.undone} == {1}
    assert ordered.house.replaced_by(ordered.spec(1)) == 2
    assert ordered.path(1).read_bytes() == before
    ordered.begin_next()
    third = ordered.spec(3)
    assert third.undone == second.undone
    ordered.edit(Take(option=WINDOW, place=Place.LEFT))
    assert ordered.spec(3).undone == second.undone
    assert [r.revision for r in ordered.spec(3).recorded(RecordKind.SIGNED)] == [1, 2]


def test_a_change_that_is_given_up_leaves_the_signed_revision_the_newest(ordered: Scene) -> None:
    before = ordered.path(1).read_bytes()
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    ordered.house.jobs.give_up(ordered.house.jobs.files(ordered.number, 2), "counter 1")
    assert ordered.house.jobs.revisions(ordered.number) == (1,)
    assert ordered.path(1).read_bytes() == before
    ordered.begin_next()
    assert ordered.spec().has(WINDOW)


def test_it_is_not_handed_over_before_what_a_change_closed_was_read_again(ordered: Scene) -> None:
    holds = [work.hold_point for work in ordered.house.catalogue.work.values() if work.hold_point]
    ordered.pass_holds(*holds[:3])
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    ordered.sign()
    ordered.pass_holds(*holds[3:])

    def missing() -> list[str]:
        found = in_the_way(ordered.session(), LifeStep.BUILT, ordered.at())
        return [hindrance.text for hindrance in found]

    assert missing() == ["H2"]
    ordered.pass_holds("H2")
    assert missing() == []


def test_the_numbers_on_the_boxes_stay_over_every_signed_revision(ordered: Scene) -> None:
    """The third revision is counted on from the first, though it replaces the second."""

    def numbers() -> dict[OptionId, int]:
        case = ordered.house.case(ordered.house.stand_of(ordered.house.jobs.files(ordered.number)), ordered.now.date())
        spec = case.stand.spec
        return {c.option: item for c, item in zip(spec.choices, item_numbers(case.signed, spec), strict=True)}

    first = numbers()
    ordered.begin_next()
    ordered.edit(LeaveOut(option=WINDOW))
    ordered.sign()
    ordered.begin_next()
    ordered.edit(Take(option=HOB))
    third = numbers()
    assert {option: item for option, item in third.items() if option in first}.items() <= first.items()
    assert first[WINDOW] not in third.values()
    assert third[HOB] > max(first.values())
