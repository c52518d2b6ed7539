"""Rules kept beside the jobs are those that something rests on, or none are kept."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest

from specbuilder.storage.kept_rules import are_kept, keep_rules, kept_path, kept_rules
from specbuilder.storage.rules_files import RulesFaults, read_rules
from tests.conftest import RULES


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


def test_a_changed_byte_of_kept_rules_is_told_wherever_it_stands(tmp_path: Path) -> None:
    digest = read_rules(RULES).digest
    path = keep_rules(tmp_path, RULES, digest)
    data = path.read_bytes()
    names = data.index(b"PK\x01\x02")
    for place in (*range(40), *range(0, names, names // 50), *range(names, len(data), 17), len(data) - 1):
        path.write_bytes(data[:place] + bytes([data[place] ^ 1]) + data[place + 1 :])
        assert not are_kept(tmp_path, digest), f"byte {place} was changed and nobody told"
    path.write_bytes(data)
    assert are_kept(tmp_path, digest)


def test_rules_that_an_earlier_program_packed_are_still_kept(tmp_path: Path) -> None:
    digest = read_rules(RULES).digest
    path = keep_rules(tmp_path, RULES, digest)
    with zipfile.ZipFile(path) as plain:
        files = {name: plain.read(name) for name in plain.namelist()}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in files.items():
            packed.writestr(name, content)
    assert are_kept(tmp_path, digest)
    assert kept_rules(tmp_path, digest) is not None
