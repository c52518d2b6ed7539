"""Which ledger rests on which formula: followed from name to name through the files of the calculations."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

from specbuilder.model.ids import LedgerId

FORMULAS = "formulas"
_CALC = "specbuilder.calc."
_MACHINERY = frozenset({"calculation", "frame", "measure", "outcome", "prepared", "tally"})
"""Files every sum is made with: what they use themselves says nothing of one of them."""
_SCHEDULE = ("circuit_schedule", "circuit_schedule")

Name: TypeAlias = tuple[str, str]
"""A name at the top of a file: the module, and the name in it."""


class Users(NamedTuple):
    """What rests on one formula."""

    ledgers: tuple[LedgerId, ...]
    schedule: bool
    formulas: tuple[str, ...]


@dataclass(slots=True)
class Code:
    """One file: what its names are made of and where the foreign ones come from."""

    tree: ast.Module
    made: dict[str, ast.stmt] = field(init=False)
    foreign: dict[str, Name] = field(init=False)

    def __post_init__(self) -> None:
        self.made, self.foreign = {}, {}
        for node in self.tree.body:
            self.made.update(dict.fromkeys(_names_of(node), node))
            if isinstance(node, ast.ImportFrom) and node.module and (node.level or node.module.startswith(_CALC)):
                home = node.module.removeprefix(_CALC)
                home = home if home.startswith(f"{FORMULAS}.") else home.rpartition(".")[2]
                self.foreign.update({a.asname or a.name: (home, a.name) for a in node.names})


def users(code: Mapping[str, Code], calculations: Mapping[LedgerId, Name]) -> Mapping[str, Users]:
    """What rests on each formula (``axles.front_share``), straight or through others."""
    reached = {ledger: _reached(code, _home(code, at) or at) for ledger, at in calculations.items()}
    schedule = _reached(code, _SCHEDULE)
    formulas = [(m, n) for m, one in code.items() if m.startswith(f"{FORMULAS}.") for n in one.made]
    direct = {at: set(_needs(code, at)) for at in formulas}
    return {
        _short(at): Users(
            ledgers=tuple(ledger for ledger, found in reached.items() if at in found),
            schedule=at in schedule,
            formulas=tuple(sorted(other[1] for other in formulas if at in direct[other] and other != at)),
        )
        for at in formulas
    }


def _short(at: Name) -> str:
    return f"{at[0].removeprefix(f'{FORMULAS}.')}.{at[1]}"


def _names_of(node: ast.stmt) -> Iterator[str]:
    match node:
        case ast.FunctionDef(name=name) | ast.ClassDef(name=name) | ast.AnnAssign(target=ast.Name(id=name)):
            yield name
        case ast.Assign(targets=targets):
            yield from (n.id for target in targets for n in ast.walk(target) if isinstance(n, ast.Name))
        case _:
            pass


def _home(code: Mapping[str, Code], at: Name) -> Name | None:
    """Where a name is made, however often it was handed on."""
    module, name = at
    if module not in code or name in code[module].made:
        return at
    there = code[module].foreign.get(name)
    if there is None:
        return None
    beside = f"{FORMULAS}.{there[0]}" if module.startswith(f"{FORMULAS}.") else there[0]
    return _home(code, (beside, there[1]))


def _needs(code: Mapping[str, Code], at: Name) -> Iterator[Name]:
    module, name = at
    if module in _MACHINERY or module not in code or name not in code[module].made:
        return
    made = code[module].made[name]
    own = {arg.arg for arg in ast.walk(made) if isinstance(arg, ast.arg)} if isinstance(made, ast.FunctionDef) else ()
    for node in ast.walk(made):
        if isinstance(node, ast.Name) and node.id not in own and (found := _home(code, (module, node.id))) is not None:
            yield found


def _reached(code: Mapping[str, Code], start: Name) -> frozenset[Name]:
    found, waiting = {start}, [start]
    while waiting:
        new = set(_needs(code, waiting.pop())) - found
        found |= new
        waiting += new
    return frozenset(found)
