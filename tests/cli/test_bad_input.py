"""What a line command says when something cannot be used: a sentence with file, place and cure, never a traceback."""

from __future__ import annotations

import os
import pty
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.cli import way_in as entry
from specbuilder.cli.main import main
from tests.cli.counter import RULES, Counter, Said


def test_a_file_that_is_not_there(counter: Counter) -> None:
    said = counter("check", "/no/such/file.toml")
    assert (said.code, said.out) == (2, ())
    assert said.err == (
        "/no/such/file.toml could not be read, it is not there: check the path, and that its drive is connected.",
    )
    assert counter("check", "7").code == 2


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe\x00not text",
        b"format = ",
        b"format = 99\n",
        b'format = 1\n[job]\nnumber = 7\n[[choice]]\noption = "a"\ncount = "two"\n',
        b"a = " + b"[" * 5000,
        b'[customer]\nname = "\x1b[2J"',
        b"",
    ],
    ids=["bytes", "cut off", "newer", "wrong types", "deep", "control characters", "empty"],
)
def test_a_file_that_cannot_be_used(counter: Counter, tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "odd.toml"
    file.write_bytes(content)
    for command in (("check", str(file)), ("check", str(file), "--json"), ("set", str(file), "gas-bundle")):
        said = counter(*command)
        assert (said.code, said.out) == (2, ())
        assert said.err[0] == "This file cannot be used. Nothing was changed."
        assert all(line.startswith(str(file)) for line in said.err[1:])
        assert len(said.err) > 1
        assert file.read_bytes() == content


def test_every_fault_of_the_rules_at_once(counter: Counter, tmp_path: Path) -> None:
    rules = tmp_path / "rules"
    shutil.copytree(RULES, rules)
    kitchen = rules / "options" / "kitchen.toml"
    kitchen.write_text(
        kitchen.read_text(encoding="utf-8").replace("mass_kg = 92\n", 'mass_kg = "92"\n'), encoding="utf-8"
    )
    (rules / "firm.toml").write_text("[firm]\nnam = 1\n", encoding="utf-8")
    counter.rules = rules
    for words in (("check", "1"), ("audit",), ("new", "adults=2"), ("jobs",)):
        said = counter(*words)
        assert (said.code, said.out) == (2, ())
        assert said.err[0].startswith("Rules: ")
        assert said.err[0].endswith("The program starts when they are mended.")
        assert any("firm.toml" in line for line in said.err)
        assert any("mass_kg" in line for line in said.err)


def test_an_empty_folder_of_rules(counter: Counter, tmp_path: Path) -> None:
    empty = tmp_path / "nothing"
    empty.mkdir()
    assert counter("audit", str(empty)).code == 2
    assert counter("audit", str(tmp_path / "not-there")).code == 2


def test_a_job_another_counter_has_is_only_read(job: Counter) -> None:
    from specbuilder.storage.jobs import JobsFolder

    held = JobsFolder(job.jobs).open("0001", "counter 1", None)
    try:
        said = job("set", "1", "usb-pair")
        assert (said.code, said.out) == (1, ())
        assert said.err[0].startswith("Read only: counter 1 has this job since ")
        assert said.err[1] == (
            f"If no counter has job 0001 open, delete {job.jobs}/0001.lock; "
            "one left by another machine holds for a day."
        )
        assert said.err[-1] == "Nothing was changed. Try again later, or write elsewhere with --to OUT."
        assert job("check", "1").code == 3
    finally:
        held.abandon()


def test_a_lock_that_names_nobody_is_named_with_its_cure(job: Counter) -> None:
    lock = job.jobs / "0001.lock"
    lock.write_text("garbage", encoding="utf-8")
    assert job("set", "1", "usb-pair") == Said(
        1,
        (),
        (
            f"Read only: {lock} names no counter: it is just being made, or was cut off. Open the job again after 10 "
            "seconds: it is taken over then.",
            "Nothing was changed. Try again later, or write elsewhere with --to OUT.",
        ),
    )
    os.utime(lock, (0, 0))
    assert job("set", "1", "usb-pair").code == 0


def test_the_command_line_itself(counter: Counter) -> None:
    assert counter("check") == Said(
        2,
        (),
        (
            "the following arguments are required: FILE.",
            "usage: specbuilder check [-h] [--json] [--jobs DIR] [--rules DIR] FILE",
            "Help: specbuilder check --help",
        ),
    )
    said = counter("chekc", "\x1b[2J\u202e")
    assert said.code == 2
    assert "\x1b" not in "".join(said.err)
    assert counter("--help").code == 0


def test_a_folder_that_cannot_be_written(job: Counter, tmp_path: Path) -> None:
    in_the_way = tmp_path / "file"
    in_the_way.write_text("x", encoding="utf-8")
    said = job("export", "1", "--to", str(in_the_way / "inside"))
    assert (said.code, said.out) == (2, ())
    assert said.err[0].startswith(f"The folder {in_the_way / 'inside'} cannot be made (")
    assert job("set", "1", "usb-pair", "--to", str(tmp_path)).code == 2


def test_a_name_the_system_does_not_take(job: Counter, tmp_path: Path) -> None:
    spec = tmp_path / "a.toml"
    job("set", "1", "usb-pair", "--to", str(spec))
    long = tmp_path / ("x" * 300)
    for words in (("export", str(spec), "--to", str(long)), ("check", str(long)), ("jobs", "--jobs", str(long))):
        assert job(*words).code == 2


def test_names_are_cleaned_where_they_leave(counter: Counter) -> None:
    counter("new", "customer=[bold]x")
    assert "[bold]x" in " ".join(counter("show", "1").out)
    said = counter("why", "1", "x\x1b[31m\u202e")
    assert said.err == ('Nothing is called "x\ufffd[31m\ufffd": specbuilder show FILE STEP lists what there is.',)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("customer=A\x1b[2JB", "customer: the text holds the hidden character U+001B at place 2: take it out."),
        ("contact=\u202eABC", "contact: the text holds the hidden character U+202E at place 1: take it out."),
        ("note=a\u200fb", "note: the text holds the hidden character U+200F at place 2: take it out."),
        ("customer=a\nb", "customer: the text holds a line break at place 2: take it out."),
        (f"customer={'x' * 121}", "customer: the text has 121 characters, and 120 is the most: shorten it."),
        (f"contact={'x' * 301}", "contact: the text has 301 characters, and 300 is the most: shorten it."),
        (f"vin_tail={'1' * 18}", "vin_tail: the text has 18 characters, and 17 is the most: shorten it."),
        (f"damage={'x' * 501}", "damage: the text has 501 characters, and 500 is the most: shorten it."),
        (f"year={'9' * 5000}", "year: a year such as 2029 is needed."),
        (f"note={'x' * 10_000}", "note: the text has 10,000 characters, and 2,000 is the most: shorten it."),
    ],
)
def test_a_text_that_cannot_be_kept_is_refused_and_not_changed(job: Counter, typed: str, why: str) -> None:
    assert job("set", "1", typed) == Said(1, (), (why, "Nothing was changed."))


