"""A made-up catalogue and a counter visit to it, from a size and a seed.

Some whole builds are drawn first and every rule is kept only when it holds in all of them, every limit is wide enough
for the hungriest of them. So the catalogue has many builds and no edge of the possible, as a firm's own would.
"""

from __future__ import annotations

from random import Random
from typing import Any

PLANTED = 12
"""Whole builds that every rule must hold in."""
GROUPS_PER_SECTION = 8
RULES_PER_OPTION = 2.5
LIMITS = ("mass", "watts", "roof", "amp-hours", "length")


def model_document(size: int, seed: int, *, limits: bool = True) -> dict[str, Any]:
    """A model of ``size`` options as its file would hold it."""
    random = Random(f"{size} {seed}")
    options, groups = _options(size, random)
    planted = [_planted(options, groups, random) for _ in range(PLANTED)]
    return {
        "format": "options-1",
        "name": f"made-{size}-s{seed}" + ("" if limits else "-rules"),
        "options": options,
        "groups": groups,
        "rules": _rules(options, groups, planted, random),
        "limits": _limits(options, planted, random) if limits else [],
    }


def _options(size: int, random: Random) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    options: list[dict[str, Any]] = []
    groups: list[dict[str, Any]] = []
    while len(options) < size:
        section = len(groups) // GROUPS_PER_SECTION
        in_section = [o["id"] for o in options if o["section"] == section]
        pick = random.choices(("one", "optional", "any"), (35, 30, 35))[0]
        group = {"id": f"g{len(groups)}", "pick": pick}
        if in_section and random.random() < 0.3:
            group["when"] = random.choice(in_section)
        groups.append(group)
        for _ in range(min(size - len(options), random.randint(2, 10))):
            option = {
                "id": f"o{len(options)}",
                "group": group["id"],
                "section": section,
                "price": 5 + int(random.lognormvariate(5.3, 1.0)),
                "mass": 1 + int(random.lognormvariate(1.9, 1.0)),
            }
            if pick == "any" and random.random() < 0.1:
                option["max_count"] = random.randint(2, 4)
            options.append(option)
    return options, groups


def _planted(options: list[dict[str, Any]], groups: list[dict[str, Any]], random: Random) -> frozenset[str]:
    members: dict[str, list[str]] = {}
    for option in options:
        members.setdefault(option["group"], []).append(option["id"])
    build: set[str] = set()
    for group in groups:
        if group.get("when", next(iter(build), None)) not in build and "when" in group:
            continue
        of_group = members[group["id"]]
        if group["pick"] == "one" or (group["pick"] == "optional" and random.random() < 0.5):
            build.add(random.choice(of_group))
        elif group["pick"] == "any":
            build.update(option for option in of_group if random.random() < 0.25)
    return frozenset(build)


def _rules(
    options: list[dict[str, Any]], groups: list[dict[str, Any]], planted: list[frozenset[str]], random: Random
) -> list[dict[str, Any]]:
    by_section: dict[int, list[str]] = {}
    for option in options:
        by_section.setdefault(option["section"], []).append(option["id"])
    group_of = {option["id"]: option["group"] for option in options}
    section_of = {option["id"]: option["section"] for option in options}
    ids = list(group_of)
    rules: list[dict[str, Any]] = []
    wanted = int(RULES_PER_OPTION * len(options)) - len(groups)
    for _ in range(20 * wanted):
        if len(rules) >= wanted:
            break
        one = random.choice(ids)
        near = by_section[section_of[one]]
        others = {random.choice(near if random.random() < 0.8 else ids) for _ in range(random.randint(1, 4))}
        others = {other for other in others if group_of[other] != group_of[one]}
        if not others:
            continue
        if random.random() < 0.6:
            rule = {"kind": "needs_any", "if": one, "any": sorted(others)}
            holds = all(one not in build or build & others for build in planted)
        else:
            rule = {"kind": "excludes", "if": one, "not": sorted(others)}
            holds = all(one not in build or not build & others for build in planted)
        if holds:
            rules.append(rule)
    return rules


def _limits(options: list[dict[str, Any]], planted: list[frozenset[str]], random: Random) -> list[dict[str, Any]]:
    limits = []
    for name in LIMITS:
        share = 1.0 if name == "mass" else 0.2
        draw = {o["id"]: 1 + int(random.lognormvariate(3, 0.8)) for o in options if random.random() < share}
        if name == "mass":
            draw = {o["id"]: o["mass"] for o in options}
        givers = random.sample([o["id"] for o in options], 3 + len(options) // 150)
        supply = {giver: 100 + random.randint(0, 100) for giver in givers if giver not in draw}
        taken = [sum(draw.get(o, 0) - supply.get(o, 0) for o in build) for build in planted]
        limits.append({"id": name, "base": max(0, *taken), "draw": draw, "supply": supply})
    return limits


def visit_document(model: dict[str, Any], seed: int, steps: int = 30) -> dict[str, Any]:
    """A visit of so many edits: mostly what one sensible build has, now and then anything at all, some taken back."""
    random = Random(f"{model['name']} {seed}")
    random_build = Random(f"{model['name']} {seed} build")
    sensible = sorted(_planted(model["options"], model["groups"], random_build))
    counts = {option["id"]: option.get("max_count", 1) for option in model["options"]}
    held: list[str] = []
    edits: list[dict[str, Any]] = []
    while len(edits) < steps:
        if len(held) > 2 and random.random() < 0.3:
            option = held.pop(random.randrange(len(held)))
            edits.append({"do": "unchoose", "option": option})
            continue
        option = random.choice(sensible if random.random() < 0.75 else list(counts))
        if option in held:
            continue
        held.append(option)
        if random.random() < 0.12:
            edits.append({"do": "refuse", "option": option})
        else:
            edits.append({"do": "choose", "option": option, "count": random.randint(1, counts[option])})
    return {"model": model["name"], "seed": seed, "steps": edits}
