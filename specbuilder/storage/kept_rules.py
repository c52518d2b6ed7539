"""The rules of a day, kept beside the jobs: what left the house can be looked at, and printed again, as it was.

``rules-0f3a....zip`` holds the folder of rules whose digest begins so. It is written once and never again.
"""

from __future__ import annotations

import io
import zipfile
import zlib
from collections.abc import Iterator
from importlib.resources.abc import Traversable
from pathlib import Path

from specbuilder.model.catalogue import Catalogue

from .atomic import write_whole
from .disk import DiskError, DiskReason, disk, reading
from .faults import Fault
from .rules_files import RulesFaults, digest_of, read_rules

_DIGITS = 16
_BEGAN = (1980, 1, 1, 0, 0, 0)
"""The time every file in it bears, so that the same rules give the same bytes."""


def kept_path(jobs: Path, digest: str) -> Path:
    """Where the rules of this digest are kept."""
    return jobs / f"rules-{digest[:_DIGITS]}.zip"


def keep_rules(jobs: Path, rules: Traversable, digest: str) -> Path:
    """Keeps the rules; does nothing when they are kept already.

    Raises:
        DiskError: they could not be read or written.
        RulesFaults: the folder holds other rules by now.
    """
    path = kept_path(jobs, digest)
    if path.exists():
        return path
    with disk(path, writing=True):
        files = sorted(_files(rules, ""))
    if digest_of(files) != digest:
        words = "these rules were changed after the program read them: leave the program and start it again."
        raise RulesFaults((Fault(rules.name, 0, "", words),))
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files:
            archive.writestr(zipfile.ZipInfo(name, _BEGAN), content, zipfile.ZIP_DEFLATED)
    write_whole(path, data.getvalue())
    return path


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
    try:
        catalogue = read_rules(zipfile.Path(zipfile.ZipFile(io.BytesIO(data))))
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, NotImplementedError, RuntimeError, OSError) as error:
        raise _altered(path) from error
    if catalogue.digest != digest:
        raise _altered(path)
    return catalogue


def _altered(path: Path) -> RulesFaults:
    words = "these kept rules were altered since: put back a copy from before, or look with the rules of today."
    return RulesFaults((Fault(path.name, 0, "", words),))


def _files(folder: Traversable, above: str) -> Iterator[tuple[str, bytes]]:
    for item in folder.iterdir():
        if item.name.startswith("."):
            continue
        if item.is_dir():
            yield from _files(item, f"{above}{item.name}/")
        elif item.name.endswith(".toml"):
            yield above + item.name, item.read_bytes()