def test_what_is_named_instead_of_a_file(counter: Counter, tmp_path: Path) -> None:
    folder = f"{tmp_path} could not be read, it is a folder: name a file."
    assert counter("check", str(tmp_path)) == Said(2, (), (folder,))
    empty = "The name of FILE is empty: name a spec file, or the number of a job."
    assert counter("check", "") == Said(2, (), (empty,))
    assert counter("set", "", "adults=2") == Said(2, (), (empty,))
    file = tmp_path / "file"
    file.write_text("", encoding="utf-8")
    assert counter("jobs", "--jobs", str(file)) == Said(
        2, (), (f"{file} could not be read, it is no folder: use --jobs with a folder.",)
    )


def test_a_job_whose_file_is_gone_keeps_its_name_in_the_list(job: Counter) -> None:
    (job.jobs / "0001-r1.toml").unlink()
    assert "The Saturday family" in job("jobs").out[0]


def test_a_mistake_of_the_program_is_told_in_a_sentence(counter: Counter, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise KeyError("x\x1b")

    monkeypatch.setattr(entry, "_run", fail)
    said = counter("jobs")
    assert said.code == 70
    assert said.err[0].startswith("specbuilder stopped because of a mistake of its own (KeyError: ")
    monkeypatch.setenv("SPECBUILDER_TRACE", "1")
    with pytest.raises(KeyError):
        main(["jobs"])


def test_without_a_terminal_the_line_commands_are_named(counter: Counter) -> None:
    assert counter() == Said(
        2,
        (),
        (
            "This is not a terminal, so the counter screens cannot open here. "
            "Use the line commands: specbuilder --help lists them.",
        ),
    )


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(words=st.lists(st.text(max_size=12), min_size=1, max_size=3), command=st.sampled_from(["set", "drop", "why"]))
def test_whatever_is_typed_gets_an_answer(job: Counter, words: list[str], command: str) -> None:
    said = job(command, "1", *words)
    assert said.code in (0, 1, 2)
    assert not {chr(c) for c in range(32)} & set("".join((*said.out, *said.err)))


def _program(*words: str, **more: object) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run([sys.executable, "-m", "specbuilder", *words], check=False, **more)  # type: ignore[call-overload,no-any-return]


def test_a_reader_that_goes_away(job: Counter) -> None:
    read, write = os.pipe()
    os.close(read)
    words = ("--jobs", str(job.jobs), "--rules", str(RULES), "check", "1", "--json")
    done = _program(*words, stdout=write, stderr=subprocess.PIPE)
    os.close(write)
    assert (done.returncode, done.stderr) == (141, b"")


def test_a_terminal_that_knows_few_letters(job: Counter) -> None:
    words = ("--jobs", str(job.jobs), "--rules", str(RULES), "show", "1")
    plain = {**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    done = _program(*words, capture_output=True, env=plain)
    assert done.returncode == 0
    assert b"Price: ?984 to ?3,792 VAT in, van not included." in done.stdout


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pseudo terminal")
def test_a_terminal_that_cannot_move_its_cursor() -> None:
    ours, theirs = pty.openpty()
    done = _program(stdin=theirs, stdout=theirs, stderr=theirs, env={**os.environ, "TERM": "dumb"})
    os.close(theirs)
    said = os.read(ours, 1000)
    os.close(ours)
    assert done.returncode == 2
    assert said.decode() == (
        "This terminal cannot move its cursor (TERM=dumb), so the counter screens cannot open here. "
        "Use the line commands: specbuilder --help lists them.\r\n"
    )
