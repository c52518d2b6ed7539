from __future__ import annotations

import shutil
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
JOBS = {"0147": "saturday-family", "0151": "nurse-under-two-metres", "0152": "half-done-family"}


@pytest.fixture(autouse=True)
def mistakes_are_raised(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SPECBUILDER_TRACE", "1")
    monkeypatch.setenv("TEXTUAL_ANIMATIONS", "none")
    monkeypatch.delenv("NO_COLOR", raising=False)


@pytest.fixture
def empty(tmp_path: Path) -> Path:
    """A jobs folder nobody has used."""
    return tmp_path / "jobs"


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """A jobs folder with three jobs."""
    folder = tmp_path / "jobs"
    folder.mkdir()
    for number, name in JOBS.items():
        shutil.copy(EXAMPLES / f"{name}.toml", folder / f"{number}-r1.toml")
    return folder
