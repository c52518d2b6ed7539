"""Whole outputs of the line commands, on jobs and on files."""

from __future__ import annotations

import json

import pytest

from tests.cli.counter import GLANCE, Counter, Said


def test_a_new_job_prints_its_number_first(counter: Counter) -> None:
    assert counter("new", "adults=2", "gas-bundle", "customer=The Saturday family") == Said(
        0,
        (
            "0001",
            "Answered: 2 grown-ups.",
            "Took Gas bundle, with Gas alarm.",
            "Customer: The Saturday family.",
            GLANCE,
        ),
        (),
    )
    assert counter("new", "customer=The lake couple").out[0] == "0002"


def test_a_new_job_that_could_not_begin_leaves_nothing(counter: Counter) -> None:
    assert counter("new", "adults=9") == Said(
        1, (), ("adults: A whole number from 1 to 6 is needed here.", "Nothing was changed.")
    )
    assert not counter.jobs.exists()


def test_show_the_spec(job: Counter) -> None:
    assert job("show", "1").out == (
        "Job 0001, revision 1, draft, not quoted.",
        "Customer: The Saturday family.",
        "Van: van not known.",
        "Price: £984 to £3,792 VAT in, van not included.",
        "Weight: about 522 to 614 kg left.",
        "Base van: which van, whose is it, and what do we find on it?",
        "Base van: undecided, adds 0 pounds and 2,370 kilograms.",
        "Kitchen and water: where do you cook, what keeps cold, how much water?",
        "Galley: undecided, adds 0 to 2,808 pounds and 0 to 92 kilograms.",
        "Cooking: Gas bundle.",
        "Extras: Gas alarm, came with Gas bundle.",
    )


COOKING = (
    "Cooking: decided, 2 answers.",
    "1 Gas bundle, chosen, 936 pounds, 21 kilograms.",
    "2 None built in, open, takes off 936 pounds, 21 kilograms.",
)


def test_show_a_group_or_a_step(job: Counter) -> None:
    assert job("show", "1", "cooking").out == COOKING
    assert job("show", "1", "Cooking").out == COOKING
    kitchen = job("show", "1", "kitchen").out
    assert kitchen[0] == "Kitchen and water: where do you cook, what keeps cold, how much water?"
    assert kitchen[4:7] == COOKING
    assert kitchen[7:9] == (
        "Extras: 1 chosen, 3 answers, up to 6.",
        "1 Gas alarm, follows, 48 pounds, 0.4 kilograms, from Gas bundle.",
    )
    assert job("show", "1", "check").out[-2:] == (
        "Weight of the loaded van: holds: 522 to 614 kg spare (ESTIMATE).",
        "Price with tax: nothing here to measure.",
    )
    assert job("show", "1", "brief").out == job("brief", "1").out
    assert job("show", "1", "cellar") == Said(
        2, (), ('Nothing is called "cellar": specbuilder show FILE STEP lists what there is.',)
    )
    assert job("show", "1", "total-mass") == Said(
        2,
        (),
        (
            '"total-mass" is no step and no group. '
            "The steps are brief, van, roof, seating, kitchen, heating, power, finish, check.",
        ),
    )


def test_brief(job: Counter) -> None:
    assert job("brief", "1").out == (
        "1 Who travels: 2 grown-ups; assumed: no children, weight of a child 30 kg, no other load.",
        "2 Where it lives: not known yet.",
        "3 Gas: assumed: do not mind.",
        "4 Ceiling: assumed: van not inside that sum, no ceiling named.",
        "Customer: The Saturday family.",
        "Contact: not known yet.",
        "Note of the job, private: none.",
    )


def test_why(job: Counter) -> None:
    assert job("why", "1", "gas-alarm").out[:5] == (
        "Gas alarm, follows, 48 pounds, 0.4 kilograms, from Gas bundle. "
        "Came with Gas bundle and leaves with it. ESTIMATE: price, mass and weeks.",
        '"You cannot smell it."',
        f"1. you took Gas bundle, {job('why', '1', 'gas-alarm').out[2][-5:]}",
        "2. Gas bundle gives flame",
        "3. nothing else is left that gives alarm",
    )
    assert job("why", "1", "flame-needs-alarm").out == (
        'Holds. If it were broken: "You cannot smell it."',
        "Source: alarm standard.",
    )
    assert job("why", "1", "one-van").out == (
        'STOP, cannot tell yet, needs base van. At stake: "Everything else is measured from the van."',
        "needs a decision: Base van (step van)",
        "offer: Pick one.",
        "Source: trade practice.",
    )
    assert job("why", "1", "Steam of the kettle").out == (
        "Steam of the kettle: not summed yet: nothing is known about it.",
    )
    assert job("why", "1", "cooking").out == COOKING
    assert job("why", "1", "parking_limit_mm").out == ("barrier height: not known yet",)
    assert job("why", "1", "customer") == Said(
        2, (), ("customer is simply as it was typed; nothing stands behind it.",)
    )


@pytest.mark.parametrize("thing", ["gas-alarm", "one-van", "total-mass", "kettle-steam", "cooking", "adults"])
def test_why_as_json(job: Counter, thing: str) -> None:
    told = json.loads("\n".join(job("why", "1", thing, "--json").out))
    assert told["id"] == thing
    assert told["words"]
    assert isinstance(told["reasons"], list)


def test_jobs(counter: Counter) -> None:
    assert counter("jobs") == Said(
        0, (), ("No jobs yet. Use specbuilder new when the customer's first sentence begins.",)
    )
    counter("new", "customer=The Saturday family", "gas-bundle")
    counter("new", "hushwain")
    assert [line.partition(", changed ")[0] for line in counter("jobs").out] == [
        "0001 The Saturday family: draft, van not known",
        "0002 no name yet: draft, Hushwain",
    ]
    assert [line.partition(", changed ")[0] for line in counter("jobs", "--prices").out] == [
        "0001 The Saturday family: draft, van not known, £984 to £3,792 VAT in, van not included",
        "0002 no name yet: draft, Hushwain, £0 to £3,744 VAT in, van not included",
    ]


def test_audit(counter: Counter) -> None:
    assert counter("audit") == Said(
        0,
        (
            "Base vans 1, groups 4, options 7, rules 4, ledgers and figures 3, lines of the brief and the job 9, "
            "work steps 0, cautions 0, papers 0, tables 0.",
            "No faults: the program starts with these rules.",
            "To look at again: 1 zero-without-note, 1 implausible, 1 no-reason, 1 no-source, 1 no-usual, "
            "3 tag-unused and 1 silent.",
            "zero-without-note options/kitchen.toml:67 usb-pair (USB pair): mass_kg is 0 and no zero_note says why",
            "implausible options/kitchen.toml:75 gas-light (Gas light): mass_kg is 9200, expected -100 to 1000",
            "no-reason options/kitchen.toml:75 gas-light (Gas light): needs_because is empty: "
            "it is the sentence the customer hears",
            "no-source options/kitchen.toml:75 gas-light (Gas light): source is empty: say where the figures come from",
            "no-usual options/kitchen.toml:29 cooking (Cooking): usual is empty: name what the house usually takes",
            "tag-unused vans/hushwain.toml:3 electric: is given, and nothing asks for it",
            "tag-unused options/kitchen.toml:10 wall-kitchen: is given, and nothing asks for it",
            "tag-unused options/kitchen.toml:67 usb: is given, and nothing asks for it",
            "silent ledgers.toml:34 kettle-steam (Steam of the kettle): is not summed yet: nothing is known about it",
        ),
        (),
    )
