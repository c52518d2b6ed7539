"""What keeps the floors apart: who loads what, what stands where, and how long a file may be."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue

TESTS = Path(__file__).parent
PACKAGE = TESTS.parent / "specbuilder"
FLOORS = (
    ("tui", "cli"),
    ("office",),
    ("documents",),
    ("wording", "storage"),
    ("session",),
    ("rulegraph", "calc", "workshop"),
    ("model", "reasoning"),
)
"""From the top. Who stands beside another does not see it."""
NEVER_SEEN_FROM = {
    "tui": {"rulegraph", "calc", "reasoning"},
    "cli": {"rulegraph", "calc", "reasoning"},
    "wording": {"session", "rulegraph", "calc", "reasoning"},
    "storage": {"session", "rulegraph", "calc", "reasoning"},
    "office": {"rulegraph", "calc", "reasoning"},
    "documents": {"storage", "session", "rulegraph", "calc", "reasoning"},
    "workshop": {"reasoning"},
    "rulegraph": {"reasoning"},
    "calc": {"reasoning"},
}
"""Floors below that are out of sight all the same."""
OPENED_BY = {("cli", "tui"): "the way in opens the app"}
"""A floor beside that is seen after all, with the reason."""

MOST_LINES = 300
IDS_BY_NAME = {
    ("wording/glance.py", "total-mass"): "the one glance is about the weight that is left",
    ("wording/glance.py", "price-gross"): "and about the price under its ceiling",
    ("wording/brief_terms.py", "hair-dryer"): "the word of an answer of the brief, which an option happens to share",
}
"""Ids of catalogue things that the words know, with the reason."""
NUMBERS_ELSEWHERE = {
    "wording/typed.py": "what stands in a field for typing is the exact number",
    "wording/aloud.py": "signs of money become words for reading aloud",
    "tui/block_figures.py": "signs of money are drawn in large figures",
}
"""Files beside ``quantities`` that turn a number into text, with the reason."""


@cache
def _files(floor: str = "") -> tuple[Path, ...]:
    return tuple(sorted((PACKAGE / floor).rglob("*.py")))


def _name(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


@cache
def _tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"))


def _texts(path: Path) -> Iterator[tuple[int, str]]:
    """Every string of the code that is no docstring, with its line."""
    remarks = {id(node.value) for node in ast.walk(_tree(path)) if isinstance(node, ast.Expr)}
    for node in ast.walk(_tree(path)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in remarks:
            yield node.lineno, node.value


def _loaded(*modules: str) -> frozenset[str]:
    """What a fresh interpreter has loaded after importing these."""
    code = f"import sys, {', '.join(modules)}\nprint(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=PACKAGE.parent)
    return frozenset(done.stdout.split())


def _module(path: Path) -> str:
    return ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(".__init__")


def _roots(modules: frozenset[str]) -> set[str]:
    return {module.partition(".")[0] for module in modules}


# --- who loads what


def test_floors_0_to_3_know_no_terminal() -> None:
    below = [_module(p) for floors in FLOORS[2:] for floor in floors for p in _files(floor)]
    assert not _roots(_loaded(*below)) & {"textual", "rich"}


def test_the_ground_floor_is_the_standard_library_and_nothing_else() -> None:
    before = _roots(_loaded("sys"))
    new = _roots(_loaded(*(_module(p) for floor in ("model", "reasoning") for p in _files(floor)))) - before
    assert new <= {"specbuilder", *sys.stdlib_module_names}


def test_the_first_frame_waits_for_no_reasoning() -> None:
    loaded = _loaded("specbuilder.tui.counter_app")
    assert "networkx" not in _roots(loaded)
    assert not {m for m in loaded if m.startswith(("specbuilder.rulegraph", "specbuilder.calc", "specbuilder.session"))}


def test_the_build_plan_brings_its_graphs_only_when_it_is_made() -> None:
    assert "networkx" not in _roots(_loaded("specbuilder.workshop.plan"))


def test_a_line_command_loads_no_screen() -> None:
    assert not _roots(_loaded("specbuilder.cli.main", "specbuilder.cli.commands")) & {"textual", "rich"}


@pytest.mark.parametrize("floor", [floor for floors in FLOORS for floor in floors if _files(floor)])
def test_a_floor_sees_only_those_below(floor: str) -> None:
    level = next(i for i, floors in enumerate(FLOORS) if floor in floors)
    seen = {floor} | {below for floors in FLOORS[level + 1 :] for below in floors} - NEVER_SEEN_FROM.get(floor, set())
    seen |= {other for (one, other) in OPENED_BY if one == floor}
    for path in _files(floor):
        assert not {f"{line}: {other}" for line, other in _imports(path) if other not in seen}, path


def _imports(path: Path) -> Iterator[tuple[int, str]]:
    """Floors a file imports from, however it writes them."""
    package = path.relative_to(PACKAGE.parent).parts[:-1]
    for node in ast.walk(_tree(path)):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) - node.level + 1] if node.level else ()
            base = ".".join((*above, node.module or "")).strip(".")
            names = [f"{base}.{alias.name}" for alias in node.names]
        for name in names:
            parts = name.split(".")
            if parts[0] == "specbuilder" and len(parts) > 1 and (PACKAGE / parts[1]).is_dir():
                yield node.lineno, parts[1]


# --- what stands where


@pytest.mark.parametrize("floor", ["tui", "cli", "wording"])
def test_no_thing_of_the_catalogue_is_known_by_name(floor: str, catalogue: Catalogue) -> None:
    """A front end shows what the catalogue holds, whatever it holds. An id within a longer text counts too."""
    ids = {*catalogue.options, *catalogue.groups, *catalogue.rules, *catalogue.ledgers}
    longest_first = sorted((i for i in ids if "-" in i), key=len, reverse=True)
    within = re.compile(rf"(?<![\w-])(?:{'|'.join(longest_first)})(?![\w-])")
    found: set[tuple[str, str]] = set()
    for path in _files(floor):
        for _, text in _texts(path):
            found |= {(_name(path), i) for i in {text} & ids}
            found |= {(_name(path), i) for i in within.findall(text)}
    assert found == {known for known in IDS_BY_NAME if known[0].startswith(f"{floor}/")}


def test_numbers_become_text_in_one_place() -> None:
    """Formats of digits and signs of money stand in ``wording/quantities.py``."""
    found: set[str] = set()
    for path in (p for floor in ("tui", "cli", "documents", "wording") for p in _files(floor)):
        if _name(path) != "wording/quantities.py" and (_formats_numbers(path) or _shows_money(path)):
            found.add(_name(path))
    assert found == set(NUMBERS_ELSEWHERE)


def _formats_numbers(path: Path) -> bool:
    return any(_formats_a_number(node) for node in ast.walk(_tree(path)))


def _formats_a_number(node: ast.AST) -> bool:
    """A format with digits, thousands or a kind of number in it; dates and alignment of text are none."""
    match node:
        case ast.FormattedValue(format_spec=ast.JoinedStr(values=[*parts])):
            spec = "".join(str(part.value) if isinstance(part, ast.Constant) else "" for part in parts)
            return not spec.startswith("%") and re.search(r"[.,_]|[bcdeEfFgGnoxX]$", spec) is not None
        case ast.BinOp(left=ast.Constant(value=str()), op=ast.Mod()):
            return True
        case ast.Call():
            return _called(node) == "format"
        case _:
            return False


def _shows_money(path: Path) -> bool:
    return any(sign in text for _, text in _texts(path) for sign in "£€$")


def test_nothing_reaches_the_toolkit_as_markup() -> None:
    """A text put together on the way to a widget may hold what a customer typed."""
    for path in _files("tui"):
        for node in ast.walk(_tree(path)):
            if isinstance(node, ast.Call) and _called(node) in {"Static", "Label", "update"}:
                assert not any(isinstance(argument, ast.JoinedStr) for argument in node.args), f"{path}:{node.lineno}"


def _called(node: ast.Call) -> str:
    match node.func:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
        case _:
            return ""


def test_no_file_is_too_long() -> None:
    """Nor any of the tests: they are read as often."""
    every = (*_files(), *TESTS.rglob("*.py"))
    assert not [path.name for path in every if len(path.read_text("utf-8").splitlines()) > MOST_LINES]


def test_there_is_no_drawer_for_everything() -> None:
    names = {part.removesuffix(".py") for path in _files() for part in path.relative_to(PACKAGE).parts}
    assert not names & {"utils", "util", "helpers", "helper", "common", "misc", "shared", "tools"}


def test_every_floor_is_named() -> None:
    folders = {p.name for p in PACKAGE.iterdir() if p.is_dir() and p.name != "__pycache__"}
    assert folders <= {floor for floors in FLOORS for floor in floors}
