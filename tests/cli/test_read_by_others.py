"""What scripts and screen readers get: one fact a line, no columns, no signs of the screens, the same in any locale."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from importlib import metadata
from pathlib import Path

import pytest

from specbuilder.cli.line.shapes import SHAPES as JSON_SHAPES
from specbuilder.tui.marks import PLAIN, SHAPES

from .counter import RULES, Counter

ROOT = Path(__file__).parents[2]
READS = (
    "show 1",
    "show 1 kitchen",
    "show 1 van",
    "show 1 check",
    "brief 1",
    "check 1",
    "open 1",
    "find 1 gas",
    "details 1 side-galley",
    "why 1 gas-bundle",
    "why 1 total-mass",
    "ledgers 1",
    "ledgers 1 total-mass",
    "circuits 1",
    "compare 1 1b",
    "customer 1 --prices",
    "usual 1 kitchen",
    "fix 1",
    "finish 1",
    "switch 1 no-galley",
    "set 1 usb-pair --try",
    "jobs",
    "revisions 1",
    "today 1",
    "paper 1",
    "paper 1 customer workshop handover colleague",
    "build 1",
    "keys",
)
JSON = (
    *(
        "show 1",
        "show 1 kitchen",
        "show 1 brief",
        "show 1 check",
        "check 1",
        "open 1",
        "find 1 gas",
        "why 1 gas-bundle",
    ),
    *("ledgers 1", "ledgers 1 total-mass", "circuits 1", "compare 1 1b", "usual 1 kitchen", "fix 1", "finish 1"),
    *("switch 1 no-galley", "jobs", "revisions 1", "build 1", "verify 1"),
)
IN_DETAIL = frozenset({"edit", "label", "group", "option", "place", "count", "assumed", "reasons", "cause"})
"""Of choices and reasons within the lists of others."""
DRAWN = re.compile(r"[\u2500-\u259f\u25a0-\u25ff]")
COLUMNS = re.compile(r"\S {2,}\S")


@pytest.fixture
def two(job: Counter) -> Counter:
    """A job with a galley and a clash, and a variant of it."""
    job("set", "1", "side-galley", "gas=no", "note=ring first")
    job("variant", "1")
    job("drop", "1b", "side-galley")
    return job


def test_every_line_is_a_fact_without_columns_bars_or_marks(two: Counter) -> None:
    for words in READS:
        said = two(*words.split())
        assert said.code in (0, 1, 3), words
        assert said.out, words
        for line in said.out:
            assert line.strip(), words
            assert not DRAWN.search(line), (words, line)
            assert not COLUMNS.search(line), (words, line)
            assert "\x1b" not in line


def test_no_mark_of_the_screens_begins_a_line(two: Counter) -> None:
    shapes = {getattr(marks, name) for marks in (SHAPES, PLAIN) for name in ("chosen", "open", "blocked", "broken")}
    for words in READS:
        assert not [line for line in two(*words.split()).out if line.lstrip()[:1] in shapes - {"x", "#", "~"}], words


def test_what_a_program_asks_for_is_one_line_of_json_whose_keys_the_help_names(two: Counter) -> None:
    for words in JSON:
        said = two(*words.split(), "--json")
        assert said.code in (0, 1, 3), words
        (line,) = said.out
        told = json.loads(line)
        assert told["format"] == 1, words
        assert line.isascii(), words
        lists = [one for one in told.values() if isinstance(one, list) and one and isinstance(one[0], dict)]
        keys = {*told, *(key for rows in lists for key in rows[0])}
        name = "check" if words == "show 1 check" else words.split()[0]
        shape = set(re.findall(r"\w+", JSON_SHAPES[name]))
        assert keys - shape - IN_DETAIL == set(), words


def test_the_whole_spec_is_in_its_json(two: Counter) -> None:
    told = json.loads("".join(two("show", "1", "--json").out))
    assert told["customer"]["name"] == "The Saturday family"
    assert told["note"] == "ring first"
    assert told["answers"] == {"adults": 2, "gas": "no"}
    assert [(one["option"], one["came_with"]) for one in told["choices"]] == [
        ("gas-bundle", []),
        ("side-galley", []),
        ("gas-alarm", ["gas-bundle"]),
    ]
    groups = json.loads("".join(two("show", "1", "kitchen", "--json").out))["groups"]
    states = {one["id"]: one["state"] for group in groups for one in group["options"]}
    assert (states["side-galley"], states["gas-alarm"], states["usb-pair"]) == ("chosen", "chosen", "open")


@pytest.mark.parametrize("locale", [{"LC_ALL": "C"}, {"LANG": "C"}])
def test_a_pipe_gets_the_same_bytes_in_every_plain_locale(job: Counter, locale: dict[str, str]) -> None:
    line = [sys.executable, "-m", "specbuilder", "--jobs", str(job.jobs), "--rules", str(RULES), "show", "1"]
    other = ("LC_", "LANG", "PYTHONIO", "PYTHONUTF8")
    kept = {name: value for name, value in os.environ.items() if not name.startswith(other)}
    done = subprocess.run(line, capture_output=True, check=False, cwd=ROOT, env={**kept, **locale})
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.decode("utf-8").splitlines() == list(job("show", "1").out)
    assert "£984" in done.stdout.decode("utf-8")


def test_errors_go_to_stderr_and_leave_stdout_empty(job: Counter) -> None:
    for words in ("show 9", "show 1 nowhere", "set 1 nowhere", "usual 1 nowhere", "undo 9", "keys nowhere", "why 1"):
        said = job(*words.split())
        assert said.code in (1, 2), words
        assert said.out == (), words
        assert said.err, words


def test_the_version_is_that_of_the_package_and_stands_nowhere_else(counter: Counter) -> None:
    said = counter("--version")
    assert (said.code, said.err) == (0, ())
    assert said.out == (f"specbuilder {metadata.version('specbuilder')}",)
    declared = re.search(r'^version = "(.+)"$', (ROOT / "pyproject.toml").read_text("utf-8"), re.MULTILINE)
    assert declared is not None
    files = (ROOT / "specbuilder").rglob("*.py")
    assert not [path.name for path in files if declared[1] in path.read_text("utf-8")]


def test_a_paper_is_read_out_with_every_cell_behind_its_head(two: Counter) -> None:
    out = two("paper", "1", "workshop").out
    assert out[0] == "Workshop pack."
    assert any(re.search(r": .*; .*: ", line) for line in out)
    assert two("paper", "1", "workshop", "--as", "pdf").err == (
        "A PDF cannot be read out: name the folder it is written to with --to DIR.",
    )


def test_what_somebody_typed_never_makes_a_line_of_its_own_nor_markup(two: Counter) -> None:
    two(
        "set", "1", "customer=[red]x[/] $(y) `z`", "contact=one\nStep kitchen: all is decided.", "side-galley.note=a\nb"
    )
    two("ask", "1", "[b]", "--who", "[i]")
    for words in READS:
        out = two(*words.split()).out
        assert "Step kitchen: all is decided." not in out, words
        assert not {chr(code) for code in range(32)} & set("".join(out)), words
    assert "Contact: one Step kitchen: all is decided." in two("brief", "1").out
    assert "Note: a b. [side-galley.note]" in two("details", "1", "side-galley").out
    assert "Customer: [red]x[/] $(y) `z`." in two("show", "1").out
