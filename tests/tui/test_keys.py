from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import TABLE, Act, Where, faults_of

SHIPPED = Keyboard()
act_of, hints_of, lines_of = SHIPPED.act_of, SHIPPED.hints_of, SHIPPED.lines_of


def test_no_key_means_two_things_in_one_place() -> None:
    assert faults_of(TABLE) == ()


def test_two_acts_on_one_key_are_told() -> None:
    clash = replace(TABLE[0], act=Act.UNDO)
    assert faults_of((*TABLE, clash)) == ("enter means enter and undo on jobs",)


def test_digits_are_never_commands() -> None:
    assert not {key for entry in TABLE for key in (*entry.keys, *entry.always)} & set("0123456789")


def test_nothing_of_ours_needs_a_chord_or_a_key_that_desktops_take() -> None:
    keys = {key for entry in TABLE for key in (*entry.keys, *entry.always)}
    assert not [key for key in keys if key.startswith(("ctrl", "alt", "shift"))]
    assert not keys & {"f10", "f11", "f12"}


@pytest.mark.parametrize("where", Where)
def test_every_place_can_be_left_and_helped(where: Where) -> None:
    acts = {entry.act for entry in lines_of(where)}
    assert acts & {Act.BACK, Act.LEAVE}
    assert Act.KEYS in acts or where is Where.NOTICE
    assert hints_of(where)


@pytest.mark.parametrize("entry", TABLE, ids=lambda entry: f"{entry.act}")
def test_every_act_works_while_something_is_typed_or_stands_among_the_actions(entry: object) -> None:
    assert entry in TABLE
    typed = [e for e in TABLE if e.act is entry.act and e.always]  # type: ignore[attr-defined]
    assert typed or all(Act.ACTIONS in {e.act for e in lines_of(where)} for where in entry.where - {Where.NOTICE})  # type: ignore[attr-defined]


def test_letters_are_text_while_something_is_typed() -> None:
    assert act_of("n", Where.WALK) is Act.NEXT
    assert act_of("n", Where.WALK, typing=True) is None
    assert act_of("f6", Where.WALK, typing=True) is Act.NEXT
    assert act_of("escape", Where.BRIEF, typing=True) is Act.BACK
    assert act_of("backspace", Where.BRIEF, typing=True) is None
