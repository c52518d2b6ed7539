"""What a change takes from the owner of a van is told place by place, and a plain swap is not made much of."""

from __future__ import annotations

from specbuilder.wording.works_changes import works_changes
from specbuilder.wording.works_where import Works, WorksWhere

YES, NO, MAYBE = Works.YES, Works.NO, Works.UNKNOWN


def line(name: str, driving: Works, plugged: Works, away: Works) -> WorksWhere:
    return WorksWhere(names=(name,), driving=driving, plugged=plugged, away=away)


GAS = line("Gas kit", NO, YES, YES)
HOB = line("Induction hob", NO, YES, NO)


def test_what_is_lost_away_from_a_plug_is_said_with_what_comes_instead_and_where_that_works() -> None:
    assert works_changes((GAS,), (HOB,)) == (
        "Away from a plug: Gas kit worked; Induction hob works on a campsite plug only.",
    )


def test_nothing_is_said_where_all_works_as_before() -> None:
    assert works_changes((GAS, HOB), (HOB, GAS)) == ()
    assert works_changes((GAS,), (line("Diesel hob", NO, YES, YES),)) == ()


def test_what_works_in_more_places_is_said() -> None:
    assert works_changes((HOB,), (line("Induction hob", NO, YES, YES),)) == (
        "Away from a plug: Induction hob works now.",
    )


def test_what_stays_and_loses_a_place_says_where_it_still_works() -> None:
    assert works_changes((line("Kettle", NO, YES, Works.LIMITS),), (line("Kettle", NO, YES, NO),)) == (
        "Away from a plug: Kettle worked; Kettle works on a campsite plug only.",
    )


def test_what_nobody_can_tell_is_not_told_as_working() -> None:
    assert works_changes((line("Kettle", NO, YES, YES),), (line("Kettle", NO, YES, MAYBE),)) == (
        "Away from a plug: Kettle worked; Kettle is not known yet.",
    )
