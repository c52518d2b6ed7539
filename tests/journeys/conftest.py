from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import NameCustomer, SetNote, WriteNote
from specbuilder.model.record import Record, RecordKind
from tests.office.scene import Scene

from .customer_scene import GALLEY, PRIVATE
from .house_scene import set_clock

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


@pytest.fixture
def one(tmp_path: Path) -> Path:
    """A folder with the Saturday family's job."""
    folder = tmp_path / "one"
    folder.mkdir()
    shutil.copy(EXAMPLES / "saturday-family.toml", folder / "0147-r1.toml")
    return folder


@pytest.fixture
def scene(empty: Path, catalogue: Catalogue, monkeypatch: pytest.MonkeyPatch) -> Scene:
    """A house with the Saturday family's job as a draft."""
    made = Scene(empty, catalogue)
    set_clock(made, monkeypatch)
    return made


@pytest.fixture
def quoted(scene: Scene) -> Scene:
    """The same, quoted, with private words wherever a seller may write them."""
    scene.edit(
        WriteNote(note=PRIVATE[0]),
        NameCustomer(name="The Saturday family", contact=PRIVATE[2]),
        SetNote(option=GALLEY, note=PRIVATE[1]),
    )
    scene.quote()
    scene.record(Record(kind=RecordKind.CALL, at=scene.at(), by="the counter", words=PRIVATE[3], due="2031-05-01"))
    scene.edit(WriteNote(note=f"{PRIVATE[0]} {PRIVATE[4]}"))
    return scene
