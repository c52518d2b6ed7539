"""Spoilt files, full disks, kills and nonsense in the life of a job: told plainly, nothing lost, nothing said twice."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.cli.main import main
from specbuilder.cli.output import Exit
from specbuilder.storage import open_job, seals
from specbuilder.storage.disk import DiskError, DiskReason

from .counter import Counter, Said
from .test_life import FAMILY, RULES, SIGN

SPOIL: dict[str, Callable[[Path], object]] = {
    "gone": lambda path: path.unlink(),
    "empty": lambda path: path.write_bytes(b""),
    "half": lambda path: path.write_bytes(path.read_bytes()[:999]),
    "noise": lambda path: path.write_bytes(bytes(range(256)) * 9),
    "folder": lambda path: (path.unlink(), path.mkdir()),
}


STATES: tuple[tuple[str, tuple[tuple[str, ...], ...]], ...] = (
    ("draft", (("new", "--from", str(FAMILY)),)),
    ("ordered", (("quote", "1"), ("order", "1", *SIGN))),
    ("changing", (("change", "1"), ("drop", "1", "toilet-portable"))),
    ("changed", (("order", "1", *SIGN),)),
)
"""Job 0001 of the Saturday family under the rules of the house, each state from the one before."""


@pytest.fixture(scope="module")
def states(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A jobs folder for each state."""
    made = tmp_path_factory.mktemp("states")
    jobs = made / "jobs"
    for name, steps in STATES:
        for words in steps:
            assert main(["--jobs", str(jobs), "--rules", str(RULES), *words]) == 0
        shutil.copytree(jobs, made / name)
    return made


def _counter(state: Path, folder: Path, capture: pytest.CaptureFixture[str]) -> Counter:
    counter = Counter(folder, capture, RULES)
    shutil.copytree(state, counter.jobs)
    return counter


