"""Seasons, months, cold and what cannot run together, in words."""

from __future__ import annotations

from dataclasses import replace
from math import inf
from types import MappingProxyType

from specbuilder.model.ids import GroupId, LedgerId, OptionId
from specbuilder.model.kinds import Verdict
from specbuilder.model.ledger import Lack, Outside, Reading
from specbuilder.model.power import ColdCharging, Feed, InCold, PowerNotes, Together, TooMuch
from specbuilder.model.span import Span, point
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.wording.power import cold_line, month_line, power_lines, season_lines, set_words, together_lines

RULES = read_rules(rules_folder())
DAY, NIGHTS = LedgerId("daily-energy"), LedgerId("battery-nights")


def reading(id_: LedgerId, value: Span | None, **more: object) -> Reading:
    verdict = Verdict.HOLDS if value is not None else Verdict.CANNOT_TELL
    return replace(Reading(id=id_, value=value, bound=None, verdict=verdict), **more)  # type: ignore[arg-type]


def test_three_short_lines() -> None:
    seasons = {
        "summer": (reading(DAY, point(924)), reading(NIGHTS, point(7.27))),
        "three-season": (reading(DAY, Span(900, 960)), reading(NIGHTS, point(inf))),
        "winter": (reading(DAY, point(997)), reading(NIGHTS, None, applies=False)),
    }
    assert season_lines(RULES, seasons) == (
        "summer        924 Wh a day, 7.3 nights with sun and driving counted in",
        "three-season  900 to 960 Wh a day, nights: no end with sun and driving counted in",
        "winter        997 Wh a day, no battery",
    )
    assert power_lines(RULES, PowerNotes(seasons=MappingProxyType(seasons))) == season_lines(RULES, seasons)


def test_a_season_nobody_can_tell() -> None:
    open_ = reading(NIGHTS, None, lacks=(Lack(group=GroupId("battery")),))
    lines = season_lines(RULES, {"winter": (reading(DAY, None), open_)})
    assert lines == ("winter  cannot tell, cannot tell: needs battery",)
    assert season_lines(RULES, {}) == ()


def test_twelve_months_in_one_line() -> None:
    months = (*(point(n * 10) for n in range(1, 12)), Span(1100, 1234))
    assert month_line(months) == (
        "Sun in a day by month, Wh: Jan 10, Feb 20, Mar 30, Apr 40, May 50, Jun 60, Jul 70, Aug 80, Sep 90, "
        "Oct 100, Nov 110, Dec 1,100-1,234"
    )


def in_cold(charging: ColdCharging, **more: object) -> str:
    told = InCold(
        options=(OptionId("battery-small"),),
        charging=charging,
        cold_c=point(-5),
        least_c=0,
        outside=False,
        assumed=False,
    )
    return cold_line(RULES, replace(told, **more))  # type: ignore[arg-type]


def test_charging_in_the_cold() -> None:
    said = in_cold(ColdCharging.STOPS_ITSELF)
    assert said.startswith(
        "Charging in the cold (-5 °C): small pack: lithium battery, 100 Ah: below 0 °C it takes no charge"
    )
    assert "left unheated" in said
    assert "stands outside" in in_cold(ColdCharging.WARMS_FIRST, outside=True)
    assert "must not be charged below 0 °C" in in_cold(ColdCharging.MUST_NOT)
    assert "(-5 °C, assumed)" in in_cold(ColdCharging.MAY, assumed=True)
    assert "cannot tell yet" in in_cold(ColdCharging.UNKNOWN, least_c=None)
    assert len({in_cold(charging) for charging in ColdCharging}) == len(ColdCharging)


PAIR = TooMuch(options=((OptionId("induction-single"), 1), (OptionId("kettle-low-watt"), 1)), watts_w=2700, over_w=700)
ALONE = TooMuch(options=((OptionId("kettle-household"), 1),), watts_w=2000, over_w=920)
ALIKE = TooMuch(options=((OptionId("e-bike-charger"), 2),), watts_w=500, over_w=50)


def test_sets_by_name() -> None:
    assert set_words(RULES, PAIR) == (
        "Induction hob, one ring, with Low-watt kettle, 900 W: together 2,700 W, over by 700 W"
    )
    assert set_words(RULES, ALONE) == "Household kettle, 2,000 W: too strong by itself, 2,000 W, over by 920 W"
    assert set_words(RULES, ALIKE) == "2 x Charger for one e-bike, 250 W: together 500 W, over by 50 W"


def test_what_cannot_run_together() -> None:
    told = Together(feed=Feed.INVERTER, limit_w=point(2000), sets=(PAIR,))
    assert list(together_lines(RULES, told)) == [
        "Cannot run together (the inverter gives 2,000 W):",
        f"- {set_words(RULES, PAIR)}",
    ]
    weak = list(together_lines(RULES, replace(told, feed=Feed.BATTERY, limit_w=point(1080))))
    assert weak[0] == "Cannot run together (the battery carries 1,080 W, less than the inverter gives):"
    pitch = Together(feed=Feed.PITCH, limit_w=Span(1380, 3680), assumed=True)
    assert list(together_lines(RULES, pitch)) == [
        "Everything chosen can run at once: the pitch gives 1,380 to 3,680 W, assumed."
    ]


def test_many_sets_are_counted() -> None:
    told = Together(feed=Feed.PITCH, limit_w=point(1380), sets=(PAIR,) * 9)
    lines = list(together_lines(RULES, told))
    assert len(lines) == 8
    assert lines[-1] == "- and 3 more sets"


def test_what_nobody_can_tell_and_whose_plate_to_read() -> None:
    gap = Outside("watts of Laptop, 60 W W", float("nan"), "given")
    lines = list(together_lines(RULES, Together(feed=Feed.INVERTER, limit_w=None, outside=gap)))
    assert lines[-1] == "What cannot run together: cannot tell yet."
    assert len(lines) == 2
    own = Together(feed=Feed.INVERTER, limit_w=point(600), unsure=(OptionId("laptop"),))
    assert list(together_lines(RULES, own))[-1] == (
        "The customer's own laptop, 60 W: watts as in the catalogue, to be read off the plate."
    )
