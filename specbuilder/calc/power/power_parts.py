"""What a part is in the electrics of the van, and whether it says what the sums need to know of it."""

from __future__ import annotations

from specbuilder.model import own_parts, parts
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BriefKey, Tag

SEASON, REGION = BriefKey("season"), BriefKey("region")
MUST_RUN, SITE_AMPS = BriefKey("must_run"), BriefKey("site_amps")
NIGHTS, DRIVE_H = BriefKey("nights_off_grid"), BriefKey("drive_h_per_day")

LITHIUM, LEAD = parts.LITHIUM, parts.LEAD
OUTSIDE = Tag("battery-outside")
"""Given by a battery place outside the warm part of the van."""
PLUG = Tag("hook-up")
"""Given by a campsite plug."""
CHARGER_ON_INVERTER = Tag("charger-on-inverter")
"""Given by a charger that hangs on the inverter: it fills the battery from itself."""
CHARGER = "charger"
"""The part of a thing on mains that fills the battery."""
_INVERTER, _PANEL = Tag("inverter"), Tag("solar")
_CONTROLLER, _ENGINE, _PLUG_CHARGER = Tag("solar-controller"), Tag("engine-charging"), Tag("mains-charger")


def _is_share(value: float | None) -> bool:
    return value is not None and 0 < value <= 1


def _is_above_nought(value: float | None) -> bool:
    return value is not None and value > 0


def is_battery(option: Option) -> bool:
    """A leisure battery."""
    return own_parts.is_battery(option)


def is_inverter(option: Option) -> bool:
    """It makes mains from the battery."""
    return _INVERTER in option.gives or option.power.inverter_w is not None


def is_panel(option: Option) -> bool:
    """It makes current from the sun."""
    power = option.power
    return _PANEL in option.gives or power.solar_w is not None or power.panel_voc_v is not None


def is_controller(option: Option) -> bool:
    """Panels hang on it."""
    return _CONTROLLER in option.gives or option.power.solar_controller_max_v is not None


def is_engine_charger(option: Option) -> bool:
    """It fills the battery while driving."""
    power = option.power
    return _ENGINE in option.gives or power.engine_charge_a is not None or power.engine_input_a is not None


def is_plug_charger(option: Option) -> bool:
    """It fills the battery from mains."""
    return _PLUG_CHARGER in option.gives or option.power.ac_role == CHARGER or option.power.mains_charge_a is not None


def is_load(option: Option) -> bool:
    """It uses the battery, straight or through the inverter. What charges it does not."""
    power = option.power
    return power.bus in ("dc", "shared") and power.watts_running is not None and power.ac_role != CHARGER


def lacks_size(option: Option) -> bool:
    """A battery without amp-hours, or of a kind nobody knows."""
    power = option.power
    known = power.chemistry in LITHIUM | LEAD
    return is_battery(option) and not (known and _is_above_nought(power.battery_ah))


def lacks_energy(option: Option) -> bool:
    """A battery of which nobody can tell what it gives."""
    power = option.power
    told = _is_above_nought(power.battery_v) and _is_share(power.depth_of_discharge)
    return is_battery(option) and (lacks_size(option) or not told)


def lacks_protection(option: Option) -> bool:
    """A battery without the amps it may give, or without the number of its packs."""
    power = option.power
    packs = power.packs_parallel is not None and power.packs_parallel >= 1
    return is_battery(option) and not (packs and _is_above_nought(power.bms_continuous_a))


def lacks_output(option: Option) -> bool:
    """An inverter without watts or efficiency."""
    power = option.power
    return is_inverter(option) and not (_is_above_nought(power.inverter_w) and _is_share(power.inverter_efficiency))


def lacks_idle(option: Option) -> bool:
    """An inverter of which nobody knows what it takes for itself."""
    idle_w = option.power.inverter_idle_w
    return is_inverter(option) and (lacks_output(option) or idle_w is None or idle_w < 0)


def lacks_use(option: Option) -> bool:
    """A thing that uses the battery, without the hours it runs in summer and winter."""
    power = option.power
    hours = power.hours_summer is not None and power.hours_winter is not None
    return is_load(option) and not hours


def lacks_charge(option: Option) -> bool:
    """A charger without the amps it gives."""
    power = option.power
    engine = is_engine_charger(option) and power.engine_charge_a is None
    return engine or (is_plug_charger(option) and power.mains_charge_a is None)


def lacks_input(option: Option) -> bool:
    """An engine charger without the amps it takes from the van."""
    return is_engine_charger(option) and option.power.engine_input_a is None


def lacks_volts(option: Option) -> bool:
    """A panel without its open voltage, or a controller without the most it takes."""
    power = option.power
    panel = is_panel(option) and not _is_above_nought(power.panel_voc_v)
    return panel or (is_controller(option) and not _is_above_nought(power.solar_controller_max_v))


def lacks_sun_watts(option: Option) -> bool:
    """A panel without watts."""
    return is_panel(option) and option.power.solar_w is None


def charge_a(option: Option) -> float | None:
    """The most amps it puts into the battery, A."""
    return max(option.power.engine_charge_a or 0, option.power.mains_charge_a or 0) or None
