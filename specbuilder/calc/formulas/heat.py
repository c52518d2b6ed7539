"""How much heat a van loses, and how strong a heater must be. For planning: no heating grade is claimed from it."""

from .validity import OutsideValidity, above, at_least, within

AIR_WH_PER_M3_K = 0.335
"""Heat that warms a cubic metre of air by one degree, Wh: density times specific heat over 3600."""


def layer_m2k_per_w(thickness_m: float, conductivity_w_per_mk: float) -> float:
    """How well one layer of a wall holds heat back. Result in m2K/W.

    Equation: ``thickness_m / conductivity_w_per_mk``.
    Valid for: flat layers of one material, thickness from 0, conductivity above 0; a steel skin counts as nothing.
    Source: ISO 6946, resistance of a homogeneous layer.
    Confidence: known; the conductivity is the maker's, and falls short where foam is squeezed or wet.

    Raises:
        OutsideValidity: negative thickness, or a material that conducts nothing.

    >>> round(layer_m2k_per_w(0.025, 0.036), 3)
    0.694
    """
    return at_least("thickness m", thickness_m) / above("conductivity W/mK", conductivity_w_per_mk)


def u_value_w_per_m2k(*resistances_m2k_per_w: float) -> float:
    """What a surface lets through for each square metre and degree. Result in W/m2K.

    Equation: ``1 / sum(resistances_m2k_per_w)``; the film of air inside, every layer, the film outside.
    Valid for: layers one behind the other; inside film 0.13 wall, 0.10 roof, 0.17 floor, outside film 0.04 m2K/W.
        Something hung before a known surface adds its resistance to ``1 / u`` of that surface.
    Source: ISO 6946; films as quoted on two pages for walls.
    Confidence: verified second hand for the films of a wall, known for roof and floor.

    Raises:
        OutsideValidity: a negative resistance, or none at all.

    >>> round(u_value_w_per_m2k(0.13, 0.025 / 0.036, 0.004 / 0.13, 0.04), 2)
    1.12
    """
    for resistance in resistances_m2k_per_w:
        at_least("resistance m2K/W", resistance)
    return 1 / above("sum of resistances m2K/W", sum(resistances_m2k_per_w))


def rib_factor(rib_share: float, flux_ratio: float) -> float:
    """How much more an insulated wall loses because of its bare ribs. Result in times the loss of the panel.

    Equation: ``1 - rib_share + rib_share * flux_ratio``; the share of the wall that is rib, and heat through a rib over
        heat through the same area of panel.
    Valid for: shares from 0 to 1; ribs that let through at least what the panel does.
    Source: infrared photograph of an insulated van by its builder: ratio 2.36; 15 % ribs taken as usual.
    Confidence: estimate; the house counts 1.25.

    Raises:
        OutsideValidity: a share outside 0 to 1, or ribs warmer than the panel.

    >>> round(rib_factor(0.15, 2.36), 2)
    1.2
    """
    share = within("rib share", rib_share, 0, 1)
    return 1 - share + share * at_least("heat rib over panel", flux_ratio, 1)


def surface_loss_w_per_k(u_w_per_m2k: float, area_m2: float, ribs: float = 1.0) -> float:
    """Heat through one surface for each degree between inside and outside. Result in W/K.

    Equation: ``ribs * u_w_per_m2k * area_m2``; ``ribs`` is the rib factor, 1 where there are none.
    Valid for: areas as seen from inside; glass, cloth and floor have no ribs.
    Source: heat balance of the envelope, ISO 13789.
    Confidence: known; the house factor 1.25 for walls and roof is an estimate.

    Raises:
        OutsideValidity: a negative area, nothing that lets heat through, or a rib factor below 1.

    >>> round(surface_loss_w_per_k(1.12, 11.6, 1.25), 1)
    16.2
    """
    return at_least("rib factor", ribs, 1) * above("U W/m2K", u_w_per_m2k) * at_least("area m2", area_m2)


def air_change_loss_w_per_k(changes_per_h: float, volume_m3: float) -> float:
    """Heat that leaves with the air for each degree between inside and outside. Result in W/K.

    Equation: ``0.335 * changes_per_h * volume_m3``; 0.335 Wh warm a cubic metre by one degree.
    Valid for: from 0 to 20 changes an hour; parked with windows shut 0 to 3 were measured.
    Source: heat balance; three studies of parked cars give 0 to 1.4, below 1, and 1 to 3 changes an hour.
    Confidence: known; the house counts 1 with the roof down and 3 with it up, which are estimates.

    Raises:
        OutsideValidity: fewer than no changes, more than 20, or no room.

    >>> round(air_change_loss_w_per_k(1, 9.3555), 2)
    3.13
    """
    changes = within("air changes an hour", changes_per_h, 0, 20)
    return AIR_WH_PER_M3_K * changes * above("volume m3", volume_m3)


