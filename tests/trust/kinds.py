"""All kinds of fault: what each is called in the table, what tries it, and how much of the time it is given."""

from __future__ import annotations

import os
import random
import shutil
import time
import traceback
from collections.abc import Callable, Mapping
from importlib import import_module
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple, cast

from .tally import Run, Tally


class Kind(NamedTuple):
    """One kind of fault."""

    name: str
    module: str
    share: float


KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        "kills": Kind("kill -9 at any moment", "kills", 4.0),
        "cuts": Kind("a journal cut or spoilt at every byte", "cuts", 2.0),
        "disk": Kind("full, short, refusing, vanished disk; wrong clock", "disk_faults", 4.0),
        "two": Kind("two processes on one job", "two_counters", 1.5),
        "mutants": Kind("mutated rules and spec files", "mutants", 4.0),
        "frozen": Kind("a byte of what was signed is changed", "frozen", 2.0),
        "keys": Kind("random keys, and the laws", "keys", 3.5),
        "hostile": Kind("hostile text in every field", "hostile", 2.5),
    }
)


def tried(name: str, seed: int, seconds: float, folder: Path, *, small: bool = False) -> Tally:
    """Tries one kind of fault for so long. Never raises: what breaks the harness counts as a traceback."""
    tally = Tally(kind=name)
    began = time.monotonic()
    folder.mkdir(parents=True, exist_ok=True)
    run = Run(
        tally=tally,
        dice=random.Random(f"{seed} {name}"),
        folder=folder,
        ends=began + seconds,
        small=small,
    )
    os.environ.pop("SPECBUILDER_TRACE", None)
    try:
        work = cast("Callable[[Run], None]", import_module(f"{__package__}.{KINDS[name].module}").tries)
        work(run)
    except Exception:  # noqa: BLE001
        tally.mistake(f"the harness itself stopped\n{traceback.format_exc()}")
    finally:
        shutil.rmtree(folder, ignore_errors=True)
    tally.took_s = time.monotonic() - began
    return tally
