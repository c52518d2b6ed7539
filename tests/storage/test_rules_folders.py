"""A rules folder that is none, or in which something is missing, is told in one sentence."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from tests.storage.rules_scene import faults_of


def test_an_empty_folder(tmp_path: Path) -> None:
    (tmp_path / "rules").mkdir()
    (tmp_path / "rules" / "notes.json").write_text("{}")
    assert faults_of(tmp_path / "rules") == (
        "rules: there is no rule file in this folder: put the .toml files of the rules there."
    )


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    assert faults_of(tmp_path / "rules") == (
        "rules: the folder cannot be read (No such file or directory): look at its path and rights."
    )


def test_a_file_in_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "rules").write_text("")
    assert faults_of(tmp_path / "rules") == (
        "rules: the folder cannot be read (Not a directory): look at its path and rights."
    )


def test_a_file_that_cannot_be_opened(folder: Path) -> None:
    (folder / "odd.toml").mkdir()
    assert faults_of(folder) == (
        "odd.toml: this is a folder and its name is one of a rule file: rename it, or take it out."
    )


def test_what_is_no_file_is_told_and_never_waited_for(folder: Path) -> None:
    os.mkfifo(folder / "pipe.toml")
    (folder / "link.toml").symlink_to("nowhere")
    assert faults_of(folder) == (
        "link.toml: this link leads to no file: mend it, or take it out.\n"
        "pipe.toml: this is no regular file: take it out."
    )


def test_no_base_van(folder: Path) -> None:
    shutil.rmtree(folder / "vans")
    assert faults_of(folder) == (
        'catalogue.toml:58: option.larchlid.fits_vans[1]: there is no base van "fenwain"; '
        "add it in a [van.ID] table or correct the word.\n"
        "vans: there is no base van: add a file with a table [van.ID] in it."
    )


def test_nothing_asks_for_the_base_van(folder: Path) -> None:
    text = (folder / "catalogue.toml").read_text()
    (folder / "catalogue.toml").write_text(text.replace("[group.base-van]", "[group.body]"))
    assert faults_of(folder) == "options: nothing asks for the base van: add the table [group.base-van]."


def test_no_firm(folder: Path) -> None:
    (folder / "firm.toml").unlink()
    assert faults_of(folder) == "firm.toml: the firm is missing: add this file with a table [firm] in it."


VAT = "vat_percent = 20"


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        pytest.param(
            VAT,
            "vat = 20",
            "firm.toml:1: firm.vat_percent: is missing: add it (a number).\n"
            'firm.toml:5: firm.vat: there is no such key here; did you mean "vat_percent"?',
            id="a key of another name",
        ),
        pytest.param(
            VAT,
            "vat_percent = 1e15",
            "firm.toml:5: firm.vat_percent: 1e+15 is not from 0 to 100: check it.",
            id="a figure that makes no price",
        ),
        pytest.param(
            VAT,
            "vat_percent = 1e308",
            "firm.toml:5: firm.vat_percent: the number is larger than anything counted here: check it.",
            id="a figure beyond counting",
        ),
        pytest.param(
            "",
            "work_days = []\nhours_per_day = 0\n",
            'firm.toml:10: firm.work_days: is empty, and dates of work need a day: name one, such as "mon".\n'
            "firm.toml:11: firm.hours_per_day: a working day of 0 hours makes no dates: "
            "write hours above 0, at most 24.",
            id="days that make no dates",
        ),
        pytest.param(
            "",
            'work_days = ["mon", "toes"]\n',
            'firm.toml:10: firm.work_days[2]: "toes" is no word for this; '
            "use one of mon, tue, wed, thu, fri, sat, sun.",
            id="a day that is no day",
        ),
    ],
)
def test_a_broken_firm(old: str, new: str, words: str, folder: Path) -> None:
    """``new`` in the place of ``old``, or at the end."""
    text = (folder / "firm.toml").read_text()
    (folder / "firm.toml").write_text(text.replace(old, new) if old else text + new)
    assert faults_of(folder) == words


def test_a_step_after_one_that_is_not_there(folder: Path) -> None:
    (folder / "work.toml").write_text(
        '[work.B1]\nwork = "Strip"\nhours_fixed = 1\nhours_per_circuit = 0\nhours_basis = "fixed"\n'
        'predecessors = ["B7"]\nhold_point = ""\nhold_text = ""\nfreezes = []\n'
    )
    assert faults_of(folder) == (
        'work.toml:6: work.B1.predecessors[1]: there is no step of the build "B7"; use one of B0, B1.'
    )
