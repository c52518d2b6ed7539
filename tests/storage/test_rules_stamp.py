"""Whether a folder of rules is still what was read: touched is not changed, and only the bytes decide."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from specbuilder.storage.rules_files import read_rules
from specbuilder.storage.rules_stamp import is_changed, stamp_of


def test_a_folder_nobody_touched_has_the_same_stamp_and_bytes(rules: Path) -> None:
    assert stamp_of(rules) == stamp_of(rules)
    assert not is_changed(rules, read_rules(rules).digest)


def test_a_file_that_was_only_touched_is_not_changed(rules: Path) -> None:
    before, digest = stamp_of(rules), read_rules(rules).digest
    os.utime(rules / "firm.toml", (1, 1))
    assert stamp_of(rules) != before
    assert not is_changed(rules, digest)


@pytest.mark.parametrize("how", ["edited", "gone", "more"])
def test_what_was_edited_removed_or_added_is_changed(rules: Path, how: str) -> None:
    before, digest = stamp_of(rules), read_rules(rules).digest
    match how:
        case "edited":
            (rules / "firm.toml").write_text((rules / "firm.toml").read_text("utf-8") + "\n# a word\n", "utf-8")
        case "gone":
            (rules / "firm.toml").unlink()
        case _:
            (rules / "options" / "more.toml").write_text("", "utf-8")
    assert stamp_of(rules) != before
    assert is_changed(rules, digest)


def test_a_folder_that_vanished_is_changed(rules: Path) -> None:
    before, digest = stamp_of(rules), read_rules(rules).digest
    shutil.rmtree(rules)
    assert stamp_of(rules) != before
    assert is_changed(rules, digest)
