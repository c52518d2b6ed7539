"""Sums of a build worked out by hand: plain arithmetic on the figures as they stand in ``rules/``.

Nothing of the program is used, not even its reader, so that a slip there cannot hide itself.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from math import floor, inf
from pathlib import Path
from typing import Any

RULES = Path(__file__).parents[2] / "rules"


def figures() -> dict[str, dict[str, Any]]:
    """Every table of an option or a van, by its id."""
    found: dict[str, dict[str, Any]] = {}
    for path in sorted(RULES.rglob("*.toml")):
        document = tomllib.loads(path.read_text("utf-8"))
        found |= document.get("option", {}) | document.get("van", {})
    return found


FIGURES = figures()


class ByHand:
    """One build of ``builds.toml``."""

    def __init__(self, build: dict[str, Any]) -> None:
        self.answers = build["answers"]
        self.choices = [parsed(text) for text in build["choices"]]
        (self.van,) = (FIGURES[option] for option, _, _ in self.choices if "mro_kg" in FIGURES[option])
        self.parts = [(FIGURES[option], count) for option, _, count in self.choices if FIGURES[option] is not self.van]

    def _of(self, table: str, key: str) -> Iterator[tuple[float, int]]:
        """A figure of every part that has it, with the number of parts."""
        for part, count in self.parts:
            if key in part.get(table, {}):
                yield part[table][key], count

    def _sum(self, table: str, key: str) -> float:
        return sum(figure * count for figure, count in self._of(table, key))

    @property
    def mass_kg(self) -> float:
        """The loaded van: nobody weighs less than 75 kg; 10 kg of things a head and a metre; the tank filled up."""
        adults, children = self.answers["adults"], self.answers["children"]
        people = 75 * (adults - 1) + children * self.answers.get("child_mass_kg", 30)
        luggage = 10 * (adults + children) + 10 * self.van["length_mm"] / 1000
        fuel = self.van["tank_l"] * self.van["fuel_density_kg_per_l"] / 10
        stop = min((litres for litres, _ in self._of("water", "fresh_travel_cap_l")), default=inf)
        water = min(self._sum("water", "fresh_travel_l"), stop) + self._sum("water", "extra_water_l")
        parts = sum(part.get("mass_kg", 0) * count for part, count in self.parts)
        load = self.answers.get("extra_load_kg", 0)
        return self.van["mro_kg"] + parts + water + people + luggage + fuel + load

    @property
    def plate_kg(self) -> float:
        return self.van["m_max_kg"] + self._sum("space", "plate_raise_kg")

    def _gross_pence(self, *, van: bool) -> int:
        net = sum(part.get("price_net_pence", 0) * count for part, count in self.parts)
        if van:
            net += self.van["price_net_supplied_pence"]
        return floor(net * 1.20 + 0.5)

    @property
    def gross_pence(self) -> int:
        """What the customer pays: the van too when the firm supplies it."""
        return self._gross_pence(van=any(option == "van-from-firm" for option, _, _ in self.choices))

    @property
    def gross_under_ceiling_pence(self) -> int:
        """What counts against the ceiling: the van never, since no build names it in the ceiling."""
        return self._gross_pence(van=False)

    @property
    def belts(self) -> float:
        return self._sum("space", "belts")

    @property
    def berths(self) -> float:
        return self._sum("space", "berths_down") + self._sum("space", "berths_up")

    @property
    def height_mm(self) -> float:
        """Closed, with 30 mm to spare: on a kit things stand on the kit, beside it on the steel."""
        on_steel = on_kit = kit = 0
        for part, _ in self.parts:
            space = part.get("space", {})
            above = space.get("height_above_roof_mm", 0)
            match space.get("roof_part"):
                case "fixed":
                    on_steel = max(on_steel, above)
                case "top" | "moving":
                    on_kit = max(on_kit, above)
                case _:
                    kit = max(kit, above)
        return self.van["height_mm"] + self._sum("space", "body_lift_mm") + max(kit + on_kit, on_steel) + 30


def parsed(text: str) -> tuple[str, str | None, int]:
    thing, _, count = text.partition("*")
    option, _, place = thing.partition("@")
    return option, place or None, int(count or 1)
