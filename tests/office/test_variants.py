"""What a job may be laid beside, and a line that is brought into one which is not open."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.comparison import Change
from specbuilder.model.edits import LeaveOut, Take
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.outcome import Refusal
from specbuilder.model.record import Record, RecordKind
from specbuilder.office import variants
from specbuilder.office.house import stand_of
from specbuilder.office.variants import Brought, begin_variant, bring_into, laid, others
from specbuilder.session.apply import apply
from specbuilder.session.compare import compare
from specbuilder.session.life import variant_of
from specbuilder.session.state import Session, replay, undo
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.lock import LockHolder
from specbuilder.wording.compare import comparison_lines

from .scene import COUNTER, Scene

AWNING, TOW_BAR = OptionId("awning-body-rail"), OptionId("tow-bar")


@pytest.fixture
def scene(tmp_path: Path, catalogue: Catalogue) -> Scene:
    """A job and its variant 0001b, which has no awning."""
    made = Scene(tmp_path / "jobs", catalogue)
    job = begin_variant(made.house, made.spec(), COUNTER)
    job.append(LeaveOut(option=AWNING))
    job.close()
    return made


def brought(scene: Scene, number: str, from_: str) -> Brought:
    """The awning's line brought into one from the other."""
    files = scene.house.jobs.files(number)
    into, other = scene.house.stand_of(files), scene.house.stand_of(scene.house.jobs.files(from_))
    line = awning(compare(into, other).changes)
    return bring_into(scene.house, files, line, into, other, counter="counter 2", at=scene.at())


def awning(changes: tuple[Change, ...]) -> Change:
    return next(change for change in changes if change.option == AWNING)


def has(scene: Scene, number: str) -> bool:
    return scene.house.stand_of(scene.house.jobs.files(number)).spec.has(AWNING)


def test_a_job_lies_beside_its_variants_and_its_own_earlier_revisions(scene: Scene) -> None:
    scene.quote()
    scene.begin_next()
    found = [(files.number, files.revision) for files in others(scene.house, scene.number, 2)]
    assert found == [("0001b", 1), ("0001", 1)]
    assert [(f.number, f.revision) for f in others(scene.house, "0001b", 1)] == [("0001", 2)]


def test_a_variant_takes_along_what_was_said_and_promised_and_nothing_that_left_the_house(
    tmp_path: Path, catalogue: Catalogue
) -> None:
    made = Scene(tmp_path / "jobs", catalogue)
    made.record(Record(kind=RecordKind.PROMISED, at=made.at(), by="the counter", words="a spare key"))
    made.order()
    spec = variant_of(made.spec())
    assert [record.kind for record in spec.records] == [RecordKind.PROMISED]
    assert (spec.state, spec.revision, spec.replaces, spec.undone) == ("draft", 1, None, ())
    assert (spec.choices, spec.answers, spec.customer) == (
        made.spec().choices,
        made.spec().answers,
        made.spec().customer,
    )


@pytest.mark.parametrize(("number", "from_", "after"), [("0001", "0001b", False), ("0001b", "0001", True)])
def test_a_line_is_brought_as_one_step_that_can_be_taken_back(
    scene: Scene, number: str, from_: str, after: bool
) -> None:
    before = scene.house.stand_of(scene.house.jobs.files(number)).spec
    told = brought(scene, number, from_)
    assert told.done is not None
    assert has(scene, number) is after
    assert has(scene, from_) is after, "the other one is as it was"
    found, catalogue = scene.house.found(scene.house.jobs.files(number))
    session, done = undo(replay(Session(catalogue=catalogue, spec=found.start), found.entries))
    assert done is not None
    assert session.spec == before
    assert not scene.house.jobs.files(number).lock.exists(), "it was let go of"


def test_what_another_counter_has_is_kept_from_us(scene: Scene) -> None:
    held = scene.house.jobs.open("0001b", "counter 7", scene.house.catalogue)
    told = brought(scene, "0001b", "0001")
    held.close()
    assert isinstance(told.kept_from, LockHolder)
    assert told.kept_from.counter == "counter 7"
    assert not has(scene, "0001b")


def test_what_was_changed_since_it_was_looked_at_is_not_touched(scene: Scene) -> None:
    files = scene.house.jobs.files("0001b")
    into, other = scene.house.stand_of(files), scene.house.stand_of(scene.house.jobs.files("0001"))
    job = scene.house.jobs.open("0001b", COUNTER, scene.house.catalogue)
    job.append(Take(option=TOW_BAR))
    job.close()
    line = awning(compare(into, other).changes)
    told = bring_into(scene.house, files, line, into, other, counter=COUNTER, at=scene.at())
    assert told.changed
    assert not has(scene, "0001b")


def test_what_was_quoted_takes_no_line(scene: Scene) -> None:
    scene.quote()
    before = scene.path().read_bytes()
    told = brought(scene, "0001", "0001b")
    assert told.outcome is not None
    assert told.outcome.refused is Refusal.FROZEN
    assert scene.path().read_bytes() == before


def test_a_full_disk_leaves_the_other_one_as_it_was(scene: Scene, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise DiskError(DiskReason.FULL, scene.folder, writing=True)

    files = scene.house.jobs.files("0001b")
    journal = files.journal.read_bytes()
    monkeypatch.setattr(variants.OpenJob, "save", full)
    with pytest.raises(DiskError):
        brought(scene, "0001b", "0001")
    monkeypatch.undo()
    assert not has(scene, "0001b")
    assert files.journal.read_bytes() == journal


def test_the_table_of_two_holds_what_differs(scene: Scene) -> None:
    a, b = (scene.house.stand_of(scene.house.jobs.files(number)) for number in ("0001", "0001b"))
    found = laid(a, b, scene.now.date())
    labels = [row.label for row in found.table.rows]
    assert labels[0] == "price, VAT in"
    assert [row.change.option for row in found.table.rows if row.change] == [AWNING]
    assert "The same in both" in found.table.same


def test_two_variants_of_different_height_say_so_on_the_screen_and_line_by_line(scene: Scene) -> None:
    mine = scene.house.stand_of(scene.house.jobs.files(scene.number))
    outcome = apply(mine.catalogue, mine.spec, Take(option=OptionId("solar-light-120"), at=scene.at()))
    higher = stand_of(mine.catalogue, outcome.spec)
    height = [stand.report.readings[LedgerId("closed-height")].value for stand in (mine, higher)]
    assert height[0] != height[1]
    found = laid(mine, higher, scene.now.date())
    (row,) = (row for row in found.table.rows if row.label.startswith("height closed"))
    assert (row.a.text, row.b.text) == ("2,065 mm", "2,090 mm")
    lines = comparison_lines(mine, higher, found.comparison)
    assert any("eight closed" in line and "2,090 of" in line and "2,065 of" in line for line in lines)
