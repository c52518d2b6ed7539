"""Which figures of options and base vans each ledger rests on, by their keys in the files.

A figure told beside a ledger rests on what its ledger does.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId


class Keys(NamedTuple):
    """Keys of options, and of base vans."""

    options: frozenset[str] = frozenset()
    vans: frozenset[str] = frozenset()


def _keys(options: str = "", vans: str = "") -> Keys:
    return Keys(frozenset(options.split()), frozenset(vans.split()))


_LOADED = "mass_kg water.fresh_travel_l water.fresh_travel_cap_l water.extra_water_l"
_FUEL = "tank_l fuel_density_kg_per_l length_mm"
_AXLES = _keys(
    f"{_LOADED} position.x_mm space.seat_x_mm space.bench_shift_mm space.belts space.rear_axle_raise_kg",
    f"{_FUEL} mro_kg mro_front_kg mro_rear_kg wheelbase_mm datum_from_front_axle_mm rear_sill_x_mm",
)
_USE = (
    "power.watts_running power.hours_summer power.hours_winter power.duty_summer power.duty_winter power.start_wh "
    "power.inverter_w power.inverter_efficiency power.inverter_idle_w"
)
_CAPACITY = "power.battery_ah power.battery_v power.depth_of_discharge"
_BENCH = "space.front_x_mm space.bench_shift_mm"


def _more(keys: Keys, vans: str) -> Keys:
    return Keys(keys.options, keys.vans | frozenset(vans.split()))


RESTS_ON: Mapping[LedgerId, Keys] = MappingProxyType(
    {
        LedgerId(ledger): keys
        for ledger, keys in {
            "total-mass": _keys(f"{_LOADED} space.plate_raise_kg", f"{_FUEL} m_max_kg mro_kg"),
            "rear-axle": _more(_AXLES, "r_max_kg"),
            "filled-up-rear": _more(_more(_AXLES, "r_max_kg"), "m_max_kg"),
            "front-axle": _more(_AXLES, "f_max_kg"),
            "front-share": _more(_AXLES, "front_min_share"),
            "side-balance": _keys(f"{_LOADED} position.y_mm", f"{_FUEL} mro_kg track_mm"),
            "pay-mass": _keys(f"{_LOADED} space.plate_raise_kg space.belts", "length_mm m_max_kg mro_kg"),
            "unladen-mass": _keys("mass_kg", f"{_FUEL} mro_kg"),
            "roof-load-closed": _keys("space.roof_mass_kg space.roof_allow_closed_kg", "roof_load_kg"),
            "roof-load-raised": _keys("space.roof_mass_kg space.roof_allow_raised_kg"),
            "roof-bed-load": _keys("space.roof_bed_rating_kg"),
            "belts": _keys("space.belts"),
            "berths": _keys("space.berths_down space.berths_up"),
            "berths-over-belts": _keys("space.berths_down space.berths_up space.belts"),
            "cross-width": _keys("space.cross_width_mm", "inside_width_mm"),
            "way-out": _keys("space.way_out_take_mm", "sliding_door_width_mm"),
            "closed-height": _keys("space.height_above_roof_mm space.body_lift_mm", "height_mm"),
            "swivel-gap": _keys(f"{_BENCH} space.swivel_sweep_x_mm"),
            "fridge-door-gap": _keys(
                f"{_BENCH} position.x_mm space.length_mm", "wheelbase_mm datum_from_front_axle_mm rear_sill_x_mm"
            ),
            "bed-length": _keys("space.bed_length_mm space.bench_shift_mm"),
            "bed-width": _keys("space.bed_width_mm"),
            "heat": _keys("heat.heater_kw heat.heat_loss_down_w_per_k heat.heat_loss_up_w_per_k", "ua_w_per_k"),
            "high-vents": _keys("heat.vent_high_mm2", "vent_high_flame_mm2 vent_high_sealed_mm2"),
            "low-vents": _keys("heat.vent_low_mm2", "vent_low_flame_mm2 vent_low_sealed_mm2"),
            "gas-bottles": _keys("heat.gas_bottles"),
            "fuel-pickups": _keys("heat.pickups_used heat.pickups_supplied"),
            "fresh-water-days": _keys("water.fresh_full_l"),
            "waste-share": _keys("water.fresh_full_l water.waste_l"),
            "heater-nights": _keys("heat.fuel_l_per_h heat.own_tank_l", "tank_l fuel_density_kg_per_l fuel_reserve_l"),
            "daily-energy": _keys(_USE),
            "battery-nights": _keys(f"{_USE} {_CAPACITY} power.engine_charge_a power.solar_w"),
            "battery-current": _keys(
                "power.inverter_w power.inverter_efficiency power.bms_continuous_a power.packs_parallel"
            ),
            "inverter-largest-load": _keys("power.watts_running power.inverter_w"),
            "lead-draw": _keys("power.inverter_w power.inverter_efficiency power.battery_ah"),
            "battery-box": _keys("power.battery_ah space.max_ah"),
            "charge-rate": _keys("power.engine_charge_a power.mains_charge_a power.battery_ah"),
            "alternator-input": _keys("power.engine_input_a", "alternator_a"),
            "solar-voltage": _keys("power.panel_voc_v power.solar_controller_max_v"),
            "hook-up-watts": _keys("power.watts_running"),
            "lead-weeks": _keys("lead_weeks", "lead_weeks"),
            "workshop-hours": _keys("labour_h"),
        }.items()
    }
)
"""The keys of each; what is not named rests on no figure that could be checked by itself."""

_NOTHING = Keys()


def keys_of(catalogue: Catalogue, ledger: LedgerId) -> Keys:
    """What a ledger rests on, or the one it is told beside."""
    spec = catalogue.ledgers.get(ledger)
    beside = spec.part_of if spec is not None else None
    return RESTS_ON.get(ledger) or (RESTS_ON.get(beside, _NOTHING) if beside is not None else _NOTHING)
