"""Writing papers: all that were asked for, or none. What stood there before stays until all of them are there."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from .atomic import PART, clear_left, rights, sync_folder, write_part
from .disk import DiskError, DiskReason, disk, refuse_special

_NO_NAMES = frozenset({"", ".", ".."})
_OLD = ".old"
"""Ending of the name under which an older paper waits until all new ones are there."""


@dataclass(slots=True)
class _Paper:
    """One file on its way."""

    path: Path
    """As it was asked for."""
    target: Path
    """What it is in the end, behind any links."""
    part: Path
    old: Path
    kept: bool = field(default=False)
    """Whether the older paper waits at ``old``."""
    placed: bool = field(default=False)
    """Whether the new one is in its place."""


def write_papers(folder: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Writes these files into the folder, by name, and tells where they are.

    Everything is written beside its place first and moved when nothing is missing, so a full disk or a folder that
    goes away leaves no half paper and loses no older one.

    Raises:
        DiskError: nothing has changed in the folder, unless it is ``unsure`` of a paper.
    """
    papers = [_paper(folder, name) for name in files]
    for paper in papers:
        refuse_special(paper.path, writing=True)
        _clear(paper)
    try:
        for paper, data in zip(papers, files.values(), strict=True):
            with disk(paper.path, writing=True):
                write_part(paper.part, data, rights(paper.target))
        for paper in papers:
            with disk(paper.path, writing=True):
                _place(paper)
        _sync(folder, papers)
    except DiskError as error:
        raise error.about(_taken_back(papers)) from error
    except BaseException:
        _taken_back(papers)
        raise
    for paper in papers:
        with contextlib.suppress(OSError):
            paper.old.unlink(missing_ok=True)
    return tuple(paper.path for paper in papers)


def _paper(folder: Path, name: str) -> _Paper:
    """A file of the folder itself; a name that leads elsewhere is refused."""
    path = folder / name
    if name in _NO_NAMES or "\0" in name or Path(name).name != name:
        raise DiskError(DiskReason.NAME, path, writing=True)
    with disk(path, writing=True):
        target = Path(os.path.realpath(path))
    hidden = target.with_name(f".{target.name}.{os.getpid()}")
    return _Paper(path, target, Path(f"{hidden}{PART}"), Path(f"{hidden}{_OLD}"))


def _clear(paper: _Paper) -> None:
    """Takes away what a kill left of an earlier time; the only copy of an older paper stays."""
    clear_left(paper.target)
    if paper.target.exists():
        clear_left(paper.target, _OLD)


def _place(paper: _Paper) -> None:
    """Moves the new paper to its place; the older one has a second name until all are there."""
    paper.kept = _keep(paper)
    os.replace(paper.part, paper.target)
    paper.placed = True


def _keep(paper: _Paper) -> bool:
    try:
        os.link(paper.target, paper.old)
    except FileNotFoundError:
        return False
    except OSError:
        # Some disks have no second names; there the older paper is moved.
        os.replace(paper.target, paper.old)
    return True


def _sync(folder: Path, papers: Sequence[_Paper]) -> None:
    with disk(folder, writing=True):
        for place in sorted({paper.target.parent for paper in papers}):
            sync_folder(place)


def _taken_back(papers: Sequence[_Paper]) -> Path | None:
    """Everything as it was, as far as the disk lets it be; the first paper of which nobody can be sure."""
    unsure = [paper.path for paper in papers if not _is_back(paper)]
    return unsure[0] if unsure else None


def _is_back(paper: _Paper) -> bool:
    """Puts the older paper back in its place, or nothing where there was none. False: it could not be."""
    try:
        if paper.kept:
            os.replace(paper.old, paper.target)
            # Where both are still names of one file, the system has left both.
            paper.old.unlink(missing_ok=True)
        elif paper.placed:
            paper.target.unlink()
    except OSError:
        return not paper.placed and _stands(paper.target)
    finally:
        with contextlib.suppress(OSError):
            paper.part.unlink(missing_ok=True)
    return True


def _stands(path: Path) -> bool:
    try:
        return path.exists()
    except OSError:
        return False
