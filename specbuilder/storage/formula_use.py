"""Which ledger rests on which formula: followed from name to name through the files of the calculations."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple, TypeAlias

from specbuilder.model.ids import LedgerId

FORMULAS = "formulas"
_LISTED = ("__init__", "CALCULATIONS")
_SCHEDULE = ("circuit_schedule", "circuit_schedule")
_MAKES_ID = "LedgerId"

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
            if isinstance(node, ast.ImportFrom) and node.level == 1 and node.module:
                self.foreign.update({a.asname or a.name: (node.module, a.name) for a in node.names})


def users(code: Mapping[str, Code]) -> Mapping[str, Users]:
    """What rests on each formula (``axles.front_share``), straight or through others."""
    module, name = _LISTED
    listed = code[module].made[name]
    assert isinstance(listed, ast.AnnAssign), "the list says what is in it"
    assert isinstance(listed.value, ast.Tuple), "calculations stand in a list"
    roots = [(module, one.id) for one in listed.value.elts if isinstance(one, ast.Name)]
    calculations = [at for root in roots if (at := _home(code, root)) is not None]
    reached = {_ledger_id(code, at): _reached(code, at) for at in calculations}
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
    if module not in code or name not in code[module].made:
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


def _ledger_id(code: Mapping[str, Code], at: Name) -> LedgerId:
    """The table a calculation is of: given where it is made, or the one its class has."""
    module, name = at
    for node in ast.walk(code[module].made[name]):
        if isinstance(node, ast.keyword) and node.arg == "id":
            return LedgerId(_text(code, module, node.value))
        if (
            isinstance(node, ast.AnnAssign)
            and isinstance(node.target, ast.Name)
            and node.target.id == "id"
            and node.value
        ):
            return LedgerId(_text(code, module, node.value))
    for node in ast.walk(code[module].made[name]):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            made = _home(code, (module, node.func.id))
            assert made is not None, "a calculation is made of something"
            return _ledger_id(code, made)
    raise AssertionError(f"{module}.{name} has no id")


def _text(code: Mapping[str, Code], module: str, node: ast.expr) -> str:
    match node:
        case ast.Call(func=ast.Name(id=made), args=[ast.Constant(value=str(text))]) if made == _MAKES_ID:
            return text
        case ast.Name(id=name):
            home = _home(code, (module, name))
            assert home is not None, "an id is made somewhere"
            made_by = code[home[0]].made[home[1]]
            assert isinstance(made_by, ast.Assign), "an id is a constant"
            value = made_by.value
            if isinstance(value, ast.Tuple):
                assert isinstance(made_by.targets[0], ast.Tuple), "as many names as values"
                at = [ast.unparse(one) for one in made_by.targets[0].elts].index(home[1])
                value = value.elts[at]
            return _text(code, home[0], value)
        case ast.Attribute(value=ast.Name(id=name), attr="id"):
            home = _home(code, (module, name))
            assert home is not None, "an id is made somewhere"
            return _ledger_id(code, home)
        case _:
            raise AssertionError(f"{module}: an id that is no constant")
