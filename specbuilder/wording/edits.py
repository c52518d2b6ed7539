"""What an edit did, what undo took back, and why an edit was not done."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit
from specbuilder.model.ids import OptionId
from specbuilder.model.outcome import Outcome
from specbuilder.model.spec import Spec


def done(
    catalogue: Catalogue,
    edit: Edit,
    before: Spec,
    after: Spec,
    brought: tuple[OptionId, ...] = (),
    left: tuple[OptionId, ...] = (),
) -> str:
    """``Took Gas bundle, with CO alarm``; no full stop, so that a hint may follow."""
    raise NotImplementedError


def edit_name(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    """What undo names: ``awning``, ``exhaust back to left``."""
    raise NotImplementedError


def undone(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    """``Undone: Awning, body rail``."""
    raise NotImplementedError


def redone(catalogue: Catalogue, edit: Edit, before: Spec, after: Spec) -> str:
    """``Again: Took Awning, body rail``."""
    raise NotImplementedError


def nothing_to_undo() -> str:
    """``Nothing left to undo in this revision``."""
    raise NotImplementedError


def nothing_to_redo() -> str:
    """``Nothing left to put back``."""
    raise NotImplementedError


def refused(catalogue: Catalogue, edit: Edit, outcome: Outcome) -> str:
    """Why the edit was not done, and what to do instead.

    Raises:
        ValueError: if it was done.
    """
    raise NotImplementedError
