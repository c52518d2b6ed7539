"""One cable run with every figure. A scene that looks at a figure changes that one by ``replace``."""

from __future__ import annotations

from specbuilder.model.circuits import CircuitLine
from specbuilder.model.ids import OptionId
from specbuilder.model.origin import Origin

PUMP = CircuitLine(
    id="pump-c1",
    label="pump-c1",
    option=OptionId("pump"),
    circuit="water pump",
    from_point="12 V panel",
    to_point="pump",
    bus="dc",
    load_w=50,
    load_a=4.2,
    run_one_way_m=4.5,
    drop_limit_pct=3,
    volts_v=12,
    area_mm2=2.5,
    insulation_c=70,
    carries_a=15,
    fuse_a=7.5,
    fuse_kind="blade",
    fuse_place="in the 12 V panel",
    drop_v=0.337,
    drop_pct=2.81,
    origin=Origin("options/kitchen.toml", 12),
)
