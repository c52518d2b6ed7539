"""What check says of a job, in words and as JSON."""

from __future__ import annotations

import json

import jsonschema

from tests.cli.counter import GLANCE, Counter, Said

CANNOT_TELL = "Cannot tell yet: nothing is broken at STOP, but not everything that could stop it is decided or known."


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
