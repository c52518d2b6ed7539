"""What every part of the workshop pack is made from, looked up once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option, WorkStep
from specbuilder.model.own_parts import is_theirs, with_sheet
from specbuilder.model.papers import Case
from specbuilder.model.parts import Hole
from specbuilder.model.plain_text import one_line
from specbuilder.model.plan import PlannedStep
from specbuilder.model.record import RecordKind
from specbuilder.model.spec import Spec
from specbuilder.workshop.items import Gone, items_gone
from specbuilder.workshop.redo import Owed, Redo, owed, redos
from specbuilder.workshop.view import Chosen, SpecView, view_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """A case with the build as the floor sees it."""

    case: Case
    view: SpecView
    chosen: tuple[Chosen, ...]
    """In build order."""
    redos: tuple[Redo, ...] = ()
    """Passed steps that the newest change touches."""
    owed: tuple[Owed, ...] = ()
    """What older changes left to be closed."""
    gone: tuple[Gone, ...] = ()
    """Parts of earlier signed revisions that are not built any more: their numbers are on boxes."""

    @property
    def catalogue(self) -> Catalogue:
        """What can be built."""
        return self.view.catalogue

    @property
    def spec(self) -> Spec:
        """What was said."""
        return self.view.spec

    @property
    def known(self) -> tuple[tuple[Chosen, Option], ...]:
        """The choices that are in the catalogue, in build order."""
        return tuple((one, one.option) for one in self.chosen if one.option is not None)

    @property
    def steps(self) -> tuple[WorkStep, ...]:
        """The steps of the build in the order of the plan, then those it does not name."""
        work = self.catalogue.work
        planned = [work[step.step] for step in self.case.plan.steps if step.step in work]
        return (*planned, *(step for step in work.values() if step not in planned))

    def planned(self, step: str) -> PlannedStep | None:
        """A step in the plan."""
        return next((one for one in self.case.plan.steps if one.step == step), None)

    def parts_of(self, step: str) -> tuple[Chosen, ...]:
        """The choices of a step; of no step (empty): strangers and what has none."""
        work = self.catalogue.work
        at = (self.view.build_step(one.option) if one.option else "" for one in self.chosen)
        return tuple(
            one for one, found in zip(self.chosen, at, strict=True) if (found if found in work else "") == step
        )

    def holes(self) -> Iterator[tuple[Chosen, Option, Hole]]:
        """Every cut, in build order of its part."""
        for one, option in self.known:
            for hole in one.holes:
                yield one, option, hole

    def holes_of(self, step: str) -> tuple[tuple[Chosen, Option, Hole], ...]:
        """The cuts that are frozen at a step; of none (empty): those whose step is not in the catalogue."""
        work = self.catalogue.work
        return tuple(
            found for found in self.holes() if (found[2].freeze_step if found[2].freeze_step in work else "") == step
        )

    def redone_at(self, step: str) -> tuple[Redo, ...]:
        """All that is done again and looked at at the hold point of a step."""
        return tuple(one for one in self.redos if one.hold.id == step)

    def as_brought(self, one: Chosen, option: Option) -> Option:
        """Of a part the customer brings what its sheet says, and nothing of the one the house would have sold."""
        return with_sheet(option, one.choice.own_part) if is_theirs(option, one.choice) else option

    def as_built(self, *about: str) -> str:
        """What was read of a hole, circuit or part so far; empty: a blank to fill in."""
        records = self.spec.recorded(RecordKind.READING)
        return "; ".join(one_line(record.words) for record in records if record.about in about and record.words)


def material(case: Case) -> Material:
    """Everything the parts of the pack look up."""
    stand = case.stand
    view = view_of(stand.catalogue, stand.spec, stand.report, case.signed)
    return Material(
        case=case,
        view=view,
        chosen=view.in_build_order(),
        redos=redos(case, view),
        owed=owed(case),
        gone=items_gone(case.signed, stand.spec),
    )


def item_number(one: Chosen) -> str:
    """The number of a part, the same on its box in every revision."""
    return f"{one.item}"
