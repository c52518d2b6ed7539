"""Which keys the screens take: those of the program, or a house's own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from specbuilder.storage.disk import DiskError
from specbuilder.storage.keys_file import KeysFaultsError
from specbuilder.storage.places import default_keys_path
from specbuilder.wording.own_keys import without_the_file

from .output import Exit, StopError


def keys_path(named: str | None) -> Path | None:
    """The file that was named, else the user's own where there is one."""
    if named:
        return Path(named)
    own = default_keys_path()
    return own if own.is_file() else None


@contextmanager
def unusable_keys() -> Iterator[None]:
    """Keys that cannot be used stop the program before it draws anything.

    Raises:
        StopError: with each fault by file and line.
    """
    try:
        yield
    except KeysFaultsError as error:
        raise StopError(Exit.UNUSABLE, *(str(fault) for fault in error.faults), without_the_file()) from error
    except DiskError as error:
        raise StopError(Exit.UNUSABLE, str(error)) from error
