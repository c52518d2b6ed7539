"""What is written down of a counter session: edits, and steps back and forward among them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from .edits import Edit
from .spec import Spec


@dataclass(frozen=True, slots=True)
class Undo:
    """The last edit was undone."""

    to: Spec | None = None
    """The spec it led to, so that it holds even where the edits before it are no longer at hand."""


@dataclass(frozen=True, slots=True)
class Redo:
    """The last undone edit was done again."""

    to: Spec | None = None
    """The spec it led to."""


Entry: TypeAlias = Edit | Undo | Redo
"""What is replayed, in order, on a start."""
