"""A spec's file on the disk: no text, not there, with a mark at its head, and back as it was written."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Choice, Spec
from specbuilder.storage.disk import DiskError
from specbuilder.storage.spec_files import LARGEST_BYTES, SpecFaultsError, read_spec_file, write_spec_file
from tests.storage.scene import CATALOGUE, report_of, written


def test_files_that_are_no_text(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.write_bytes(b"format = 1\n\xff\xfe")
    with pytest.raises(SpecFaultsError) as caught:
        read_spec_file(path, None)
    assert str(caught.value) == (f"{path}:2: this is no UTF-8 text: save the file as UTF-8, or take yesterday's copy.")
    path.write_bytes(b"#" * (LARGEST_BYTES + 5))
    with pytest.raises(SpecFaultsError) as caught:
        read_spec_file(path, None)
    assert str(caught.value) == f"{path}: holds 4,000,005 bytes, far more than any spec: this is another file."


def test_a_file_with_a_mark_at_its_head_is_read(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.write_bytes(b"\xef\xbb\xbf" + written(Spec(number="0147")).encode())
    read = read_spec_file(path, CATALOGUE)
    assert read.spec == Spec(number="0147")
    assert read.warnings == ()


def test_files_that_are_not_there(tmp_path: Path) -> None:
    with pytest.raises(DiskError) as caught:
        read_spec_file(tmp_path / "none.toml", None)
    assert str(caught.value) == (
        f"{tmp_path}/none.toml could not be read, it is not there: check the path, and that its drive is connected."
    )
    with pytest.raises(DiskError) as caught:
        read_spec_file(tmp_path, None)
    assert str(caught.value) == (f"{tmp_path} could not be read, it is a folder: name a file.")


def test_a_written_file_comes_back(tmp_path: Path) -> None:
    spec = Spec(number="0147", choices=(Choice(option=OptionId("side-galley")),))
    write_spec_file(tmp_path / "a.toml", CATALOGUE, spec, report_of(spec))
    assert read_spec_file(tmp_path / "a.toml", CATALOGUE).spec == spec
