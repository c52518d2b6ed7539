"""Formulas: numbers in, numbers out. Nothing here knows a van, an option or a brief."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

KEPT: Mapping[str, str] = MappingProxyType(
    {
        "weighing sheet: the finished van against what was worked out": (
            "all_axle_loads_kg centre_x_mm front_share other_axle_kg overload_pct "
            "prediction_error_pct fixed_penalty_gbp"
        ),
        "hand-over: its masses, tyres and carrier, for whoever checks them by hand": (
            "passengers_allowed pay_mass_kg "
            "least_pay_mass_kg running_order_kg unladen_kg rack_allowance_kg tyre_pair_room_kg"
        ),
        "seat sheet: what the report of the seat must show": "belt_test_pull_kn child_seat_needed",
        "roof sheet: trial of the lifting roof with its real load": "added_push_n",
        "battery sheet: its box, its hold and when it may be charged": (
            "gas_flow_m3_per_h vent_cm2 fixing_n discharge_h lithium_may_charge packs_short_circuit_ka"
        ),
        "energy sheet: the fridge by hours and duty, and one start of a burner": ("fridge_wh glow_wh"),
        "inverter and plug sheet: what is used of the limit, and what is too much": (
            "used_share microwave_input_w rate_per_h charger_input_w at_once_w mains_a over_w"
        ),
        "cable sheet: the same sum turned round, for whoever checks a run by hand": (
            "area_for_drop_mm2 most_amps_for_drop_a smallest_area_mm2 charger_input_a engine_input_a"
        ),
        "gas sheet: the openings of a store that is yet to be built": (
            "store_vent_single_mm2 store_vent_pair_mm2 round_hole_mm"
        ),
        "fresh-air sheet: openings of a van that has no figure yet": (
            "high_vent_mm2 high_vent_in_wall_mm2 low_vent_mm2"
        ),
        "heat sheet: how the loss of a van or a lining was come to": (
            "layer_m2k_per_w u_value_w_per_m2k rib_factor surface_loss_w_per_k air_change_loss_w_per_k"
        ),
        "fuel sheet: the pick-up, the start and heights above the sea": ("reserve_l start_a heater_start_v"),
        "catalogue: how the mass of a piece of furniture was come to": "board_kg",
    }
)
"""Formulas on which no ledger or figure rests yet, by the paper they are kept for. What a sum begins to use leaves."""
