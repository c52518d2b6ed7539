"""Sums, days, readings and hostile words in the life of a job: refused where they are none, repeated short."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.cli.output import Exit

from .counter import Counter
from .life_scene import SIGN, told


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
