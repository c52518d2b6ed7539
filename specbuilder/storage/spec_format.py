"""What writer and reader of a spec agree on: number of the format, checksum, and which words are only for readers."""

from __future__ import annotations

import hashlib
from types import MappingProxyType

FORMAT = 1
CHECKSUM = "checksum"

COMPUTED_TABLES = (
    "not_looked_at",
    "open_points",
    "not_known",
    "assumed",
    "handed",
    "datum",
    "height",
    "do_not",
    "hole",
    "seat",
    "circuit",
    "power",
    "gas_fuel_air",
    "water",
    "mass_budget",
    "ledger",
    "price",
    "hours",
    "step",
    "paper",
    "finding",
    "caution",
    "not_checked",
)
"""Tables that follow from the rest: written for people and passed over on reading."""

COMPUTED_KEYS = MappingProxyType(
    {
        "job": (
            "not_to_be_built",
            "valid_until",
            "signed_on",
            "newest_entry_at",
            "firm",
            "catalogue_version",
            "catalogue_digest",
            CHECKSUM,
        ),
        "vehicle": (
            "base_van",
            "base_van_option",
            "wheelbase_mm",
            "length_mm",
            "width_mm",
            "height_mm",
            "load_length_mm",
            "sliding_doors",
            "rear_doors",
            "steering",
            "fuel",
            "driven_axle",
            "plate_kg",
            "front_axle_plate_kg",
            "rear_axle_plate_kg",
            "running_order_kg",
            "remark",
        ),
        "choice": (
            "name",
            "what",
            "no_part",
            "group",
            "build_step",
            "status",
            "mass_each_kg",
            "price_net_each_pence",
            "lead_weeks",
            "x_mm",
            "y_mm",
            "z_mm",
            "position",
            "length_mm",
            "width_mm",
            "height_mm",
            "front_edge_x_mm",
            "turns_back_to_x_mm",
            "door_swing_mm",
            "lid_swing_mm",
            "pull_out_mm",
            "hold_points",
            "papers",
            "exhaust_outlet_x_mm",
            "exhaust_outlet_y_mm",
            "exhaust_outlet_z_mm",
            "exhaust_outlet",
            "basis",
        ),
        "own_part": (),
        "accepted": ("said",),
    }
)
"""Keys beside what was said that follow from it: passed over on reading."""


def checksum_of(text: str) -> str:
    """SHA-256 of the text without its checksum line, line ends as on this system or any other."""
    lines = text.replace("\r\n", "\n").split("\n")
    for number, line in enumerate(lines):
        if line.startswith(f"{CHECKSUM} = "):
            del lines[number]
            break
    return hashlib.sha256("\n".join(lines).encode(errors="replace")).hexdigest()
