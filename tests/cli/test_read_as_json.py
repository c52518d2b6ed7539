"""``details`` and ``customer`` as JSON: the same facts as the lines they print, by keys."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from tests.cli.counter import Counter

HOUSE = Path(__file__).parents[2]


def told(counter: Counter, *words: str) -> dict[str, Any]:
    said = counter(*words, "--json")
    assert (said.code, said.err) == (0, ())
    return json.loads("\n".join(said.out))  # type: ignore[no-any-return]


def test_details_tell_an_option_that_is_in(job: Counter) -> None:
    found = told(job, "details", "1", "gas-bundle")
    assert (found["format"], found["number"], found["revision"], found["state"]) == (1, "0001", 1, "draft")
    assert (found["option"]["id"], found["option"]["state"], found["option"]["count"]) == ("gas-bundle", "chosen", 1)
    assert [choice["option"] for choice in found["choices"]] == ["gas-bundle"]
    assert found["words"] == list(job("details", "1", "gas-bundle").out)


def test_details_tell_which_place_is_taken(job: Counter) -> None:
    for place in ("left", "right"):
        assert job("set", "1", "side-galley", f"side-galley@{place}").code == 0
        found = told(job, "details", "1", "side-galley")
        assert {one["place"]: one["taken"] for one in found["places"]} == {
            "left": place == "left",
            "right": place == "right",
        }
        assert [choice["place"] for choice in found["choices"]] == [place]


def test_details_name_the_cables_of_an_option(counter: Counter) -> None:
    house = Counter(counter.folder, counter._capture, HOUSE / "rules")
    family = str(HOUSE / "examples" / "saturday-family.toml")
    runs = told(house, "circuits", family)["circuits"]
    option = runs[0]["option"]
    assert told(house, "details", family, option)["circuits"] == [
        line["id"] for line in runs if line["option"] == option
    ]


def test_details_of_what_is_no_option_stay_a_sentence(job: Counter) -> None:
    said = job("details", "1", "galley", "--json")
    assert (said.code, said.out) == (2, ())
    assert said.err == ("galley is no option: show lists the options of a step or a group.",)


def test_the_customer_view_tells_price_and_lines(job: Counter) -> None:
    found = told(job, "customer", "1")
    assert found["price"] == told(job, "show", "1")["price"]
    assert found["words"] == list(job("customer", "1").out)
    assert (found["state"], len(found["counts"])) == ("draft", 3)
    assert all(set(fact) == {"name", "words"} for fact in found["facts"])
    assert all(names["names"] for names in found["away_from_a_plug"])


def test_the_prices_of_parts_stand_in_the_lines_only_where_asked_for(job: Counter) -> None:
    plain, priced = told(job, "customer", "1"), told(job, "customer", "1", "--prices")
    assert priced["words"] == list(job("customer", "1", "--prices").out)
    assert priced["words"] != plain["words"]
    assert {key: value for key, value in priced.items() if key != "words"} == {
        key: value for key, value in plain.items() if key != "words"
    }


def test_nothing_of_the_firms_note_is_shown_to_the_customer(job: Counter) -> None:
    assert job("set", "1", "note=They haggle.").code == 0
    assert "haggle" not in json.dumps(told(job, "customer", "1"))
