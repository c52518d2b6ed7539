"""U1: two grown-ups, two children, weekends, perhaps France; the rest is left unknown on purpose."""

from __future__ import annotations

import re
from pathlib import Path

from specbuilder.model.ids import BASE_VAN_GROUP
from specbuilder.model.kinds import OptionState

from .bench import counter_on, press
from .stage import WINDOWS, on_stage
from .test_the_count import BRIEF

KEYS = ("n", "2", "enter", "2", "enter", "'9 6'", "enter", "n", "4", "n", "n", "n", "2")


@WINDOWS
async def test_u1_the_brief_is_answered_and_nothing_unknown_looks_good(
    empty: Path, size: tuple[int, int], plain: bool
) -> None:
    async with on_stage(empty, size, plain=plain) as stage:
        assert "No jobs yet" in stage.screen()
        await stage.press("n")
        assert not empty.exists() or not list(empty.iterdir()), "a slip leaves nothing"
        await stage.press("2")
        assert (empty / "0001-r1.journal").is_file(), "number and file come with the first answer"
        screen = await stage.press(*KEYS[2:])
        assert stage.presses <= 16
        assert "0 broken" in screen
        assert "van not known" in screen.splitlines()[0], "nothing said so far keeps a van out"
        assert "holds: " not in "\n".join(row for row in screen.splitlines() if "Weight" in row)
        given = stage.spec().answers.given
        assert given["adults"] == 2
        assert given["children"] == 2
        assert given["child_ages"] == (9, 6)
        assert given["sleepers"] == 4
        assert given["season"] == "three-season"
        assert "parking_limit_mm" not in given
        assert not stage.spec().choices
        lines = await stage.read_through()
        assert sum("not known yet" in line for line in lines) >= 5
        await stage.press("escape")
        assert stage.stored("0001") == stage.spec()


def test_while_no_van_is_chosen_the_heading_counts_those_that_are_still_possible(empty: Path) -> None:
    counter = counter_on(empty)
    press(counter, *BRIEF)
    assert counter.walk is not None
    possible = re.search(r"(\d) of (\d) vans possible", counter.walk.heading(79)[0].text)
    assert possible
    states = [counter.report.options[van.id].state for van in counter.catalogue.options_of(BASE_VAN_GROUP)]
    assert (int(possible[1]), int(possible[2])) == (
        sum(state is not OptionState.BLOCKED for state in states),
        len(states),
    )
