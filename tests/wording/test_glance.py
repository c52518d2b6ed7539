"""The two lines that never move, at each width."""

from __future__ import annotations

from dataclasses import replace

import pytest

from specbuilder.model.kinds import Step, Truth, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Pence
from specbuilder.model.span import Span, point
from specbuilder.wording.glance import glance, head, weight_words
from tests.wording.scene import CATALOGUE, finding, reading, report, spec

MASS = reading("total-mass", Span(2706, 2782), point(3000), Verdict.HOLDS)
COUNTS = {Step.KITCHEN: (5, 0, 0), Step.BRIEF: (0, 1, 0), Step.ROOF: (0, 0, 1)}
REPORT = report(spec(), readings=(MASS,), counts=COUNTS, gross=Pence(least=1_753_200, most=2_402_400))


@pytest.mark.parametrize(
    ("width", "line"),
    [
        (
            140,
            "£17,532 to £24,024 VAT in, van not included      218 to 294 kg left (ESTIMATE)      "
            "5 undecided      1 not known      1 broken",
        ),
        (
            120,
            "£17,532 to £24,024 VAT in, van not included   218 to 294 kg left (ESTIMATE)   "
            "5 undecided   1 not known   1 broken",
        ),
        (
            100,
            "£17,532-24,024 VAT in, van not included  about 218-294 kg left  5 undecided  1 not known  1 broken",
        ),
        (80, "£17,532-24,024 VAT in, van not included  about 218-294 kg left  6 open  1 broken"),
        (60, "£17,532-24,024, without van about 218-294 kg 6 open 1 broken"),
    ],
)
def test_glance_line(width: int, line: str) -> None:
    assert glance(CATALOGUE, REPORT, width) == line


def test_a_finished_build_says_that_its_weight_is_an_estimate_at_80() -> None:
    mass = reading("total-mass", point(2752), point(3000), Verdict.HOLDS)
    done = report(spec(), readings=(mass,), gross=Pence(least=2_071_200, most=2_071_200), van_included=Truth.YES)
    assert glance(CATALOGUE, done, 80) == ("£20,712 VAT in, van included  about 248 kg left  0 open  0 broken")


def test_nothing_known_looks_unfinished() -> None:
    empty = report(spec(), van=None, van_included=Truth.MAYBE, gross=Pence(least=0, most=9_000_000))
    assert glance(CATALOGUE, empty, 100) == (
        "£0 to £90,000 VAT in, van not settled   weight: cannot tell   0 undecided   0 not known   0 broken"
    )


def test_ceiling_and_acceptances_have_their_place() -> None:
    over = reading("price-gross", Span(1_753_200, 2_402_400), point(2_100_000), Verdict.CANNOT_TELL)
    told = report(
        spec(ceiling_gross_pence=2_100_000),
        readings=(MASS, over),
        gross=Pence(least=1_753_200, most=2_402_400),
        findings=(finding("nights-short", Verdict.BROKEN, accepted=True),),
    )
    assert glance(CATALOGUE, told, 200) == (
        "£17,532 to £24,024 VAT in, van not included  (ceiling £21,000: cannot tell)      "
        "218 to 294 kg left (ESTIMATE)      0 undecided      0 not known      0 broken, 1 accepted"
    )


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (point(2752), "about 248 kg left"),
        (point(3000), "about 0 kg left"),
        (Span(3012, 3040), "about 12 to 40 kg over"),
        (Span(2960, 3030), "about 30 kg over to 40 kg left"),
        (None, "weight: cannot tell"),
    ],
)
def test_weight(value: Span | None, words: str) -> None:
    mass: Reading = reading("total-mass", value, point(3000), Verdict.CANNOT_TELL)
    assert weight_words(CATALOGUE, report(spec(), readings=(mass,))) == words


@pytest.mark.parametrize(
    ("width", "line"),
    [
        (
            140,
            "0147 The Saturday family   draft, not quoted   rev 1   Fenwain Short, diesel, door left   saved 10:42   "
            "counter 1",
        ),
        (100, "0147 The Saturday family   draft, not quoted   rev 1   Fenwain Short   saved 10:42"),
        (80, "0147 The Saturday family   draft, not quoted   Fenwain Short   saved 10:42"),
        (60, "0147 The Saturday family   draft   saved 10:42"),
        (40, "0147 The Saturda..   draft   saved 10:42"),
    ],
)
def test_head_line(width: int, line: str) -> None:
    assert head(CATALOGUE, REPORT, width, "saved 10:42", "counter 1") == line


@pytest.mark.parametrize("width", [20, 40, 60, 80, 140])
def test_no_name_is_too_long(width: int) -> None:
    long = report(spec(name="x" * 10_000))
    assert len(head(CATALOGUE, long, width, "saved 10:42", "counter 1")) <= width
    assert len(glance(CATALOGUE, long, width)) <= width


def test_a_new_job() -> None:
    new = report(replace(spec(name=""), number=""), van=None)
    assert head(CATALOGUE, new, 80) == "new job no name yet   draft, not quoted   rev 1   van not known"


@pytest.mark.parametrize("width", [60, 78, 100])
def test_what_is_open_and_broken_is_never_cut_away(width: int) -> None:
    dear = report(spec(), readings=(MASS,), counts=COUNTS, gross=Pence(least=10**14, most=10**18))
    told = glance(CATALOGUE, dear, width)
    assert told.split()[-4:] == ["6", "open", "1", "broken"]
    assert len(told) <= width
