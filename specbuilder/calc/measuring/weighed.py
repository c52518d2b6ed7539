"""The base van as the scales showed it."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from specbuilder.calc.formulas.axles import axle_loads_kg
from specbuilder.calc.formulas.masses import DRIVER_KG
from specbuilder.calc.formulas.validity import within
from specbuilder.model.facts import Weighed
from specbuilder.model.vans import Van

from .positions import behind_front_axle_mm

_LEAST, _MOST = 0.6, 1.6
"""What is below or above this part of the catalogue's own figure is a slip of the pen or another van."""


@lru_cache(maxsize=64)
def as_weighed(van: Van, weighed: Weighed, front_seat_x_mm: float) -> Van:
    """The van with the running order of the very vehicle: its weighed axles and the driver in his seat.

    The tank is taken as full as in running order; the van was weighed as it came, with whatever stands in it.

    Raises:
        OutsideValidity: when an axle is far from anything this van can weigh.
    """
    front = within("weighed front axle kg", weighed.front_kg, _LEAST * van.mro_front_kg, _MOST * van.mro_front_kg)
    rear = within("weighed rear axle kg", weighed.rear_kg, _LEAST * van.mro_rear_kg, _MOST * van.mro_rear_kg)
    driver = axle_loads_kg(DRIVER_KG, behind_front_axle_mm(van, front_seat_x_mm), van.wheelbase_mm)
    front, rear = front + driver[0], rear + driver[1]
    return replace(van, mro_front_kg=front, mro_rear_kg=rear, mro_kg=front + rear)
