"""The life of a job by line commands: quote, order, change, record, paper, verify, and what they refuse."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path

import pytest

from specbuilder.cli.output import Exit

from .counter import Counter
from .life_scene import FAMILY, SIGN

SOON = date.today() + timedelta(days=30)


def test_a_job_that_begins_like_a_file_is_a_draft_of_its_own(family: Counter) -> None:
    assert family("show", "1").out[0] == "Job 0001, revision 1, draft, not quoted."


def test_quoting_says_price_and_last_day_and_a_second_quote_is_refused(family: Counter) -> None:
    said = family("quote", "1")
    assert said.code == 0
    assert said.out[0].startswith("Quoted, revision 1: £24,414 VAT in, valid until ")
    again = family("quote", "1")
    assert again.code == Exit.BROKEN
    assert again.err == (
        "This cannot be quoted as it is now: 1 thing stands in the way.",
        "The job is quoted already, and what was quoted stays as it is: order signs it; change begins the next "
        "revision, to be quoted anew.",
        "Nothing was changed.",
    )


def test_an_order_names_who_signed_and_what_is_built(family: Counter) -> None:
    family("quote", "1")
    said = family("order", "1", *SIGN)
    assert said.code == 0
    assert said.out[0] == "Signed by M. Hale and the counter: revision 1 is what the workshop builds."
    assert family("verify", "1").out == ("Job 0001, revision 1, ordered: whole, current and unaltered.",)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--customer", "M. Hale", "--firm", "counter", "--place", "moon"), '--place: "moon" is no place of signing'),
        (("--customer", "", "--firm", "counter", "--place", "home"), "--customer is empty"),
        (("--customer", "A\x1b[2J", "--firm", "counter", "--place", "home"), "--customer: "),
        (("--customer", "A" * 500, "--firm", "counter", "--place", "home"), "--customer: "),
    ],
)
def test_a_signature_that_is_none_is_refused(family: Counter, words: tuple[str, ...], said: str) -> None:
    family("quote", "1")
    answer = family("order", "1", *words)
    assert answer.code == Exit.UNUSABLE
    assert answer.err[0].startswith(said)
    assert family("show", "1").out[0].startswith("Job 0001, revision 1, quoted")


def test_only_a_job_is_signed_and_a_file_is_taken_in_first(counter: Counter) -> None:
    answer = counter("quote", str(FAMILY))
    assert answer.code == Exit.UNUSABLE
    assert "specbuilder new --from FILE" in " ".join(answer.err)


def test_what_was_signed_takes_no_other_choice_before_a_change_is_begun(ordered: Counter) -> None:
    refused = ordered("set", "1", "induction-single")
    assert refused.code == Exit.BROKEN
    assert refused.err[0] == "This revision has left the house: a change makes the next one."
    begun = ordered("change", "1")
    assert begun.out[0] == (
        "Change order begun: revision 2 is a draft. Until it is signed the workshop builds revision 1."
    )
    assert ordered("set", "1", "induction-single").code == 0


def test_revision_1_cannot_be_exported_as_current_after_revision_2(ordered: Counter, tmp_path: Path) -> None:
    assert ordered("export", "1", "--to", str(tmp_path / "out")).code == 0
    ordered("change", "1")
    assert ordered("drop", "1", "toilet-portable").code == 0
    assert ordered("export", "1@1", "--to", str(tmp_path / "out")).code == 0
    assert ordered("order", "1", *SIGN).out[0] == (
        "Signed by M. Hale and the counter: revision 2 is what the workshop builds, and takes the place of revision 1."
    )
    refused = ordered("export", "1@1", "--to", str(tmp_path / "out"))
    assert refused.code == Exit.BROKEN
    assert refused.err[0] == "Revision 1 of job 0001 was replaced by revision 2: it is not to be built."
    assert ordered("show", "1@1").code == 0
    old = tmp_path / "out" / "0001-r1.toml"
    verified = ordered("verify", str(old))
    assert verified.code == Exit.BROKEN
    assert "Revision 2 has replaced it" in " ".join(verified.out)


def test_papers_of_a_replaced_revision_say_so_on_every_page(ordered: Counter, tmp_path: Path) -> None:
    ordered("change", "1")
    ordered("drop", "1", "toilet-portable")
    ordered("order", "1", *SIGN)
    said = ordered("paper", "1@1", "workshop", "--to", str(tmp_path / "out"), "--as", "text")
    assert said.code == 0
    text = Path(said.out[0]).read_text("utf-8")
    assert "REPLACED BY REVISION 2: NOT TO BE BUILT" in text


def test_every_paper_the_state_calls_for_is_written_as_pdf_and_text(ordered: Counter, tmp_path: Path) -> None:
    said = ordered("paper", "1", "--to", str(tmp_path / "out"))
    names = {Path(line).name for line in said.out}
    assert names == {
        f"0001-r1-{sheet}.{end}"
        for sheet in ("customer", "workshop", "handover", "colleague")
        for end in ("pdf", "txt")
    }
    first = {name: (tmp_path / "out" / name).read_bytes() for name in names}
    ordered("paper", "1", "--to", str(tmp_path / "out"))
    assert {name: (tmp_path / "out" / name).read_bytes() for name in names} == first


def test_records_are_written_down_and_what_is_none_is_refused(ordered: Counter) -> None:
    for words, said in (
        (("deposit", "2441"), "Written down: deposit of £2,441 received."),
        (("passed", "h0"), "Written down: hold point H0 passed."),
        (("supply", "larchlid-short", "in", "store"), "Written down: Larchlid tilting roof, short: in store."),
        (("reading", "H0", "2,051", "kg"), "Written down: reading at H0: 2,051 kg."),
        (("promised", "the", "exhaust", "ends", "right"), 'Written down: promise "the exhaust ends right".'),
    ):
        answer = ordered("record", "1", *words, "--by", "foreman")
        assert (answer.code, answer.out[0]) == (0, said)
    for words, begins in (
        (("deposit", "lots"), '"lots" is no sum of pounds'),
        (("supply", "roof-of-gold"), '"roof-of-gold" is no part of this build'),
        (("supply", "larchlid-short", "lost"), '"lost" is no state of a part'),
        (("call", "about the cloth"), "A call needs its day"),
        (("sang", "a song"), '"sang" is nothing that is recorded so'),
        (("passed", "H9"), "This cannot be passed yet"),
        (("built", "M. Hale"), "This cannot be handed over as built yet"),
    ):
        answer = ordered("record", "1", *words, "--by", "foreman")
        assert answer.code in (Exit.BROKEN, Exit.UNUSABLE)
        assert answer.err[0].startswith(begins), answer.err


def test_money_and_parts_wait_for_the_order(family: Counter) -> None:
    answer = family("record", "1", "deposit", "2441", "--by", "counter")
    assert answer.code == Exit.BROKEN
    assert answer.err[0] == "The job is draft: deposits, parts and readings are recorded once it is ordered."


def test_a_change_can_be_given_up_and_a_first_revision_cannot(ordered: Counter) -> None:
    assert ordered("change", "1", "--drop").code == Exit.BROKEN
    ordered("change", "1")
    assert ordered("change", "1", "--drop").out == (
        "Revision 2 is given up; its files are kept aside. Revision 1 holds.",
    )
    assert ordered("verify", "1").code == 0


def test_a_paper_nobody_knows_is_named_with_those_there_are(ordered: Counter, tmp_path: Path) -> None:
    answer = ordered("paper", "1", "poster", "--to", str(tmp_path / "out"))
    assert answer.code == Exit.UNUSABLE
    assert answer.err == ('"poster" is no paper: use one of customer, workshop, handover, colleague, change-order.',)
    assert not (tmp_path / "out").exists()


def test_an_altered_file_is_not_verified(ordered: Counter) -> None:
    path = ordered.jobs / "0001-r1.toml"
    path.write_text(path.read_text("utf-8").replace("tolerance_mm = 2", "tolerance_mm = 9", 1), "utf-8")
    answer = ordered("verify", "1")
    assert answer.code == Exit.BROKEN
    assert answer.out[0] == "Job 0001, revision 1, ordered: NOT to be built or signed from."


def test_what_is_broken_at_sign_is_accepted_by_name_and_taken_back(family: Counter) -> None:
    family("set", "1", "ceiling_gross_pence=2000000")
    said = family("accept", "1", "price-under-ceiling", "--by", "M. Hale")
    assert said.code == 0, said.err
    assert said.out[0].startswith('Accepted in writing: "')
    assert family("accept", "1", "price-under-ceiling", "--back").code == 0
    for words, begins in (
        (("weight-total", "--by", "M. Hale"), "weight-total: Only what is broken at SIGN or NOTE can be accepted"),
        (("moonshine", "--by", "M. Hale"), '"moonshine" is no finding of this spec'),
        (("price-under-ceiling",), "--by is empty"),
    ):
        answer = family("accept", "1", *words)
        assert answer.code != 0
        assert answer.err[0].startswith(begins)


def test_an_open_question_is_put_with_who_and_when_and_closed(family: Counter) -> None:
    said = family("ask", "1", "Colour", "of", "the", "cloth", "--who", "customer", "--due", str(SOON), "--stops", "B6")
    assert said.out[0] == 'Open question: "Colour of the cloth".'
    assert family("ask", "1", "When", "--due", "soon").err[0].startswith('--due: "soon" is no day')
    assert family("ask", "1", "Colour of the cloth", "--answered").out[0] == 'Answered: "Colour of the cloth".'


@pytest.mark.long
def test_how_far_the_build_is_can_be_read_line_by_line(family: Counter) -> None:
    before = family("build", "1")
    assert before.out[:2] == (
        "Build of job 0001, revision 1.",
        "Nothing is ordered yet: hold points, parts and deposit come with the signatures.",
    )
    family("quote", "1")
    family("order", "1", *SIGN)
    family("record", "1", "passed", "H0", "--by", "foreman")
    family("record", "1", "promised", "a spare key", "--by", "the counter")
    out = family("build", "1").out
    assert out[1].startswith("Deposit of £2,441")
    holds = [line for line in out if line.startswith("Hold point ")]
    assert holds[0].startswith("Hold point H0, passed ")
    assert holds[1].startswith("Hold point H1, next, about ")
    assert any(line.startswith("Promised: a spare key") for line in out)
    assert out[-1] == "Next call: none agreed."
    told = json.loads("".join(family("build", "1", "--json").out))
    assert told["next_hold_point"] == "H1"
    assert [one["by"] for one in told["hold_points"] if one["passed"]] == ["foreman"]


@pytest.mark.long
def test_the_papers_page_says_where_the_job_stands_and_what_is_in_the_way(family: Counter) -> None:
    out = family("paper", "1").out
    assert out[:2] == ("A draft: nothing of it has left the house.", "Next: Quote: £24,414 VAT in.")
    assert out[-1] == "specbuilder paper 1 NAME reads one out; with --to DIR it is written."
    family("quote", "1")
    family("order", "1", *SIGN)
    family("change", "1")
    stands = family("paper", "1").out
    assert stands[1] == "Until it is signed the workshop builds revision 1."
    assert any(line.endswith("[change-order]") for line in stands)


@pytest.mark.long
def test_what_left_the_house_can_be_tried_as_its_next_revision(ordered: Counter) -> None:
    before = {path.name: path.read_bytes() for path in ordered.jobs.iterdir() if path.is_file()}
    tried = ordered("set", "1", "induction-single", "--try")
    assert tried.code == 0
    assert tried.out[-1] == "Nothing was changed: it was only tried. Without --try it is done."
    assert {path.name: path.read_bytes() for path in ordered.jobs.iterdir() if path.is_file()} == before
    assert ordered("set", "1", "induction-single").code == Exit.BROKEN
