"""``specbuilder/reasoning/ALGORITHM.md`` names every file with its one concept, and every example is a test."""

from __future__ import annotations

import re
from pathlib import Path

import tests.reasoning.test_algorithm_examples as of_problems
import tests.session.test_algorithm_examples as of_catalogues

PACKAGE = Path(__file__).parents[2] / "specbuilder"
PAGE = (PACKAGE / "reasoning" / "ALGORITHM.md").read_text("utf-8")
FOLDERS = (PACKAGE, PACKAGE / "reasoning", PACKAGE.parent)


def section(number: int) -> str:
    return re.split(r"^## ", PAGE, flags=re.MULTILINE)[number]


def table_of(text: str) -> list[tuple[list[str], str]]:
    """Of each row that begins with files: the files, and what is said of them."""
    rows = (line.strip("|").split("|", 1) for line in text.splitlines() if line.startswith("| `"))
    return [(re.findall(r"`([\w/]+\.py)`", files), said.strip(" |")) for files, said in rows]


def test_every_example_of_the_page_is_a_test() -> None:
    titles = re.findall(r"^### (.+)$", section(6), flags=re.MULTILINE)
    names = [f"test_{title.lower().replace(' ', '_')}" for title in titles]
    assert len(names) == 5
    tested = {**vars(of_problems), **vars(of_catalogues)}
    assert [name for name in names if name not in tested] == []


def test_every_file_has_its_one_concept_on_the_page() -> None:
    inside = [row for row in table_of(section(7)) if "/" not in row[0][0]]
    files = {path.name for path in (PACKAGE / "reasoning").glob("*.py")} - {"__init__.py"}
    named = [name for names, _ in inside for name in names]
    assert sorted(named) == sorted(files)
    said = [concept for _, concept in inside]
    assert all(said)
    assert len(said) == len(set(said)) == len(named)


def test_every_file_the_page_names_is_there() -> None:
    named = set(re.findall(r"`([\w/]+\.py)`", PAGE))
    missing = {name for name in named if not any((folder / name).exists() for folder in FOLDERS)}
    assert not missing
