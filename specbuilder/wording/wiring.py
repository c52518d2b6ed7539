"""What the floor must know of the wiring as a whole: what never goes through a switch, and what lies in series."""

from __future__ import annotations

from specbuilder.model.circuits import CircuitLine

from .circuits import circuit_name
from .names import listed

BLOCK_NOTE = "battery side of the isolator: never through the main user switch"
IN_SERIES = "in series: all this run carries goes through it"
SHUNT_RULE = (
    "The shunt of the battery monitor stands in series in the battery negative: the negative busbar, the earth to the "
    "body and every negative lie behind it, and nothing but the shunt is on the negative pole of the battery."
)
MEASURE_FIRST = "Runs are the catalogue's and not measured on this van: measure each in the van before it is cut."
METRES_FOOT = "Without ends, bends and waste."
PAIRS_FOOT = "A plus and its minus are each as long as the run: the drop is worked out there and back."


def before_switch(lines: tuple[CircuitLine, ...], *, burner: bool) -> str:
    """The rule of the fuse block, with every run it is about."""
    cools = " A burner must never lose its power while it cools." if burner else ""
    return (
        "The leisure battery fuse block stands on the battery side of the isolator, behind the main fuse. What it "
        f"feeds and what fills it never goes through the main user switch: {listed(map(circuit_name, lines))}.{cools} "
        "With the isolator open they are still live."
    )
