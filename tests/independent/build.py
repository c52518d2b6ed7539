"""What was said in an example: brief and choices, never its computed part; and the data of what was chosen."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]

Table = dict[str, Any]
Reading = tuple[float | None, float | None]  # value and bound


@cache
def tables(folder: str, kind: str) -> Table:
    """All tables of one kind of a folder of the rules, by id."""
    found: Table = {}
    for path in sorted((ROOT / "rules" / folder).glob("*.toml")):
        found.update(tomllib.loads(path.read_text("utf-8")).get(kind, {}))
    return found


@dataclass(frozen=True, slots=True)
class Part:
    """A choice: its option, how many, and on which side (empty where the part has but one place)."""

    id: str
    option: Table
    count: int
    side: str

    def one(self, section: str, key: str) -> float:
        """A figure of one piece, 0 where the part has none."""
        return float(self.option.get(section, {}).get(key, 0))


@dataclass(frozen=True, slots=True)
class Build:
    """What was said: van, parts, brief; and the tags that van and parts give."""

    van: Table
    parts: list[Part]
    brief: Table
    tags: frozenset[str]

    def all(self, section: str, key: str) -> float:
        """The figure summed over all pieces."""
        return sum(part.one(section, key) * part.count for part in self.parts)

    def having(self, section: str, key: str) -> list[Part]:
        """The parts with that figure above 0."""
        return [part for part in self.parts if part.one(section, key) > 0]

    def of_group(self, group: str) -> Part | None:
        """The part chosen in a pick-one group."""
        return next((part for part in self.parts if part.option["group"] == group), None)


@cache
def build(name: str) -> Build:
    """An example: only what was said in it."""
    spec = tomllib.loads((ROOT / "examples" / f"{name}.toml").read_text("utf-8"))
    options, vans, van, parts = tables("options", "option"), tables("vans", "van"), None, []
    for said in spec["choice"]:
        if "at" in said or said["whose"] != "ours":
            raise ValueError(f"{name}: {said['option']} was moved or is the customer's own, which is not covered here")
        if said["option"] in vans:
            van = vans[said["option"]]
        else:
            parts.append(Part(said["option"], options[said["option"]], said["count"], said.get("place", "")))
    if van is None:
        raise ValueError(f"{name} has no base van")
    tags = set(van["gives"])
    for part in parts:
        for tag in part.option.get("gives", []):
            tags |= {tag.removesuffix("@side"), tag.replace("@side", f"@{part.side}")}
    return Build(van, parts, spec["brief"], frozenset(tags))
