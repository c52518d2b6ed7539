"""Who claims which zone of the van, and what may still free it."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from specbuilder.model.catalogue import Option
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import GroupId, Tag, Zone
from specbuilder.model.kinds import Pick, Place
from specbuilder.model.spec import Choice

from .runs import Run, choice_cause
from .standing import zones_at


@dataclass(slots=True)
class Claims:
    """Who claims which zone, and what may still free it."""

    run: Run
    claimed: Counter[Zone]
    by: dict[Zone, list[Choice]]
    freed: Counter[Zone]
    of_group: dict[GroupId, Counter[Zone]]

    @classmethod
    def of(cls, run_: Run, choices: tuple[Choice, ...]) -> Claims:
        """Count what these choices claim and what could still free a zone."""
        catalogue = run_.rulebook.catalogue
        me = cls(run_, Counter(), {}, Counter(), {})
        for choice in choices:
            option = catalogue.options.get(choice.option)
            if option is None:
                continue
            if option.van is not None:
                me.claimed.update(option.van.zones_taken)
            for zone in zones_at(option.zones, choice.place.value if choice.place else None):
                me.claimed[zone] += choice.count
                me.by.setdefault(zone, []).append(choice)
                me.of_group.setdefault(option.group, Counter())[zone] += choice.count
        for option in catalogue.options.values():
            # One that only stands beside the choice of its group may still take that choice's place.
            if option.frees_zones and (not run_.is_out(option.id) or run_.is_beside(option.id)):
                me.freed.update(option.frees_zones)
        return me

    def against(self, option: Option, place: Place | None) -> Cause | None:
        """Why the option cannot stand there; None when its zones are free."""
        one = self.run.rulebook.catalogue.groups[option.group].pick is Pick.ONE
        own: Counter[Zone] = self.of_group.get(option.group, Counter()) if one else Counter()
        mine = Counter(zones_at(option.zones, place.value if place else None))
        for zone, count in mine.items():
            if self.claimed[zone] - own[zone] - self.freed[zone] + count > 1:
                others = [c for c in self.by.get(zone, []) if not one or self._group(c) != option.group]
                catalogue = self.run.rulebook.catalogue
                return Cause(
                    kind=CauseKind.ZONE,
                    option=option.id,
                    tag=Tag(zone),
                    because=tuple(choice_cause(catalogue, c) for c in others) or self._van(),
                )
        return None

    def _group(self, choice: Choice) -> GroupId:
        return self.run.rulebook.catalogue.options[choice.option].group

    def _van(self) -> tuple[Cause, ...]:
        catalogue = self.run.rulebook.catalogue
        return tuple(
            choice_cause(catalogue, c) for c in self.run.choices if catalogue.options[c.option].van is not None
        )
