"""Never a plausible number where a figure of power is missing or absurd; a customer's part by its own sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product
from types import MappingProxyType
from typing import Any

import pytest

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, LedgerId, OptionId
from specbuilder.model.kinds import Owner, Pick, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.situation import Placed
from specbuilder.model.span import Span, point
from specbuilder.model.spec import OwnPart
from tests.calc.plain_power import PLAIN
from tests.calc.power_scene import BRIEF, RULES, build, read


def lacking(option: str, **power: Any) -> Catalogue:
    """The catalogue with an option of which some figures are not as they should be."""
    known = RULES.options[OptionId(option)]
    poorer = replace(known, power=replace(known.power, **power))
    return replace(RULES, options=MappingProxyType({**RULES.options, known.id: poorer}))


WHOLE = (
    "battery-lantern place-in-galley inverter-600 dcdc-30 mains-charger-15 hook-up-bundle solar-light-120 "
    "controller-20a-50v laptop kettle-low-watt"
)
BY_BATTERY = "battery-nights lead-draw charge-rate"
BY_INVERTER = "battery-current lead-draw daily-energy battery-nights inverter-largest-load"


@pytest.mark.parametrize(
    ("option", "power", "blind"),
    [
        ("battery-lantern", {"bms_continuous_a": None}, "battery-current"),
        ("battery-lantern", {"packs_parallel": None}, "battery-current"),
        ("battery-lantern", {"packs_parallel": 0}, "battery-current"),
        ("battery-lantern", {"battery_ah": None}, BY_BATTERY),
        ("battery-lantern", {"battery_ah": 0}, BY_BATTERY),
        ("battery-lantern", {"battery_v": None}, "battery-nights"),
        ("battery-lantern", {"depth_of_discharge": None}, "battery-nights"),
        ("battery-lantern", {"depth_of_discharge": 1.5}, "battery-nights"),
        ("battery-lantern", {"chemistry": "strange"}, BY_BATTERY),
        ("inverter-600", {"inverter_efficiency": None}, BY_INVERTER),
        ("inverter-600", {"inverter_efficiency": 0}, BY_INVERTER),
        ("inverter-600", {"inverter_efficiency": 88}, BY_INVERTER),
        ("inverter-600", {"inverter_w": None}, BY_INVERTER),
        ("inverter-600", {"inverter_idle_w": None}, "daily-energy battery-nights"),
        ("laptop", {"hours_summer": None}, "daily-energy battery-nights"),
        ("laptop", {"watts_running": -60}, "daily-energy battery-nights"),
        ("laptop", {"watts_running": None}, "hook-up-watts inverter-largest-load"),
        ("dcdc-30", {"engine_charge_a": None}, "battery-nights charge-rate"),
        ("dcdc-30", {"engine_input_a": None}, "alternator-input"),
        ("mains-charger-15", {"mains_charge_a": None}, "charge-rate"),
        ("mains-charger-15", {"watts_running": None}, "hook-up-watts"),
        ("solar-light-120", {"solar_w": None}, "battery-nights"),
        ("solar-light-120", {"panel_voc_v": None}, "solar-voltage"),
        ("solar-light-120", {"panel_voc_v": 0}, "solar-voltage"),
        ("controller-20a-50v", {"solar_controller_max_v": None}, "solar-voltage"),
    ],
)  # fmt: skip
def test_a_missing_figure_gives_no_number(option: str, power: dict[str, Any], blind: str) -> None:
    poorer = lacking(option, **power)
    answers: Mapping[str, Answer] = {"must_run": ("kettle", "laptop"), "nights_off_grid": 2}
    group = RULES.options[OptionId(option)].group
    decided = build(*WHOLE.split(), answers=answers, rules=poorer)
    others = [word for word in WHOLE.split() if RULES.options[OptionId(word)].group != group]
    live = tuple(o.id for o in RULES.options_of(group))
    open_ = build(*others, answers=answers, rules=poorer, undecided={group: live})
    for id_ in PLAIN:
        reading = read(id_, decided)
        if id_ in blind.split():
            assert reading.value is None, id_
            assert reading.verdict is Verdict.CANNOT_TELL, id_
            assert reading.outside is not None, id_
            if power not in ({"watts_running": -60},):
                assert group in [lack.group for lack in reading.lacks], id_
            if RULES.groups[group].pick is Pick.ONE:
                assert read(id_, open_).verdict is Verdict.CANNOT_TELL, id_
                assert read(id_, open_).value is None, id_
        else:
            assert reading.value is not None, id_


NAMED = [(id_, name) for id_ in PLAIN for name in RULES.ledgers[LedgerId(id_)].settings if name != "in_series_above_v"]


@pytest.mark.parametrize(("id_", "name"), NAMED)
def test_an_absurd_setting_gives_no_number(id_: str, name: str) -> None:
    """Where it is looked at at all: each hangs on a season, a kind of battery or a place."""
    spec = RULES.ledgers[LedgerId(id_)]
    absurd = replace(spec, settings=MappingProxyType({**spec.settings, name: -1_000.0}))
    rules = replace(RULES, ledgers=MappingProxyType({**RULES.ledgers, spec.id: absurd}))
    blind = 0
    for season, battery in product(BRIEF["season"], ("battery-lantern", "battery-twin")):
        choices = WHOLE.replace("battery-lantern", battery).replace("place-in-galley", "place-under-floor").split()
        answers: Mapping[str, Answer] = {"season": season, "drive_h_per_day": 1}
        usual, reading = (read(id_, build(*choices, answers=answers, rules=r)) for r in (RULES, rules))
        assert reading.value in (None, usual.value)
        assert reading.value is not None or reading.verdict is Verdict.CANNOT_TELL or not usual.applies
        blind += reading.value is None and usual.applies
    assert blind


def test_what_must_run_is_asked_before_anything_is_said() -> None:
    reading = read("inverter-largest-load", build("inverter-600", "laptop", unknown=("must_run",)))
    assert reading.verdict is Verdict.CANNOT_TELL
    assert BriefKey("must_run") in [lack.key for lack in reading.lacks]


def test_a_part_the_customer_brings_draws_what_its_sheet_says() -> None:
    fridge = RULES.options[OptionId("fridge-own")]

    def own(sheet: OwnPart | None) -> Reading:
        return read("daily-energy", build(Placed(option=fridge, owner=Owner.CUSTOMER, own_part=sheet)))

    assert own(OwnPart(mass_kg=20, watts_w=30)).value == point(33 + 48 + 30 * 24 * 0.45)
    open_ = own(OwnPart(mass_kg=20))
    assert open_.value == Span(33 + 48, 33 + 48 + 2 * 50 * 24 * 0.45)
    assert [lack.group for lack in open_.lacks] == ["fridge"]
    assert own(None).value == open_.value


def test_a_kettle_of_unknown_watts_may_just_be_carried() -> None:
    kettle = RULES.options[OptionId("kettle-household")]
    now = build("inverter-2000", Placed(option=kettle, owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=1)))
    value = read("daily-energy", now).value
    assert value is not None
    assert value.least == pytest.approx(33 + 48 + 42)
    assert value.most == pytest.approx(33 + 48 + 42 + 2000 * 0.12 / 0.9)
