"""What is done to a job as a whole holds once it stands in the journal; where it cannot be begun the job stays open."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.office.steps import Signature
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.open_job import OpenJob
from specbuilder.tui.deeds import Deeds
from specbuilder.tui.desk import Desk
from tests.office.scene import Scene

BOTH = Signature(customer="M. Hale", firm="the counter", place="premises")


def full(self: object, *_: object, **__: object) -> None:
    raise DiskError(DiskReason.FULL, Path("jobs"), writing=True)


@pytest.fixture
def scene(tmp_path: Path, catalogue: Catalogue) -> Scene:
    return Scene(tmp_path / "jobs", catalogue)


def deeds_of(scene: Scene) -> Deeds:
    """The job on a desk of its own."""
    desk = Desk(scene.house, scene.clock, "counter 1")
    desk.open(scene.number)
    return Deeds(desk)


def test_a_signature_that_the_file_does_not_take_holds_and_is_written_with_the_next_try(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
) -> None:
    scene.quote()
    deeds = deeds_of(scene)
    with monkeypatch.context() as broken:
        broken.setattr(OpenJob, "save", full)
        with pytest.raises(DiskError):
            deeds.sign(BOTH)
    assert deeds.desk.session.spec.state is JobState.ORDERED
    assert deeds.desk.leave(None)
    assert scene.spec().state is JobState.ORDERED
    assert len(scene.spec().recorded(RecordKind.SIGNED)) == 1


@pytest.mark.parametrize(("owner", "step"), [(JobsFolder, "begin_revision"), (OpenJob, "save")])
def test_a_change_that_cannot_be_begun_leaves_the_job_open_and_ours(
    scene: Scene, monkeypatch: pytest.MonkeyPatch, owner: type, step: str
) -> None:
    scene.order()
    deeds = deeds_of(scene)
    with monkeypatch.context() as broken:
        broken.setattr(owner, step, full)
        with pytest.raises(DiskError):
            deeds.begin_next()
    assert deeds.desk.session.spec.revision == 1
    assert deeds.desk.may_write()
    deeds.record(Record(kind=RecordKind.PROMISED, at=scene.at(), by="the counter", words="grey cloth"))
    assert scene.house.jobs.revisions(scene.number) == (1,)
    assert deeds.desk.leave(None)
    assert [record.words for record in scene.spec().recorded(RecordKind.PROMISED)] == ["grey cloth"]


def test_a_change_that_cannot_be_given_up_stays(scene: Scene, monkeypatch: pytest.MonkeyPatch) -> None:
    scene.order()
    deeds = deeds_of(scene)
    deeds.begin_next()
    with monkeypatch.context() as broken:
        broken.setattr(JobsFolder, "give_up", full)
        with pytest.raises(DiskError):
            deeds.give_up()
    assert deeds.desk.session.spec.revision == 2
    assert deeds.desk.may_write()
    deeds.give_up()
    assert (deeds.desk.session.spec.revision, deeds.may_give_up) == (1, False)


def test_what_is_looked_at_is_never_written_to(scene: Scene) -> None:
    scene.order()
    before = {path: path.read_bytes() for path in scene.folder.iterdir() if path.is_file()}
    desk = Desk(scene.house, scene.clock, "counter 1")
    desk.look_at(scene.number, 1)
    assert not desk.may_write()
    assert not Deeds(desk).may_give_up
    assert desk.undo() is None
    assert desk.leave(None)
    assert {path: path.read_bytes() for path in scene.folder.iterdir() if path.is_file()} == before


def test_a_job_that_is_looked_at_stays_free_for_the_other_counter(scene: Scene) -> None:
    scene.order()
    desk = Desk(scene.house, scene.clock, "counter 1")
    desk.look_at(scene.number)
    other = Desk(scene.house, scene.clock, "counter 2")
    other.open(scene.number)
    assert other.may_write()


def test_what_would_follow_from_an_edit_of_a_signed_job_is_told_for_its_next_revision(scene: Scene) -> None:
    scene.order()
    desk = deeds_of(scene).desk
    key = BriefKey("adults")
    after = desk.would_be(AnswerLine(key=key, value=3))
    assert (after.spec.revision, after.spec.answers.get(key)) == (2, 3)
    assert (desk.session.spec.revision, desk.editable.spec.revision) == (1, 2)


def test_the_rules_of_a_draft_are_kept_with_it(scene: Scene) -> None:
    desk = deeds_of(scene).desk
    assert not list(scene.folder.glob("rules-*.zip"))
    assert desk.leave(None)
    assert scene.house.catalogue_of(desk.catalogue.digest) is not None
    assert len(list(scene.folder.glob("rules-*.zip"))) == 1
