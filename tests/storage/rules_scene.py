"""The smallest whole catalogue, and what the reader says of a broken copy of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.storage.rules_files import RulesFaults, read_rules

BAD = Path(__file__).parent.parent / "bad_files" / "rules"
GOOD = BAD / "good"


def faults_of(folder: Path) -> str:
    """What the reader says; the test fails when it says nothing."""
    with pytest.raises(RulesFaults) as caught:
        read_rules(folder)
    assert [str(fault) for fault in caught.value.faults] == str(caught.value).split("\n")
    return str(caught.value)
