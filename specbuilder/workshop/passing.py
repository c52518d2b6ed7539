"""What of the catalogue's hold points and sentences a build has: only what is fitted is read, shown and told."""

from __future__ import annotations

from specbuilder.model.catalogue import CollectionNote, PassFigure, WorkStep
from specbuilder.model.kinds import CollectionSubject

from .view import SpecView


def pass_figures(view: SpecView, step: WorkStep) -> tuple[PassFigure, ...]:
    """What must be read at the hold point of a step in this build."""
    given = view.positions.given()
    return tuple(one for one in step.pass_figures if not one.only_with or not given.isdisjoint(one.only_with))


def collection_notes(view: SpecView, about: CollectionSubject) -> tuple[CollectionNote, ...]:
    """What is said of this build on the day of collection, in the order of the catalogue."""
    given = view.positions.given()
    return tuple(
        note
        for note in view.catalogue.collection.values()
        if note.about is about
        and (not note.only_with or not given.isdisjoint(note.only_with))
        and given.isdisjoint(note.unless_given)
    )
