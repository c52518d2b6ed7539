"""Choices and answers set and dropped by words: through the journal, all or nothing, in a job or in a file."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.counter import Counter, Said


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
