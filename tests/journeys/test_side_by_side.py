"""U5: two variants side by side, and one line taken from the one into the other."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import NameCustomer, Take, WriteNote
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import JobState
from specbuilder.model.spec import Spec
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.spec_files import read_spec_file
from specbuilder.tui.counter import Counter
from specbuilder.tui.keys import Where
from specbuilder.tui.line import width
from specbuilder.wording.quantities import money
from tests.office.scene import Scene

from .bench import catalogue as shipped
from .bench import counter_on, edits, lines, press, spec, to_jobs, too_wide
from .hand_made import at_once
from .house_scene import set_clock
from .stage import WINDOWS, on_stage

AWNING, TOW_BAR = OptionId("awning-body-rail"), OptionId("tow-bar")


@pytest.fixture
def scene(empty: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch) -> Scene:
    """A house with the Saturday family's job as a draft."""
    made = Scene(empty, catalogue)
    set_clock(made, monkeypatch)
    return made


def stored(folder: Path, number: str) -> Spec:
    """The spec as it stands in the job's file."""
    return read_spec_file(JobsFolder(folder).files(number).spec, shipped()).spec


def options(one: Spec) -> set[str]:
    return {choice.option for choice in one.choices}


def counter_at(folder: Path) -> Counter:
    """A counter whose searches come at once, with the only job open."""
    counter = counter_on(folder, runner=at_once)
    press(counter, "enter")
    return counter


def with_variant(folder: Path, *keys: str) -> Counter:
    """A job and its variant, which is open and changed by these keys; both side by side."""
    counter = counter_at(folder)
    press(counter, "v", "n", *keys, "v")
    assert counter.top.where is Where.SIDE_BY_SIDE
    counter.painted()
    return counter


def said(counter: Counter) -> str:
    return "\n".join(line.text for line in (*counter.top.head(79), *counter.top.shown))


@pytest.fixture
def one(tmp_path: Path) -> Path:
    """A folder with one job."""
    folder = tmp_path / "one"
    folder.mkdir()
    shutil.copy(Path(__file__).parents[2] / "examples" / "saturday-family.toml", folder / "0147-r1.toml")
    return folder


@WINDOWS
async def test_u5_two_variants_and_one_line_merged(one: Path, size: tuple[int, int], plain: bool) -> None:
    async with on_stage(one, size, plain=plain) as stage:
        await stage.press("enter")
        before, dear = stage.spec(), stage.report().price.gross.most
        stage.presses = 0
        screen = await stage.press("v")
        assert "no other variant" in screen
        screen = await stage.press("n")
        assert "0147b is a copy of 0147" in screen
        await stage.press("/", "'pod'", "enter", "enter")
        await stage.found()
        await stage.press("1")
        assert stage.spec().has(OptionId("pod-galley"))
        await stage.press("/", "'coo'", "enter", "down", "down", "down", "enter")
        await stage.found()
        await stage.press("1")
        await stage.press("/", "'awn'", "enter", "-", "v")
        variant, counted, cheap = stage.spec(), stage.presses, stage.report().price.gross.most
        screen = await stage.found()
        assert cheap < dear
        assert all(money(pence, "£") in screen for pence in (dear, cheap)), "both prices stand beside each other"
        rows = screen.splitlines()
        assert "SIDE BY SIDE" in rows[0]
        assert "A  0147" in rows[0]
        assert "B  0147b" in rows[0]
        assert "price, VAT in" in screen
        found = "\n".join(await stage.read_through())
        assert "The same in both:" in found
        assert "Pod galley" in found
        assert "Side galley" in found
        await stage.press("escape", "v")
        await stage.found()
        stage.presses = counted  # reading it through was no part of the journey
        await stage.press("left")
        await stage.press("enter")
        screen = await stage.found()
        assert stage.presses <= 28
        assert stage.spec() == variant, "B is as it was"
        merged = stored(one, "0147")
        assert options(merged) != options(before)
        assert options(merged) ^ options(before) <= options(before) ^ options(variant)
        screen = await stage.press("escape")
        assert screen.splitlines()[0].startswith(" 0147 "), "the variant last worked on is open"
        assert stage.spec().choices == merged.choices
        await stage.press("u")
        assert options(stage.spec()) == options(before), "it was one step of undo there"


