"""Bottled gas: what appliances take, how long a bottle lasts, and the openings of its store."""

from math import pi, sqrt

from .validity import above, at_least, within


def gas_g_per_h(power_kw: float, energy_kwh_per_kg: float) -> float:
    """Gas an appliance takes at this power. Result in g/h.

    Equation: ``1000 * power_kw / energy_kwh_per_kg``.
    Valid for: plate power and energy on the same basis. Plates under EN 437 are gross: butane 13.74, propane 13.99
        kWh/kg; net 12.69 and 12.88. Read as net, a gross plate gives about 8 % too much.
    Source: EN 437 (gross); appliance data table (net).
    Confidence: verified second hand for net, known for gross; the appliance's plate goes first.

    Raises:
        OutsideValidity: negative power, or gas without energy.

    >>> round(gas_g_per_h(2.8, 13.74))
    204
    """
    return 1000 * at_least("power kW", power_kw) / above("energy kWh/kg", energy_kwh_per_kg)


def gas_for_heat_kg(heat_kwh: float, efficiency_share: float, energy_kwh_per_kg: float) -> float:
    """Gas that gives this much heat. Result in kg.

    Equation: ``heat_kwh / (efficiency_share * energy_kwh_per_kg)``; for a hob count plate power and efficiency 1.
    Valid for: efficiency above 0 up to 1, on the same basis as the energy: net with net, gross with gross.
    Source: energy balance; EN 437 for the gases.
    Confidence: known; the appliance's data sheet goes first.

    Raises:
        OutsideValidity: negative heat, an efficiency that is no share, or gas without energy.

    >>> round(gas_for_heat_kg(8.1, 0.90, 12.88), 3)
    0.699
    """
    efficiency = above("efficiency", within("efficiency", efficiency_share, 0, 1))
    return at_least("heat kWh", heat_kwh) / (efficiency * above("energy kWh/kg", energy_kwh_per_kg))


def gas_days(content_kg: float, usable_share: float, use_per_day_kg: float) -> float:
    """How many days or nights the bottles last. Result in days.

    Equation: ``content_kg * usable_share / use_per_day_kg``.
    Valid for: gas that still evaporates: butane stops near -0.5 C, propane near -42 C; small cold bottles give less.
    Source: content over use; 95 % usable is a house figure.
    Confidence: estimate.

    Raises:
        OutsideValidity: negative content, a share that is none, or nothing that takes gas.

    >>> round(gas_days(2.75, 0.95, 1.125 / 13.74), 1)
    31.9
    """
    usable = at_least("content kg", content_kg) * within("usable share", usable_share, 0, 1)
    return usable / above("use a day kg", use_per_day_kg)


def store_vent_mm2(floor_mm2: float, share_of_floor: float, least_mm2: float) -> float:
    """Free area of an opening of a gas store, by the area of its floor. Result in mm2.

    Equation: ``max(share_of_floor * floor_mm2, least_mm2)``; one low opening 2 % and 10,000 mm2, of two each the half.
    Valid for: an opening in or just above the floor that the bottle's foot does not cover; free area, through any mesh.
    Source: EN 1949 as quoted on three inspection pages.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: a store without a floor, a share that is none, or no least area.

    >>> store_vent_mm2(585000, 0.02, 10000), store_vent_mm2(140000, 0.02, 10000)
    (11700.0, 10000)
    """
    share = above("share of the floor", within("share of the floor", share_of_floor, 0, 1))
    return max(share * above("store floor mm2", floor_mm2), above("least opening mm2", least_mm2))


def store_vent_single_mm2(width_mm: float, depth_mm: float) -> float:
    """Free area of the one low opening of a gas store. Result in mm2.

    Equation: ``max(0.02 * width_mm * depth_mm, 10000)``: 2 % of the store's floor.
    Valid for: an opening in or just above the floor that the bottle's foot does not cover; free area, through any mesh.
    Source: EN 1949 as quoted on three inspection pages.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: a store without a floor.

    >>> store_vent_single_mm2(900, 650), store_vent_single_mm2(400, 350)
    (11700.0, 10000)
    """
    return max(0.02 * above("store width mm", width_mm) * above("store depth mm", depth_mm), 10000)


def store_vent_pair_mm2(width_mm: float, depth_mm: float) -> float:
    """Free area of each of two openings of a gas store, one low and one high. Result in mm2.

    Equation: ``max(0.01 * width_mm * depth_mm, 5000)``: 1 % of the store's floor each.
    Valid for: as the single opening; both must be there.
    Source: EN 1949 as quoted on three inspection pages.
    Confidence: verified second hand; check against the bought standard.

    Raises:
        OutsideValidity: a store without a floor.

    >>> store_vent_pair_mm2(900, 650), store_vent_pair_mm2(400, 350)
    (5850.0, 5000)
    """
    return max(0.01 * above("store width mm", width_mm) * above("store depth mm", depth_mm), 5000)


def small_store_duct_mm(bottles: int, content_kg: float) -> float:
    """Inside diameter of the falling duct that is enough for small bottles. Result in mm.

    Equation: ``20``.
    Valid for: one or two bottles that hold no more than 7 kg together; all else about the store stays as it is.
    Source: EN 1949 as quoted on an inspector's page and one more.
    Confidence: verified second hand; further conditions of the standard were not read, check the bought text.

    Raises:
        OutsideValidity: more bottles, or more gas: then an opening of the full size is needed.

    >>> small_store_duct_mm(2, 5.5)
    20
    """
    within("bottles", bottles, 1, 2)
    within("gas content kg", above("gas content kg", content_kg), 0, 7)
    return 20


def round_hole_mm(area_mm2: float) -> float:
    """Diameter of a round hole with this free area. Result in mm.

    Equation: ``sqrt(4 * area_mm2 / pi)``.
    Valid for: an open hole; mesh or louvres need a larger one, for half free area 1.41 times as wide.
    Source: area of a circle.
    Confidence: known.

    Raises:
        OutsideValidity: no area.

    >>> round(round_hole_mm(10000))
    113
    """
    return sqrt(4 * above("area mm2", area_mm2) / pi)
