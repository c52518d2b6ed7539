from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.counter import Counter


@pytest.fixture
def counter(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """A command line on an empty jobs folder."""
    return Counter(tmp_path, capsys)


@pytest.fixture
def job(counter: Counter) -> Counter:
    """The same with job 0001: two grown-ups and a gas bundle, van and kitchen undecided."""
    assert counter("new", "adults=2", "gas-bundle", "customer=The Saturday family").code == 0
    return counter
