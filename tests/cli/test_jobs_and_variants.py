"""Jobs, revisions, variants, older rules and what cannot be read, by line commands."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from .counter import RULES, Counter, Said

NOTHING = "Nothing was changed."


def test_jobs_are_narrowed_by_words_and_told_to_programs(job: Counter) -> None:
    job("new", "adults=2", "customer=The lake couple")
    assert [line[:4] for line in job("jobs").out] == ["0001", "0002"]
    assert [line[:4] for line in job("jobs", "lake").out] == ["0002"]
    assert job("jobs", "nobody") == Said(0, (), ("No job has these letters. Fewer letters find more.",))
    told = json.loads("".join(job("jobs", "lake", "--json").out))["jobs"]
    assert [(one["number"], one["customer"], one["state"], one["faults"]) for one in told] == [
        ("0002", "The lake couple", "draft", [])
    ]
    assert "price" not in told[0]
    priced = json.loads("".join(job("jobs", "lake", "--prices", "--json").out))["jobs"]
    assert priced[0]["price"]["gross_pence"]


def test_a_variant_is_a_copy_that_goes_its_own_way(job: Counter) -> None:
    made = job("variant", "1")
    assert made == Said(
        0, ("0001b", "0001b is a copy of 0001 as it stands. specbuilder compare 0001 0001b says what differs."), ()
    )
    assert job("show", "1b").out[1:] == job("show", "1").out[1:]
    job("set", "1b", "no-galley")
    assert job("revisions", "1").out == ("Revision 1: draft, not quoted (the newest).", "Variant 0001b: draft.")
    told = json.loads("".join(job("revisions", "1", "--json").out))
    assert [one["newest"] for one in told["revisions"]] == [True]
    assert told["variants"] == [{"number": "0001b", "state": "draft"}]


def test_a_line_is_brought_from_one_variant_into_the_other_as_one_step(job: Counter) -> None:
    job("set", "1", "side-galley")
    job("variant", "1")
    job("set", "1b", "no-galley", "adults=3", "year=2029")
    tried = job("merge", "1b", "1", "galley", "--try")
    assert tried.out[0] == "Took No kitchen, instead of Side galley."
    assert tried.out[-1] == "Nothing was changed: it was only tried. Without --try it is done."
    merged = job("merge", "1b", "1", "galley", "adults", "year")
    assert merged.out[:3] == (
        "Took No kitchen, instead of Side galley.",
        "Answered: 3 grown-ups.",
        "Van data: year.",
    )
    assert "Nothing that is built, answered or worked out differs." in job("compare", "1", "1b").out
    assert job("merge", "1b", "1", "galley") == Said(
        1, (), ("galley does not differ. Nothing that can be brought over differs.", NOTHING)
    )
    job("undo", "1")
    assert job("merge", "1b", "1", "adults").err[0] == "adults does not differ. What differs is: year."


def test_a_line_can_be_brought_from_a_file_into_a_file(job: Counter, tmp_path: Path) -> None:
    one, other = tmp_path / "one.toml", tmp_path / "other.toml"
    job("set", "1", "usb-pair*2", "--to", str(one))
    job("set", "1", "usb-pair*3", "--to", str(other))
    assert job("merge", str(other), str(one), "usb-pair").out[0] == "USB pair: now 3."
    assert "Nothing that is built, answered or worked out differs." in job("compare", str(one), str(other)).out


@pytest.fixture
def later(job: Counter, tmp_path: Path) -> Counter:
    """The same jobs under rules of another year, with another price."""
    folder = shutil.copytree(RULES, tmp_path / "later")
    firm = folder / "firm.toml"
    firm.write_text(firm.read_text("utf-8").replace("2031-04", "2032-04"), "utf-8")
    parts = folder / "options" / "kitchen.toml"
    parts.write_text(parts.read_text("utf-8").replace("price_net_pence = 4800", "price_net_pence = 5800", 1), "utf-8")
    return Counter(job.folder, job._capture, folder)


def test_a_quote_of_older_rules_is_held_against_those_of_today_and_moved(job: Counter, later: Counter) -> None:
    assert job("today", "1").out == ("Job 0001 is held against the rules of today already.",)
    job("set", "1", "hushwain", "no-galley", "no-cooking", "parking_limit_mm=0")
    job("drop", "1", "gas-bundle")
    assert job("quote", "1").code == 0
    before = later("today", "1")
    assert before.out[0] == "Job 0001 was written under 2031-04; the rules and prices of today are 2032-04."
    assert before.out[-1].startswith("Nothing was changed. With --move: move to today: begin revision 2")
    assert later("today", "1") == before
    moved = later("today", "1", "--move")
    assert moved.out[-1] == "Job 0001 goes on under the rules and prices of 2032-04."
    told = later("revisions", "1").out
    assert told[0] == "Revision 2: draft, takes the place of revision 1 (the newest)."
    assert told[1].startswith("Revision 1: quoted, quoted until ")
    assert told[2] == "specbuilder show 0001@1 looks at it. What was replaced is not to be built."
    assert later("today", "1").out == ("Job 0001 is held against the rules of today already.",)


def test_a_job_that_cannot_be_read_is_restored_from_what_is_kept(job: Counter) -> None:
    shown = job("show", "1").out
    assert job("restore", "1") == Said(1, (), ("Job 0001 can be read: there is nothing to restore.", NOTHING))
    (job.jobs / "0001-r1.toml").write_text("spoilt", "utf-8")
    said = job("show", "1")
    assert said.code == 2
    assert said.err[-1] == "specbuilder restore 0001 opens it from what is kept: journal."
    other = job("restore", "1", "--instead", "yesterday")
    assert other.err == ('--instead: "yesterday" is not kept of this job: use journal.', NOTHING)
    restored = job("restore", "1")
    assert restored.code == 0
    assert restored.out[0] == "Job 0001 was restored from its journal."
    assert job("show", "1") == Said(0, shown, ())
    assert len(list(job.jobs.glob("0001-r1.set-aside-*.toml"))) == 1


def test_what_is_about_a_job_wants_a_job(job: Counter, tmp_path: Path) -> None:
    spec = tmp_path / "a.toml"
    job("set", "1", "usb-pair", "--to", str(spec))
    for words in (("variant",), ("revisions",), ("today",), ("build",), ("restore",)):
        said = job(*words, str(spec))
        assert said.code == 2
        assert said.err[0].endswith(": only a job has revisions, variants and records.")
