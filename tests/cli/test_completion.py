"""Shell completion: the words that are offered, and bash itself offering them."""

from __future__ import annotations

import os
import pty
import re
import select
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest

from specbuilder.cli.line.offers import LEFT_TO_THE_SHELL, OFFERS, ONLY_TYPED
from specbuilder.cli.line.parser import parser
from specbuilder.cli.line.scripts import SCRIPTS, commands_of, flags_of
from specbuilder.cli.line.table import COMMANDS

from .counter import RULES, Counter


def offered(counter: Counter, *typed: str) -> tuple[str, ...]:
    said = counter("completion", "words", "--", *typed)
    assert (said.code, said.err) == (0, ())
    return said.out


def test_every_word_in_capitals_is_completed_left_to_the_shell_or_only_typed() -> None:
    """A command that takes something new says what may stand there."""
    slots = {
        f"{action.metavar}"
        for one in (parser(), *commands_of(parser()).values())
        for action in one._actions
        if action.nargs != 0
    }
    assert slots == set(OFFERS) | LEFT_TO_THE_SHELL | ONLY_TYPED


def test_commands_flags_jobs_steps_options_and_ledgers_are_offered(job: Counter) -> None:
    assert offered(job, "che") == ("check",)
    assert set(offered(job, "")) == set(COMMANDS)
    assert offered(job, "check", "--j") == ("--json", "--jobs")
    assert offered(job, "--as") == ("--ascii",)
    assert offered(job, "check", "0") == ("0001",)
    assert offered(job, "show", "1@") == ()
    assert offered(job, "show", "0001@") == ("0001@1",)
    assert offered(job, "usual", "1", "kit") == ("kitchen",)
    assert offered(job, "show", "1", "gal") == ("galley",)
    assert offered(job, "details", "1", "side") == ("side-galley",)
    assert offered(job, "ledgers", "1", "total") == ("total-mass",)
    assert offered(job, "why", "1", "no-gas") == ("no-gas-means-no-gas",)
    assert offered(job, "accept", "1", "low") == ("low-barrier",)
    assert offered(job, "fix", "1", "--rank", "") == ("price", "mass", "hours", "weeks")
    assert offered(job, "finish", "1", "--by", "us") == ("usual",)
    assert offered(job, "paper", "1", "work") == ("workshop",)
    assert offered(job, "keys", "side") == ("side by side",)


def test_what_can_be_set_is_offered_with_its_values_places_and_fields(job: Counter) -> None:
    assert offered(job, "set", "1", "ad") == ("adults=",)
    assert offered(job, "set", "1", "adults=2", "vin") == ("vin_tail=",)
    assert offered(job, "set", "1", "gas=n") == ("gas=no",)
    assert offered(job, "set", "1", "side-galley=t") == ("side-galley=theirs",)
    assert offered(job, "set", "1", "side-galley@") == ("side-galley@right", "side-galley@left")
    assert offered(job, "set", "1", "side-galley.m") == ("side-galley.mass_kg=",)


def test_nothing_is_offered_where_nobody_can_know_or_nothing_can_be_read(job: Counter, tmp_path: Path) -> None:
    assert offered(job, "chekc", "") == ()
    assert offered(job, "ask", "1", "") == ()
    assert offered(job, "undo", "1", "") == ()
    assert offered(job, "show", "--jobs", str(tmp_path / "nowhere"), "0") == ()
    assert offered(job, "details", "--rules", str(tmp_path), "1", "side") == ()


def test_a_shell_nobody_knows_is_named_with_those_there_are(counter: Counter) -> None:
    said = counter("completion", "tcsh")
    assert (said.code, said.out) == (2, ())
    assert said.err == ('"tcsh" is no shell that can be completed for: use bash, zsh, fish.',)


@pytest.mark.parametrize("shell", SCRIPTS)
def test_a_script_is_made_of_the_parser(shell: str, counter: Counter) -> None:
    text = "\n".join(counter("completion", shell).out)
    assert "@" not in re.sub(r"\[=@\]|\(@f?\)|\[@\]|@\"|\{@|\(@\)|=@", "", text), "a place was not filled in"
    for name, one in commands_of(parser()).items():
        assert re.search(rf"\b{name}\b", text)
        for flag in flags_of(one):
            assert flag.removeprefix("--") in text


