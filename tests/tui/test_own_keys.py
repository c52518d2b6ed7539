"""A house may choose its own keys: what is wrong with them is told before anything is drawn, and all words follow."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.ids import BriefKey
from specbuilder.storage.keys_file import KeysFaultsError
from specbuilder.tui.keyboard import FIXED, Keyboard, rebound, slips_of
from specbuilder.tui.keys import TABLE, Act, Where, faults_of
from specbuilder.tui.own_keys import own_keyboard
from specbuilder.wording.key_names import named_in_sentences, speak_of
from specbuilder.wording.last_line import back_hint
from tests.journeys.bench import counter_on, press, spec

CURE = "write one character that is no digit, or f1 to f9."


@pytest.fixture(autouse=True)
def words_as_shipped() -> Iterator[None]:
    yield
    speak_of({})


def keyboard(folder: Path, text: str) -> Keyboard:
    path = folder / "keys.toml"
    path.write_text(text, "utf-8")
    return own_keyboard(path)


def refused(folder: Path, text: str) -> list[str]:
    with pytest.raises(KeysFaultsError) as told:
        keyboard(folder, text)
    return [str(fault).replace(f"{folder}/", "") for fault in told.value.faults]


def test_a_key_takes_the_place_of_the_one_that_was_there(tmp_path: Path) -> None:
    own = keyboard(
        tmp_path,
        '[keys]\nundo = "z"\nnext = ["j", "f5"]\nredo = ["y", "f6"]\ntheir-own-part = "o"\nopen-things = "%"\n',
    )
    assert own.act_of("z", Where.WALK) is Act.UNDO
    assert own.act_of("u", Where.WALK) is None
    assert own.act_of("f4", Where.WALK, typing=True) is Act.UNDO, "a kind of key that is not named stays"
    assert (own.act_of("f5", Where.WALK), own.act_of("f6", Where.WALK)) == (Act.NEXT, Act.REDO)
    assert own.act_of("percent_sign", Where.WALK, character="%") is Act.OPEN_THINGS


def test_hints_help_and_sentences_name_the_chosen_key(tmp_path: Path) -> None:
    own = keyboard(tmp_path, '[keys]\nundo = "z"\n')
    assert [entry.shown for entry in own.lines_of(Where.WALK) if entry.act is Act.UNDO] == ["z F4"]
    assert back_hint() == "z takes it back"


def test_the_counter_is_worked_by_the_chosen_keys(tmp_path: Path) -> None:
    own = keyboard(tmp_path, '[keys]\nnew-job = "+"\nundo = "z"\n')
    counter = counter_on(tmp_path / "jobs", keyboard=own)
    press(counter, "n")
    assert counter.walk is None
    press(counter, "+", "2")
    assert spec(counter).answers.get(BriefKey("adults")) == 2
    press(counter, "up", "z")
    assert spec(counter).answers.get(BriefKey("adults")) is None


def test_every_slip_is_told_with_its_line_and_a_cure(tmp_path: Path) -> None:
    assert refused(tmp_path, '[keys]\nundoo = "z"\nback = "x"\nundo = "7"\nredo = []\nwhy = ["ctrl+w", "f10"]\n') == [
        'keys.toml:2: keys.undoo: nothing the screens do is called that: did you mean "undo"?',
        "keys.toml:3: keys.back: its keys stay as they are, so that every screen can be left: take the line out.",
        'keys.toml:4: keys.undo: "7" is no key that can be chosen: write one character that is no digit, or f1 to f9.',
        "keys.toml:5: keys.redo: no key is named: write one character that is no digit, or f1 to f9.",
        f'keys.toml:6: keys.why: "ctrl+w" is no key that can be chosen: {CURE}',
        f'keys.toml:6: keys.why: "f10" is no key that can be chosen: {CURE}',
    ]


def test_two_acts_on_one_key_are_refused(tmp_path: Path) -> None:
    (told,) = refused(tmp_path, '[keys]\nundo = "r"\n')
    assert re.fullmatch(
        r'keys\.toml:2: keys\.undo: "r" does redo already on [a-z ,.]+: '
        r"choose another key, or give redo another one too\.",
        told,
    )
    assert refused(tmp_path, '[keys]\nfind = "?"\n')[0].startswith('keys.toml:2: keys.find: "?" does keys already')


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("undo = 1", "keys.toml:1: undo: this file has one table, [keys]: write the line below it."),
        ("[keys]\nundo = 1", "keys.toml:2: keys.undo: needs a text, but this is the number 1: put it in quotes."),
        ("[keys", "keys.toml:1: this line is not written as TOML"),
        ("keys = 3", "keys.toml:1: keys: needs a table, but this is the number 3:"),
    ],
)
def test_a_file_of_another_shape_is_told(tmp_path: Path, text: str, told: str) -> None:
    assert refused(tmp_path, text)[0].startswith(told)


def test_an_empty_file_leaves_the_keys_of_the_program(tmp_path: Path) -> None:
    assert keyboard(tmp_path, "").table == TABLE


def test_sentences_name_the_first_key_of_the_table() -> None:
    names = Keyboard().names()
    for act, shipped in named_in_sentences().items():
        assert shipped in {entry.shown.split()[0] for entry in TABLE if entry.act == act and entry.shown}, act
        assert names[act]


CHOSEN = st.dictionaries(
    st.sampled_from([act.value for act in Act if act not in FIXED]),
    st.lists(
        st.sampled_from([*"abcdefghijklmnopqrstuvwxyz+-/?%;", *(f"f{n}" for n in range(1, 10))]), min_size=1, max_size=2
    ).map(tuple),
    max_size=6,
)


@given(CHOSEN)
def test_whatever_is_chosen_and_not_refused_is_a_sound_table(chosen: dict[str, tuple[str, ...]]) -> None:
    if slips_of(chosen):
        return
    own = Keyboard(rebound(chosen))
    assert faults_of(own.table) == ()
    for where in Where:
        acts = {entry.act for entry in own.lines_of(where)}
        assert acts == {entry.act for entry in Keyboard().lines_of(where)}
        assert own.act_of("escape", where) is Keyboard().act_of("escape", where)
