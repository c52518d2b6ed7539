"""The hand-over pack tells of what is fitted, and of nothing that is not."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from specbuilder.documents.blocks import Paper, Table
from specbuilder.model.papers import Case
from specbuilder.workshop.cautions import cautions_of

from .cases import NAMES, case, spec_of
from .handing_over import EVERY, fitted, pack, texts, ticked, under, view

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
