"""Cautions of a build: what they are about, which of them forbid something, and at which step they are said."""

from __future__ import annotations

import re

from specbuilder.model.catalogue import Caution
from specbuilder.model.ids import OptionId

from .view import Chosen, SpecView

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


def said_at(view: SpecView, caution: Caution, about: tuple[OptionId, ...]) -> tuple[str, ...]:
    """The steps at which a build says it: of those the catalogue names, where its parts are fitted, cut or looked at.

    Steps of cables and pipes run something for every part, and the last one named commissions what came before.

    A caution that is about none of them is said at all of them: none is lost.
    """
    work, named = view.catalogue.work, steps_of(caution)
    parts = [one for one in view.taken if one.option is not None and one.option.id in about]
    if view.van_option is not None and view.van_option.id in about:
        return named
    last = max((list(work).index(at) for at in _fitted_at(view, parts) if at in work), default=-1)
    kept = [
        step
        for step in named
        if step in work
        and (
            work[step].hours_per_circuit
            or (step == named[-1] and list(work).index(step) > last)
            or step in _worked_on_at(view, parts)
            or work[step].hold_point in {hold for one in parts if one.option for hold in one.option.hold_points}
        )
    ]
    return tuple(kept) or named


def _fitted_at(view: SpecView, parts: list[Chosen]) -> set[str]:
    return {view.build_step(one.option) for one in parts if one.option is not None}


def _worked_on_at(view: SpecView, parts: list[Chosen]) -> set[str]:
    """Where they are fitted and where they are cut."""
    return _fitted_at(view, parts) | {hole.freeze_step for one in parts for hole in one.holes}


def forbids(caution: Caution) -> bool:
    """Whether it says that something must not be done."""
    return _FORBIDS.search(caution.text) is not None


def is_for_the_floor(caution: Caution) -> bool:
    """Whether the catalogue shows it on a sheet of the workshop."""
    return _FLOOR.search(caution.shown_where) is not None


def steps_of(caution: Caution) -> tuple[str, ...]:
    """The steps of the build at which the catalogue shows it."""
    return tuple(dict.fromkeys(_STEPS.findall(caution.shown_where)))
