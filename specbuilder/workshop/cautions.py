"""Cautions of a build: what they are about, which of them forbid something, and at which step they are said."""

from __future__ import annotations

import re

from specbuilder.model.catalogue import Caution
from specbuilder.model.ids import OptionId

from .view import SpecView

_FORBIDS = re.compile(r"\b(?:never|nobody|only|must not|may not)\b|^do not\b", re.IGNORECASE)
"""A caution with one of these words forbids something."""
_FLOOR = re.compile(r"\bworkshop\b|\bsurvey\b", re.IGNORECASE)
_STEPS = re.compile(r"\bB\d+\b")


def cautions_of(view: SpecView) -> tuple[tuple[Caution, tuple[OptionId, ...]], ...]:
    """Each once, in the order of the catalogue, with the choices it is about, in build order."""
    about = [one.option for one in view.in_build_order() if one.option is not None]
    found: list[tuple[Caution, tuple[OptionId, ...]]] = []
    for key, caution in view.catalogue.cautions.items():
        concerned = tuple(option.id for option in about if key in option.cautions)
        if concerned:
            found.append((caution, concerned))
    return tuple(found)


def forbids(caution: Caution) -> bool:
    """Whether it says that something must not be done."""
    return _FORBIDS.search(caution.text) is not None


def is_for_the_floor(caution: Caution) -> bool:
    """Whether the catalogue shows it on a sheet of the workshop."""
    return _FLOOR.search(caution.shown_where) is not None


def steps_of(caution: Caution) -> tuple[str, ...]:
    """The steps of the build at which the catalogue shows it."""
    return tuple(dict.fromkeys(_STEPS.findall(caution.shown_where)))
