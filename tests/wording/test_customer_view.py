"""The few words of the screen turned round."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.span import Span
from specbuilder.wording.customer_view import away, away_line, open_count, sleep, told_count, travel
from specbuilder.wording.works_where import FILLING, Works, WorksWhere


def line(*names: str, away_: Works) -> WorksWhere:
    return WorksWhere(names=names, driving=Works.NO, plugged=Works.YES, away=away_)


def test_what_works_is_told_by_its_answer_and_by_the_main_part_of_its_name() -> None:
    lines = (
        line("Compressor fridge with front door, 48 litres", "Tap and water pump", away_=Works.YES),
        line("Socket of the campsite plug kit", away_=Works.NO),
        line(FILLING, away_=Works.LIMITS),
        line("Kettle: low watts", away_=Works.UNKNOWN),
    )
    assert away(lines) == (
        ("YES", ("compressor fridge", "tap and water pump")),
        ("NO", ("socket of the campsite plug kit",)),
        ("NOT KNOWN YET", ("kettle",)),
    )


@pytest.mark.parametrize(
    ("room", "told"),
    [
        (80, "YES: fridge, tap, two lamps"),
        (24, "YES: fridge, tap, 1 more"),
        (20, "YES: fridge, 2 more"),
        (16, "YES: f.., 2 more"),
    ],
)
def test_as_many_names_as_there_is_room_for(room: int, told: str) -> None:
    assert away_line("YES", ("fridge", "tap", "two lamps"), room) == told


@settings(deadline=None)
@given(names=st.lists(st.text("abc ", min_size=1, max_size=30), min_size=1, max_size=6), room=st.integers(30, 100))
def test_the_line_never_takes_more_than_its_room(names: Sequence[str], room: int) -> None:
    assert len(away_line("YES", names, room)) <= room


@pytest.mark.parametrize(
    ("counts", "told"),
    [
        ((0, 0, 0, 0), "nothing to be told"),
        ((0, 0, 1, 0), "1 thing told, see page 3"),
        ((0, 0, 5, 2), "5 things told, 2 accepted, see page 3"),
        ((0, 1, 5, 0), "5 things told, 1 to be accepted in writing, see page 3"),
        ((2, 1, 5, 0), "it cannot be built as it stands: 2 things, see page 3"),
    ],
)
def test_what_stops_the_build_goes_before_all_else(counts: tuple[int, int, int, int], told: str) -> None:
    assert told_count(*counts) == told


def test_what_nobody_knows_is_no_number() -> None:
    assert travel(None).startswith("?")
    assert sleep(Span(2, 4)) == "2 to 4 SLEEP"
    assert travel(Span(4, 4)) == "4 TRAVEL"
    assert open_count(0) == "nothing"
    assert open_count(1) == "1 question, see page 3"
