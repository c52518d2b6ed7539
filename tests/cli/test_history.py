"""Undo and redo by line command: through the journal of the job, naming what was taken back."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from .counter import GLANCE, Counter, Said

NOTHING = "Nothing was changed."


def test_undo_names_what_it_takes_back_and_redo_puts_it_back(job: Counter) -> None:
    before = job("show", "1").out
    assert job("set", "1", "usb-pair*2").out[0] == "Took 2 x USB pair."
    taken = job("show", "1").out
    assert job("undo", "1") == Said(0, ("Undone: 2 x USB pair.", GLANCE), ())
    assert job("show", "1").out == before
    assert job("redo", "1").out[0] == "Again: took 2 x USB pair."
    assert job("show", "1").out == taken


def test_undo_goes_back_step_by_step_to_the_beginning_of_the_job_and_no_further(job: Counter) -> None:
    told = [job("undo", "1").out[0] for _ in range(3)]
    assert told == ["Undone: customer.", "Undone: Gas bundle.", "Undone: grown-ups back to not known yet."]
    assert job("undo", "1") == Said(1, (), ("Nothing left to undo in this revision.", NOTHING))
    assert [job("redo", "1").code for _ in range(4)] == [0, 0, 0, 1]
    assert job("redo", "1").err == ("Nothing left to put back.", NOTHING)


def test_a_new_change_leaves_nothing_to_put_back(job: Counter) -> None:
    job("undo", "1")
    job("set", "1", "usb-pair")
    assert job("redo", "1").code == 1


def test_one_command_with_several_things_is_one_step_for_each(job: Counter) -> None:
    job("set", "1", "usb-pair", "adults=3")
    assert job("undo", "1").out[0] == "Undone: grown-ups back to 2 grown-ups."
    assert job("undo", "1").out[0] == "Undone: USB pair."


def test_no_undo_reaches_behind_a_quote(job: Counter) -> None:
    job("set", "1", "hushwain", "no-galley", "parking_limit_mm=0")
    assert job("quote", "1").code == 0
    quoted = job("show", "1").out
    told = f"Stays done: quote of {date.today()}. Undo reaches back to it and no further."
    assert job("undo", "1") == Said(1, (), (told, NOTHING))
    assert job("set", "1", "usb-pair").err == (
        "This revision has left the house: a change makes the next one.",
        "specbuilder change 0001 begins it; set and drop with --try show what it would do.",
        NOTHING,
    )
    assert job("set", "1", "usb-pair", "--try").out[1] == "All together: adds 58 pounds; parts take as long as before."
    assert job("show", "1").out == quoted
    assert job("ask", "1", "Colour of the lamp").code == 0
    assert job("undo", "1").out[0] == 'Undone: open question "Colour of the lamp".'
    assert job("show", "1").out == quoted


def test_a_file_keeps_no_steps(job: Counter, tmp_path: Path) -> None:
    spec = tmp_path / "a.toml"
    job("set", "1", "usb-pair", "--to", str(spec))
    said = job("undo", str(spec))
    assert said.code == 2
    assert said.err[0].endswith(": only a job keeps what was done to it.")


def test_what_another_counter_has_is_not_undone(job: Counter) -> None:
    (job.jobs / "0001.lock").write_text("garbage", encoding="utf-8")
    journal = (job.jobs / "0001-r1.journal").read_bytes()
    assert job("undo", "1").code == 1
    assert (job.jobs / "0001-r1.journal").read_bytes() == journal
