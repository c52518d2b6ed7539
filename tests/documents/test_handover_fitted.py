"""The hand-over pack tells of what is fitted, and of nothing that is not."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Facts, Paper, Table
from specbuilder.model.ids import OptionId
from specbuilder.model.papers import Case
from specbuilder.workshop.cautions import cautions_of

from .cases import NAMES, case, spec_of
from .handing_over import EVERY, fitted, pack, table, texts, ticked, under, view

# --- what is kept in the van, and what is not fitted


@EVERY
def test_every_opening_that_gives_air_to_a_flame_or_a_battery_is_listed(name: str) -> None:
    found, paper = pack(name)
    vented = [
        hole
        for one in view(found).taken
        if one.option is not None
        and (one.option.heat.vent_high_mm2 or one.option.heat.vent_low_mm2 or one.option.heat.battery_vent_cm2)
        for hole in one.holes
        if hole.surface not in ("worktop", "furniture")
    ]
    tables = [block for block in paper.blocks if isinstance(block, Table) and block.columns[0].head == "Opening"]
    assert sum(len(block.rows) for block in tables) == len(vented)


NOT_FITTED = {
    "gas": ({"gas-appliance", "gas-store", "gas-supply"}, r"\bgas\b"),
    "lifting roof": ({"elevating-roof"}, r"lifting roof|\bstruts\b"),
    "lithium": ({"lithium"}, r"lithium|gone to sleep"),
    "lead": ({"lead"}, r"lead battery"),
    "plug kit": ({"hook-up"}, r"\binlet\b|On the campsite plug"),
    "inverter": ({"inverter"}, r"\binverter\b"),
    "awning": ({"awning"}, r"\bawning\b"),
    "bed": ({"lower-bed", "bed-from-bench", "roof-bed", "fixed-bed"}, r"\bflat within\b"),
    "turning seat": ({"swivel"}, r"turning seat"),
    "burner": ({"burner", "open-flame"}, r"carbon monoxide|of the burner"),
    "tall unit": ({"tall-unit"}, r"tall unit"),
    "towing": ({"tow-bar"}, r"tow bar"),
    "fridge": ({"fridge"}, r"\bfridge\b"),
}
"""Of each thing the tags that bring it and the words that are its own."""


def told_of(found: Case, paper: Paper) -> list[str]:
    """What the pack itself says: without the words of the fitted parts."""
    own = [text for option in fitted(found) for text in (*option.handover, option.name, option.name.lower())]
    own += [caution.text for caution, _ in cautions_of(view(found))]
    grid = set(texts(under(paper, "What works where")))
    left = [text for text in texts(paper.blocks) if text not in grid and not text.startswith("Not chosen yet")]
    for words in own:
        left = [text.replace(words, "") for text in left]
    return left


@EVERY
def test_what_is_not_fitted_is_nowhere_mentioned(name: str) -> None:
    found, paper = pack(name)
    given = view(found).positions.given()
    missing = [words for tags, words in NOT_FITTED.values() if not tags & given]
    assert missing
    said = told_of(found, paper)
    assert not [(text, words) for words in missing for text in said if re.search(words, text, re.IGNORECASE)]


@pytest.mark.parametrize("thing", NOT_FITTED)
def test_what_is_fitted_is_told_of(thing: str) -> None:
    """So that the words looked for above are those that the pack uses."""
    tags, words = NOT_FITTED[thing]
    told = [told_of(found, paper) for found, paper in map(pack, NAMES) if tags & view(found).positions.given()]
    assert all(any(re.search(words, text, re.IGNORECASE) for text in said) for said in told)


def test_a_van_without_a_battery_of_its_own_protection_is_told_of_no_sleep() -> None:
    _, with_it = pack("saturday-family")
    assert under(with_it, "If the battery has gone to sleep")
    for name in NAMES:
        found, paper = pack(name)
        protected = any(o.power.chemistry == "LFP" and o.power.bms_continuous_a for o in fitted(found))
        assert bool(under(paper, "If the battery has gone to sleep")) is protected


def test_a_boiler_is_drained_by_its_own_paper_before_anything_else() -> None:
    spec = spec_of("saturday-family")
    heater = next(
        one for one in case("saturday-family").stand.catalogue.options.values() if one.id == "hot-water-electric-6l"
    )
    boiler = replace(spec.choices[-1], option=heater.id, count=1, place=None)
    _, paper = pack("saturday-family", choices=(*spec.choices, boiler))
    frost = ticked(paper, "Before the first frost")
    assert frost[0] == "Let it cool, then drain the electric water heater, 6 litres as its own paper says."


# --- nothing against itself, nothing left out


WINTER = {
    "battery-small": "Switch the mains charger off for the winter; switch it on only when the battery and the place it "
    "stands in are above freezing, as its paper says.",
    "battery-lantern": "The mains charger stays plugged in over the winter only where the papers of charger and "
    "battery both say that it may.",
}
"""What the frost page says of the charger beside each battery."""


@pytest.mark.parametrize("battery", WINTER)
def test_the_charger_in_winter_is_told_for_the_battery_that_is_fitted(battery: str) -> None:
    spec = spec_of("saturday-family")
    choices = tuple(
        replace(one, option=OptionId(battery)) if one.option == "battery-small" else one for one in spec.choices
    )
    _, paper = pack("saturday-family", choices=choices)
    frost = ticked(paper, "Before the first frost")
    assert [line for line in frost if "charger" in line] == [WINTER[battery]]
    (charger,) = (line for line in ticked(paper, "The walk round") if line.startswith("Mains charger"))
    assert charger.endswith("over the winter it is used as the page for the first frost says of this battery.")


def test_a_battery_is_woken_in_the_same_words_everywhere() -> None:
    _, paper = pack("saturday-family")
    woken = [text for text in texts(paper.blocks) if re.search("wake the battery", text, re.IGNORECASE)]
    assert len(woken) == 2
    assert all("wake the battery as its own paper says" in text.lower() for text in woken)
    assert not [text for text in texts(paper.blocks) if "three seconds" in text]


@EVERY
def test_a_carbon_monoxide_alarm_that_is_fitted_is_shown_on_the_walk(name: str) -> None:
    found, paper = pack(name)
    shown = [line for line in ticked(paper, "The walk round") if "test button of the carbon-monoxide alarm" in line]
    assert len(shown) == ("co-alarm" in view(found).positions.given())


def test_helpers_are_told_where_gas_and_battery_are_and_the_switches_are_written_in() -> None:
    _, paper = pack("saturday-family")
    (rows,) = (block.rows for block in under(paper, "Where to find them") if isinstance(block, Facts))
    assert rows == (
        (
            "Gas",
            "right side, about 1.25 m behind the rear edge of the front door "
            "(gas kit: hob, sealed store, vents, alarm)",
        ),
        (
            "Leisure battery",
            "right side, about 1.65 m behind the rear edge of the front door (small pack: lithium battery, 100 Ah; "
            "locker in the kitchen)",
        ),
        ("Main switch of the living space (written in by the workshop)", ""),
        ("Main switch of the 230 V side (written in by the workshop)", ""),
    )


def test_what_a_maker_warrants_has_its_line_and_what_the_house_makes_has_none() -> None:
    _, paper = pack("saturday-family")
    parts = {row[0] for row in table(paper, "Part").rows}
    assert {
        "Larchlid tilting roof, short",
        "Opening window beside the living space, left",
        "Fixed window beside the living space, right",
        "Wind-out awning on body brackets, left",
        "Smoke alarm for campers",
        "Campsite plug kit, rear",
    } <= parts
    assert parts.isdisjoint({"Lining, insulation and floor", "Curtains all round", "Take the full steel wall out"})
