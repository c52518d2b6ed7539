"""Why an edit was not done, and what to do instead."""

from __future__ import annotations

from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import AnswerLine, Edit
from specbuilder.model.kinds import Pick
from specbuilder.model.outcome import Outcome, Refusal
from specbuilder.model.spec import Spec

from .brief import not_an_answer
from .edits import about_options
from .key_names import pressed
from .names import chosen_name, group_name, listed, option_name

_FEW = 3


def refused(catalogue: Catalogue, edit: Edit, outcome: Outcome) -> str:
    """Why the edit was not done, and what to do instead.

    Raises:
        ValueError: if it was done.
    """
    name = _subject(catalogue, edit, outcome.spec)
    match outcome.refused:
        case None:
            raise ValueError("the edit was done")
        case Refusal.UNKNOWN_OPTION:
            return f"{name}: take one that this catalogue has"
        case Refusal.IN_ALREADY:
            return f"In already; {pressed('next')} goes on, {pressed('less')} leaves it out"
        case Refusal.COMES_WITH:
            source = listed((_short(option_name(catalogue, option)) for option in outcome.refused_by), most=_FEW)
            return f"{_short(name)} comes with {source}: leave that out first"
        case Refusal.NOT_CHOSEN:
            return f"{name} is not in, so nothing was changed"
        case Refusal.PLACE_NOT_ALLOWED:
            return f"{name} {_places(catalogue, edit)}"
        case Refusal.TOO_MANY:
            return _too_many(catalogue, edit, name)
        case Refusal.NOT_AN_ANSWER:
            line = catalogue.brief.get(edit.key) if isinstance(edit, AnswerLine) else None
            return not_an_answer(catalogue, line) if line else "The brief has no such line"
        case Refusal.FROZEN:
            return "This revision has left the house: a change makes the next one"
        case Refusal.NOTHING_TO_DO:
            return "Nothing to change: it is so already"
        case _:
            assert_never(outcome.refused)


def _subject(catalogue: Catalogue, edit: Edit, spec: Spec) -> str:
    about = about_options(edit)
    return chosen_name(catalogue, spec, about[0]) if about else "This"


def _places(catalogue: Catalogue, edit: Edit) -> str:
    about = about_options(edit)
    option = catalogue.options.get(about[0]) if about else None
    if option is None or not option.places:
        return "has no side to choose"
    return f"may stand {listed((place.value for place in option.places), 'or')} only"


def _too_many(catalogue: Catalogue, edit: Edit, name: str) -> str:
    about = about_options(edit)
    option = catalogue.options.get(about[0]) if about else None
    if option is None:
        return f"{name}: no more of it"
    group = catalogue.groups[option.group]
    if group.pick is Pick.ANY and group.max_choices <= option.max_count:
        return f"{group_name(catalogue, group.id)}: no more than {group.max_choices}, leave another out first"
    return f"{option.name}: no more than {option.max_count} of it in one van"


def _short(name: str) -> str:
    """The name before its first comma or colon."""
    return name.split(",")[0].split(":")[0]
