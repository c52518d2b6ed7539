"""The fault harness tries what it says, finds nothing in the program as it is, and finds what is broken on purpose."""

from __future__ import annotations

import random
import time
from pathlib import Path

import pytest

from specbuilder.model.edits import WriteNote
from specbuilder.storage import journal, seals
from specbuilder.storage.journal import entry_line
from specbuilder.storage.journal_file import JournalFile

from . import cuts, frozen, hostile, mutants, two_counters
from .kinds import KINDS, tried
from .table import table
from .tally import Run, Tally
from .words import lacks


def run_in(folder: Path, kind: str = "cuts", seconds: float = 20) -> Run:
    folder.mkdir(parents=True, exist_ok=True)
    return Run(
        tally=Tally(kind=kind), dice=random.Random(1), folder=folder, ends=time.monotonic() + seconds, small=True
    )


def test_a_journal_cut_and_spoilt_loses_nothing(tmp_path: Path) -> None:
    tally = tried("cuts", 1, 20, tmp_path / "cuts", small=True)
    assert tally.tried > 20
    assert (tally.lost, tally.tracebacks, tally.unclear) == (0, 0, 0), tally.examples


def test_two_processes_on_one_job_lose_nothing(tmp_path: Path) -> None:
    run = run_in(tmp_path / "two", "two")
    two_counters.catalogue(two_counters.SMALL_RULES)
    for one in (two_counters._open_at_once, two_counters._take_over_at_once, two_counters._begin_at_once):
        two_counters._rounds(run, one)
    assert run.tally.tried == 15
    assert (run.tally.lost, run.tally.tracebacks, run.tally.unclear) == (0, 0, 0), run.tally.examples


def test_mutated_small_rules_are_told_or_read(tmp_path: Path) -> None:
    run = run_in(tmp_path / "mutants", "mutants")
    with mutants.parsed_once():
        mutants._rules(run, mutants.SMALL_RULES, "small rules")
    assert run.tally.tried == 5
    assert (run.tally.lost, run.tally.tracebacks, run.tally.unclear) == (0, 0, 0), run.tally.examples


def test_a_journal_that_takes_spoilt_lines_for_whole_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(journal, "_summed", lambda line, *, must: line[:-9])
    run = run_in(tmp_path)
    written = cuts.unsaved(run, cuts.SMALL_RULES)
    house = cuts.house_of(written.files.folder, written.rules)
    place = written.journal.index(b"M. Hale")
    spoilt = written.journal[:place] + b"N" + written.journal[place + 1 :]
    whole = sum(end <= place for end in written.ends)
    cuts.read_back(run, house, written, spoilt, whole, "a letter changed")
    assert run.tally.lost == 1
    assert not run.tally.good


def test_a_journal_writer_that_drops_what_it_was_given_is_counted_as_lost(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    append = JournalFile.append
    dropped = entry_line(WriteNote(note="1.1"))
    monkeypatch.setattr(JournalFile, "append", lambda self, line: None if line == dropped else append(self, line))
    run = run_in(tmp_path / "run", "two")
    two_counters.catalogue(two_counters.SMALL_RULES)
    while not run.tally.lost and run.more:  # until counter 1 is the one that holds the job
        two_counters._open_at_once(run, run.fresh("job"))
    assert run.tally.lost == 1
    assert "'1.1'" in run.tally.examples[0]
    assert not run.tally.good


def test_a_seal_that_does_not_look_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(seals, "_sha256", lambda path: "the same for all")
    run = run_in(tmp_path, "frozen")
    folder = tmp_path / "0001-r1-signed"
    folder.mkdir()
    (folder / "paper.txt").write_bytes(b"a paper")
    seal = seals.Seal(
        number="0001",
        revision=1,
        act="signed",
        at="",
        content="",
        catalogue_version="",
        catalogue_digest="",
        program="",
        files={"paper.txt": "the same for all"},
    )
    frozen._every(run, folder / "paper.txt", lambda: bool(seals.altered(folder, seal)), 1)
    assert run.tally.lost == len(b"a paper")


def test_a_mistake_of_the_program_is_counted_as_a_traceback(tmp_path: Path) -> None:
    run = run_in(tmp_path)
    with run.counted("dividing by nought"):
        _ = 1 / (run.tally.tried - 1)
    assert (run.tally.tried, run.tally.tracebacks, run.tally.good) == (1, 1, False)
    assert "ZeroDivisionError" in run.tally.examples[0]


def test_what_comes_out_of_a_hostile_text_is_looked_at(tmp_path: Path) -> None:
    run = run_in(tmp_path)
    hostile._clean(run, "a line", "plain, \N{POUND SIGN}5, Z\N{LATIN SMALL LETTER E WITH ACUTE}")
    assert run.tally.lost == 0
    for text in ("\x1b[2J", "\u202e", "\ud800", "\U000e0041"):
        hostile._clean(run, "a line", text)
    assert run.tally.lost == 4


@pytest.mark.parametrize(
    ("text", "missing"),
    [
        ("0001-r1.toml:14: choice.mass_kg: is text: write a number.", ""),
        ("something is wrong with it", "file, place, cure"),
        ("0001-r1.toml:14: choice.mass_kg: is text.", "cure"),
        ("0001-r1.toml could not be read, the disk is full: make room and try again.", "place"),
    ],
)
def test_a_message_says_which_file_where_and_what_to_do(text: str, missing: str) -> None:
    assert lacks(text, files=("0001-r1.toml",), line=True) == missing


def test_the_table_ends_with_a_total_and_every_example() -> None:
    one, other = Tally(kind="cuts", tried=1200), Tally(kind="keys", tried=3)
    other.lose("an edit")
    told = list(table([one, other], 7))
    assert any(line.startswith("total (seed 7)") and "1,203" in line for line in told)
    assert told[-1] == "keys: lost: an edit"
    assert set(KINDS) == {"kills", "cuts", "disk", "two", "mutants", "frozen", "keys", "hostile"}
