"""Everything the screens do can be done line by line: each act has its command, each command its line of help."""

from __future__ import annotations

import shlex

import pytest

from specbuilder.cli.commands import DOES
from specbuilder.cli.line.acts import ONLY_ON_SCREEN, ONLY_THERE, TYPED, TYPED_THERE, typed_for
from specbuilder.cli.line.parser import parser
from specbuilder.cli.line.table import COMMANDS, COMPLETION, GROUPS
from specbuilder.cli.output import EXITS, Exit
from specbuilder.tui.acts import Act, Where
from specbuilder.tui.keys import TABLE

from .counter import Counter

MEANINGS = sorted({(entry.act, where) for entry in TABLE for where in entry.where})


def test_every_act_of_every_screen_is_typed_or_only_moves_about() -> None:
    told = {meaning: typed_for(*meaning) for meaning in MEANINGS}
    silent = {(act, where) for (act, where), typed in told.items() if typed is None}
    assert silent == {
        (act, where) for act, where in MEANINGS if act in ONLY_ON_SCREEN or (act, where) in ONLY_THERE
    } - (set(TYPED_THERE))
    assert len(silent) < len(MEANINGS)


def test_no_act_is_told_of_that_the_screens_do_not_have() -> None:
    assert set(TYPED) | ONLY_ON_SCREEN | {Act.ENTER} == set(Act)
    assert not set(TYPED) & ONLY_ON_SCREEN
    assert set(TYPED_THERE) | ONLY_THERE <= set(MEANINGS)


def test_an_act_nobody_thought_of_is_missed() -> None:
    with pytest.raises(KeyError):
        typed_for("a new act", Where.WALK)  # type: ignore[arg-type]


@pytest.mark.parametrize("typed", sorted({*TYPED.values(), *TYPED_THERE.values()}))
def test_what_is_typed_for_an_act_is_a_command_line(typed: str) -> None:
    arguments = parser().parse_args(shlex.split(typed))
    assert arguments.command == typed.split()[0]


@pytest.mark.parametrize("command", COMMANDS.values(), ids=lambda command: command.name)
def test_the_example_of_a_command_can_be_typed_and_stands_in_its_help(command, counter: Counter) -> None:  # type: ignore[no-untyped-def]
    words = shlex.split(command.example)
    assert parser().parse_args([command.name, *words]).command == command.name
    said = counter(command.name, "--help")
    assert (said.code, said.err) == (0, ())
    assert any(line.startswith(f"Example: specbuilder {command.name} {command.example}".rstrip()) for line in said.out)
    assert not any("  " in line.strip() for line in said.out), "columns are no good when they are read aloud"


def test_every_command_of_the_table_does_something() -> None:
    assert set(DOES) | {COMPLETION} == set(COMMANDS)


def test_the_help_lists_every_command_once_in_its_group_and_every_exit_code(counter: Counter) -> None:
    out = counter("--help").out
    for group in GROUPS:
        at = out.index(f"{group.title}:")
        lines = [f"  {command.name}: {command.says}" for command in group.commands]
        assert list(out[at + 1 : at + 1 + len(lines)]) == lines
    assert list(out[-len(EXITS) :]) == [f"  {code.value}: {words}" for code, words in EXITS.items()]
    assert set(EXITS) == set(Exit)


def test_a_mistyped_command_is_met_with_the_one_like_it(counter: Counter) -> None:
    said = counter("shwo", "1")
    assert (said.code, said.out) == (2, ())
    assert said.err == ('There is no command "shwo". Did you mean show?', "Help: specbuilder --help lists them all.")
