"""Where a choice sits, on the datum of the job: the catalogue gives places for the usual side and van only."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option, Position, Van
from specbuilder.model.ids import GroupId
from specbuilder.model.kinds import Anchor, Place
from specbuilder.model.spec import Choice, Spec


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """X back from the rear face of the left door pillar, Y from the centre line with + left, Z up from the floor."""

    x_mm: float | None
    """None while the base van is open and x is measured from its rear."""
    y_mm: float
    z_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Positions:
    """Positions of the choices of one spec."""

    catalogue: Catalogue
    spec: Spec
    van: Van | None

    def of_choice(self, choice: Choice, option: Option) -> Spot | None:
        """Centre of mass; None when it has none, or when what it sits at is not chosen yet."""
        group = self.catalogue.groups[option.group]
        if group.sits_at is None:
            return self._spot(option.position, choice, option)
        found = self._leader(group.sits_at)
        return self.of_choice(*found) if found and found[1].group != option.group else None

    def of_hole(self, position: Position, choice: Choice, option: Option) -> Spot:
        """Centre of a hole of this choice."""
        return _on_datum(position, self._y_mm(position.y_mm, choice, option), self.van)

    def _spot(self, position: Position | None, choice: Choice, option: Option) -> Spot | None:
        return None if position is None else self.of_hole(position, choice, option)

    def _y_mm(self, y_mm: float, choice: Choice, option: Option) -> float:
        """y for the place it takes: its own, else that of the group it turns with."""
        match choice.place if option.places else None:
            case Place.LEFT:
                return abs(y_mm)
            case Place.RIGHT:
                return -abs(y_mm)
            case Place.REAR:
                return 0
            case None:
                leader = self.catalogue.groups[option.group].turns_with
                found = self._leader(leader) if leader else None
                return -y_mm if found and found[0].place is Place.LEFT else y_mm

    def _leader(self, group: GroupId) -> tuple[Choice, Option] | None:
        """The first choice of a group."""
        for choice in self.spec.choices:
            option = self.catalogue.options.get(choice.option)
            if option is not None and option.group == group:
                return choice, option
        return None


def _on_datum(position: Position, y_mm: float, van: Van | None) -> Spot:
    x_mm: float | None
    match position.anchor:
        case Anchor.DATUM:
            x_mm = position.x_mm
        case Anchor.REAR:
            x_mm = van.rear_sill_x_mm + position.x_mm if van else None
        case Anchor.AXLE_REAR:
            x_mm = van.wheelbase_mm - van.datum_from_front_axle_mm + position.x_mm if van else None
    return Spot(x_mm=x_mm, y_mm=y_mm, z_mm=position.z_mm)
