"""A file is written whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from specbuilder.storage.atomic import write_whole
from specbuilder.storage.disk import DiskError, DiskReason


def test_the_new_text_stands_there_and_nothing_else(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    write_whole(path, "old")
    path.chmod(0o600)
    write_whole(path, "new £", changed_s=1000.0)
    assert path.read_text(encoding="utf-8") == "new £"
    assert path.stat().st_mode & 0o777 == 0o600
    assert path.stat().st_mtime == 1000.0
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").write_text("old", encoding="utf-8")
    (tmp_path / "link").symlink_to("real")
    write_whole(tmp_path / "link", "new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_text(encoding="utf-8") == "new"


def test_what_is_no_regular_file_is_never_replaced(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    (tmp_path / "link").symlink_to("pipe")
    for path in (pipe, tmp_path / "link", Path(os.devnull)):
        with pytest.raises(DiskError) as caught:
            write_whole(path, "new")
        assert str(caught.value) == f"{path} could not be written, it is no regular file: use another name."
    assert pipe.is_fifo()
    with pytest.raises(DiskError) as caught:
        write_whole(tmp_path, "new")
    assert str(caught.value) == f"{tmp_path} could not be written, it is a folder: name a file."
    assert sorted(path.name for path in tmp_path.iterdir()) == ["link", "pipe"]


@pytest.mark.skipif(sys.platform == "win32" or os.geteuid() != 0, reason="only the superuser makes device nodes")
def test_a_device_node_stays_a_device_node(tmp_path: Path) -> None:
    node = tmp_path / "node"
    try:
        os.mknod(node, stat.S_IFCHR | 0o666, os.makedev(1, 7))
    except OSError:
        pytest.skip("no device nodes here")
    with pytest.raises(DiskError) as caught:
        write_whole(node, "new")
    assert str(caught.value) == f"{node} could not be written, it is no regular file: use another name."
    assert node.is_char_device()


REASONS = [
    (errno.ENOSPC, DiskReason.FULL, "the disk is full: make room and try again."),
    (errno.EDQUOT, DiskReason.FULL, "the disk is full: make room and try again."),
    (
        errno.EROFS,
        DiskReason.READ_ONLY,
        "the folder is read only: unlock it, or use another folder.",
    ),
    (
        errno.EACCES,
        DiskReason.NOT_ALLOWED,
        "this user may not: change the rights of file and folder, or use another folder.",
    ),
    (errno.EIO, DiskReason.FAILED, "the disk reports a fault: check the drive and try again."),
    (errno.ENAMETOOLONG, DiskReason.NAME, "the system takes no such name: use a shorter, plainer one."),
]


@pytest.mark.parametrize(("number", "reason", "words"), REASONS)
@pytest.mark.parametrize("call", ["write", "fsync", "replace", "open"])
def test_whatever_fails_the_old_text_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, number: int, reason: DiskReason, words: str
) -> None:
    path = tmp_path / "a.toml"
    write_whole(path, "old")

    def fails(*_: object) -> int:
        raise OSError(number, os.strerror(number))

    with monkeypatch.context() as patch:
        patch.setattr(os, call, fails)
        with pytest.raises(DiskError) as caught:
            write_whole(path, "new")
    assert caught.value.reason is reason
    assert str(caught.value) == f"{path} could not be written, {words}"
    assert path.read_text(encoding="utf-8") == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def test_the_system_may_take_a_text_in_pieces(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = os.write
    monkeypatch.setattr(os, "write", lambda file, data: real(file, bytes(data[:3])))
    write_whole(tmp_path / "a", "0123456789")
    assert (tmp_path / "a").read_text(encoding="utf-8") == "0123456789"


def test_a_text_larger_than_the_disk_allows_leaves_the_old_one(tmp_path: Path) -> None:
    """A real limit of the system on the size of a file, in a process of its own."""
    program = f"""
import resource, signal
from pathlib import Path
from specbuilder.storage.atomic import write_whole
from specbuilder.storage.disk import DiskError
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
path = Path({str(tmp_path / "a.toml")!r})
write_whole(path, "old")
resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))
try:
    write_whole(path, "x" * 1000)
except DiskError as error:
    print(error.reason)
print(path.read_text())
"""
    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert ran.stdout.split() == ["full", "old"]
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]
