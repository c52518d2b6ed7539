"""What the screens show beside the walk, read line by line: open things, find, sums, usual, details, what-if."""

from __future__ import annotations

import json

from specbuilder.wording.brief import nothing_open

from .counter import GLANCE, Counter, Said

NOTHING = "Nothing was changed."
BARRIER = "Step brief: Where it lives: barrier height, not known yet. Nobody finds it out yet. [parking_limit_mm]"
VAN = (
    "Step van: Data of the real van, not known yet (end of the chassis number and year). Nobody finds it out yet. [van]"
)
BASE_VAN = "Step van: Base van, undecided. Nobody finds it out yet. [base-van]"


def test_open_things_say_who_finds_them_out_by_when_and_what_they_stop(job: Counter) -> None:
    galley = "Step kitchen: Galley, undecided. Nobody finds it out yet. [galley]"
    assert job("open", "1") == Said(0, (BARRIER, VAN, BASE_VAN, galley), ())
    asked = job("ask", "1", "galley", "--who", "customer", "--due", "2099-04-28", "--stops", "signing")
    assert asked.out[0] == 'Open question: "Galley: Which kitchen, and where?"'
    told = "Step kitchen: Galley, undecided. Customer finds it out by 2099-04-28. It stops signing. [galley]"
    assert job("open", "1").out == (BARRIER, VAN, BASE_VAN, told)
    job("ask", "1", "Colour of the lamp", "--who", "customer")
    assert job("open", "1").out[-1] == "Step check: Colour of the lamp: customer finds out no date."


def test_what_is_open_as_json_names_what_ask_and_set_take(job: Counter) -> None:
    job("set", "1", "gas=no")
    told = json.loads("".join(job("open", "1", "--json").out))
    assert (told["format"], told["number"], told["state"]) == (1, "0001", "draft")
    kinds = [(one["kind"], one["id"], one["who"]) for one in told["open"]]
    assert kinds == [
        ("answer", "parking_limit_mm", None),
        ("van", "van", None),
        ("group", "base-van", None),
        ("group", "galley", None),
        ("finding", "no-gas-means-no-gas", None),
    ]


def test_a_question_is_closed_by_what_it_is_about_or_by_its_first_words(job: Counter) -> None:
    job("ask", "1", "galley", "--who", "customer")
    job("ask", "1", "Colour", "of", "the", "lamp")
    job("ask", "1", "Colour", "of", "the", "floor")
    assert job("ask", "1", "galley", "--answered").out[0] == 'Answered: "Galley: Which kitchen, and where?"'
    several = 'More than one open question begins with "colour of": type more of it.'
    assert job("ask", "1", "colour", "of", "--answered") == Said(1, (), (several, NOTHING))
    assert job("ask", "1", "colour of the l", "--answered").out[0] == 'Answered: "Colour of the lamp".'
    missed = '"Whether" is no open question of this spec: specbuilder open lists them.'
    assert job("ask", "1", "Whether", "--answered") == Said(1, (), (missed, NOTHING))


def test_nothing_open_says_so(counter: Counter) -> None:
    counter(
        "new", "adults=2", "no-galley", "no-cooking", "hushwain", "parking_limit_mm=0", "vin_tail=AB1234", "year=2029"
    )
    assert counter("open", "1").out == (nothing_open(),)


def test_find_names_state_and_step_and_the_id_that_every_command_takes(job: Counter) -> None:
    assert job("find", "1", "gas") == Said(
        0,
        (
            "Step brief, brief: Gas: assumed: do not mind. [gas]",
            "Step kitchen, chosen: Gas bundle. [gas-bundle]",
            "Step kitchen, follows: Gas alarm. [gas-alarm]",
            "Step kitchen, open: Gas light. [gas-light]",
            'Step kitchen, holds: kept; said if broken: "You said no gas." [no-gas-means-no-gas]',
        ),
        (),
    )
    assert job("find", "1", "chassis").out == ("Step van, field: end of the chassis number. [vin_tail]",)
    assert job("find", "1", "zzz") == Said(1, (), ("Nothing has these letters. Fewer letters find more.",))


def test_ledgers_are_listed_worst_first_and_one_is_told_with_its_entries(job: Counter) -> None:
    assert job("ledgers", "1").out == (
        "Weight of the loaded van: holds: 522 to 614 kg spare (ESTIMATE). [total-mass]",
        "Price with tax: nothing here to measure. [price-gross]",
    )
    one = job("ledgers", "1", "weight")
    assert one == job("why", "1", "total-mass")
    assert "Gas bundle: 21 kg" in one.out
    told = json.loads("".join(job("ledgers", "1", "--json").out))
    assert [one["id"] for one in told["ledgers"]] == ["total-mass", "price-gross"]
    assert job("ledgers", "1", "galley").err == ("galley is no ledger: ledgers without a name lists them.",)


def test_the_house_usual_is_shown_with_its_sum_before_it_is_taken_as_one_step(job: Counter) -> None:
    shown = (
        "Galley: Side galley, adds 2,808 pounds and 92 kilograms.",
        "Together adds 2,808 pounds and 92 kilograms.",
    )
    before = job("show", "1").out
    hint = "Nothing is changed yet. To take all of it, add --take."
    assert job("usual", "1", "kitchen") == Said(0, (*shown, hint), ())
    assert job("show", "1").out == before
    taken = job("usual", "1", "kitchen", "--take")
    assert taken.out[:3] == (*shown, "Took the house usual of step kitchen: Side galley.")
    assert job("undo", "1").out[0] == "Undone: house usual of step kitchen."
    assert job("show", "1").out == before
    none = "Nothing is undecided here, or the house has no usual for it."
    assert job("usual", "1", "roof").out == (none,)
    assert job("usual", "1", "roof", "--take").code == 0
    assert job("usual", "1", "galley").code == 2


