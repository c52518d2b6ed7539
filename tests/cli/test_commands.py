"""Whole outputs of the line commands, on jobs and on files."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from tests.cli.counter import Counter, Said

GLANCE = "£984 to £3,792 VAT in, van not included; 522 to 614 kg left (ESTIMATE); 2 undecided; 2 not known; 0 broken."
CANNOT_TELL = "Cannot tell yet: nothing is broken at STOP, but not everything that could stop it is decided or known."


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


def test_check_in_words(job: Counter) -> None:
    assert job("check", "1") == Said(
        3,
        (
            CANNOT_TELL,
            GLANCE,
            'STOP, cannot tell yet, needs base van. At stake: "Everything else is measured from the van." [one-van]',
            'NOTE, cannot tell yet, needs barrier height. At stake: "Measure before you drive in." [low-barrier]',
            "Undecided: Base van (step van).",
            "Undecided: Galley (step kitchen).",
            "Not known yet: barrier height.",
            "Data of the real van, not known yet (end of the chassis number and year).",
            "Assumed: no children.",
            "Assumed: weight of a child 30 kg.",
            "Assumed: no other load.",
            "Assumed: van not inside that sum.",
            "Assumed: do not mind.",
            "Assumed: no ceiling named.",
            "Not summed yet, nothing is known about it: Steam of the kettle (no rule waits for it).",
        ),
        (),
    )


def test_check_of_a_clash_and_of_what_holds(job: Counter) -> None:
    job("set", "1", "hushwain", "no-galley", "gas=no")
    clash = job("check", "0001")
    assert clash.code == 1
    assert clash.out[0] == "Broken: 1 thing at STOP. It cannot be signed or built as it stands."
    assert clash.out[2:4] == (
        "STOP, broken: You said no gas. It is about Gas bundle and gas (no gas). [no-gas-means-no-gas]",
        "  offer: Cook without gas.",
    )
    job("set", "1", "no-cooking", "parking_limit_mm=2100")
    holds = job("check", "0001")
    assert holds.code == 0
    assert holds.out[0] == "Holds at STOP: nothing that was looked at stops it."
    assert holds.out[2] == "Nothing is broken."


CHECK_SHAPE = {
    "type": "object",
    "required": [
        *("format", "verdict", "findings", "ledgers", "figures", "states", "price", "silent"),
        *("undecided", "unknown", "assumed", "not_in_catalogue", "number", "revision", "catalogue", "van"),
    ],
    "properties": {
        "verdict": {"enum": ["holds", "broken", "cannot tell"]},
        "findings": {
            "items": {
                "required": ["id", "level", "verdict", "subjects", "words", "lacks", "fixes", "source", "accepted"],
                "properties": {
                    "level": {"enum": ["STOP", "SIGN", "NOTE"]},
                    "verdict": {"enum": ["holds", "broken", "cannot tell"]},
                    "words": {"type": "string", "minLength": 10},
                },
            }
        },
        "ledgers": {"items": {"$ref": "#/$defs/reading"}},
        "figures": {"items": {"$ref": "#/$defs/reading"}},
        "states": {"additionalProperties": {"enum": ["chosen", "follows", "open", "blocked"]}},
        "price": {
            "required": ["net_pence", "vat_pence", "gross_pence", "van_included"],
            "properties": {k: {"$ref": "#/$defs/pence"} for k in ("net_pence", "vat_pence", "gross_pence")},
        },
    },
    "$defs": {
        "reading": {
            "required": ["id", "unit", "least", "most", "bound", "verdict"],
            "properties": {"verdict": {"enum": ["holds", "broken", "cannot tell"]}},
        },
        "pence": {
            "oneOf": [
                {"type": "integer"},
                {"required": ["least", "most"], "properties": {"least": {"type": "integer"}}},
            ]
        },
    },
}


def test_check_as_json(job: Counter) -> None:
    said = job("check", "1", "--json")
    assert (said.code, said.err) == (3, ())
    told = json.loads("\n".join(said.out))
    jsonschema.validate(told, CHECK_SHAPE)
    assert told["verdict"] == "cannot tell"
    assert told["states"] == {
        "hushwain": "follows",
        "side-galley": "open",
        "no-galley": "open",
        "gas-bundle": "chosen",
        "no-cooking": "open",
        "gas-alarm": "follows",
        "usb-pair": "open",
        "gas-light": "open",
    }
    assert told["price"]["gross_pence"] == {"least": 98_400, "most": 379_200}
    assert told["price"]["van_included"] is False
    assert told["silent"] == {"ledgers": ["kettle-steam"], "rules": []}
    assert [ledger["id"] for ledger in told["ledgers"]] == ["total-mass", "price-gross"]
    by_id = {finding["id"]: finding for finding in told["findings"]}
    assert by_id["flame-needs-alarm"]["verdict"] == "holds"
    assert by_id["one-van"]["lacks"] == [{"group": "base-van", "key": None}]


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


def test_set_and_drop_go_through_the_journal(job: Counter) -> None:
    assert job("set", "1", "usb-pair*2", "side-galley@left", "vin_tail=AB1234", "parking_limit_mm=2100").out[:-1] == (
        "Took 2 x USB pair.",
        "Took Side galley, left.",
        "Van data: end of the chassis number.",
        "Answered: barrier height 2,100 mm.",
    )
    assert job("set", "1", "side-galley@right", "usb-pair*3", "ceiling_gross_pence=£18,000").out[:-1] == (
        "Moved Side galley to right.",
        "USB pair: now 3.",
        "Answered: price ceiling £18,000.",
    )
    assert job("drop", "1", "usb-pair*1", "gas bundle", "vin_tail", "adults", "customer").out[:-1] == (
        "USB pair: now 2.",
        "Left out Gas bundle, and Gas alarm left with it.",
        "Van data: end of the chassis number.",
        "Grown-ups: not known yet.",
        "Customer: no name yet.",
    )
    journal = (job.jobs / "0001-r1.journal").read_text(encoding="utf-8")
    assert journal.count('{"edit":') == 3 + 4 + 3 + 5
    assert not (job.jobs / "0001.lock").exists()


def test_what_is_so_already_is_said_and_stops_nothing(job: Counter) -> None:
    said = job("set", "1", "adults=2", "usb-pair")
    assert said.code == 0
    assert said.out[:2] == ("adults=2: it is so already.", "Took USB pair.")


@pytest.mark.parametrize(
    ("words", "code", "why"),
    [
        (("set", "1", "usb-pair", "adults=9"), 1, "adults: A whole number from 1 to 6 is needed here."),
        (("set", "1", "usb-pair", "adults=two"), 1, "adults: A whole number from 1 to 6 is needed here."),
        (("set", "1", "usb-pair", "gas=perhaps"), 1, "gas: One of these is needed here: yes, no or do not mind."),
        (("set", "1", "usb-pair", "gas"), 1, "gas needs a value: write gas=VALUE."),
        (("set", "1", "usb-pair*9"), 1, "USB pair: no more than 4 of it in one van."),
        (("set", "1", "usb-pair", "gas-bundle@left"), 1, "Gas bundle has no side to choose."),
        (("set", "1", "side-galley@rear"), 1, "Side galley may stand right or left only."),
        (("set", "1", "side-galley@up"), 1, 'side-galley: "up" is no place: use left, right or rear.'),
        (("set", "1", "usb-pair*many"), 1, 'usb-pair: "many" is no count: use a whole number, as in usb-pair*2.'),
        (("set", "1", "usb-pair=blue"), 1,
         'usb-pair: "blue" is nothing an option takes: use left, right, rear, theirs, ours or a count.'),
        (("set", "1", "usb-pair", "year=soon"), 1, "year: a year such as 2029 is needed."),
        (("set", "1", "usb-pair", "weighed_front_kg=1e9"), 1,
         "weighed_front_kg: a number from 100 to 10000 is needed."),
        (("set", "1", "gas"), 1, "gas needs a value: write gas=VALUE."),
        (("set", "1", "Gas b"), 0, ""),
        (("set", "1", "light"), 0, ""),
        (("set", "1", "gas-lite"), 1, 'Nothing is called "gas-lite": did you mean "gas-light"?'),
        (("set", "1", "g"), 1,
         '"g" could be Gas bundle (gas-bundle), Gas alarm (gas-alarm) or Gas light (gas-light): '
         "type one of the names in brackets."),
        (("drop", "1", "usb-pair"), 1, "USB pair is not in, so nothing was changed."),
        (("drop", "1", "gas-alarm"), 1, "Gas alarm comes with Gas bundle: leave that out first."),
    ],
)  # fmt: skip
def test_all_or_nothing(job: Counter, words: tuple[str, ...], code: int, why: str) -> None:
    before = (job.jobs / "0001-r1.toml").read_bytes()
    said = job(*words)
    assert said.code == code
    if code:
        assert said == Said(code, (), (why, "Nothing was changed."))
        assert (job.jobs / "0001-r1.toml").read_bytes() == before


def test_files_are_changed_in_place_or_written_elsewhere(job: Counter, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert job("export", "1", "--to", str(out)).out == (str(out / "0001-r1.toml"),)
    file = str(out / "0001-r1.toml")
    exported = (out / "0001-r1.toml").read_bytes()
    elsewhere = tmp_path / "other.toml"
    assert job("set", file, "usb-pair", "--to", str(elsewhere)).out[0] == "Took USB pair."
    assert (out / "0001-r1.toml").read_bytes() == exported
    assert "Extras: USB pair." in job("show", str(elsewhere)).out
    assert job("set", file, "usb-pair").code == 0
    assert "Extras: USB pair." in job("show", file).out
    assert "Extras: USB pair." not in job("show", "1").out


def test_a_job_written_elsewhere_stays_as_it_is(job: Counter, tmp_path: Path) -> None:
    job("set", "1", "usb-pair", "--to", str(tmp_path / "trial.toml"))
    assert "Extras: USB pair." in job("show", str(tmp_path / "trial.toml")).out
    assert "Extras: USB pair." not in job("show", "1").out


def test_a_file_of_the_jobs_folder_is_the_job(job: Counter) -> None:
    job("set", str(job.jobs / "0001-r1.toml"), "usb-pair")
    assert '"usb-pair"' in (job.jobs / "0001-r1.journal").read_text(encoding="utf-8")
    assert "Extras: USB pair." in job("show", "1").out


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
