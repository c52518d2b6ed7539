"""In which order edits of a proposal are kept: what was asked for before what it takes to have it."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Take, Together
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Spec

from .apply import apply


def asked_first(catalogue: Catalogue, spec: Spec, edits: tuple[Edit, ...], option: OptionId) -> tuple[Edit, ...]:
    """The edits with the taking of this option first, where it leads to the same choices and answers.

    Undo and the last line name them in their order: a roof that was asked for goes before the buzzer left out for it.
    """
    asked = [edit for edit in edits if isinstance(edit, Take) and edit.option == option]
    order = (*asked, *(edit for edit in edits if edit not in asked))
    if order == edits:
        return edits
    as_found, asked_for = (apply(catalogue, spec, Together(edits=each)).spec for each in (edits, order))
    same = set(as_found.choices) == set(asked_for.choices) and as_found.answers == asked_for.answers
    return order if same else edits
