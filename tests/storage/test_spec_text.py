"""Laws of the spec's file: what was said comes back, and the text is made of nothing else."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings

from specbuilder.model.brief import Answers
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import JobState, Owner, Place
from specbuilder.model.plain_text import lines, one_line
from specbuilder.model.spec import Acceptance, Choice, Customer, OpenQuestion, OwnPart, Spec, VanData
from specbuilder.storage.spec_files import read_spec, spec_text
from specbuilder.storage.spec_format import COMPUTED_KEYS, COMPUTED_TABLES
from tests.storage.scene import CATALOGUE, report_of, written
from tests.storage.specs import hostile_specs, specs

WHOLE = Path(__file__).with_name("spec_0147.toml")

FAMILY = Spec(
    number="0147",
    customer=Customer(name="M. Ash", contact="telephone 1\nmail"),
    answers=Answers(
        {BriefKey("adults"): 2, BriefKey("ages"): (9, 6), BriefKey("steering"): "right", BriefKey("signing"): "no"}
    ),
    van_data=VanData(vin_tail="A12345", weighed_front_kg=1150.5),
    choices=(
        Choice(option=OptionId("battery-small")),
        Choice(
            option=OptionId("side-galley"),
            place=Place.LEFT,
            at="2031-04-14 10:02",
            note='customer\'s "knee" room\nsecond line',
        ),
        Choice(option=OptionId("gas-bundle"), came_with=(OptionId("side-galley"),)),
        Choice(option=OptionId("window-fixed"), place=Place.RIGHT, owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=11)),
        Choice(option=OptionId("fridge-drawer"), count=2),
        Choice(option=OptionId("fenwain-short")),
        Choice(option=OptionId("gone-thing")),
    ),
    accepted=(Acceptance(rule=RuleId("plate"), words="Told so.", by="M. Ash", at="2031-04-14 11:05"),),
    questions=(OpenQuestion(text="Fabric", owner="customer", due="2031-04-28", stops="B6"),),
    note="asks twice about the price",
)


def test_the_whole_text() -> None:
    assert written(FAMILY) == WHOLE.read_text(encoding="utf-8")


@given(specs())
@settings(max_examples=150, deadline=None)
def test_what_was_said_comes_back(spec: Spec) -> None:
    assert read_spec(written(spec), "a.toml", CATALOGUE).spec == spec


@given(specs(strange_answers=True))
@settings(max_examples=80, deadline=None)
def test_without_a_catalogue_any_answer_comes_back(spec: Spec) -> None:
    assert read_spec(written(spec), "a.toml", None).spec == spec


@given(hostile_specs())
@settings(max_examples=80, deadline=None)
def test_hidden_characters_never_make_an_unreadable_file(spec: Spec) -> None:
    read = read_spec(written(spec), "a.toml", None).spec
    assert read.number == one_line(spec.number)
    assert read.customer == Customer(name=one_line(spec.customer.name), contact=lines(spec.customer.contact))
    assert [c.option for c in read.choices] == [one_line(c.option) for c in spec.choices]
    assert [c.note for c in read.choices] == [lines(c.note) for c in spec.choices]
    assert read.note == lines(spec.note)


def test_hidden_characters_of_a_catalogue_nobody_looked_at_never_keep_a_job_from_being_saved() -> None:
    evil = "a\ud800b\U000e0041c\x1bd"
    options = {key: replace(option, name=evil, description=evil) for key, option in CATALOGUE.options.items()}
    catalogue = replace(CATALOGUE, options=options)
    text = spec_text(catalogue, FAMILY, report_of(FAMILY))
    assert text.encode()
    assert read_spec(text, "a.toml", None).warnings == ()


def test_hidden_characters_are_shown_as_a_sign() -> None:
    assert one_line("a\tb\r\nc\nd\x1be\u202ef\udc80") == "a b c d\ufffde\ufffdf\ufffd"
    assert lines("a\r\nb\nc\rd\te") == "a\nb\nc\ufffdd e"


def test_writing_twice_gives_the_same_text_and_reading_changes_nothing() -> None:
    text = written(FAMILY)
    again = read_spec(text, "a.toml", CATALOGUE).spec
    assert written(again) == text


def test_everything_written_is_said_or_listed_as_computed() -> None:
    table = tomllib.loads(written(FAMILY))
    said_tables = {"format", "job", "customer", "vehicle", "brief", "job_state", "choice", "accepted", "open"}
    assert set(table) - said_tables <= set(COMPUTED_TABLES)
    for head in ("job", "vehicle"):
        stripped = {key: value for key, value in table[head].items() if key not in COMPUTED_KEYS[head]}
        assert set(stripped) <= {"number", "revision", "state", "note", "vin_tail", "front_as_received_kg"}


def test_what_is_computed_may_be_missing_or_wrong() -> None:
    text = written(FAMILY)
    said = "\n".join(
        line for line in text.splitlines() if not line.startswith(("x_mm", "name", "gross", 'line = "', "verdict"))
    )
    said = said.replace('base_van = "Fenwain Short"', 'base_van = ["any", "thing"]')
    spec = read_spec(said, "a.toml", CATALOGUE).spec
    assert replace(spec, customer=FAMILY.customer) == FAMILY


@pytest.mark.parametrize(
    ("state", "words"),
    [
        (JobState.DRAFT, "NOT TO BE BUILT: this is a draft."),
        (JobState.QUOTED, "NOT TO BE BUILT: this is quoted and not ordered."),
        (JobState.EXPIRED, "NOT TO BE BUILT: this has expired."),
        (JobState.ORDERED, None),
        (JobState.CHANGED, None),
        (JobState.AS_BUILT, None),
    ],
)
def test_what_may_not_be_built_says_so(state: JobState, words: str | None) -> None:
    job = tomllib.loads(written(replace(FAMILY, state=state)))["job"]
    assert job.get("not_to_be_built") == words


def test_nothing_open_is_written_as_none() -> None:
    text = written(Spec(number="0148", choices=FAMILY.choices[:-1]))
    assert "# OPEN QUESTIONS: who finds it out, by when, and what it stops. None.\n" in text
    assert "# ACCEPTED: cautions the customer was told and accepted, in the words used. None.\n" in text
    points = tomllib.loads(text)["open_points"]
    assert points["questions"] == "None"
    assert points["left_the_catalogue"] == "None"


def test_an_empty_spec_says_what_is_not_decided() -> None:
    table = tomllib.loads(written(Spec()))
    assert table["handed"]["line"] == "SLIDING DOOR: NOT DECIDED. STEERING: NOT KNOWN. GALLEY: NOT DECIDED."
    assert table["vehicle"]["base_van"] == "NOT DECIDED"
    assert table["not_known"]["brief"][0] == "How many grown-ups?"
    assert table["not_known"]["not_chosen"][0] == "Base van"
    assert table["do_not"]["drill"] == "NOT KNOWN: the base van is not decided"


def choice_at(spec: Spec, option: str) -> tuple[object, ...]:
    found = next(c for c in tomllib.loads(written(spec))["choice"] if c["option"] == option)
    return found.get("x_mm"), found.get("y_mm"), found.get("z_mm"), found.get("position")


def chosen(*choices: Choice) -> Spec:
    return Spec(choices=choices)


def test_a_side_changes_the_sign_of_y() -> None:
    galley = OptionId("side-galley")
    assert choice_at(chosen(Choice(option=galley, place=Place.RIGHT)), "side-galley")[1] == -585
    assert choice_at(chosen(Choice(option=galley, place=Place.LEFT)), "side-galley")[1] == 585
    assert choice_at(chosen(Choice(option=galley, place=Place.REAR)), "side-galley")[1] == -585
    unsaid = choice_at(chosen(Choice(option=galley)), "side-galley")
    assert unsaid[1:] == (-585, 450, "side NOT DECIDED; shown for the usual one")


def test_what_turns_with_the_kitchen_turns() -> None:
    hob, galley = Choice(option=OptionId("gas-bundle")), OptionId("side-galley")
    assert choice_at(chosen(hob), "gas-bundle")[1] == -585
    assert choice_at(chosen(hob, Choice(option=galley, place=Place.RIGHT)), "gas-bundle")[1] == -585
    assert choice_at(chosen(hob, Choice(option=galley, place=Place.LEFT)), "gas-bundle")[1] == 585


def test_a_battery_sits_at_its_place() -> None:
    battery = Choice(option=OptionId("battery-small"))
    assert choice_at(chosen(battery), "battery-small") == (None, None, None, "NOT DECIDED: Battery place")
    placed = chosen(battery, Choice(option=OptionId("place-box")))
    assert choice_at(placed, "battery-small") == (-180, -350, 120, None)


def test_x_from_the_rear_needs_the_van() -> None:
    window = Choice(option=OptionId("window-fixed"), place=Place.LEFT)
    unknown = "x is NOT KNOWN before the base van is decided"
    assert choice_at(chosen(window), "window-fixed") == (None, 840, 900, unknown)
    van = Choice(option=OptionId("fenwain-short"))
    assert choice_at(chosen(window, van), "window-fixed") == (1770, 840, 900, None)


def test_a_hole_that_is_not_settled_is_not_to_be_cut() -> None:
    hole = tomllib.loads(written(chosen(Choice(option=OptionId("gas-bundle"), owner=Owner.CUSTOMER))))["hole"][0]
    assert hole["do_not_cut_yet"] == (
        "x is not known before the base van is decided; the customer's own part: measure the part"
    )
