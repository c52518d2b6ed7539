"""What left the house: a folder for each time, with the spec and every paper as they were, and a seal over them.

``0147-r1-signed/seal.toml`` names the content of the revision and every file beside it by its SHA-256. A folder appears
whole or not at all, and is never written again. Its checksum is that of all its other lines.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import shutil
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from specbuilder.model.brief import Answers
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import JobState
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Customer, Spec, VanData

from .atomic import PART, sync_folder, write_whole
from .disk import DiskError, DiskReason, disk, reading
from .faults import FaultList, Source
from .fields import Fields
from .json_values import Json, to_json
from .spec_files import SpecFaultsError
from .toml_lines import TomlLines
from .toml_out import comment
from .toml_text import toml_table

SEAL = "seal.toml"
ACTS = {RecordKind.QUOTED: "quoted", RecordKind.SIGNED: "signed", RecordKind.BUILT: "built"}
"""Records with which a revision leaves the house, and what the folder of each is called."""
_REMARK = "SEAL of a revision that left the house. Written once; a change here, or in a file named here, breaks it."


@dataclass(frozen=True, slots=True, kw_only=True)
class Seal:
    """What is known of a revision as it left the house."""

    number: str
    revision: int
    act: str
    at: str
    content: str
    """``content_digest`` of the spec."""
    catalogue_version: str
    catalogue_digest: str
    program: str
    """Version of the program that made the papers."""
    files: Mapping[str, str]
    """SHA-256 of each file, by its name."""


def content_digest(spec: Spec, act: str, asked: Collection[BriefKey]) -> str:
    """SHA-256 of all that this act fixes, and that nothing recorded later may alter.

    A quote fixes what was ``asked`` (the keys of the brief) and chosen; a signature all but the log and the firm's
    private note.
    """
    fixed = replace(spec, state=JobState.DRAFT, records=(), note="")
    if act == ACTS[RecordKind.QUOTED]:
        said = Answers(MappingProxyType({key: value for key, value in spec.answers.given.items() if key in asked}))
        fixed = replace(fixed, accepted=(), questions=(), van_data=VanData(), customer=Customer(), answers=said)
    text = json.dumps(_plain(to_json(fixed)), ensure_ascii=True, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def _plain(value: Json) -> Json:
    """Whole numbers without a point, however they were read."""
    match value:
        case float() if value.is_integer():
            return int(value)
        case list():
            return [_plain(item) for item in value]
        case dict():
            return {key: _plain(item) for key, item in value.items()}
        case _:
            return value


def sealed_path(jobs: Path, number: str, revision: int, act: str) -> Path:
    """The folder of an act."""
    return jobs / f"{number}-r{revision}-{act}"


def write_sealed(path: Path, seal: Seal, files: Mapping[str, bytes]) -> None:
    """Writes the folder whole; one that is there already stays as it is.

    Raises:
        DiskError: there is no such folder afterwards, nor a part of it.
    """
    if path.exists():
        return
    part = path.with_name(f".{path.name}.{os.getpid()}{PART}")
    with disk(path, writing=True):
        # The job is ours: whatever stands here half was left by a kill.
        for half in path.parent.glob(f".{path.name}.*{PART}"):
            shutil.rmtree(half, ignore_errors=True)
        try:
            part.mkdir()
            for name, content in files.items():
                write_whole(part / name, content)
            hashes = {name: hashlib.sha256(content).hexdigest() for name, content in files.items()}
            write_whole(part / SEAL, _text(replace(seal, files=hashes)))
            part.rename(path)
            sync_folder(path.parent)
        except (OSError, DiskError) as error:
            with contextlib.suppress(OSError):
                shutil.rmtree(part)
            if isinstance(error, DiskError):
                raise DiskError(error.reason, path, writing=True) from error
            raise


def read_seal(path: Path) -> Seal | None:
    """The seal of this folder; None when there is no such folder.

    Raises:
        SpecFaultsError: it cannot be read as a seal.
        DiskError: it cannot be read at all.
    """
    file = path / SEAL
    try:
        with reading(file) as opened:
            data = opened.read()
    except DiskError as error:
        if error.reason is DiskReason.GONE and not os.path.lexists(path):
            return None
        raise
    seal = _read(data, f"{path.name}/{SEAL}")
    # Written once, by us: whatever does not come out the same was altered.
    return seal if _text(seal).encode() == data else replace(seal, content="")


def _read(data: bytes, name: str) -> Seal:
    faults = FaultList()
    source = Source(name, TomlLines(text := data.decode(errors="replace")), faults)
    table = toml_table(text, source)
    if table is None:
        raise SpecFaultsError(faults.in_order())
    top = Fields(table, source.top)
    seal = Seal(
        number=top.text("number"),
        revision=top.whole("revision"),
        act=top.text("act"),
        at=top.text("at"),
        content=top.text("content"),
        catalogue_version=top.text("catalogue_version"),
        catalogue_digest=top.text("catalogue_digest"),
        program=top.text("program"),
        files={file.text("name"): file.text("sha256") for file in top.tables("file")},
    )
    if len(faults):
        raise SpecFaultsError(faults.in_order())
    return seal


def altered(path: Path, seal: Seal) -> tuple[str, ...]:
    """Names of files beside the seal that are not as they were, or not there."""
    return tuple(
        name for name, digest in seal.files.items() if Path(name).name != name or _sha256(path / name) != digest
    )


def _sha256(path: Path) -> str:
    try:
        with reading(path) as file:
            return hashlib.sha256(file.read()).hexdigest()
    except DiskError:
        return ""


def _text(seal: Seal) -> str:
    head = {
        "number": seal.number,
        "revision": seal.revision,
        "act": seal.act,
        "at": seal.at,
        "content": seal.content,
        "catalogue_version": seal.catalogue_version,
        "catalogue_digest": seal.catalogue_digest,
        "program": seal.program,
    }
    lines = "".join(f"{key} = {json.dumps(value)}\n" for key, value in head.items())
    files = "".join(f'\n[[file]]\nname = {json.dumps(n)}\nsha256 = "{digest}"\n' for n, digest in seal.files.items())
    checksum = hashlib.sha256(f"{lines}{files}".encode()).hexdigest()
    return f'{comment(_REMARK)}{lines}checksum = "{checksum}"\n{files}'
