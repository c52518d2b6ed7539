"""Every byte of what was signed, changed: of the spec, of its seal, of its papers and of the rules kept with it."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

from specbuilder.office.verify import verify
from specbuilder.storage.kept_rules import are_kept, kept_path
from specbuilder.storage.seals import altered, read_seal
from specbuilder.storage.spec_files import SpecFaultsError, read_spec, read_text
from specbuilder.storage.spec_format import checksum_of
from specbuilder.wording.standing import standing_lines
from tests.office.scene import Scene

from .scene import catalogue
from .tally import Run

MASKS = (0x01, 0x20, 0x80)
_NEAR = 400
"""Bytes around the checksum, where its own line could be read otherwise."""


def tries(run: Run) -> None:
    """One signed job, byte by byte."""
    scene = Scene(run.fresh("frozen"), catalogue())
    scene.order()
    assert verify(scene.house, scene.path(), scene.now.date()).good
    _spec_by_its_sum(run, scene)
    _seal(run, scene)
    _papers(run, scene)
    _rules(run.share(0.4), scene)
    _spec_in_full(run, scene)
    assert verify(scene.house, scene.path(), scene.now.date()).good, "everything was put back"


def _spec_in_full(run: Run, scene: Scene) -> None:
    """As ``verify`` looks: the bytes around the checksum, and as many others as there is time for."""
    path = scene.path()
    data = path.read_bytes()
    near = data.index(b"checksum = ")
    places = [*range(max(0, near - _NEAR), near + _NEAR), *run.dice.sample(range(len(data)), len(data))]
    for place in places[:: 300 if run.small else 1]:
        if not run.more:
            break
        for mask in MASKS:
            with run.counted(f"spec, byte {place} ^ {mask:#x}"):
                path.write_bytes(_spoilt(data, place, mask))
                standing = verify(scene.house, path, scene.now.date())
                if standing.good:
                    run.tally.lose(f"spec, byte {place} ^ {mask:#x}: nobody tells")
                lines = standing_lines(standing)
                if not lines or (path.name not in " ".join(lines) and "Job" not in lines[0]):
                    run.tally.dim(f"spec, byte {place}: {lines}")
            run.tally.note("bytes of the spec changed and looked at in full")
    path.write_bytes(data)


def _spec_by_its_sum(run: Run, scene: Scene) -> None:
    """Every byte there is, in three ways, by what ``verify`` rests on first: the checksum of the text that was read.

    The hash of what stands before a byte is made once. Where the sum says nothing, and around its own line, the file is
    looked at in full.
    """
    path = scene.path()
    data = path.read_bytes()
    begin = data.index(b"checksum = ")
    end = data.index(b"\n", begin) + 1
    checksum = data[begin:end].split(b'"')[1].decode()
    before = hashlib.sha256()
    for place in range(len(data)):
        own_line = begin - 2 <= place <= end
        if not run.small or place % 400 == 0:
            for mask in MASKS:
                run.tally.tried += 1
                spoilt = bytes([data[place] ^ mask])
                summed = before.copy()
                summed.update(spoilt)
                summed.update(data[place + 1 : begin] + data[end:] if place < begin else data[place + 1 :])
                if place % 997 == 0 and not own_line:
                    _same_sum(run, _spoilt(data, place, mask), summed.hexdigest())
                if own_line or spoilt == b"\r" or summed.hexdigest() == checksum:
                    _in_full(run, scene, path, _spoilt(data, place, mask), place)
            run.tally.note("bytes of the spec changed, every one in three ways")
        if not begin <= place < end:
            before.update(data[place : place + 1])
    path.write_bytes(data)


def _same_sum(run: Run, spoilt: bytes, summed: str) -> None:
    """The hash made in pieces is the one the program makes."""
    try:
        text = spoilt.decode("utf-8-sig")
    except UnicodeDecodeError:
        return
    if checksum_of(text) != summed:
        run.tally.mistake("the harness takes another checksum than the program")


def _in_full(run: Run, scene: Scene, path: Path, spoilt: bytes, place: int) -> None:
    path.write_bytes(spoilt)
    try:
        warned = bool(read_spec(read_text(path), path.name, None).warnings)
    except SpecFaultsError:
        return
    if not warned and verify(scene.house, path, scene.now.date()).good:
        run.tally.lose(f"spec, byte {place}: nobody tells")


def _seal(run: Run, scene: Scene) -> None:
    """Every byte of the seal, in three ways, as ``verify`` looks at it."""
    for act in ("quoted", "signed"):
        path = scene.folder / f"{scene.number}-r1-{act}" / "seal.toml"
        _every(run, path, lambda: not verify(scene.house, scene.path(), scene.now.date()).good, 40 if run.small else 29)
        folder = path.parent

        def told(folder: Path = folder) -> bool:
            try:
                seal = read_seal(folder)
            except SpecFaultsError:
                return True
            return seal is None or seal.content == ""

        _every(run, path, told, 40 if run.small else 1, MASKS)
        run.tally.note("bytes of seals changed, every one", path.stat().st_size)


def _papers(run: Run, scene: Scene) -> None:
    """Every byte of every file kept under seal by the hash of the seal, and every few as the program reads them."""
    for folder in sorted(scene.folder.glob("*-r1-*")):
        seal = read_seal(folder)
        assert seal is not None
        for name, digest in seal.files.items():
            alone = replace(seal, files={name: digest})
            step = 5000 if run.small else 53
            _every(run, folder / name, lambda folder=folder, alone=alone: bool(altered(folder, alone)), step)
            _hashes(run, name, (folder / name).read_bytes(), digest)


def _hashes(run: Run, name: str, data: bytes, digest: str) -> None:
    before = hashlib.sha256()
    for place in range(len(data)):
        if not run.small or place % 5000 == 0:
            run.tally.tried += 1
            summed = before.copy()
            summed.update(bytes([data[place] ^ MASKS[place % len(MASKS)]]))
            summed.update(data[place + 1 :])
            if summed.hexdigest() == digest:
                run.tally.lose(f"{name}, byte {place}: nobody tells")
            run.tally.note("bytes of kept papers changed, every one")
        before.update(data[place : place + 1])


def _rules(run: Run, scene: Scene) -> None:
    """The names and heads in the archive of the rules, and a draw of what it holds."""
    digest = scene.house.catalogue.digest
    path = kept_path(scene.folder, digest)
    data = path.read_bytes()
    names = data.index(b"PK\x01\x02")
    places = [*range(names, len(data)), *run.dice.sample(range(names), names)]
    for place in places[:: 9000 if run.small else 1]:
        if not run.more:
            break
        with run.counted(f"kept rules, byte {place}"):
            path.write_bytes(_spoilt(data, place, MASKS[place % len(MASKS)]))
            if are_kept(scene.folder, digest):
                run.tally.lose(f"kept rules, byte {place}: nobody tells")
        run.tally.note("bytes of kept rules changed")
    path.write_bytes(data)


def _every(run: Run, path: Path, told: Callable[[], bool], step: int, masks: Iterable[int] = (0x01,)) -> None:
    """Changes every byte of a file in turn, in its place."""
    data = path.read_bytes()
    with path.open("r+b", buffering=0) as file:
        for place in range(0, len(data), step):
            for mask in masks:
                with run.counted(f"{path.name}, byte {place} ^ {mask:#x}"):
                    file.seek(place)
                    file.write(bytes([data[place] ^ mask]))
                    if not told():
                        run.tally.lose(f"{path.name}, byte {place} ^ {mask:#x}: nobody tells")
            file.seek(place)
            file.write(data[place : place + 1])
    path.write_bytes(data)


def _spoilt(data: bytes, place: int, mask: int) -> bytes:
    return data[:place] + bytes([data[place] ^ mask]) + data[place + 1 :]
