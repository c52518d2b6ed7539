"""Ledgers and figures in words."""

from __future__ import annotations

import math
from dataclasses import replace

from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.ledger import Entry, Lack, Reading
from specbuilder.model.span import Span, point
from specbuilder.wording.ledger_detail import beside_line, detail_texts
from specbuilder.wording.readings import Bar, is_noted, reading_bar, reading_line, reading_measure, worst_first
from tests.wording.scene import CATALOGUE, reading

ROOF = reading("roof-load", point(13), point(8), Verdict.BROKEN)
MASS = reading(
    "total-mass",
    Span(2706, 2782),
    point(3000),
    Verdict.HOLDS,
    entries=(
        Entry("van with driver", point(1960)),
        Entry("", point(92), option=OptionId("side-galley")),
        Entry("people", point(75), assumed=True),
        Entry("", Span(0, 21), group=GroupId("cooking")),
    ),
    assumed=(BriefKey("site_amps"),),
)
_BELTS = CATALOGUE.ledgers[LedgerId("belts")]
_WATER = replace(_BELTS, id=LedgerId("water-days"), name="Days of water", level=Level.NOTE)
NOTES = replace(CATALOGUE, ledgers={**CATALOGUE.ledgers, _WATER.id: _WATER})
HEIGHT = reading(
    "closed-height", point(2035), None, Verdict.CANNOT_TELL, lacks=(Lack(key=BriefKey("parking_limit_mm")),)
)


def _says(of: Reading, words: str) -> None:
    assert reading_line(CATALOGUE, of) == words


def test_what_holds() -> None:
    _says(MASS, "holds: 218 to 294 kg spare (ESTIMATE)")
    _says(reading("belts", point(4), point(4), Verdict.HOLDS), "holds: 4 of 4 places")
    _says(reading("belts", point(5), point(4), Verdict.HOLDS), "holds: 1 place spare")
    _says(
        reading("nights", Span(2.5, math.inf), point(2), Verdict.HOLDS), "holds: 0.5 nights to no end spare (ESTIMATE)"
    )


def test_what_has_no_end_says_so() -> None:
    endless = reading("nights", point(math.inf), point(2), Verdict.HOLDS)
    _says(endless, "holds: no end (ESTIMATE)")
    assert reading_bar(CATALOGUE, endless).amount == "no end of 2 nights"
    assert "together no end" in detail_texts(CATALOGUE, endless)


def test_a_bar_of_what_has_no_end_can_be_drawn() -> None:
    bar = reading_bar(CATALOGUE, reading("nights", Span(1, math.inf), point(2), Verdict.CANNOT_TELL))
    assert bar.used == 0.5
    assert bar.may is not None
    assert math.isfinite(bar.may)


def test_what_is_broken_says_by_how_much() -> None:
    _says(ROOF, "broken: 13 of 8 kg, over by 5 kg")
    _says(reading("belts", point(3), point(4), Verdict.BROKEN), "broken: 3 of 4 places, short by 1 place")
    _says(
        reading("price-gross", point(2_371_200), point(2_100_000), Verdict.BROKEN),
        "broken: £23,712 of £21,000, over by £2,712",
    )
    _says(
        reading("total-mass", Span(3010, 3024), point(3000), Verdict.BROKEN),
        "broken: 3,010-3,024 of 3,000 kg, over by 10 to 24 kg (ESTIMATE)",
    )


def test_a_note_is_never_called_broken() -> None:
    short = replace(reading("belts", point(1), point(2), Verdict.BROKEN), id=_WATER.id)
    assert reading_line(NOTES, short) == "note: 1 of 2 places, short by 1 place"
    assert reading_measure(NOTES, short) == "1 of 2 places, short by 1 place"
    bar = reading_bar(NOTES, short)
    assert (bar.words, bar.level) == ("note: 1 of 2 places", "")
    assert beside_line(NOTES, short) == "Days of water: note: 1 of 2 places, short by 1 place"
    assert is_noted(NOTES, short)
    assert not is_noted(CATALOGUE, ROOF)


def test_broken_by_a_hair_never_reads_as_if_it_held() -> None:
    _says(reading("roof-load", point(8.004), point(8), Verdict.BROKEN), "broken: 8.004 of 8 kg, over by 0.1 kg")
    _says(
        reading("price-gross", point(2_100_040), point(2_100_000), Verdict.BROKEN),
        "broken: £21,000.40 of £21,000.00, over by £1",
    )


