"""The house usual, find, open things, and a step back behind what was printed."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Level, Step
from specbuilder.session.usual import usual_takes
from specbuilder.tui.counter import Counter
from specbuilder.tui.items import Field, Item, OnAnswer, OnField, OnFinding, OnGroup, OnOption, OnReading
from specbuilder.tui.keys import Where
from specbuilder.wording.names import option_name

from .bench import counter_on, edits, press, spec, to_jobs
from .hand_made import at_once


def begun(folder: Path) -> Counter:
    """A new job of two who travel, at the step seating."""
    counter = counter_on(folder, runner=at_once)
    press(counter, "n", "2", "enter", "0", "enter", *["right"] * 3)
    return counter


def step_of(counter: Counter, option: OptionId) -> Step:
    return counter.catalogue.groups[counter.catalogue.options[option].group].step


def test_the_house_usual_is_read_first_and_taken_by_a_second_key_as_one_step_of_undo(empty: Path) -> None:
    counter = begun(empty)
    before, count = spec(counter), edits(counter)
    takes = [take.option for take in usual_takes(counter.catalogue, before, Step.SEATING)]
    assert len(takes) > 1
    press(counter, "h")
    assert counter.top.where is Where.USUAL
    assert spec(counter) == before, "nothing is taken before it is read"
    told = "\n".join(line.text for line in counter.top.shown)
    assert all(option_name(counter.catalogue, option).split(",")[0] in told for option in takes)
    assert "Together +" in told
    press(counter, "enter")
    assert not counter.sides
    assert all(spec(counter).has(option) for option in takes)
    assert edits(counter) == count + 1
    press(counter, "u")
    assert spec(counter) == before


def test_the_house_usual_never_goes_over_a_choice_and_leaves_other_steps_alone(empty: Path) -> None:
    counter = begun(empty)
    press(counter, "/", *"no bed downstairs", "enter", "enter")
    before = spec(counter)
    assert before.has(OptionId("no-lower-bed")) or before.choices
    press(counter, "h", "enter")
    after = spec(counter)
    assert {choice.option for choice in before.choices} <= {choice.option for choice in after.choices}
    came = [choice for choice in after.choices if not before.has(choice.option) and not choice.came_with]
    assert came
    assert {step_of(counter, choice.option) for choice in came} == {Step.SEATING}
    press(counter, "h")
    assert not [line for line in counter.top.shown if isinstance(line.item, OnOption)], "nothing is left to take"
    press(counter, "enter")
    assert spec(counter) == after


@pytest.mark.parametrize(
    ("letters", "item"),
    [
        ("pod", OnOption(OptionId("pod-galley"))),
        ("cooking", OnGroup(GroupId("cooking"))),
        ("ceiling", OnAnswer(BriefKey("ceiling_gross_pence"))),
        ("customer's name", OnField(Field.NAME)),
        ("height closed", OnReading(LedgerId("under-bar-2000"))),
    ],
)
def test_find_goes_to_a_thing_of_every_kind_by_its_name(demo: Path, letters: str, item: Item) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", *["right"] * 4, "/", *letters, "enter")
    match item:
        case OnReading(ledger):
            assert counter.top.where is Where.LEDGER
            assert counter.top.ledger == ledger  # type: ignore[attr-defined]
        case OnGroup(group):
            assert isinstance(counter.top.at, OnOption)
            assert counter.catalogue.options[counter.top.at.option].group == group
        case _:
            assert counter.top.at == item


def test_open_things_lead_to_the_thing_and_one_that_was_settled_is_gone(tmp_path: Path) -> None:
    counter = counter_on(tmp_path, runner=at_once)
    press(counter, "n", "2", "enter", "0", "enter", "o")
    items = [line.item for line in counter.top.shown if line.item is not None]
    assert OnAnswer(BriefKey("sleepers")) in items
    assert len([item for item in items if not isinstance(item, OnFinding)]) == len(
        [*counter.report.undecided, *counter.report.unknown]
    ) + sum(isinstance(item, OnField) for item in items)
    press(counter, "escape", "2", "enter", "o")
    assert OnAnswer(BriefKey("sleepers")) not in [line.item for line in counter.top.shown]


def test_a_step_back_reaches_behind_what_was_printed_and_the_print_stays(demo: Path) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", "/", *"tow bar", "enter", "enter", "p", "x", "escape")
    papers = {path.name: path.read_bytes() for path in (demo / "papers").rglob("*") if path.is_file()}
    assert papers
    press(counter, "u")
    assert "Undone:" in counter.message
    assert not spec(counter).has(OptionId("tow-bar"))
    assert {path.name: path.read_bytes() for path in (demo / "papers").rglob("*") if path.is_file()} == papers
    to_jobs(counter)


def test_a_colleague_is_answered_within_seven_keys(demo: Path) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter")
    keys = ("p", "4", "/", *"hea", "enter")
    assert len(keys) == 7
    press(counter, *keys)
    assert counter.top.where is Where.PAPER
    here = counter.top.cursor()
    assert here is not None
    assert "hea" in "\n".join(line.text for line in counter.top.shown[here : here + 2]).casefold()


def test_everything_broken_is_reached_by_next_without_an_arrow(demo: Path) -> None:
    counter = counter_on(demo, runner=at_once)
    press(counter, "enter", "/", *"cei", "enter", *"20000", "enter", *["right"] * 6)
    broken = counter.report.broken(Level.STOP, Level.SIGN)
    assert broken
    press(counter, "n")
    about = {OnFinding(finding.rule) for finding in broken}
    about |= {OnOption(OptionId(subject)) for finding in broken for subject in finding.subjects}
    assert counter.top.at in about
