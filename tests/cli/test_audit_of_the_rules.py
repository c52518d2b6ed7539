"""The audit on the rules of the house, and on rules that lack something."""

from __future__ import annotations

import shutil
from pathlib import Path

from specbuilder.model.audit import LintCode
from specbuilder.session.audit import lints
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.cli.counter import RULES, Counter

HOUSE = Path(str(rules_folder()))


def test_the_house_rules_explain_themselves() -> None:
    found = {lint.code for lint in lints(read_rules(rules_folder()))}
    assert found <= {LintCode.TAG_UNUSED, LintCode.SILENT, LintCode.REDUNDANT}


def test_a_setting_no_sum_can_do_without(counter: Counter, tmp_path: Path) -> None:
    rules = tmp_path / "rules"
    shutil.copytree(RULES, rules)
    ledgers = rules / "ledgers.toml"
    ledgers.write_text(ledgers.read_text(encoding="utf-8").replace("grown_up_kg = 75\n", ""), encoding="utf-8")
    assert counter("audit", str(rules)).out[3] == (
        "setting-missing ledgers.toml:1 total-mass (Weight of the loaded van): "
        "settings lack grown_up_kg: its sum cannot be made without it"
    )


def test_every_rule_of_the_house_has_its_case(counter: Counter) -> None:
    answer = counter("audit", str(HOUSE), "--cases", str(Path(__file__).parents[1] / "cases"))
    assert answer.code == 0
    assert not [line for line in answer.out if line.startswith("no-case")]


def test_a_rule_without_a_case_is_named_with_its_place(counter: Counter, tmp_path: Path) -> None:
    (tmp_path / "some.toml").write_text('[case.bench-beside-kitchen]\nfire = ["take bench-three"]\n', encoding="utf-8")
    answer = counter("audit", str(HOUSE), "--cases", str(tmp_path))
    lines = [line for line in answer.out if line.startswith("no-case")]
    assert len(lines) > 100
    assert not [line for line in lines if "bench-beside-kitchen" in line]
    assert lines[0].endswith(": has no case that breaks and mends it")


def test_cases_that_cannot_be_read_are_named(counter: Counter, tmp_path: Path) -> None:
    (tmp_path / "some.toml").write_text("[case", encoding="utf-8")
    answer = counter("audit", str(HOUSE), "--cases", str(tmp_path))
    assert answer.code == 2
    assert "some.toml" in " ".join(answer.err)
    assert counter("audit", str(HOUSE), "--cases", str(tmp_path / "gone")).code == 2


def test_what_can_never_be_built_ends_the_audit_with_one(counter: Counter, tmp_path: Path) -> None:
    rules = tmp_path / "rules"
    shutil.copytree(HOUSE, rules)
    seating = rules / "constraints" / "seating.toml"
    text = seating.read_text(encoding="utf-8")
    more = """
[rule.no-table-ever]
step = "seating"
kind = "excludes"
level = "STOP"
when = "table-rail"
then = "table-rail"
because = "No such table."
fixes = ["Another table"]
source = "test"
confidence = "known"
"""
    seating.write_text(text + more, encoding="utf-8")
    answer = counter("audit", str(rules))
    assert answer.code == 1
    assert "To mend before anything is sold from it: 1." in answer.out
    assert [line for line in answer.out if line.startswith("dead-option") and "because of no-table-ever" in line]


def test_a_job_is_checked_under_rules_without_any_ledger(counter: Counter, tmp_path: Path) -> None:
    bare = Path(shutil.copytree(counter.rules, tmp_path / "bare"))
    (bare / "ledgers.toml").write_text("", "utf-8")
    without = Counter(tmp_path, counter._capture, bare)
    assert without("new", "adults=2").code == 0
    assert without("check", "1").code in (0, 1, 3)
