"""The formulas as text: what the docstring of each says, and what rests on it. Read as files, never run."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping
from importlib.resources import files

from specbuilder.model.ids import LedgerId
from specbuilder.model.sources import FormulaText

from .formula_use import FORMULAS, Code, Name, Users, users

PARTS = ("Equation", "Valid for", "Source", "Confidence")
"""What every formula must say of itself, in this order."""
_LABEL = re.compile(r"^(Equation|Valid for|Source|Confidence|Raises|Attributes):\s*")
_RESULT = re.compile(r"\s*\bResult (?:in|as|is) (.+)$", re.DOTALL)


def read_code() -> Mapping[str, Code]:
    """The files of the calculations and the formulas, by module; formulas as ``formulas.NAME``."""
    folder = files("specbuilder") / "calc"
    found: dict[str, Code] = {}
    rooms = sorted((room for room in folder.iterdir() if room.is_dir()), key=lambda room: room.name)
    for room in (folder, *rooms):
        prefix = f"{FORMULAS}." if room.name == FORMULAS else ""
        for path in sorted(room.iterdir(), key=lambda path: path.name):
            if path.name.endswith(".py") and (prefix or path.name != "__init__.py"):
                found[prefix + path.name.removesuffix(".py")] = Code(ast.parse(path.read_text("utf-8")))
    return found


def read_formulas(calculations: Mapping[LedgerId, Name]) -> tuple[FormulaText, ...]:
    """Every public formula, by file and in the order of the file; ``calculations`` says where each of them is made."""
    code = read_code()
    kept, resting = _kept(code[f"{FORMULAS}.__init__"].tree), users(code, calculations)
    return tuple(
        _text(module.removeprefix(f"{FORMULAS}."), function, resting, kept)
        for module, one in code.items()
        if module.startswith(f"{FORMULAS}.") and not module.endswith((".validity", ".__init__"))
        for function in one.tree.body
        if isinstance(function, ast.FunctionDef) and not function.name.startswith("_")
    )


def docstring_parts(text: str) -> Mapping[str, str]:
    """A docstring by its labels; what stands before the first one under an empty label."""
    found: dict[str, list[str]] = {"": []}
    label = ""
    for line in text.splitlines():
        bare = line.strip()
        if bare.startswith(">>>"):
            break
        if told := _LABEL.match(bare):
            label, bare = told[1], bare[told.end() :]
        found.setdefault(label, []).append(bare)
    return {label: " ".join(" ".join(lines).split()) for label, lines in found.items()}


def _text(module: str, function: ast.FunctionDef, resting: Mapping[str, Users], kept: Mapping[str, str]) -> FormulaText:
    parts = docstring_parts(ast.get_docstring(function) or "")
    says, result = _split(parts[""])
    confidence, _, check = parts.get("Confidence", "").rstrip(".").partition(";")
    mine = resting[f"{module}.{function.name}"]
    return FormulaText(
        module=module,
        name=function.name,
        parameters=tuple(parameter.arg for parameter in _parameters(function)),
        says=says,
        result=result,
        equation=parts.get("Equation", "").rstrip("."),
        valid=parts.get("Valid for", "").rstrip("."),
        source=parts.get("Source", "").rstrip("."),
        confidence=confidence.strip(),
        check=check.strip(),
        used_by=mine.ledgers,
        schedule=mine.schedule,
        used_in=mine.formulas,
        kept=kept.get(function.name, ""),
    )


def _parameters(function: ast.FunctionDef) -> Iterator[ast.arg]:
    arguments = function.args
    yield from (*arguments.posonlyargs, *arguments.args)
    if arguments.vararg is not None:
        yield arguments.vararg
    yield from arguments.kwonlyargs


def _split(first: str) -> tuple[str, str]:
    """The sentence, and what the result is in."""
    found = _RESULT.search(first)
    return (first[: found.start()].strip(), found[1].rstrip(".")) if found else (first, "")


def _kept(tree: ast.Module) -> Mapping[str, str]:
    """Formulas that are kept for a paper, with which."""
    for node in tree.body:
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.target.id == "KEPT":
            assert isinstance(node.value, ast.Call), "a read-only mapping around a plain table"
            papers: dict[str, str] = ast.literal_eval(node.value.args[0])
            return {name: paper for paper, names in papers.items() for name in names.split()}
    return {}
