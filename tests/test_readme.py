"""README says what the program does: its table of keys is made from the one table of keys.

``python -m tests.test_readme --write`` writes it anew.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

from specbuilder.tui.acts import Where
from specbuilder.tui.keyboard import Keyboard

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
_KEYS = re.compile(r"(?<=<!-- keys -->\n).*?(?=<!-- end of keys -->)", re.DOTALL)
_LINK = re.compile(r"\]\(([^)#:]+)\)")


def table() -> str:
    """The keys of the walk as a table."""
    rows = (f"| {entry.shown} | {entry.words} |" for entry in Keyboard().lines_of(Where.WALK) if entry.shown)
    return "\n".join(("", "| key on the walk | what it does |", "|---|---|", *rows, "", ""))


def test_the_table_of_keys_is_that_of_the_program() -> None:
    (found,) = _KEYS.findall(README.read_text("utf-8"))
    assert found == table()


def test_every_file_that_is_linked_is_there() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        links = _LINK.findall((ROOT / name).read_text("utf-8"))
        assert links
        assert [link for link in links if not (ROOT / link).exists()] == [], name


if __name__ == "__main__" and "--write" in sys.argv:
    README.write_text(_KEYS.sub(lambda _: table(), README.read_text("utf-8")), "utf-8")
