"""The texts of every sheet for three jobs, kept on disk: ``python -m tests.documents.goldens --write`` makes them anew.

A golden is read by a person before it is kept; what a change does to a paper is then seen line by line.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from specbuilder.documents.formats import text_lines
from specbuilder.documents.sheets import SHEETS
from specbuilder.documents.sheets.sheet import Sheet
from specbuilder.model.papers import Case

from .scenes import SCENES

GOLDENS = Path(__file__).parent / "goldens"
WIDTH = 100


@cache
def scene(name: str) -> Case:
    """A scene, made once."""
    return SCENES[name]()


def pairs() -> Iterator[tuple[str, Sheet]]:
    """Every scene with every sheet that can be made of it."""
    return ((name, sheet) for name in SCENES for sheet in SHEETS if sheet.possible(scene(name)))


def path_of(name: str, sheet: Sheet) -> Path:
    """Where the golden of a scene and sheet is kept."""
    return GOLDENS / f"{name}.{sheet.name}.txt"


def text_of(name: str, sheet: Sheet) -> str:
    """The paper as it is made now."""
    return "\n".join(text_lines(sheet.make(scene(name)), WIDTH)) + "\n"


def main(arguments: list[str]) -> int:
    """Writes the goldens, of all sheets or of those named; without ``--write`` it says which differ."""
    parser = argparse.ArgumentParser(prog="python -m tests.documents.goldens", description=__doc__)
    parser.add_argument("--write", action="store_true", help="write them; else say which differ")
    parser.add_argument("--only", action="append", metavar="SHEET", help="of this sheet only")
    chosen = parser.parse_args(arguments)
    differ = 0
    for name, sheet in pairs():
        if chosen.only and sheet.name not in chosen.only:
            continue
        path, text = path_of(name, sheet), text_of(name, sheet)
        if path.is_file() and path.read_text("utf-8") == text:
            continue
        differ += 1
        print(f"{'written' if chosen.write else 'differs'}: {path.name}")
        if chosen.write:
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, "utf-8")
    return 0 if chosen.write or not differ else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
