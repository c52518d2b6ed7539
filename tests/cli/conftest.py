from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.cli.main import main
from tests.cli.counter import Counter
from tests.cli.life_scene import RULES, STATES


@pytest.fixture
def counter(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """A command line on an empty jobs folder."""
    return Counter(tmp_path, capsys)


@pytest.fixture
def job(counter: Counter) -> Counter:
    """The same with job 0001: two grown-ups and a gas bundle, van and kitchen undecided."""
    assert counter("new", "adults=2", "gas-bundle", "customer=The Saturday family").code == 0
    return counter


@pytest.fixture(scope="session")
def states(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A jobs folder for each state."""
    made = tmp_path_factory.mktemp("states")
    jobs = made / "jobs"
    for name, steps in STATES:
        for words in steps:
            assert main(["--jobs", str(jobs), "--rules", str(RULES), *words]) == 0
        shutil.copytree(jobs, made / name)
    return made


def _counter(state: Path, folder: Path, capture: pytest.CaptureFixture[str]) -> Counter:
    counter = Counter(folder, capture, RULES)
    shutil.copytree(state, counter.jobs)
    return counter


@pytest.fixture
def family(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """Ready to be quoted."""
    return _counter(states / "draft", tmp_path, capsys)


@pytest.fixture
def ordered(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """Quoted and signed."""
    return _counter(states / "ordered", tmp_path, capsys)


@pytest.fixture
def changing(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """A change is drawn up."""
    return _counter(states / "changing", tmp_path, capsys)


@pytest.fixture
def changed(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """The change is signed."""
    return _counter(states / "changed", tmp_path, capsys)