@pytest.fixture
def family(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """Ready to be quoted."""
    return _counter(states / "draft", tmp_path, capsys)


@pytest.fixture
def ordered(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """Quoted and signed."""
    return _counter(states / "ordered", tmp_path, capsys)


@pytest.fixture
def changing(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """A change is drawn up."""
    return _counter(states / "changing", tmp_path, capsys)


@pytest.fixture
def changed(states: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Counter:
    """The change is signed."""
    return _counter(states / "changed", tmp_path, capsys)


def told(said: Said) -> str:
    """All that was said, on one line; never a mistake of the program."""
    assert said.code != Exit.OWN_MISTAKE, said.err
    return " ".join((*said.out, *said.err))


def full(path: Path, *_: object, **__: object) -> None:
    """A disk that takes nothing."""
    raise DiskError(DiskReason.FULL, path, writing=True)


# -- which revision holds ----------------------------------------------------------------------------------------------


def test_a_change_that_is_only_quoted_does_not_take_the_place_of_what_was_signed(
    changing: Counter, tmp_path: Path
) -> None:
    assert changing("quote", "1").code == 0
    verified = changing("verify", "1@1")
    assert verified.code == 0
    assert "until then this one holds" in told(verified)
    assert changing("export", "1@1", "--to", str(tmp_path / "out")).code == 0


def test_a_change_begun_after_a_quoted_one_replaces_what_the_workshop_builds(changing: Counter) -> None:
    changing("quote", "1")
    assert "the workshop builds revision 1." in changing("change", "1").out[0]
    assert "takes the place of revision 1." in changing("order", "1", *SIGN).out[0]
    assert changing("verify", "1@1").code == Exit.BROKEN


@pytest.mark.parametrize("how", SPOIL)
def test_a_signed_change_takes_the_place_of_the_old_revision_even_when_its_file_is_spoilt(
    changed: Counter, tmp_path: Path, how: str
) -> None:
    SPOIL[how](changed.jobs / "0001-r2.toml")
    verified = changed("verify", "1@1")
    assert verified.code == Exit.BROKEN
    assert "Revision 2 has replaced it" in told(verified)
    assert changed("export", "1@1", "--to", str(tmp_path / "out")).code == Exit.BROKEN
    told(changed("verify", "1"))


def test_a_signed_change_of_which_only_the_seal_is_left_is_neither_forgotten_nor_begun_anew(
    changed: Counter, tmp_path: Path
) -> None:
    for path in changed.jobs.glob("0001-r2.*"):
        path.unlink()
    assert "Revision 2 has replaced it" in told(changed("verify", "1@1"))
    assert changed("export", "1", "--to", str(tmp_path / "out")).code == Exit.BROKEN
    assert changed("change", "1").code == Exit.UNUSABLE


def test_nobody_can_tell_whether_a_revision_is_current_when_the_next_one_says_nothing_at_all(
    changing: Counter, tmp_path: Path
) -> None:
    for path in changing.jobs.glob("0001-r2.*"):
        path.write_bytes(b"\0")
    verified = changing("verify", "1@1")
    assert verified.code == Exit.BROKEN
    assert "0001-r2.toml could not be read" in told(verified)
    assert changing("export", "1@1", "--to", str(tmp_path / "out")).code == Exit.UNUSABLE


# -- nothing is lost ---------------------------------------------------------------------------------------------------


def test_what_was_written_down_in_a_change_is_not_given_up_with_it(changing: Counter) -> None:
    changing("record", "1", "deposit", "2441", "--by", "the counter")
    changing("record", "1", "promised", "a spare cushion", "--by", "the counter")
    assert changing("change", "1", "--drop").code == 0
    log = (changing.jobs / "0001-r1.toml").read_text("utf-8")
    assert log.count("pence = 244100\n") == 1
    assert log.count('words = "a spare cushion"') == 1
    assert changing("verify", "1").code == 0


def test_a_file_without_the_log_of_its_job_is_not_taken_as_it_stands(ordered: Counter) -> None:
    path = ordered.jobs / "0001-r1.toml"
    text = path.read_text("utf-8")
    path.write_text(text.replace('by = "M. Hale"', 'by = "A. Nother"'), "utf-8")
    refused = ordered("record", "1", "promised", "more", "--by", "x")
    assert refused.code == Exit.UNUSABLE
    assert "does not hold all that was written down" in told(refused)
    path.unlink()
    assert ordered("record", "1", "promised", "more", "--by", "x").code == 0
    assert 'by = "M. Hale"' in path.read_text("utf-8")
    assert ordered("verify", "1").code == 0


def test_a_step_that_a_full_disk_stopped_is_taken_back_so_that_it_is_not_written_down_twice(
    ordered: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as disk:
        disk.setattr(open_job, "write_whole", full)
        said = ordered("record", "1", "deposit", "500", "--by", "x")
    assert said.code == Exit.UNUSABLE
    assert "the disk is full" in said.err[0]
    assert said.err[-1] == "Nothing was changed."
    assert ordered("record", "1", "deposit", "500", "--by", "x").code == 0
    assert (ordered.jobs / "0001-r1.toml").read_text("utf-8").count('kind = "deposit"') == 1


def test_a_quote_that_could_not_be_kept_stands_and_is_kept_with_the_next_step(
    family: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as disk:
        disk.setattr(seals, "write_whole", full)
        said = family("quote", "1")
    assert said.code == Exit.UNUSABLE
    assert said.err[0].startswith("Quoted, revision 1")
    assert said.err[-1].startswith("It stands, and is not kept as it left the house yet")
    assert ".part" not in told(said)
    assert family("verify", "1").code == Exit.BROKEN
    assert family("quote", "1").code == Exit.BROKEN
    assert family("verify", "1").code == 0


def test_a_step_that_a_kill_cut_off_before_its_file_is_finished_by_the_next_one(
    family: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    def kill(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as power:
        power.setattr(open_job, "write_whole", kill)
        assert family("quote", "1").code == Exit.STOPPED
    behind = family("verify", "1")
    assert behind.code == Exit.BROKEN
    assert "nothing of it has left the house" not in told(behind)
    assert "The job is quoted" in told(family("quote", "1"))
    assert family("verify", "1").out == ("Job 0001, revision 1, quoted: whole, current and unaltered.",)


def test_a_change_that_a_full_disk_stopped_leaves_no_half_revision(
    ordered: Counter, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = sorted(path.name for path in ordered.jobs.iterdir())
    with monkeypatch.context() as disk:
        disk.setattr(open_job, "write_whole", full)
        said = ordered("change", "1", "--because", "they want more")
    assert said.code == Exit.UNUSABLE
    assert said.err[-1] == "Nothing was changed."
    assert sorted(path.name for path in ordered.jobs.iterdir()) == before
    assert ordered("change", "1@1", "--because", "they want more").out[1] == 'Reason: "they want more".'


# -- what verify says --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("how", SPOIL)
@pytest.mark.parametrize("name", ["0001-r1-signed/seal.toml", "0001-r1-signed/spec.toml", "rules"])
def test_what_was_kept_and_is_spoilt_is_told(ordered: Counter, name: str, how: str) -> None:
    path = next(ordered.jobs.glob("rules-*.zip")) if name == "rules" else ordered.jobs / name
    SPOIL[how](path)
    verified = ordered("verify", "1")
    assert verified.code == Exit.BROKEN
    assert (path.name if name == "rules" else "0001-r1-signed") in told(verified)


def test_a_job_that_forgot_what_was_kept_of_it_is_told(ordered: Counter) -> None:
    (ordered.jobs / "0001-r1.journal").unlink()
    path = ordered.jobs / "0001-r1.toml"
    text = path.read_text("utf-8")
    path.write_text(text[: text.index("[[record]]")].replace('state = "ordered"', 'state = "draft"'), "utf-8")
    ordered("set", "1", "note=written whole again")
    verified = ordered("verify", "1")
    assert verified.code == Exit.BROKEN
    assert "0001-r1-signed" in told(verified)


def test_a_quote_that_was_altered_is_not_signed_nor_exported(family: Counter, tmp_path: Path) -> None:
    family("quote", "1")
    path = family.jobs / "0001-r1.toml"
    path.write_text(path.read_text("utf-8").replace("nights_off_grid = 2", "nights_off_grid = 1"), "utf-8")
    for words in (("order", "1", *SIGN), ("export", "1", "--to", str(tmp_path / "out"))):
        refused = family(*words)
        assert refused.code == Exit.BROKEN
        assert "0001-r1-quoted" in told(refused)
    assert not (tmp_path / "out").exists()


def test_one_job_whose_rules_are_spoilt_does_not_hide_the_others(ordered: Counter, tmp_path: Path) -> None:
    kept = next(ordered.jobs.glob("rules-*.zip"))
    kept.write_bytes(b"spoilt")
    other = shutil.copytree(RULES, tmp_path / "rules")
    firm = other / "firm.toml"
    firm.write_text(firm.read_text("utf-8") + "\n# another day\n", "utf-8")
    later = Counter(tmp_path, ordered._capture, other)
    assert later("new", "adults=2").code == 0
    assert [line[:4] for line in later("jobs").out] == ["0001", "0002"]
    assert "altered since" in told(later("show", "1"))
    assert later("verify", "1").code == Exit.BROKEN


# -- nonsense ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text", ["2430,505", "2,4,3,0", "0.001", "0.00", "-5", "nan", "inf", "1e3", "1_000", "٣٤", "£", "24.305", "9" * 99]
)
def test_what_is_no_sum_of_money_is_not_received(ordered: Counter, text: str) -> None:
    refused = ordered("record", "1", "--by", "x", "--", "deposit", text)
    assert refused.code == Exit.UNUSABLE
    assert "is no sum of pounds" in told(refused)


def test_money_is_received_to_the_penny(ordered: Counter) -> None:
    for text, said in (
        ("£2,430.50", "£2,430.50"),
        ("2441", "£2,441"),
        ("2430,50", "£2,430.50"),
        ("0.01", "£0.01"),
        ("1,000,000.9", "£1,000,000.90"),
    ):
        assert (
            ordered("record", "1", "deposit", text, "--by", "x").out[0] == f"Written down: deposit of {said} received."
        )


@pytest.mark.parametrize("day", ["2001-01-01", "0001-01-01", "9999-12-31", "2031-02-30", "31/12/2031", "tomorrow"])
def test_a_day_that_is_none_is_over_or_is_beyond_all_plans_is_refused(family: Counter, day: str) -> None:
    for words in (("record", "1", "call", "x", "--by", "x"), ("ask", "1", "what", "--who", "x")):
        refused = family(*words, "--due", day)
        assert refused.code == Exit.UNUSABLE
        assert refused.err[0].startswith("--due: ")


def test_a_reading_is_of_something_its_paper_has_a_line_for(ordered: Counter, tmp_path: Path) -> None:
    assert ordered("record", "1", "reading", "h9", "2,710 kg", "--by", "x").out[0] == (
        "Written down: reading at H9: 2,710 kg."
    )
    refused = ordered("record", "1", "reading", "moon", "2,710 kg", "--by", "x")
    assert refused.code == Exit.BROKEN
    assert refused.err[0].startswith('"moon" is nothing of this build that is read')


def test_a_question_stops_the_signing_a_step_or_nothing(family: Counter) -> None:
    refused = family("ask", "1", "what", "--stops", "sining")
    assert refused.code == Exit.BROKEN
    assert refused.err[0].startswith('--stops: "sining" is nothing it can stop: use signing, B0')
    assert family("ask", "1", "what", "--who", "x", "--stops", "Signing").code == 0
    family("quote", "1")
    assert 'An open question stops the signing: "what".' in family("order", "1", *SIGN).err


@pytest.mark.parametrize("text", ["x" * 100_000, "\x1b[2J\u202e\udc80\n[[record]]"])
def test_hostile_words_are_repeated_short_and_clean(ordered: Counter, tmp_path: Path, text: str) -> None:
    out = str(tmp_path / "out")
    for words in (
        ("quote", "--", text),
        ("order", "1", "--customer=a", "--firm=b", f"--place={text}"),
        ("record", "1", "--by=x", "--", text),
        ("record", "1", "--by=x", "--", "supply", text),
        ("record", "1", f"--by={text}", "promised", "x"),
        ("record", "1", "--by=x", "--", "promised", "word " * 300, text),
        ("change", "1", f"--because={text}"),
        ("paper", "1", "--to", out, "--", text),
        ("paper", "1", "--to", out, f"--as={text}"),
        ("verify", "--", text),
    ):
        said = ordered(*words)
        assert said.code in (Exit.BROKEN, Exit.UNUSABLE), words[0]
        assert all(len(line) < 500 and line.isprintable() for line in (*said.out, *said.err)), words[:3]
    assert ordered("verify", "1").code == 0


def test_a_job_that_begins_like_a_changed_one_has_no_change_to_sign(changed: Counter) -> None:
    assert changed("new", "--from", "1").out[0] == "0002"
    text = (changed.jobs / "0002-r1.toml").read_text("utf-8")
    for line in ("changed_after_signing", "change_order =", "past_freeze", "[[record]]"):
        assert line not in text
    assert changed("quote", "2").code == 0
    assert changed("order", "2", *SIGN).code == 0
