"""What leaves the house is kept as it left: papers again byte for byte, whatever the disk and the rules do since."""

from __future__ import annotations

import shutil

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import JobState
from specbuilder.model.record import Record, RecordKind
from specbuilder.office.house import House, stand_of
from specbuilder.office.leaving import keep_as_it_left
from specbuilder.office.paperwork import called_for, pressed
from specbuilder.storage.disk import DiskError, DiskReason
from specbuilder.storage.jobs import JobsFolder
from specbuilder.storage.rules_files import read_rules, rules_folder

from .scene import Scene


def test_spec_and_papers_are_kept_as_they_left(ordered: Scene) -> None:
    names = {path.name for path in (ordered.folder / f"{ordered.number}-r1-signed").iterdir()}
    assert {"seal.toml", "spec.toml"} < names
    for sheet in ("customer", "workshop", "handover", "colleague"):
        assert {f"{ordered.number}-r1-{sheet}.pdf", f"{ordered.number}-r1-{sheet}.txt"} <= names


def test_a_paper_of_old_rules_is_made_again_byte_for_byte(
    scene: Scene, tmp_path_factory: pytest.TempPathFactory
) -> None:
    scene.quote()
    kept = scene.folder / f"{scene.number}-r1-quoted" / f"{scene.number}-r1-customer.txt"
    day = scene.now.date()
    dearer = tmp_path_factory.mktemp("rules") / "rules"
    shutil.copytree(str(rules_folder()), dearer)
    options = dearer / "options" / "kitchen.toml"
    options.write_text(
        options.read_text("utf-8").replace("price_net_pence = 234000", "price_net_pence = 299000"), "utf-8"
    )
    a_year_later = House(JobsFolder(scene.folder, clock=scene.clock), read_rules(dearer), dearer)
    stand = a_year_later.stand_of(a_year_later.jobs.files(scene.number))
    assert stand.catalogue.digest == scene.house.catalogue.digest != a_year_later.catalogue.digest
    case = a_year_later.case(stand, day)
    again = pressed(case, called_for(case))
    assert again[kept.name] == kept.read_bytes()
    pdf = kept.with_suffix(".pdf")
    assert again[pdf.name] == pdf.read_bytes()


def test_a_full_disk_while_a_signature_is_kept_loses_nothing_and_leaves_nothing_half(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
) -> None:
    scene.quote()
    with monkeypatch.context() as full:

        def refuse(*_: object, **__: object) -> None:
            raise DiskError(DiskReason.FULL, scene.folder, writing=True)

        full.setattr("specbuilder.storage.seals.write_whole", refuse)
        with pytest.raises(DiskError, match="the disk is full"):
            scene.sign()
    assert scene.spec().state is JobState.ORDERED
    assert not [path.name for path in scene.folder.iterdir() if "signed" in path.name]
    keep_as_it_left(scene.house, scene.house.stand_of(scene.house.jobs.files(scene.number)))
    assert (scene.folder / f"{scene.number}-r1-signed" / "seal.toml").exists()


def test_a_record_survives_the_file_it_is_written_to(ordered: Scene) -> None:
    line = Record(
        kind=RecordKind.READING, at=ordered.at(), by="foreman", about="H9", words="total 2,710 kg", figure=2710.5
    )
    ordered.record(line)
    assert ordered.spec().records[-1] == line


def test_the_office_holds_a_spec_against_the_rules_it_was_agreed_on(ordered: Scene, catalogue: Catalogue) -> None:
    stand = ordered.house.stand_of(ordered.house.jobs.files(ordered.number))
    assert stand.report.price == stand_of(catalogue, ordered.spec()).report.price
