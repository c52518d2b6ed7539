"""The rules of a day, kept beside the jobs: what left the house can be looked at, and printed again, as it was.

``rules-0f3a....zip`` holds the folder of rules whose digest begins so. It is written once, and again only when it was
spoilt and the same rules are still at hand.
"""

from __future__ import annotations

import io
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from importlib.resources.abc import Traversable
from pathlib import Path

from specbuilder.model.catalogue import Catalogue

from .atomic import write_whole
from .disk import DiskError, DiskReason, disk, reading
from .faults import Fault
from .rules_files import RulesFaults, digest_of, read_rules

_DIGITS = 16
_LARGEST_BYTES = 50_000_000
"""No folder of rules comes near it; what claims to hold more is none."""
_BEGAN = (1980, 1, 1, 0, 0, 0)
"""The time every file in it bears, so that the same rules give the same bytes."""
_ON_UNIX = 3
"""The system it says it was made on, wherever it was."""


def kept_path(jobs: Path, digest: str) -> Path:
    """Where the rules of this digest are kept."""
    return jobs / f"rules-{digest[:_DIGITS]}.zip"


def keep_rules(jobs: Path, rules: Traversable, digest: str) -> Path:
    """Keeps the rules; does nothing when they are kept already, whole.

    Raises:
        DiskError: they could not be read or written.
        RulesFaults: the folder holds other rules by now.
    """
    path = kept_path(jobs, digest)
    if are_kept(jobs, digest):
        return path
    with disk(path, writing=True):
        files = sorted(_files(rules, ""))
    if digest_of(files) != digest:
        raise RulesFaults((changed_since(rules.name),))
    try:
        write_whole(path, _archive(files))
    except DiskError as error:
        raise error.about(None) from error  # whoever needs them looks first whether they are kept
    return path


def changed_since(name: str) -> Fault:
    """The folder of this name is no longer what the program works with."""
    return Fault(name, 0, "", "changed after the program read them: start the program again.")


def kept_rules(jobs: Path, digest: str) -> Catalogue | None:
    """The catalogue of these rules; None when they are not kept.

    Raises:
        RulesFaults: what is kept is not what it was.
        DiskError: it cannot be read.
    """
    path = kept_path(jobs, digest)
    try:
        with reading(path) as file:
            data = file.read()
    except DiskError as error:
        if error.reason is DiskReason.GONE:
            return None
        raise
    if _digest(data) != digest:
        words = (
            "these kept rules were altered since: put back a copy, or move it away to go on with the rules of today."
        )
        raise RulesFaults((Fault(path.name, 0, "", words),))
    return read_rules(zipfile.Path(zipfile.ZipFile(io.BytesIO(data))))


def are_kept(jobs: Path, digest: str) -> bool:
    """Whether the rules are kept, and are what they were."""
    try:
        with reading(kept_path(jobs, digest)) as file:
            return _digest(file.read()) == digest
    except DiskError:
        return False


def _archive(files: Iterable[tuple[str, bytes]]) -> bytes:
    """The archive, byte for byte the same for the same files. Not packed: how that comes out is up to the system."""
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_STORED) as archive:
        for name, content in files:
            info = zipfile.ZipInfo(name, _BEGAN)
            info.create_system = _ON_UNIX
            archive.writestr(info, content)
    return data.getvalue()


def _digest(data: bytes) -> str:
    """The digest of the rules in an archive; empty when it is spoilt in any byte.

    One that is packed is of an earlier program: of that only what it holds can be told.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            inside = archive.infolist()
            if sum(info.file_size for info in inside) > _LARGEST_BYTES:
                return ""
            files = [(info.filename, archive.read(info)) for info in inside]
            packed = any(info.compress_type != zipfile.ZIP_STORED for info in inside)
        return digest_of(files) if packed or _archive(files) == data else ""
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, NotImplementedError, RuntimeError, OSError):
        return ""


def _files(folder: Traversable, above: str) -> Iterator[tuple[str, bytes]]:
    for item in folder.iterdir():
        if item.name.startswith("."):
            continue
        if item.is_dir():
            yield from _files(item, f"{above}{item.name}/")
        elif item.name.endswith(".toml"):
            yield above + item.name, item.read_bytes()
