"""Something to be done to a spec, and what came of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from specbuilder.model.edits import Edit
from specbuilder.session.state import Session


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """What was done to a session."""

    session: Session
    edits: tuple[Edit, ...]
    lines: tuple[str, ...]
    """Said of it, one fact each."""


Work: TypeAlias = Callable[[Session], Worked]
"""Something to be done to a job or a file."""
