"""The neutral model file "options-1" as a :class:`Problem`, and the visits that are replayed over it.

A model file holds ``options`` (id, group, price, mass, max_count), ``groups`` (pick ``one``, ``optional`` or ``any``,
and ``when``: only with that option), ``rules`` (``needs_any``, ``excludes``, ``exactly_one``, ``clause``, ``fixed``)
and ``limits`` (``base``, what options ``draw`` and ``supply``). An option with ``max_count`` k is k variables, the
j-th of them "at least j". A visit file holds ``steps`` of ``choose``, ``refuse`` and ``unchoose``.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import Any

from specbuilder.reasoning.problem import Problem


@dataclass(slots=True, kw_only=True)
class Model:
    """A compiled model."""

    name: str
    problem: Problem = field(default_factory=Problem)
    counted: dict[str, tuple[int, ...]] = field(default_factory=dict)
    """Of each option its variables: at least one of it, at least two ..."""
    prices: dict[int, int] = field(default_factory=dict)
    """By variable; variables without a price are left out."""

    @property
    def options(self) -> list[int]:
        """The variable "at least one" of every option."""
        return [variables[0] for variables in self.counted.values()]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One edit of a visit."""

    action: str
    option: str
    count: int = 1


def read_model(path: Path) -> Model:
    """A model from its file."""
    return compiled(json.loads(path.read_text("utf-8")), path.stem)


def read_visit(path: Path) -> list[Step]:
    """A visit from its file."""
    return visit_of(json.loads(path.read_text("utf-8")))


def visit_of(document: dict[str, Any]) -> list[Step]:
    """A visit from what its file holds."""
    return [Step(action=s["do"], option=s["option"], count=s.get("count", 1)) for s in document["steps"]]


def replay(model: Model, visit: list[Step]) -> Iterator[list[int]]:
    """What is held after each step, in the order it was taken."""
    held: dict[str, int] = {}
    for step in visit:
        held.pop(step.option, None)
        if step.action == "choose":
            held[step.option] = model.counted[step.option][step.count - 1]
        elif step.action == "refuse":
            held[step.option] = -model.counted[step.option][0]
        yield list(held.values())


def compiled(document: dict[str, Any], name: str = "") -> Model:
    """The document as a problem."""
    model = Model(name=name or document.get("name", "model"))
    members = _add_options(model, document["options"])
    for group in document.get("groups", ()):
        when = model.counted[group["when"]][0] if group.get("when") else None
        _add_pick(model.problem, members.get(group["id"], []), group["pick"], when)
        if when is not None:
            for member in members.get(group["id"], []):
                model.problem.add_clause((-member, when))
    for rule in document.get("rules", ()):
        _add_rule(model, rule)
    for limit in document.get("limits", ()):
        terms = [(amount, v) for option, amount in limit["draw"].items() for v in model.counted[option]]
        terms += [(-amount, v) for option, amount in limit.get("supply", {}).items() for v in model.counted[option]]
        model.problem.add_limit(terms, limit["base"])
    return model


def _add_options(model: Model, options: list[dict[str, Any]]) -> dict[str, list[int]]:
    members: dict[str, list[int]] = {}
    for option in options:
        variables = tuple(model.problem.new() for _ in range(option.get("max_count", 1)))
        model.counted[option["id"]] = variables
        if option.get("price"):
            model.prices.update(dict.fromkeys(variables, option["price"]))
        members.setdefault(option.get("group", ""), []).append(variables[0])
        for fewer, more in pairwise(variables):
            model.problem.add_clause((-more, fewer))
    return members


def _add_pick(problem: Problem, members: list[int], pick: str, when: int | None) -> None:
    if pick in ("one", "optional"):
        problem.add_at_most_one(members)
    if pick == "one":
        problem.add_clause(members if when is None else [*members, -when])


def _add_rule(model: Model, rule: dict[str, Any]) -> None:
    problem = model.problem

    def first(option: str) -> int:
        return model.counted[option][0]

    match rule["kind"]:
        case "needs_any":
            problem.add_clause((-first(rule["if"]), *map(first, rule["any"])))
        case "excludes":
            for other in rule["not"]:
                problem.add_clause((-first(rule["if"]), -first(other)))
        case "exactly_one":
            when = first(rule["when"]) if rule.get("when") else None
            _add_pick(problem, [first(option) for option in rule["of"]], "one", when)
        case "clause":
            problem.add_clause(-first(x[1:]) if x[0] == "-" else first(x) for x in rule["lits"])
        case "fixed":
            problem.add_clause((first(rule["option"]),))
        case kind:
            raise ValueError(f"rule kind {kind!r} is not known")
