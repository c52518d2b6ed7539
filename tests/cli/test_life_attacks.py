"""Spoilt files, full disks and kills in the life of a job: told plainly, nothing lost, nothing said twice."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.cli.output import Exit
from specbuilder.storage import open_job, seals

from .counter import Counter
from .life_scene import RULES, SIGN, SPOIL, full, told

# -- nothing is lost ---------------------------------------------------------------------------------------------------


def test_what_was_written_down_in_a_change_is_not_given_up_with_it(changing: Counter) -> None:
    changing("record", "1", "deposit", "2441", "--by", "the counter")
    changing("record", "1", "promised", "a spare cushion", "--by", "the counter")
    assert changing("change", "1", "--drop").code == 0
    log = (changing.jobs / "0001-r1.toml").read_text("utf-8")
    assert log.count("pence = 244100\n") == 1
    assert log.count('words = "a spare cushion"') == 1
    assert changing("verify", "1").code == 0


def test_a_file_without_the_log_of_its_job_is_not_taken_as_it_stands(ordered: Counter) -> None:
    path = ordered.jobs / "0001-r1.toml"
    text = path.read_text("utf-8")
    path.write_text(text.replace('by = "M. Hale"', 'by = "A. Nother"'), "utf-8")
    refused = ordered("record", "1", "promised", "more", "--by", "x")
    assert refused.code == Exit.UNUSABLE
    assert "does not hold all that was written down" in told(refused)
    path.unlink()
    assert ordered("record", "1", "promised", "more", "--by", "x").code == 0
    assert 'by = "M. Hale"' in path.read_text("utf-8")
    assert ordered("verify", "1").code == 0


def test_a_step_that_a_full_disk_stopped_is_taken_back_so_that_it_is_not_written_down_twice(
    ordered: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as disk:
        disk.setattr(open_job, "write_whole", full)
        said = ordered("record", "1", "deposit", "500", "--by", "x")
    assert said.code == Exit.UNUSABLE
    assert "the disk is full" in said.err[0]
    assert said.err[-1] == "Nothing was changed."
    assert ordered("record", "1", "deposit", "500", "--by", "x").code == 0
    assert (ordered.jobs / "0001-r1.toml").read_text("utf-8").count('kind = "deposit"') == 1


def test_a_quote_that_could_not_be_kept_stands_and_is_kept_with_the_next_step(
    family: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as disk:
        disk.setattr(seals, "write_whole", full)
        said = family("quote", "1")
    assert said.code == Exit.UNUSABLE
    assert said.err[0].startswith("Quoted, revision 1")
    assert said.err[-1].startswith("It stands, and is not kept as it left the house yet")
    assert ".part" not in told(said)
    assert family("verify", "1").code == Exit.BROKEN
    assert family("quote", "1").code == Exit.BROKEN
    assert family("verify", "1").code == 0


def test_a_step_that_a_kill_cut_off_before_its_file_is_finished_by_the_next_one(
    family: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    def kill(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as power:
        power.setattr(open_job, "write_whole", kill)
        assert family("quote", "1").code == Exit.STOPPED
    behind = family("verify", "1")
    assert behind.code == Exit.BROKEN
    assert "nothing of it has left the house" not in told(behind)
    assert "The job is quoted" in told(family("quote", "1"))
    assert family("verify", "1").out == ("Job 0001, revision 1, quoted: whole, current and unaltered.",)


def test_a_change_that_a_full_disk_stopped_leaves_no_half_revision(
    ordered: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = sorted(path.name for path in ordered.jobs.iterdir())
    with monkeypatch.context() as disk:
        disk.setattr(open_job, "write_whole", full)
        said = ordered("change", "1", "--because", "they want more")
    assert said.code == Exit.UNUSABLE
    assert said.err[-1] == "Nothing was changed."
    assert sorted(path.name for path in ordered.jobs.iterdir()) == before
    assert ordered("change", "1@1", "--because", "they want more").out[1] == 'Reason: "they want more".'


# -- what verify says --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("how", SPOIL)
@pytest.mark.parametrize("name", ["0001-r1-signed/seal.toml", "0001-r1-signed/spec.toml", "rules"])
def test_what_was_kept_and_is_spoilt_is_told(ordered: Counter, name: str, how: str) -> None:
    path = next(ordered.jobs.glob("rules-*.zip")) if name == "rules" else ordered.jobs / name
    SPOIL[how](path)
    verified = ordered("verify", "1")
    assert verified.code == Exit.BROKEN
    assert (path.name if name == "rules" else "0001-r1-signed") in told(verified)


def test_a_job_that_forgot_what_was_kept_of_it_is_told(ordered: Counter) -> None:
    (ordered.jobs / "0001-r1.journal").unlink()
    path = ordered.jobs / "0001-r1.toml"
    text = path.read_text("utf-8")
    path.write_text(text[: text.index("[[record]]")].replace('state = "ordered"', 'state = "draft"'), "utf-8")
    ordered("set", "1", "note=written whole again")
    verified = ordered("verify", "1")
    assert verified.code == Exit.BROKEN
    assert "0001-r1-signed" in told(verified)


def test_a_quote_that_was_altered_is_not_signed_nor_exported(family: Counter, tmp_path: Path) -> None:
    family("quote", "1")
    path = family.jobs / "0001-r1.toml"
    path.write_text(path.read_text("utf-8").replace("nights_off_grid = 2", "nights_off_grid = 1"), "utf-8")
    for words in (("order", "1", *SIGN), ("export", "1", "--to", str(tmp_path / "out"))):
        refused = family(*words)
        assert refused.code == Exit.BROKEN
        assert "0001-r1-quoted" in told(refused)
    assert not (tmp_path / "out").exists()


def test_one_job_whose_rules_are_spoilt_does_not_hide_the_others(ordered: Counter, tmp_path: Path) -> None:
    kept = next(ordered.jobs.glob("rules-*.zip"))
    kept.write_bytes(b"spoilt")
    other = shutil.copytree(RULES, tmp_path / "rules")
    firm = other / "firm.toml"
    firm.write_text(firm.read_text("utf-8") + "\n# another day\n", "utf-8")
    later = Counter(tmp_path, ordered._capture, other)
    assert later("new", "adults=2").code == 0
    assert [line[:4] for line in later("jobs").out] == ["0001", "0002"]
    assert "altered since" in told(later("show", "1"))
    assert later("verify", "1").code == Exit.BROKEN
