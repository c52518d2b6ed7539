"""What burners take from a tank, how long it lasts, and what thin air and thin cable do to them."""

from .validity import above, at_least, within


def burner_l_per_h(output_kw: float, efficiency_share: float, energy_kwh_per_l: float) -> float:
    """Fuel a burner takes while it gives this much heat. Result in L/h.

    Equation: ``output_kw / (efficiency_share * energy_kwh_per_l)``.
    Valid for: efficiency above 0 up to 1 of the net energy (diesel 9.97 kWh/L); no output takes no fuel.
    Source: energy balance; a heater's published rates at three outputs agree with 0.85 to a tenth.
    Confidence: verified second hand; the heater's own data sheet goes first.

    Raises:
        OutsideValidity: negative output, an efficiency that is no share, or fuel without energy.

    >>> round(burner_l_per_h(2.0, 0.85, 9.97), 3)
    0.236
    """
    efficiency = above("efficiency", within("efficiency", efficiency_share, 0, 1))
    return at_least("output kW", output_kw) / (efficiency * above("energy kWh/L", energy_kwh_per_l))


def usable_l(tank_l: float, fill_share: float, reserve_l: float) -> float:
    """Fuel a heater can take before its pick-up runs dry; nought when the tank is below its reserve. Result in L.

    Equation: ``max(0, tank_l * fill_share - reserve_l)``; the fill is that at parking.
    Valid for: a tank above 0 L, a fill from 0 to 1, a reserve from 0 to the whole tank.
    Source: heater manuals: the pick-up stops above the tank bottom so that the engine still starts.
    Confidence: known; the reserve of a given van is measured when the pick-up is fitted.

    Raises:
        OutsideValidity: no tank, a fill that is no share, or a reserve larger than the tank.

    >>> usable_l(70, 0.5, 20), usable_l(70, 0.25, 20)
    (15.0, 0.0)
    """
    fill = within("fill", fill_share, 0, 1)
    reserve = within("reserve L", reserve_l, 0, above("tank L", tank_l))
    return max(0.0, tank_l * fill - reserve)


def nights_on_fuel(litres_l: float, burner_per_h_l: float, night_h: float, cooking_per_day_l: float) -> float:
    """How many nights a burner runs on this much fuel. Result in nights.

    Equation: ``litres_l / (burner_per_h_l * night_h + cooking_per_day_l)``.
    Valid for: a mean rate over the night, up to 24 h; something must be burnt.
    Source: fuel over what a night and a day take.
    Confidence: estimate; cold, wind and the roof change the mean rate more than anything else here.

    Raises:
        OutsideValidity: a negative amount, a night longer than a day, or nothing that takes fuel.

    >>> round(nights_on_fuel(15.0, 0.1062, 9, 0), 1)
    15.7
    """
    hours = within("night h", night_h, 0, 24)
    burnt_l = at_least("burner L/h", burner_per_h_l) * hours + at_least("cooking L a day", cooking_per_day_l)
    return at_least("fuel L", litres_l) / above("fuel a night L", burnt_l)


def fuel_a_night_l(burner_per_h_l: float, night_h: float) -> float:
    """What a burner takes in a night. Result in L.

    Equation: ``burner_per_h_l * night_h``.
    Valid for: a mean rate over the night, up to 24 h.
    Source: rate times time.
    Confidence: estimate; cold, wind and the roof change the mean rate more than anything else here.

    Raises:
        OutsideValidity: a negative rate, or a night longer than a day.

    >>> round(fuel_a_night_l(0.1062, 9), 2)
    0.96
    """
    return at_least("burner L/h", burner_per_h_l) * within("night h", night_h, 0, 24)


def reserve_l(tank_l: float, gap_mm: float, depth_mm: float) -> float:
    """Fuel that stays below the end of the pick-up. Result in L.

    Equation: ``tank_l * gap_mm / depth_mm``; the gap is from the pick-up's end to the tank's bottom.
    Valid for: a tank with upright sides and a level van; a gap from 0 to the depth. Other shapes: measure it.
    Source: geometry of a prism.
    Confidence: known; measured in litres when the pick-up is fitted.

    Raises:
        OutsideValidity: no tank, no depth, or a gap deeper than the tank.

    >>> reserve_l(80, 60, 240)
    20.0
    """
    depth = above("tank depth mm", depth_mm)
    return above("tank L", tank_l) * within("gap mm", gap_mm, 0, depth) / depth


def air_density_share(altitude_m: float) -> float:
    """How dense the air is, with the sea as 1. Result in parts of one.

    Equation: ``(1 - 2.25577e-5 * altitude_m) ** 4.2559``.
    Valid for: from 500 m below the sea to 11,000 m, standard air.
    Source: international standard atmosphere.
    Confidence: known.

    Raises:
        OutsideValidity: above or below that.

    >>> round(air_density_share(1500), 3)
    0.864
    """
    return float((1 - 2.25577e-5 * within("altitude m", altitude_m, -500, 11000)) ** 4.2559)


def over_rich_share(altitude_m: float) -> float:
    """How much too rich a burner with fixed fuel runs up there. Result in parts of one, 0 at the sea.

    Equation: ``1 / air_density_share(altitude_m) - 1``.
    Valid for: as the density of the air; a burner that corrects its fuel does not follow it.
    Source: international standard atmosphere; fixed fuel against thinner air.
    Confidence: known; from which height a given burner soots is its maker's statement, about 1,500 m by trade reports.

    Raises:
        OutsideValidity: as the density of the air.

    >>> round(over_rich_share(2000), 3)
    0.217
    """
    return 1 / air_density_share(altitude_m) - 1


def start_a(start_w: float, supply_v: float) -> float:
    """Current while the glow element is on. Result in A.

    Equation: ``start_w / supply_v``.
    Valid for: watts as the maker states them at that voltage; from 1 to 3 minutes.
    Source: air-heater data sheet: 245 W at 12 V.
    Confidence: verified second hand; the heater's own data sheet goes first.

    Raises:
        OutsideValidity: negative watts or no voltage.

    >>> round(start_a(245, 12), 1)
    20.4
    """
    return at_least("start W", start_w) / above("supply V", supply_v)


def heater_start_v(battery_v: float, run_one_way_m: float, conductor_mm2: float, load_a: float) -> float:
    """Voltage left at the heater while it starts. Result in V.

    Equation: ``battery_v - 2 * run_one_way_m * 0.0175 / conductor_mm2 * load_a``; 0.0175 ohm mm2/m for warm copper.
    Valid for: there and back in the same copper, without fuses and joints; a cable that is not the whole load.
    Source: Ohm's law; a heater's controller gives up below about 10.5 V, the house keeps 11.0 V.
    Confidence: known; cut-off and start current are in the heater's own manual.

    Raises:
        OutsideValidity: no voltage, no copper, a negative run or current, or more lost in the cable than there is.

    >>> round(heater_start_v(12.2, 6, 4, 20.4), 1)
    11.1
    """
    ohm = 2 * at_least("run m", run_one_way_m) * 0.0175 / above("conductor mm2", conductor_mm2)
    lost_v = ohm * at_least("load A", load_a)
    return above("voltage at the heater V", above("battery V", battery_v) - lost_v)
