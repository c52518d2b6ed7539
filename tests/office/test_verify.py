"""Whole, current and unaltered: told of every file that is, and of none that is not."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest

from specbuilder.model.edits import LeaveOut
from specbuilder.model.ids import OptionId
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.standing import Standing, StandingCode
from specbuilder.office.verify import unlike_its_seal, verify
from specbuilder.storage.kept_rules import are_kept, keep_rules, kept_path, kept_rules
from specbuilder.storage.rules_files import RulesFaults, read_rules, rules_folder
from specbuilder.wording.standing import standing_lines

from .scene import Scene, codes

SAMPLE = 120
"""Places of a file whose byte is changed; drawn from a seed, spread over all of it."""


def told(scene: Scene, path: Path) -> Standing:
    return verify(scene.house, path, scene.now.date())


@pytest.mark.parametrize("steps", ["draft", "quoted", "ordered", "recorded", "changing"])
def test_what_the_program_wrote_is_whole_current_and_unaltered(scene: Scene, steps: str) -> None:
    if steps != "draft":
        scene.quote()
    if steps not in ("draft", "quoted"):
        scene.sign()
    if steps in ("recorded", "changing"):
        scene.pass_holds("H0", "H1")
    if steps == "changing":
        scene.begin_next()
    standing = told(scene, scene.path())
    assert standing.good
    assert standing_lines(standing)[0].endswith("whole, current and unaltered.")


def test_any_byte_of_a_signed_revision_that_changes_is_told(ordered: Scene) -> None:
    path = ordered.path()
    data = path.read_bytes()
    dice = random.Random(147)
    places = [*range(0, len(data), len(data) // SAMPLE), data.index(b"checksum"), data.index(b"state ="), len(data) - 1]
    for place in places:
        changed = bytearray(data)
        changed[place] ^= 1 << dice.randrange(7)
        path.write_bytes(changed)
        assert not told(ordered, path).good, f"byte {place} was changed and nobody told"
    path.write_bytes(data)
    assert told(ordered, path).good


def test_a_line_added_or_left_out_is_told(ordered: Scene) -> None:
    path = ordered.path()
    text = path.read_text("utf-8")
    for altered in (text + "\n", text.replace("\n", "\r\n"), "\ufeff" + text, text[: text.rindex("\n[[")]):
        path.write_text(altered, "utf-8", newline="")
        assert not told(ordered, path).good


def test_a_figure_altered_with_its_checksum_made_to_fit_is_told(ordered: Scene) -> None:
    from specbuilder.storage.spec_format import checksum_of

    path = ordered.path()
    text = path.read_text("utf-8")
    altered = text.replace("tolerance_mm = 2\n", "tolerance_mm = 9\n", 1)
    was = next(line for line in text.split("\n") if line.startswith("checksum = "))
    path.write_text(altered.replace(was, f'checksum = "{checksum_of(altered)}"'), "utf-8")
    assert codes(told(ordered, path).points) == {StandingCode.NOT_WHAT_FOLLOWS}


def test_a_revision_that_was_replaced_is_not_current_any_more(ordered: Scene) -> None:
    ordered.begin_next()
    assert codes(told(ordered, ordered.path(1)).points) == {StandingCode.CHANGE_OPEN}
    ordered.edit(LeaveOut(option=OptionId("toilet-portable")))
    ordered.sign()
    standing = told(ordered, ordered.path(1))
    assert not standing.good
    assert codes(standing.points) == {StandingCode.REPLACED}
    assert told(ordered, ordered.path(2)).good


def test_a_copy_elsewhere_is_held_against_the_job(ordered: Scene, tmp_path_factory: pytest.TempPathFactory) -> None:
    copy = tmp_path_factory.mktemp("elsewhere") / "copy.toml"
    shutil.copy(ordered.path(), copy)
    assert told(ordered, copy).points == ()
    ordered.record(Record(kind=RecordKind.DEPOSIT, at=ordered.at(), by="counter", pence=240_000))
    standing = told(ordered, copy)
    assert standing.good
    assert [(point.code, point.number) for point in standing.points] == [(StandingCode.OLDER_LOG, 1)]


def test_what_was_kept_under_seal_is_told_when_it_is_altered(ordered: Scene) -> None:
    kept = ordered.folder / f"{ordered.number}-r1-signed"
    for name in sorted(path.name for path in kept.iterdir()):
        path = kept / name
        data = path.read_bytes()
        for place in (0, len(data) // 2, len(data) - 2):
            changed = bytearray(data)
            changed[place] ^= 1
            path.write_bytes(changed)
            assert not told(ordered, ordered.path()).good, f"{name}, byte {place}"
        path.write_bytes(data)
    assert told(ordered, ordered.path()).good


def test_every_line_and_every_byte_of_a_seal_is_sealed(ordered: Scene) -> None:
    path = ordered.folder / f"{ordered.number}-r1-signed" / "seal.toml"
    spec, data = ordered.spec(), path.read_bytes()
    lines = data.splitlines(keepends=True)
    without = [b"".join(lines[:number] + lines[number + 1 :]) for number in range(len(lines))]
    flipped = [data[:place] + bytes([data[place] ^ 1]) + data[place + 1 :] for place in range(0, len(data), 11)]
    for altered in (*without, *flipped, b"", b"\0", data * 2):
        path.write_bytes(altered)
        assert unlike_its_seal(ordered.house, spec, ordered.house.catalogue), altered
    path.write_bytes(data)
    assert not unlike_its_seal(ordered.house, spec, ordered.house.catalogue)


def test_two_revisions_that_both_claim_to_be_current_are_both_told(ordered: Scene) -> None:
    text = ordered.path(1).read_text("utf-8")
    other = ordered.folder / f"{ordered.number}-r2.toml"
    other.write_text(text.replace("revision = 1\n", "revision = 2\n", 1), "utf-8")
    assert StandingCode.TWO_CURRENT in codes(told(ordered, ordered.path(1)).points)
    assert not told(ordered, other).good


def test_a_job_of_another_house_says_so(
    scene: Scene, catalogue: object, tmp_path_factory: pytest.TempPathFactory
) -> None:
    copy = tmp_path_factory.mktemp("elsewhere") / "copy.toml"
    shutil.copy(scene.path(), copy)
    scene.path().unlink()
    scene.house.jobs.files(scene.number).journal.unlink()
    assert StandingCode.NO_JOB in codes(told(scene, copy).points)


def test_rules_that_are_kept_and_were_altered_are_told(ordered: Scene) -> None:
    digest = ordered.house.catalogue.digest
    path = kept_path(ordered.folder, digest)
    assert kept_rules(ordered.folder, digest) is not None
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    with pytest.raises(RulesFaults, match="altered since"):
        kept_rules(ordered.folder, digest)


def test_kept_rules_that_lack_what_the_sums_of_today_ask_for_are_named(ordered: Scene, tmp_path: Path) -> None:
    older = Path(shutil.copytree(str(rules_folder()), tmp_path / "older"))
    brief = older / "brief.toml"
    brief.write_text(brief.read_text("utf-8").replace("[brief.adults]", "[brief.grown_ups]", 1), "utf-8")
    digest = read_rules(older).digest
    kept = keep_rules(ordered.folder, older, digest)
    with pytest.raises(RulesFaults, match=f"{kept.name}.*brief.adults"):
        ordered.house.catalogue_of(digest)


def test_kept_rules_that_were_spoilt_are_kept_again_while_they_are_at_hand(ordered: Scene) -> None:
    digest = ordered.house.catalogue.digest
    path = kept_path(ordered.folder, digest)
    for spoilt in (b"", b"noise", path.read_bytes()[:-99]):
        path.write_bytes(spoilt)
        assert not are_kept(ordered.folder, digest)
        ordered.house.keep_rules(ordered.house.catalogue)
        assert are_kept(ordered.folder, digest)


def test_a_taken_choice_in_the_next_revision_leaves_the_signed_one_as_it_was(ordered: Scene) -> None:
    before = ordered.path(1).read_bytes()
    ordered.begin_next()
    ordered.edit(LeaveOut(option=OptionId("awning-body-rail")))
    ordered.sign()
    assert ordered.path(1).read_bytes() == before
