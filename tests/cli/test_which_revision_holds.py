"""Which revision is built: what is signed, not what is quoted, whatever becomes of the files."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.cli.output import Exit

from .counter import Counter
from .life_scene import SIGN, SPOIL, told


def test_a_change_that_is_only_quoted_does_not_take_the_place_of_what_was_signed(
    changing: Counter, tmp_path: Path
) -> None:
    assert changing("quote", "1").code == 0
    verified = changing("verify", "1@1")
    assert verified.code == 0
    assert "until then this one holds" in told(verified)
    assert changing("export", "1@1", "--to", str(tmp_path / "out")).code == 0


def test_a_change_begun_after_a_quoted_one_replaces_what_the_workshop_builds(changing: Counter) -> None:
    changing("quote", "1")
    assert "the workshop builds revision 1." in changing("change", "1").out[0]
    assert "takes the place of revision 1." in changing("order", "1", *SIGN).out[0]
    assert changing("verify", "1@1").code == Exit.BROKEN


@pytest.mark.parametrize("how", SPOIL)
def test_a_signed_change_takes_the_place_of_the_old_revision_even_when_its_file_is_spoilt(
    changed: Counter, tmp_path: Path, how: str
) -> None:
    SPOIL[how](changed.jobs / "0001-r2.toml")
    verified = changed("verify", "1@1")
    assert verified.code == Exit.BROKEN
    assert "Revision 2 has replaced it" in told(verified)
    assert changed("export", "1@1", "--to", str(tmp_path / "out")).code == Exit.BROKEN
    told(changed("verify", "1"))


def test_a_signed_change_of_which_only_the_seal_is_left_is_neither_forgotten_nor_begun_anew(
    changed: Counter, tmp_path: Path
) -> None:
    for path in changed.jobs.glob("0001-r2.*"):
        path.unlink()
    assert "Revision 2 has replaced it" in told(changed("verify", "1@1"))
    assert changed("export", "1", "--to", str(tmp_path / "out")).code == Exit.BROKEN
    assert changed("change", "1").code == Exit.UNUSABLE


def test_nobody_can_tell_whether_a_revision_is_current_when_the_next_one_says_nothing_at_all(
    changing: Counter, tmp_path: Path
) -> None:
    for path in changing.jobs.glob("0001-r2.*"):
        path.write_bytes(b"\0")
    verified = changing("verify", "1@1")
    assert verified.code == Exit.BROKEN
    assert "0001-r2.toml could not be read" in told(verified)
    assert changing("export", "1@1", "--to", str(tmp_path / "out")).code == Exit.UNUSABLE


def test_a_job_that_begins_like_a_changed_one_has_no_change_to_sign(changed: Counter) -> None:
    assert changed("new", "--from", "1").out[0] == "0002"
    text = (changed.jobs / "0002-r1.toml").read_text("utf-8")
    for line in ("changed_after_signing", "change_order =", "past_freeze", "[[record]]"):
        assert line not in text
    assert changed("quote", "2").code == 0
    assert changed("order", "2", *SIGN).code == 0
