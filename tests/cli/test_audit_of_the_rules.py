"""The audit on the rules of the house, and on rules that lack something."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.model.audit import LintCode
from specbuilder.session.audit import lints
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.cli.counter import RULES, Counter


def test_the_house_rules_explain_themselves() -> None:
    found = {lint.code for lint in lints(read_rules(rules_folder()))}
    assert found <= {LintCode.TAG_UNUSED, LintCode.SILENT}


def test_a_setting_no_sum_can_do_without(counter: Counter, tmp_path: Path) -> None:
    rules = tmp_path / "rules"
    shutil.copytree(RULES, rules)
    ledgers = rules / "ledgers.toml"
    ledgers.write_text(ledgers.read_text(encoding="utf-8").replace("grown_up_kg = 75\n", ""), encoding="utf-8")
    assert counter("audit", str(rules)).out[3] == (
        "setting-missing ledgers.toml:1 total-mass (Weight of the loaded van): "
        "settings lack grown_up_kg: its sum cannot be made without it"
    )
