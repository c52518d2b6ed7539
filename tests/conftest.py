"""What several test files stand on: the shipped catalogue, read once."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.storage.rules_files import read_rules

RULES = Path(__file__).parent.parent / "rules"


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    """The catalogue of the house, as it is shipped."""
    return read_rules(RULES)
