"""Ways out on the screen: nothing is taken unseen, nothing moves under the cursor, nothing old is shown as fresh."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import LeaveOut, Take
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Goal, RankBy, WaysOut
from specbuilder.tui.counter import Counter
from specbuilder.tui.errands import Stop
from specbuilder.tui.items import OnWay
from specbuilder.tui.keys import Where
from specbuilder.tui.searches import Searches

from .bench import counter_on, edits, press, spec
from .hand_made import Held, at_once, no_ways, way, ways_of
from .stage import NAMES

STRUTS, LAPTOP, PANEL = OptionId("roof-strong-struts"), OptionId("laptop"), OptionId("solar-framed-160")
ASK = ("/", *"framed", "enter", "enter")
TWO = ways_of((Take(option=STRUTS), Take(option=PANEL)), (LeaveOut(option=LAPTOP), Take(option=PANEL)))


def asked(folder: Path, searches: Searches = TWO) -> tuple[Counter, Held]:
    """A job in which the panel was asked for; the search waits."""
    held = Held()
    counter = counter_on(folder, searches=searches, runner=held)
    press(counter, "enter", *ASK)
    assert counter.top.where is Where.WHY
    return counter, held


def blind(counter: Counter, key: str) -> None:
    """A key pressed before anything new was painted."""
    counter.press(NAMES.get(key, key), key if len(key) == 1 else None)


def shown(counter: Counter) -> str:
    counter.lay()
    return "\n".join(row.text for row in counter.top.shown)


def test_ways_appear_below_while_it_is_looking(demo: Path) -> None:
    counter, held = asked(demo)
    assert "looking for ways out" in shown(counter)
    rows = [row.text for row in counter.top.shown]
    held.let_run()
    text = shown(counter)
    assert "looking" not in text
    assert "No third way within three changes." in text
    above = [row.text for row in counter.top.shown]
    head = next(i for i, row in enumerate(rows) if "WAYS OUT" in row)
    assert above[: head + 1] == rows[: head + 1], "what stands above does not move when they come"


def test_a_digit_takes_a_way_as_one_step_of_undo(demo: Path) -> None:
    counter, held = asked(demo)
    before = spec(counter)
    held.let_run()
    press(counter, "2")
    assert counter.top.where is Where.WALK
    assert spec(counter).has(PANEL)
    assert not spec(counter).has(LAPTOP)
    assert next(c.at for c in spec(counter).choices if c.option == PANEL), "it says when it was taken"
    assert edits(counter) == 1
    press(counter, "u")
    assert spec(counter) == before


def test_enter_takes_the_way_under_the_cursor_and_starts_on_the_first(demo: Path) -> None:
    counter, held = asked(demo)
    assert counter.top.at == OnWay(1)
    held.let_run()
    counter.lay()
    assert counter.top.at == OnWay(1)
    press(counter, "enter")
    assert spec(counter).has(STRUTS)


def test_a_digit_or_enter_pressed_before_the_list_was_painted_does_nothing(demo: Path) -> None:
    for key in ("1", "enter"):
        counter, held = asked(demo)
        before = spec(counter)
        blind(counter, key)
        held.let_run()
        counter.lay()
        blind(counter, key)
        assert spec(counter) == before
        assert "not on the screen yet" in counter.message
        counter.painted(at_s=7.0)
        counter.press(key, key if len(key) == 1 else None, 6.9)
        assert spec(counter) == before, "it was pressed before the frame was out"
        counter.press(key, key if len(key) == 1 else None, 7.1)
        assert spec(counter).has(PANEL)
        press(counter, "u", "escape")


def test_a_digit_of_no_way_says_so(demo: Path) -> None:
    counter, held = asked(demo)
    held.let_run()
    press(counter, "3")
    assert "There is no way 3" in counter.message
    press(counter, "0")
    assert counter.top.where is Where.WHY


def test_what_is_shown_never_changes_its_place(demo: Path) -> None:
    def unruly(catalogue: Catalogue, before: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        first = way(catalogue, before, Take(option=STRUTS))
        second = way(catalogue, before, LeaveOut(option=LAPTOP))
        yield WaysOut(goal=goal, rank_by=rank_by, ways=(first,))
        yield WaysOut(goal=goal, rank_by=rank_by, ways=(second, first), finished=True)

    counter, held = asked(demo, Searches(ways_out=unruly))
    seen: list[str] = []
    for errand in held.errands:
        errand.run(lambda piece: (piece(), seen.append(shown(counter)))[0])
    rows = [[row for row in text.splitlines() if row.startswith((" !1", "  1", " !2", "  2"))] for text in seen]
    assert rows[0] == rows[1][:1]
    assert len(rows[1]) == 2


def test_an_edit_calls_the_search_back_and_what_it_brings_is_dropped(demo: Path) -> None:
    counter, held = asked(demo)
    (old,) = held.errands
    counter.edit(Take(option=OptionId("tow-bar")))
    assert old.off
    assert len(held.errands) == 2, "it is asked anew about the spec as it is now"
    old.take(next(TWO.ways_out(counter.catalogue, old.spec, counter.top.ways.goal, RankBy.PRICE, lambda: False)))  # type: ignore[attr-defined]
    assert "looking for ways out" in shown(counter), "an answer about another spec is no answer"
    held.let_run()
    assert "looking" not in shown(counter)


def test_leaving_the_page_calls_the_search_back(demo: Path) -> None:
    stopped: list[bool] = []

    def patient(catalogue: Catalogue, before: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        stopped.append(stop())
        yield WaysOut(goal=goal, rank_by=rank_by, finished=True)

    counter, held = asked(demo, Searches(ways_out=patient))
    press(counter, "escape")
    assert all(errand.off for errand in held.errands)
    held.let_run()
    assert stopped == [True]
    press(counter, *ASK, "n")
    assert all(errand.off for errand in held.errands), "so does going on to the next thing"


def test_another_order_searches_anew(demo: Path) -> None:
    asked_by: list[RankBy] = []

    def noting(catalogue: Catalogue, before: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        asked_by.append(rank_by)
        return no_ways(catalogue, before, goal, rank_by, stop)

    counter = counter_on(demo, searches=Searches(ways_out=noting), runner=at_once)
    press(counter, "enter", *ASK, "b", "b", "b", "b")
    assert asked_by == [*RankBy, RankBy.PRICE]
    assert "then price" in shown(counter)
    press(counter, "b")
    assert "then kg" in shown(counter)


def test_no_way_is_said(demo: Path) -> None:
    counter, held = asked(demo, Searches(ways_out=no_ways))
    held.let_run()
    assert "No way found within three changes." in shown(counter)


def test_w_tells_all_the_reasons_and_back(demo: Path) -> None:
    counter, held = asked(demo)
    held.let_run()
    short = shown(counter)
    press(counter, "w")
    assert len(shown(counter)) > len(short)
    assert "would be broken" in shown(counter)
    press(counter, "w")
    assert shown(counter) == short


def test_a_mistake_of_a_search_is_said_and_costs_nothing(demo: Path) -> None:
    def fails(*_: object) -> Iterator[WaysOut]:
        raise RuntimeError("planted")

    counter = counter_on(demo, searches=Searches(ways_out=fails))
    told: list[str] = []
    counter.errands.runner = lambda errand: errand.run(lambda piece: told.append(getattr(piece, "args", "")))  # type: ignore[assignment, arg-type]
    press(counter, "enter", *ASK)
    assert "planted" in str(told)


def test_why_asks_about_what_the_last_edit_broke_and_savings_add_up_on_one_page(demo: Path) -> None:
    savings = tuple((LeaveOut(option=OptionId(o)),) for o in ("curtains", "lights-comfort", "awning-body-rail"))

    def left_over(catalogue: Catalogue, before: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        there = [edits for edits in savings if before.has(edits[0].option)]
        return ways_of(*there).ways_out(catalogue, before, goal, rank_by, stop)

    counter = counter_on(demo, searches=Searches(ways_out=left_over), runner=at_once)
    press(counter, "enter", "/", *"cei", "enter", *"18000", "enter", "w")
    assert counter.top.where is Where.WHY
    assert "£18,000" in shown(counter)
    gross = [counter.report.price.gross.most]
    for count in (1, 2, 3):
        press(counter, "1")
        gross.append(counter.report.price.gross.most)
        assert edits(counter) == 1 + count, "each saving is one step of undo"
        assert counter.top.where is Where.WHY, "the page stays while it is still over"
        assert counter.top.at == OnWay(1) or count == 3
    assert gross == sorted(gross, reverse=True)
    assert "No way found" in shown(counter)


def test_the_page_closes_once_nothing_is_broken_any_more(demo: Path) -> None:
    counter = counter_on(demo, searches=ways_of((LeaveOut(option=LAPTOP), LeaveOut(option=OptionId("curtains")))))
    counter.errands.runner = at_once
    press(counter, "enter", "/", *"cei", "enter", *"24400", "enter", "w", "1")
    assert counter.top.where is Where.BRIEF
    assert "Left out" in counter.message


def test_the_mark_before_a_way_that_breaks_something_is_explained_where_it_stands(demo: Path) -> None:
    legend = "! before a number: breaks something else, to be accepted in writing."
    counter, held = asked(demo, ways_of((LeaveOut(option=LAPTOP),), (Take(option=PANEL),)))
    held.let_run()
    text = shown(counter)
    assert "!2 " in text
    assert "!1 " not in text
    assert legend in text
    plain, held = asked(demo, ways_of((LeaveOut(option=LAPTOP),)))
    held.let_run()
    assert legend not in shown(plain), "where no way has the mark, nothing is to be explained"
