"""What several test files stand on: the shipped catalogue, read once."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

from specbuilder.model.catalogue import Catalogue
from specbuilder.storage.rules_files import read_rules

settings.register_profile("same", derandomize=True)
settings.register_profile("anew", derandomize=False)
# The one check must not turn on luck; `--hypothesis-profile=anew` draws what nobody has seen.
settings.load_profile("same")

RULES = Path(__file__).parent.parent / "rules"


@pytest.fixture(scope="session", autouse=True)
def temporary_files(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """All that tests, and programs they start, make for a while lies in pytest's own folder.

    That one is cleared after three runs, also where a test was stopped before it could tidy up.
    """
    place = str(tmp_path_factory.mktemp("temporary"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("TMPDIR", place)
        patch.setattr(tempfile, "tempdir", place)
        yield


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    """The catalogue of the house, as it is shipped."""
    return read_rules(RULES)