def test_what_cannot_be_told_says_what_it_needs() -> None:
    _says(HEIGHT, "cannot tell: needs barrier height")
    lacks = (Lack(group=GroupId("galley")), Lack(key=BriefKey("adults")), Lack(key=BriefKey("children")), Lack())
    _says(
        reading("belts", None, None, Verdict.CANNOT_TELL, lacks=lacks),
        "cannot tell: needs galley, grown-ups and 2 more",
    )
    _says(reading("belts", None, None, Verdict.CANNOT_TELL), "cannot tell")
    _says(
        reading("nights", Span(0.5, 6.8), point(2), Verdict.CANNOT_TELL), "cannot tell: 0.5-6.8 of 2 nights (ESTIMATE)"
    )


def test_what_nothing_bounds_is_shown_without_a_verdict() -> None:
    _says(reading("energy", Span(798, 1362), None, Verdict.HOLDS), "798 to 1,362 Wh")
    _says(reading("price-gross", point(1_753_200), None, Verdict.HOLDS), "£17,532, no bound named")
    _says(reading("belts", None, None, Verdict.HOLDS, applies=False), "nothing here to measure")


def test_nothing_known_never_looks_good() -> None:
    _says(reading("belts", None, point(4), Verdict.HOLDS), "cannot tell")


def test_measure_leaves_the_verdict_to_its_neighbour() -> None:
    assert reading_measure(CATALOGUE, ROOF) == "13 of 8 kg, over by 5 kg"


def test_a_bar() -> None:
    assert reading_bar(CATALOGUE, ROOF) == Bar(
        short="Roof load",
        used=1.625,
        may=1.625,
        amount="13 of 8 kg",
        verdict=Verdict.BROKEN,
        words="broken: 13 of 8 kg",
        shorter=("broken: 13 of 8", "broken"),
        level="STOP",
        estimate=False,
    )
    assert reading_bar(CATALOGUE, HEIGHT) == Bar(
        short="Height",
        used=None,
        may=None,
        amount="2,035 mm",
        verdict=Verdict.CANNOT_TELL,
        words="cannot tell: barrier height",
        shorter=("needs barrier height", "cannot tell"),
        level="",
        estimate=True,
    )


def test_a_figure_beside_a_ledger_is_told_with_its_own_amount() -> None:
    def says(of: Reading, words: str) -> None:
        assert beside_line(CATALOGUE, of).partition(": ")[2] == words

    says(reading("nights", point(3.5), None, Verdict.HOLDS), "3.5 nights, no bound named (ESTIMATE)")
    says(reading("nights", point(3.5), point(2), Verdict.HOLDS), "3.5 nights, holds: 1.5 nights spare (ESTIMATE)")
    says(reading("belts", point(4), point(4), Verdict.HOLDS), "holds: 4 of 4 places")
    says(ROOF, "broken: 13 of 8 kg, over by 5 kg")


def test_every_entry() -> None:
    assert detail_texts(CATALOGUE, MASS) == (
        "Weight of the loaded van: holds: 218 to 294 kg spare (ESTIMATE)",
        "together 2,706 to 2,782 kg",
        "at most 3,000 kg: what may be",
        "van with driver: 1,960 kg",
        "Side galley: 92 kg",
        "people: 75 kg, assumed",
        "undecided, cooking: 0 to 21 kg",
        "Formula: sum of all",
        "Source: test sheet. Confidence: estimate.",
        "ESTIMATE: rests on catalogue figures that nobody has measured on this van.",
        "Assumed: amps of the weakest pitch.",
    )


def test_worst_stands_first() -> None:
    energy = reading("energy", point(798), None, Verdict.HOLDS)
    nights = reading("nights", Span(0.5, 6.8), point(2), Verdict.CANNOT_TELL)
    none = reading("belts", None, None, Verdict.HOLDS, applies=False)
    assert worst_first(CATALOGUE, (none, energy, MASS, nights, HEIGHT, ROOF)) == (
        ROOF,
        nights,
        HEIGHT,
        MASS,
        energy,
        none,
    )