def test_the_table_holds_only_what_differs_and_begins_on_what_can_be_taken(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    text = said(counter)
    assert "price, VAT in" in text
    assert "outside" in text
    assert "galley" not in text
    assert "The same in both" in text
    here = counter.top.cursor()
    assert here is not None
    assert counter.top.shown[here].text.strip().startswith("outside")


@pytest.mark.parametrize(("arrow", "gains"), [("left", False), ("right", True)])
def test_a_line_goes_where_its_arrow_points(one: Path, arrow: str, gains: bool) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    press(counter, arrow)
    counter.painted()
    press(counter, "enter")
    assert spec(counter).has(AWNING) is gains, "right: into the variant, which is open"
    assert counter.message
    assert "Nothing differs" in said(counter)
    to_jobs(counter)
    assert stored(one, "0147").has(AWNING) is gains
    assert stored(one, "0147b").has(AWNING) is gains


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


def test_undo_of_a_line_taken_into_the_open_one_is_one_step(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    before = spec(counter)
    press(counter, "right")
    counter.painted()
    press(counter, "enter", "escape", "u")
    assert spec(counter) == before


def test_an_answer_of_the_brief_that_differs_can_be_taken_as_well(one: Path) -> None:
    counter = with_variant(one, "/", *"cei", "enter", *"18000", "enter")
    assert "brief: " in said(counter)
    press(counter, "left")
    counter.painted()
    press(counter, "enter")
    to_jobs(counter)
    assert stored(one, "0147").answers == stored(one, "0147b").answers


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


def test_with_several_to_choose_from_they_are_listed(one: Path) -> None:
    counter = counter_at(one)
    press(counter, "v", "n", "v")
    counter.painted()
    press(counter, "n", "v")
    text = said(counter)
    assert "Lay it beside:" in text
    assert "variant 0147" in text
    assert "variant 0147b" in text
    press(counter, "down", "enter")
    assert "A  0147b" in said(counter)
    assert "B  0147c" in said(counter)


def test_a_what_if_is_laid_beside_the_job_and_gives_it_one_line(one: Path) -> None:
    counter = counter_at(one)
    press(counter, "t", "/", *"awn", "enter", "-", "/", *"tow bar", "enter", "enter", "v")
    assert "what if" in said(counter)
    counter.painted()
    press(counter, "left")
    counter.painted()
    press(counter, "enter")
    assert counter.trying, "the what-if is still on"
    aside = counter.deeds.desk.aside
    assert aside is not None
    now = options(aside.session.spec)
    assert (AWNING in now) is (TOW_BAR in now), "one of the two lines came into the job"
    press(counter, "escape", "escape")
    assert edits(counter) == 1


def test_a_variant_begins_as_a_draft_without_what_left_the_house(scene: Scene) -> None:
    scene.order()
    counter = counter_on(scene.folder, runner=at_once)
    press(counter, "enter", "v", "n")
    made = spec(counter)
    assert (made.number, made.revision, made.state) == (f"{scene.number}b", 1, JobState.DRAFT)
    assert not made.records
    assert made.choices == scene.spec().choices
    assert scene.spec().state is JobState.ORDERED


def test_a_new_job_has_nothing_to_be_copied(empty: Path) -> None:
    counter = counter_on(empty, runner=at_once)
    press(counter, "n", "v", "n")
    assert "nothing to copy" in counter.message
    assert not empty.exists() or not list(empty.glob("*"))


def test_variants_stand_under_their_job_in_the_list(demo: Path) -> None:
    counter = counter_on(demo)
    press(counter, "enter", "v", "n")
    to_jobs(counter)
    press(counter, "down")
    numbers = [line.text.split()[0] for line in counter.jobs.shown if line.item is not None]
    assert numbers == ["0147", "0147b", "0151", "0152"]
    job, variant = (line.text for line in counter.jobs.shown[:2])
    assert variant.index("0147b") > job.index("0147"), "a little to the right"


@pytest.mark.parametrize("cells", [58, 79, 99, 139])
def test_no_line_of_the_table_is_wider_than_the_window(one: Path, cells: int) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-", "/", *"pod", "enter", "enter", "e")
    assert too_wide(counter, cells) == []
    assert all(width(line.text) <= cells for line in lines(counter, cells))


def test_nothing_private_stands_on_the_table(one: Path) -> None:
    counter = with_variant(one, "/", *"awn", "enter", "-")
    note = "ASK FOR CASH 4711"
    counter.edit(WriteNote(note=note))
    counter.edit(NameCustomer(name="A. Person", contact="07700 900123"))
    press(counter, "escape", "v")
    text = said(counter)
    assert note not in text
    assert "07700" not in text