@pytest.fixture
def path(job: Counter, tmp_path: Path) -> str:
    """A search path with a ``specbuilder`` that works on the small firm, and the scripts beside it."""
    program = tmp_path / "bin" / "specbuilder"
    program.parent.mkdir()
    words = f'exec "{sys.executable}" -m specbuilder --jobs "{job.jobs}" --rules "{RULES}" "$@"'
    program.write_text(f"#!/bin/sh\ncd {Path(__file__).parents[2]}\n{words}\n", "utf-8")
    program.chmod(0o755)
    for shell in SCRIPTS:
        (tmp_path / f"script.{shell}").write_text("\n".join(job("completion", shell).out) + "\n", "utf-8")
    return f"{program.parent}:{os.environ['PATH']}"


def run(shell: str, lines: list[str], path: str) -> str:
    """What a shell prints that runs these lines."""
    env = {**os.environ, "PATH": path}
    plain = {"bash": "--norc", "fish": "--no-config"}[shell]
    words = [shell, plain, "-c", "\n".join(lines)]
    done = subprocess.run(words, capture_output=True, text=True, check=False, env=env)
    assert done.stderr == ""
    return done.stdout


@pytest.mark.skipif(shutil.which("bash") is None, reason="needs bash")
def test_bash_completes_words_by_the_script(path: str, tmp_path: Path) -> None:
    tried = {
        "specbuilder|che": ["check"],
        "specbuilder|--ver": ["--version"],
        "specbuilder|fix|1|--ra": ["--rank"],
        "specbuilder|--jobs|x|sh": ["show"],
        "specbuilder|check|0": ["0001"],
        "specbuilder|details|1|side": ["side-galley"],
        "specbuilder|set|1|gas|=|n": ["no"],
        "specbuilder|set|1|adults|=|2|side-galley|@|le": ["left"],
        "specbuilder|usual|1|kit": ["kitchen"],
    }
    lines = [f". {tmp_path / 'script.bash'}"]
    for typed in tried:
        words = " ".join(f"'{word}'" for word in typed.split("|"))
        lines.append(f'COMP_WORDS=({words}); COMP_CWORD={typed.count("|")}; _specbuilder; echo "${{COMPREPLY[*]}}"')
    assert [line.split() for line in run("bash", lines, path).splitlines()] == list(tried.values())


@pytest.mark.skipif(shutil.which("fish") is None, reason="needs fish")
def test_fish_completes_words_by_the_script(path: str, tmp_path: Path) -> None:
    tried = {"che": "check", "check --js": "--json", "check 0": "0001", "details 1 side": "side-galley"}
    asked = [f"complete -C 'specbuilder {typed}'" for typed in tried]
    told = run("fish", [f"source {tmp_path / 'script.fish'}", *asked], path).splitlines()
    assert [line.partition("\t")[0] for line in told] == list(tried.values())


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo terminal")
@pytest.mark.parametrize(("shell", "plain"), [("bash", "--norc"), ("zsh", "-f")])
def test_tab_types_the_rest(shell: str, plain: str, path: str, tmp_path: Path) -> None:
    program = shutil.which(shell)
    if program is None:
        pytest.skip(f"needs {shell}")
    child, ours = pty.fork()
    if child == 0:
        os.environ.update(PATH=path, TERM="dumb", PS1="$ ", INPUTRC="/dev/null")
        os.execv(program, [shell, plain, "-i"])
    try:
        os.write(ours, f". {tmp_path / f'script.{shell}'}; echo rea''dy\n".encode())
        _read_until(ours, "ready")
        os.write(ours, b"specbuilder ledgers 0\ttotal\t")
        shown = _read_until(ours, "total-mass")
        assert "0001" in shown
        assert "total-mass" in shown
    finally:
        os.close(ours)
        os.waitpid(child, 0)


def _read_until(terminal: int, word: str, seconds: float = 20) -> str:
    """What the terminal shows until this word comes; all it showed when it does not come in time."""
    shown, end = "", time.monotonic() + seconds
    while word not in shown and time.monotonic() < end:
        if select.select([terminal], [], [], 0.1)[0]:
            shown += os.read(terminal, 1000).decode(errors="replace")
    return shown
