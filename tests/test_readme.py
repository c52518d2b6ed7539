"""README says what the program does: its tables of keys and of commands are made from those of the program.

``python -m tests.test_readme --write`` writes it anew.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

from specbuilder.cli.line.acts import acts_of
from specbuilder.cli.line.table import GROUPS
from specbuilder.cli.output import EXITS
from specbuilder.tui.acts import Act, Where
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import TABLE

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
_KEYS = re.compile(r"(?<=<!-- keys -->\n).*?(?=<!-- end of keys -->)", re.DOTALL)
_COMMANDS = re.compile(r"(?<=<!-- commands -->\n).*?(?=<!-- end of commands -->)", re.DOTALL)
_LINK = re.compile(r"\]\(([^)#:]+)\)")


def table() -> str:
    """The keys of the walk as a table."""
    rows = (f"| {entry.shown} | {entry.words} |" for entry in Keyboard().lines_of(Where.WALK) if entry.shown)
    return "\n".join(("", "| key on the walk | what it does |", "|---|---|", *rows, "", ""))


def commands() -> str:
    """Every command in its group, with its keys on the screens; and what the exit codes mean."""
    lines = ["", "| command | what it does | key |", "|---|---|---|"]
    for group in GROUPS:
        lines.append(f"| **{group.title}** | | |")
        for command in group.commands:
            keys = " ".join(dict.fromkeys(filter(None, map(_key, acts_of(command.name)))))
            lines.append(f"| `{command.name}` | {command.says} | {keys} |")
    lines += [
        "",
        "| exit code | means |",
        "|---|---|",
        *(f"| {code.value} | {words} |" for code, words in EXITS.items()),
    ]
    return "\n".join((*lines, "", ""))


def _key(act: Act) -> str:
    return next((entry.shown.split()[0] for entry in TABLE if entry.act is act and entry.shown), "")


def test_the_table_of_commands_is_that_of_the_program() -> None:
    (found,) = _COMMANDS.findall(README.read_text("utf-8"))
    assert found == commands()


def test_the_table_of_keys_is_that_of_the_program() -> None:
    (found,) = _KEYS.findall(README.read_text("utf-8"))
    assert found == table()


def test_every_file_that_is_linked_is_there() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        links = _LINK.findall((ROOT / name).read_text("utf-8"))
        assert links
        assert [link for link in links if not (ROOT / link).exists()] == [], name


if __name__ == "__main__" and "--write" in sys.argv:
    text = _KEYS.sub(lambda _: table(), README.read_text("utf-8"))
    README.write_text(_COMMANDS.sub(lambda _: commands(), text), "utf-8")