def heat_load_w(loss_w_per_k: float, inside_c: float, outside_c: float, gains_w: float = 0.0) -> float:
    """Heat needed to hold the inside warm; negative when people and things give off more than is lost. Result in W.

    Equation: ``loss_w_per_k * (inside_c - outside_c) - gains_w``.
    Valid for: steady cold, the inside no colder than the outside, both between -60 and 60 C; no gains are counted when
        a heater is sized.
    Source: heat balance of walls, glass, roof and air.
    Confidence: estimate, a quarter up or down.

    Raises:
        OutsideValidity: a van that loses nothing, negative gains, or an inside colder than the outside.

    >>> round(heat_load_w(59.4, 20, -5)), round(heat_load_w(49.8, 16, -5, 100))
    (1485, 946)
    """
    if within("inside C", inside_c, -60, 60) < within("outside C", outside_c, -60, 60):
        raise OutsideValidity("inside C", inside_c, f"{outside_c:g} or more, as it is outside")
    return above("heat loss W/K", loss_w_per_k) * (inside_c - outside_c) - at_least("gains W", gains_w)


def heater_needed_kw(loss_w_per_k: float, inside_c: float, outside_c: float, margin_share: float) -> float:
    """The least heater that holds the inside warm at that cold, with something to spare. Result in kW.

    Equation: ``margin_share * loss_w_per_k * (inside_c - outside_c) / 1000``.
    Valid for: the roof as the customer will sleep in it; a margin of 1 or more. A burner far too large idles and soots.
    Source: heat balance of walls, glass, roof and air; 1.2 times the loss is a house setting.
    Confidence: estimate, a quarter up or down; no heating grade of EN 1646-1 is claimed from it.

    Raises:
        OutsideValidity: as the heat load, or a margin below 1.

    >>> round(heater_needed_kw(59.4, 20, -5, 1.2), 2)
    1.78
    """
    return at_least("margin", margin_share, 1) * heat_load_w(loss_w_per_k, inside_c, outside_c) / 1000


def surface_c(u_w_per_m2k: float, inside_film_m2k_per_w: float, inside_c: float, outside_c: float) -> float:
    """How cold a surface gets on its inside; wet where that is below the dew point. Result in C.

    Equation: ``inside_c - u_w_per_m2k * inside_film_m2k_per_w * (inside_c - outside_c)``.
    Valid for: steady temperatures from -60 to 60 C, away from ribs and corners; a film that lets more through than the
        whole surface does.
    Source: ISO 13788, surface temperature from the share of the film.
    Confidence: known.

    Raises:
        OutsideValidity: a surface that would let more through than its own film of air, or no temperature of the earth.

    >>> round(surface_c(5.75, 0.13, 20, -5), 1)
    1.3
    """
    share = within("share of the inside film", u_w_per_m2k * inside_film_m2k_per_w, 0, 1)
    inside, outside = within("inside C", inside_c, -60, 60), within("outside C", outside_c, -60, 60)
    return inside - share * (inside - outside)


def heater_share(heater_kw: float, loss_w: float) -> float:
    """What the heaters give as a part of what the van loses. Result in parts of one; 1 just holds it.

    Equation: ``1000 * heater_kw / loss_w``.
    Valid for: a van that loses something, steady cold; the house asks for 1.2.
    Source: heat balance of walls, glass, roof and air.
    Confidence: estimate, a quarter up or down.

    Raises:
        OutsideValidity: negative output, or nothing that is lost.

    >>> round(heater_share(2, 1485), 2)
    1.35
    """
    return 1000 * at_least("heater kW", heater_kw) / above("heat lost W", loss_w)


def heat_missing_kw(heater_kw: float, loss_w: float) -> float:
    """How much heat is missing to hold the inside warm; nought when the heaters give enough. Result in kW.

    Equation: ``max(0, loss_w / 1000 - heater_kw)``.
    Valid for: steady cold; without the margin the house asks for.
    Source: heat balance of walls, glass, roof and air.
    Confidence: estimate, a quarter up or down.

    Raises:
        OutsideValidity: negative output, or a loss below nought.

    >>> round(heat_missing_kw(2, 3350), 2), heat_missing_kw(2, 1485)
    (1.35, 0.0)
    """
    return max(0.0, at_least("heat lost W", loss_w) / 1000 - at_least("heater kW", heater_kw))


def coldest_held_c(heater_kw: float, loss_w_per_k: float, inside_c: float) -> float:
    """How cold it may be outside until the heaters at full output no longer hold the inside. Result in C.

    Equation: ``inside_c - 1000 * heater_kw / loss_w_per_k``.
    Valid for: steady cold, an inside from -60 to 60 C; no margin, so wind or a wet roof take some degrees of it. What
        comes out colder than any winter only says that the heater is large.
    Source: heat balance of walls, glass, roof and air.
    Confidence: estimate, a quarter up or down; no heating grade of EN 1646-1 is claimed from it.

    Raises:
        OutsideValidity: negative output, a van that loses nothing, or no temperature of the earth.

    >>> round(coldest_held_c(2, 59.4, 20), 1)
    -13.7
    """
    held_k = 1000 * at_least("heater kW", heater_kw) / above("heat loss W/K", loss_w_per_k)
    return within("inside C", inside_c, -60, 60) - held_k
