"""Two builds as a table: only what differs has a row, and what is the same stands in one line."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.comparison import ChangeKind
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Verdict
from specbuilder.wording.compare import comparison_lines
from specbuilder.wording.side_by_side import side_by_side, works_line, works_rows
from specbuilder.wording.works_where import Works, WorksWhere
from tests.wording.compare_scene import CHEAP, FOUND, GALLEY, POD, REPLACED, USB, WANTED, change, stand
from tests.wording.scene import choice, report, spec


def rows(
    *figures: str, works: tuple[tuple[WorksWhere, ...], tuple[WorksWhere, ...]] = ((), ())
) -> list[tuple[str, str, str]]:
    table = side_by_side(WANTED, CHEAP, FOUND, map(LedgerId, figures), works)
    return [(row.label, row.a.text, row.b.text) for row in table.rows]


def test_two_variants_show_only_what_differs() -> None:
    assert rows("belts", "nights") == [
        ("price, VAT in", "£20,712", "£17,520"),
        ("ceiling £18,000", "£2,712 over", "£480 under"),
        ("weight you may still load", "about 248 kg", "about 341 kg"),
        ("galley", "Side galley, right", "Pod galley"),
        ("nights on the battery", "1.7 nights", "2 to 2.5 nights"),
        ("open warnings", "1 broken", "none"),
    ]


def test_what_is_the_same_stands_in_one_line() -> None:
    table = side_by_side(WANTED, CHEAP, FOUND, map(LedgerId, ("belts", "nights")))
    assert table.same == "The same in both: 4 belts, 1 choice"
    alike = replace(FOUND, changes=())
    same = side_by_side(CHEAP, CHEAP, alike, map(LedgerId, ("belts", "nights")))
    assert not same.rows
    assert same.same == (
        "The same in both: price £17,520, ceiling £18,000: £480 under, weight you may still load about 341 kg, "
        "4 belts, 2 to 2.5 nights, no open warnings, 1 choice"
    )


def test_rows_say_which_line_can_be_taken_and_how_a_figure_stands() -> None:
    table = side_by_side(WANTED, CHEAP, FOUND, ())
    assert [row.change for row in table.rows] == [None, None, None, REPLACED, None]
    ceiling = table.rows[1]
    assert (ceiling.a.verdict, ceiling.b.verdict) == (Verdict.BROKEN, Verdict.HOLDS)


def test_what_stands_on_one_side_alone_is_undecided_or_none() -> None:
    lines = (
        change(ChangeKind.REMOVED, GALLEY, None),
        change(ChangeKind.ADDED, None, USB, group="extras"),
        change(ChangeKind.ADDED, None, choice("old-stove"), group=None, names=("", "old-stove")),
    )
    table = side_by_side(WANTED, CHEAP, replace(FOUND, changes=lines), ())
    assert [(row.label, row.a.text, row.b.text) for row in table.rows if row.change] == [
        ("galley", "Side galley, right", "undecided"),
        ("extras", "none", "2 x USB pair"),
        ("not in the catalogue", "none", "old-stove"),
    ]


def works(name: str, away: Works) -> WorksWhere:
    return WorksWhere(names=(name,), driving=Works.NO, plugged=Works.YES, away=away)


def test_what_works_otherwise_away_from_a_plug_is_a_line_of_its_own_behind_the_figures() -> None:
    found = works_rows(
        (works("Fridge", Works.YES), works("Kettle", Works.NO)),
        (works("Kettle", Works.LIMITS), works("Fridge", Works.YES), works("Hob", Works.YES)),
    )
    lines = [works_line(row) for row in found]
    assert lines == ["Kettle, away from a plug: limits; was no."]
    assert [line for line in comparison_lines(WANTED, CHEAP, FOUND, lines) if line not in lines] == list(
        comparison_lines(WANTED, CHEAP, FOUND)
    )
    assert lines[0] in comparison_lines(WANTED, CHEAP, FOUND, lines)[:-1]


def test_what_works_away_from_a_plug_in_one_of_them_only() -> None:
    both = works("Fridge", Works.YES), works("Kettle", Works.NO)
    found = rows(works=(both, (works("Fridge", Works.YES), works("Kettle", Works.YES), works("Hob", Works.YES))))
    assert [row for row in found if "away" in row[0]] == [("kettle, away from a plug", "no", "yes")]


def test_what_nobody_can_tell_says_so() -> None:
    bare = stand(report(spec(POD)))
    table = side_by_side(WANTED, bare, FOUND, map(LedgerId, ("belts", "nights")))
    told = {row.label: (row.a.text, row.b.text) for row in table.rows}
    assert told["weight you may still load"] == ("about 248 kg", "cannot tell")
    assert told["ceiling"] == ("£2,712 over", "none")
    assert told["nights on the battery"] == ("1.7 nights", "none")
