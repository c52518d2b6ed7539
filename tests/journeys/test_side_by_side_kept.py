"""No line is taken where none may be: without an arrow, unseen, in use elsewhere, from a spoilt file, once quoted."""

from __future__ import annotations

from pathlib import Path

from specbuilder.model.edits import Take
from specbuilder.model.kinds import JobState
from specbuilder.storage.jobs import JobsFolder
from specbuilder.tui.keys import Where
from tests.office.scene import Scene

from .bench import catalogue as shipped
from .bench import counter_on, edits, press, spec, to_jobs
from .hand_made import at_once
from .variants_scene import AWNING, TOW_BAR, counter_at, said, stored, with_variant


def test_enter_without_an_arrow_takes_nothing(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    count = edits(counter)
    press(counter, "enter")
    assert "Left or Right" in counter.message
    press(counter, "right", "down", "enter")
    assert edits(counter) == count, "an arrow belongs to the line it was set on"
    assert not spec(counter).has(AWNING)


def test_what_follows_from_the_choices_cannot_be_taken(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    press(counter, "home", "left")
    assert "cannot be taken by itself" in counter.message
    press(counter, "enter")
    assert not spec(counter).has(AWNING)


def test_a_table_that_was_not_painted_yet_takes_nothing(one: Path) -> None:
    counter = counter_on(one)
    press(counter, "enter", "v", "n", "/", *"awn", "enter", "-", "v", "left", "enter")
    assert not spec(counter).has(AWNING)
    assert not has_file(one, "0147b")


def has_file(folder: Path, number: str) -> bool:
    return JobsFolder(folder).files(number).spec.exists()


def test_a_variant_that_another_counter_has_is_looked_at_and_not_changed(one: Path) -> None:
    other = counter_on(one)
    press(other, "enter", "v", "n", "escape", "enter")
    assert spec(other).number == "0147b"
    counter = counter_on(one, runner=at_once)
    counter.jobs.alone = None
    press(counter, "home", "enter", "/", *"tow", "enter", "enter", "v")
    assert spec(counter).number == "0147"
    counter.painted()
    press(counter, "right", "enter")
    assert "counter 1" in counter.message
    assert not stored(one, "0147b").has(TOW_BAR), "nothing was written where the other counter works"


def test_a_variant_that_was_changed_meanwhile_is_looked_at_again_first(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    jobs = JobsFolder(one)
    job = jobs.open("0147", "counter 2", shipped())
    job.append(Take(option=TOW_BAR))
    job.close()
    press(counter, "left", "enter")
    assert "changed meanwhile" in counter.message
    assert "tow" in said(counter).lower()


def test_an_unreadable_variant_is_said_and_loses_nothing(one: Path) -> None:
    counter = counter_at(one)
    press(counter, "v", "n", "escape")
    to_jobs(counter)
    for path in one.glob("0147b-r1.*"):
        path.write_text("not a spec", "utf-8")
    counter = counter_on(one, runner=at_once)
    press(counter, "home", "enter", "v")
    assert counter.top.where is Where.SIDE_BY_SIDE
    assert "0147b" in said(counter)
    press(counter, "left", "enter")
    assert (one / "0147b-r1.toml").read_text("utf-8") == "not a spec"


def test_what_has_left_the_house_takes_no_line(scene: Scene) -> None:
    scene.quote()
    counter = counter_on(scene.folder, runner=at_once)
    press(counter, "enter", "v", "n", "/", *"awn", "enter", "-", "v")
    assert spec(counter).state is JobState.DRAFT
    counter.painted()
    before = scene.path().read_bytes()
    press(counter, "left", "enter")
    assert "stays as it was" in counter.message
    assert scene.path().read_bytes() == before
    press(counter, "right", "enter")
    assert spec(counter).has(AWNING)


def test_an_earlier_revision_gives_its_lines_and_takes_none(scene: Scene) -> None:
    scene.quote()
    counter = counter_on(scene.folder, runner=at_once)
    press(counter, "enter", "/", *"awn", "enter", "-", "v")
    assert spec(counter).revision == 2
    assert "revision 1" in said(counter)
    counter.painted()
    press(counter, "left", "enter")
    assert "stays as it was" in counter.message
    press(counter, "right", "enter")
    assert spec(counter).has(AWNING)
    assert spec(counter).revision == 2
