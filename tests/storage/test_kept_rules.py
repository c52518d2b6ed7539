"""Rules kept beside the jobs are those that something rests on, or none are kept."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.storage.kept_rules import keep_rules, kept_path, kept_rules
from specbuilder.storage.rules_files import RulesFaults, read_rules
from tests.conftest import RULES


@pytest.fixture
def rules(tmp_path: Path) -> Path:
    """A copy of the rules that may be changed."""
    return Path(shutil.copytree(RULES, tmp_path / "rules"))


def test_kept_rules_are_read_again_as_they_were(rules: Path, tmp_path: Path) -> None:
    digest = read_rules(rules).digest
    keep_rules(tmp_path, rules, digest)
    again = kept_rules(tmp_path, digest)
    assert again is not None
    assert again.digest == digest


def test_rules_that_were_changed_after_they_were_read_are_not_kept_under_the_old_name(
    rules: Path, tmp_path: Path
) -> None:
    digest = read_rules(rules).digest
    firm = rules / "firm.toml"
    firm.write_text(firm.read_text("utf-8").replace("quote_valid_days = 30", "quote_valid_days = 31"), "utf-8")
    with pytest.raises(RulesFaults, match="changed after the program read them"):
        keep_rules(tmp_path, rules, digest)
    assert not kept_path(tmp_path, digest).exists()
