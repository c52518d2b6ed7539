"""What is worked out is worked out once: what is tried here is the disk and the files, not the sums."""

from __future__ import annotations

import contextlib
import json
from collections.abc import Callable, Iterator
from datetime import datetime, tzinfo
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

from specbuilder.cli import asked
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.office import paperwork
from specbuilder.session import evaluate as evaluating
from specbuilder.storage import spec_read
from specbuilder.storage.json_values import to_json

from .scene import NOW, catalogue

_MOST = 200
"""Kept of each sort."""


class Standing(datetime):
    """A clock that stands, so that the same command gives the same bytes."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> datetime:
        """Always the same minute."""
        return NOW.astimezone(tz) if tz is not None else NOW.replace(tzinfo=None)


@contextlib.contextmanager
def worked_out_once() -> Iterator[None]:
    """Rules, specs, reports and papers of the same content are made once, and a line command has a clock that stands.

    All of these are pure functions of their bytes and values: nothing that touches the disk is passed over.
    """
    changed = {
        "specbuilder.cli.asked.read_rules": lambda folder: catalogue(Path(str(folder))),
        "specbuilder.cli.asked.gaps": cache(asked.gaps),
        "specbuilder.cli.commands.datetime": Standing,
        "specbuilder.session.evaluate._evaluate": _evaluated(evaluating._evaluate),
    }
    pressed, read = _pressed(paperwork.pressed), _read(spec_read.read_spec)
    changed |= dict.fromkeys(_users("pressed", ("office.leaving", "cli.papers", "tui.deeds")), pressed)
    changed |= dict.fromkeys(_users("read_spec", ("storage.spec_files", "storage.job_recovery", "office.verify")), read)
    with contextlib.ExitStack() as stack:
        for name, instead in changed.items():
            stack.enter_context(patch(name, instead))
        yield


def _users(name: str, modules: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(f"specbuilder.{module}.{name}" for module in modules)


def _sign(spec: Spec) -> str:
    return json.dumps(to_json(spec), sort_keys=True)


def _evaluated(real: Callable[[Catalogue, Spec, bool], Report]) -> Callable[[Catalogue, Spec, bool], Report]:
    known: dict[tuple[int, str, bool], Report] = {}

    def evaluate(rules: Catalogue, spec: Spec, exact: bool) -> Report:
        key = id(rules), _sign(spec), exact
        if key not in known:
            if len(known) > _MOST:
                known.clear()
            known[key] = real(rules, spec, exact)
        return known[key]

    return evaluate


def _read(real: Callable[..., Any]) -> Callable[..., Any]:
    known: dict[tuple[str, str, int], Any] = {}

    def read(text: str, name: str, rules: Catalogue | None) -> Any:
        key = text, name, id(rules)
        if key not in known:
            if len(known) > _MOST:
                known.clear()
            known[key] = real(text, name, rules)
        return known[key]

    return read


def _pressed(real: Callable[..., dict[str, bytes]]) -> Callable[..., dict[str, bytes]]:
    known: dict[tuple[object, ...], dict[str, bytes]] = {}

    def pressed(case: Any, sheets: Any, *formats: Any) -> dict[str, bytes]:
        chosen = tuple(sheets)
        key = (_sign(case.stand.spec), case.today, case.replaced_by, *(sheet.name for sheet in chosen), *formats)
        if key not in known:
            known[key] = real(case, chosen, *formats)
        return known[key]

    return pressed