def test_what_if_shows_what_it_adds_and_breaks_and_writes_nothing(job: Counter) -> None:
    before = {path.name: path.read_bytes() for path in job.jobs.iterdir()}
    assert job("set", "1", "gas=no", "usb-pair", "--try") == Said(
        0,
        (
            "Answered: no gas.",
            "Took USB pair.",
            "All together: adds 58 pounds; parts take as long as before.",
            "STOP now broken: You said no gas.",
            GLANCE.replace("£984 to £3,792", "£1,042 to £3,850").replace("0 broken", "1 broken"),
            "Nothing was changed: it was only tried. Without --try it is done.",
        ),
        (),
    )
    assert job("drop", "1", "gas-bundle", "--try").out[0] == "Left out Gas bundle, and Gas alarm left with it."
    refused = job("set", "1", "adults=9", "--try")
    assert (refused.code, refused.out) == (1, ())
    assert {path.name: path.read_bytes() for path in job.jobs.iterdir()} == before


def test_details_say_places_whose_note_and_what_the_workshop_needs(job: Counter) -> None:
    assert job("set", "1", "side-galley@left", "side-galley.note=mind the tap").out[1] == "Noted on Side galley."
    assert job("details", "1", "side galley").out == (
        "Side galley, left, chosen, 2,808 pounds, 92 kilograms, usual. [side-galley]",
        "Worktop, sink and cupboards along the wall.",
        "Can stand: right.",
        "Stands: left.",
        "Whose part: ours.",
        "Note: mind the tap. [side-galley.note]",
        "Source: price list.",
    )
    assert job("drop", "1", "side-galley.note").out[0] == "Note taken off Side galley."
    assert job("details", "1", "galley").err == ("galley is no option: show lists the options of a step or a group.",)


def test_a_part_the_customer_brings_has_its_sheet_and_each_blank_is_a_question(job: Counter) -> None:
    job("set", "1", "side-galley")
    brought = job("set", "1", "side-galley=theirs")
    assert brought.out[0].startswith(
        'Side galley is theirs: its sheet is asked for; open question: "Side galley: mass?"'
    )
    assert sum(line.startswith("Step check: Side galley: ") for line in job("open", "1").out) == 4
    assert job("set", "1", "side-galley.mass_kg=7,5").out[0] == "Side galley: mass 7.5 kg."
    assert "Mass: 7.5 kg. [side-galley.mass_kg]" in job("details", "1", "side-galley").out
    assert sum(line.startswith("Step check: Side galley: ") for line in job("open", "1").out) == 3
    assert job("set", "1", "side-galley=theirs").out[0] == "side-galley=theirs: it is so already."
    assert "Mass: 7.5 kg. [side-galley.mass_kg]" in job("details", "1", "side-galley").out
    blank = 'Side galley: mass not known yet; open question: "Side galley: mass?"'
    assert job("drop", "1", "side-galley.mass_kg").out[0] == blank
    assert job("undo", "1").out[0].startswith("Undone: sheet of Side galley")


def test_what_no_sheet_can_hold_is_refused_with_what_is_needed(job: Counter) -> None:
    job("set", "1", "side-galley", "side-galley=theirs")
    for typed, why in (
        ("side-galley.mass_kg=1,500", "side-galley.mass_kg: a number from 0 to 1,000 is needed here."),
        ("side-galley.arrives=soon", "side-galley.arrives: a day such as 2031-04-28 is needed here."),
        (
            "side-galley.door_mm=3",
            "side-galley.door_mm: the sheet of Side galley asks mass_kg, watts_w, cut_out_mm and arrives.",
        ),
        ("usb-pair.mass_kg=3", "USB pair is no part the customer brings: say usb-pair=theirs first."),
        ("side-galley.note", "side-galley.note needs a value: write side-galley.note=VALUE."),
        ("adults.note=x", "adults is no option, so it has no note."),
    ):
        assert job("set", "1", typed) == Said(1, (), (why, NOTHING))


def test_a_decimal_comma_is_read_as_on_the_screens(job: Counter) -> None:
    assert job("set", "1", "weighed_front_kg=1.204,5", "weighed_rear_kg=1,104.5").code == 0
    van = job("show", "1", "van").out
    assert "The real van, weighed front axle: 1204.5." in van
    assert "The real van, weighed rear axle: 1104.5." in van
    assert job("set", "1", "parking_limit_mm=2,100").out[0] == "Answered: barrier height 2,100 mm."
    assert job("set", "1", "parking_limit_mm=2,5").code == 1


def test_the_keys_of_a_screen_are_read_with_the_acts_they_ask_for(counter: Counter) -> None:
    out = counter("keys", "walk").out
    assert "u or F4: undo. [undo]" in out
    assert f"walk, {out[0]}" in counter("keys").out
    said = counter("keys", "kitchen")
    assert said.code == 2
    assert said.err[0].startswith('"kitchen" is no screen: use one of jobs, ')
