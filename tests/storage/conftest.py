from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.conftest import RULES
from tests.storage.rules_scene import GOOD


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the smallest whole catalogue."""
    return Path(shutil.copytree(GOOD, tmp_path / "rules"))


@pytest.fixture
def rules(tmp_path: Path) -> Path:
    """A copy of the rules of the house."""
    return Path(shutil.copytree(RULES, tmp_path / "rules"))
