from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue

from .scene import Scene


@pytest.fixture
def scene(tmp_path: Path, catalogue: Catalogue) -> Scene:
    """A house with the Saturday family's job as a draft."""
    return Scene(tmp_path, catalogue)


@pytest.fixture
def ordered(scene: Scene) -> Scene:
    """The same, quoted and signed."""
    scene.order()
    return scene
