"""Where a choice sits, on the datum of the job: the catalogue gives places for the usual side and van only."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import GroupId
from specbuilder.model.kinds import Anchor, Place
from specbuilder.model.parts import Circuit, Hole, Position
from specbuilder.model.sides import leader_of, y_on_side_mm
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.vans import Van

from .bodies import Body, body_of

_FLOOR = "floor"
"""The surface to which the no-drill boxes of a van belong."""
_SKINS = ("roof", "side skin")
"""How the surfaces begin whose places hang on height and width of the van."""


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
        """Centre of mass; None when it has none, when what it sits at is not chosen yet, or it must be measured."""
        at = option.sits_at or self.catalogue.groups[option.group].sits_at
        if at is not None:
            found = self._leader(at)
            return self.of_choice(*found) if found and found[1].group != option.group else None
        if option.position is None or not self.is_drawn(option):
            return None
        return self._beside_doors(option.position, option.door_position, choice, option)

    def of_cut(self, hole: Hole, choice: Choice, option: Option) -> Spot | None:
        """Centre of a hole of this choice; None when it is measured on the van."""
        if self.skin_differs(hole, option):
            return None
        return self.of_cut_drawn(hole, choice, option)

    def of_cut_drawn(self, hole: Hole, choice: Choice, option: Option) -> Spot | None:
        """The same near enough for a walk round the van, but not to cut by: as drawn for a van of another body."""
        if hole.measure or not self.is_drawn(option):
            return None
        return self._beside_doors(hole.position, hole.door_position, choice, option)

    def skin_differs(self, hole: Hole, option: Option) -> bool:
        """A hole in roof or side skin that is drawn for a van of another height or width."""
        return hole.surface.startswith(_SKINS) and not self.body(option).alike

    def of_outlet(self, choice: Choice, option: Option) -> Spot | None:
        """End of its exhaust; None when it has none, or its side is not decided."""
        match choice.place:
            case Place.REAR:
                return _on_datum(option.exhaust_outlet_rear, self.van) if option.exhaust_outlet_rear else None
            case Place.LEFT | Place.RIGHT:
                outlet = option.exhaust_outlet
                if outlet is None or not self.is_drawn(option):
                    return None
                return _on_datum(replace(outlet, y_mm=_on_side(outlet.y_mm, choice.place)), self.van)
            case None:
                return None

    def holes_of(self, option: Option) -> tuple[Hole, ...]:
        """The holes that are cut beside what else is chosen."""
        given = self.given()
        return tuple(hole for hole in option.holes if given.isdisjoint(hole.unless_given))

    def circuits_of(self, option: Option) -> tuple[Circuit, ...]:
        """The cables that are run beside what else is chosen."""
        given = self.given()
        run = (one for one in option.circuits if one.is_run(given))
        return tuple(replace(one, from_point=one.starts_at(given)) for one in run)

    def is_drawn(self, option: Option) -> bool:
        """False when it is measured on the van: always, or beside choices other than those its place is drawn for."""
        if option.measure:
            return False
        return not option.drawn_for or any(choice.option in option.drawn_for for choice in self.spec.choices)

    def body(self, option: Option) -> Body:
        """The van beside the one for which the places of an option are drawn."""
        return body_of(self.catalogue, self.van, option)

    def boxes_hit(self, hole: Hole, spot: Spot) -> tuple[str, ...]:
        """Names of the no-drill boxes of the van which this floor hole touches."""
        if self.van is None or spot.x_mm is None or hole.surface != _FLOOR:
            return ()
        half_x_mm = (hole.diameter_mm or hole.width_mm or 0) / 2
        half_y_mm = (hole.diameter_mm or hole.height_mm or 0) / 2
        return tuple(
            box.what
            for box in self.van.no_drill_boxes
            if box.from_x_mm - half_x_mm < spot.x_mm < box.to_x_mm + half_x_mm
            and box.from_y_mm - half_y_mm < spot.y_mm < box.to_y_mm + half_y_mm
        )

    def _beside_doors(self, usual: Position, in_door: Position | None, choice: Choice, option: Option) -> Spot:
        """Its spot on that side; x is open where it depends on the doors of a van that is not decided."""
        doors = self.van.sliding_doors if self.van else ()
        spot = self._spot(in_door if in_door is not None and choice.place in doors else usual, choice, option)
        return replace(spot, x_mm=None) if in_door is not None and self.van is None else spot

    def _spot(self, position: Position, choice: Choice, option: Option) -> Spot:
        x_mm = position.x_mm
        if position.anchor is Anchor.DATUM and option.space.front_x_mm is not None:
            x_mm += self._set_back_mm()
        return _on_datum(replace(position, x_mm=x_mm, y_mm=self._y_mm(position.y_mm, choice, option)), self.van)

    def _set_back_mm(self) -> float:
        """How far the benches stand behind their first position."""
        options = (self.catalogue.options.get(choice.option) for choice in self.spec.choices)
        return sum(option.space.bench_shift_mm for option in options if option is not None)

    def given(self) -> frozenset[str]:
        """Tags, without their places, that choices and van give."""
        options = (self.catalogue.options.get(choice.option) for choice in self.spec.choices)
        tags = [tag for option in options if option is not None for tag in option.gives]
        return frozenset(tag.partition("@")[0] for tag in (*tags, *(self.van.gives if self.van else ())))

    def _y_mm(self, y_mm: float, choice: Choice, option: Option) -> float:
        """y for the place it takes: its own, else that of the group it turns with."""
        group = leader_of(self.catalogue, option)
        found = self._leader(group) if group else None
        return y_on_side_mm(y_mm, option, choice.place, found[0].place if found else None)

    def _leader(self, group: GroupId) -> tuple[Choice, Option] | None:
        """The first choice of a group."""
        for choice in self.spec.choices:
            option = self.catalogue.options.get(choice.option)
            if option is not None and option.group == group:
                return choice, option
        return None


def _on_side(y_mm: float, side: Literal[Place.LEFT, Place.RIGHT]) -> float:
    return abs(y_mm) if side is Place.LEFT else -abs(y_mm)


def _on_datum(position: Position, van: Van | None) -> Spot:
    x_mm: float | None
    match position.anchor:
        case Anchor.DATUM:
            x_mm = position.x_mm
        case Anchor.REAR:
            x_mm = van.rear_sill_x_mm + position.x_mm if van else None
        case Anchor.AXLE_REAR:
            x_mm = van.wheelbase_mm - van.datum_from_front_axle_mm + position.x_mm if van else None
    return Spot(x_mm=x_mm, y_mm=position.y_mm, z_mm=position.z_mm)
