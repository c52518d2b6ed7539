"""Small vans, catalogues and situations for tests of the sums."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue, Column, Group, Option, Table, WorkStep
from specbuilder.model.facts import Facts
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, GroupId, LedgerId, OptionId, Tag, Zone
from specbuilder.model.kinds import Confidence, LedgerKind, Level, Owner, Sense
from specbuilder.model.ledger import LedgerSpec
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span
from specbuilder.model.spec import OwnPart
from specbuilder.model.vans import Van
from tests import worlds
from tests.scenes.van import FENWAIN

HUSHWAIN = replace(
    FENWAIN,
    name="Hushwain",
    family="Hushwain",
    fuel="electric",
    m_max_kg=3150,
    mro_kg=2370,
    length_mm=4940,
    height_mm=1985,
    inside_width_mm=1620,
    sliding_door_width_mm=1010,
    roof_load_kg=100,
    tank_l=0,
    fuel_density_kg_per_l=0,
    zones_taken=(Zone("underfloor-mid"), Zone("underfloor-rear")),
    price_net_supplied_pence=4_410_000,
    lead_weeks=12,
)

SETTINGS: Mapping[str, Mapping[str, float]] = MappingProxyType(
    {
        "total-mass": {
            "grown_up_kg": 75,
            "luggage_per_traveller_kg": 10,
            "luggage_per_metre_kg": 10,
            "last_fuel_share": 0.1,
        },
        "pay-mass": {"per_seat_kg": 10, "per_metre_kg": 10, "seat_load_kg": 75},
        "unladen-mass": {"most_kg": 2950, "driver_kg": 75, "fuel_share": 0.9},
        "way-out": {"least_mm": 500},
        "zone-use": {"most_claims": 1},
        "gas-bottles": {"most_bottles": 2},
        "closed-height": {"spare_mm": 30},
        "swivel-gap": {"least_mm": 40},
        "fridge-door-gap": {"least_mm": 20},
        "bed-length": {"beyond_sleeper_mm": 100},
        "bed-width": {"per_sleeper_mm": 500},
        "heat": {"margin_share": 1.2, "inside_c": 20},
        "waste-share": {"least_share": 0.5},
        "fresh-water-days": {"per_person_day_l": 10},
        "heater-nights": {
            "mean_kw": 0.9,
            "night_h": 9,
            "burner_share": 0.85,
            "fuel_hob_per_day_l": 0.12,
            "tank_share": 0.5,
        },
    }
)
AT_LEAST = ("pay-mass", "belts", "berths", "way-out", "swivel-gap", "fridge-door-gap", "bed-length", "bed-width")
LIVING = ("heat", "high-vents", "low-vents", "waste-share", "fresh-water-days", "heater-nights")
"""Heat, fresh air and water: all of them at least their bound."""
SHOWN = ("berths-over-belts", "workshop-hours")
SUMS = (
    "total-mass",
    "pay-mass",
    "unladen-mass",
    "roof-load-closed",
    "roof-load-raised",
    "roof-bed-load",
    "belts",
    "berths",
    "cross-width",
    "way-out",
    "zone-use",
    "gas-bottles",
    "fuel-pickups",
    *LIVING[:4],
    "price-gross",
)
FIGURES = (
    "closed-height",
    "swivel-gap",
    "fridge-door-gap",
    "bed-length",
    "bed-width",
    "battery-box",
    "lead-weeks",
    *LIVING[4:],
    "quote-age",
    *SHOWN,
)
RANGES: Mapping[str, Span] = MappingProxyType(
    {
        "adults": Span(1, 6),
        "children": Span(0, 4),
        "child_mass_kg": Span(10, 60),
        "extra_load_kg": Span(0, 400),
        "sleepers": Span(0, 6),
        "sleepers_upstairs_kg": Span(0, 250),
        "tallest_sleeper_mm": Span(0, 2100),
        "parking_limit_mm": Span(0, 3500),
        "ceiling_gross_pence": Span(0, 20_000_000),
        "weeks_wanted": Span(0, 60),
        "sleepers_upstairs": Span(0, 3),
        "design_temp_c": Span(-20, 15),
        "altitude_m": Span(0, 3000),
        "nights_off_grid": Span(0, 14),
        "drive_h_per_day": Span(0, 6),
        "age_days": Span(0, 400),
    }
)
KNOWN: Mapping[str, Answer] = MappingProxyType(
    {
        "adults": 2,
        "children": 2,
        "child_mass_kg": 30,
        "extra_load_kg": 0,
        "sleepers": 4,
        "sleepers_upstairs_kg": 60,
        "tallest_sleeper_mm": 1780,
        "parking_limit_mm": 2100,
        "ceiling_gross_pence": 2_000_000,
        "van_in_ceiling": "no",
        "weeks_wanted": 10,
        "sleepers_upstairs": 2,
        "design_temp_c": 5,
        "altitude_m": 300,
        "nights_off_grid": 2,
        "drive_h_per_day": 1,
        "season": "summer",
        "region": "uk",
        "site_amps": "10",
        "must_run": ("laptop",),
        "plugged_every_night": "no",
        "age_days": 0,
    }
)

FUEL_ENERGY = Table(
    id="fuel-energy",
    name="Energy of a litre",
    source="test",
    confidence=Confidence.KNOWN,
    columns=tuple(Column(key=key) for key in ("fuel", "kwh_per_l", "least_kwh_per_l", "most_kwh_per_l")),
    rows=(("diesel", 9.97, 9.7, 10.4), ("petrol", 8.8, 8.4, 9.2)),
)


def ledger(id_: str) -> LedgerSpec:
    """The table of one ledger."""
    sense = Sense.AT_LEAST if id_ in (*AT_LEAST, *LIVING) else Sense.SHOWN if id_ in SHOWN else Sense.AT_MOST
    return LedgerSpec(
        id=LedgerId(id_),
        kind=LedgerKind.LEDGER if id_ in SUMS else LedgerKind.FIGURE,
        name=id_,
        short=id_[:12],
        unit="",
        formula="",
        bound="",
        sense=sense,
        level=Level.STOP,
        source="test",
        settings=MappingProxyType(dict(SETTINGS.get(id_, {}))),
    )


def base_van(id_: str, van: Van, gives: str = "") -> Option:
    """A base van as an option."""
    tags = tuple(Tag(t) for t in gives.split())
    return Option(id=OptionId(id_), group=BASE_VAN_GROUP, name=van.name, gives=tags, van=replace(van, gives=tags))


SHORT, HUSH = base_van("short", FENWAIN), base_van("hush", HUSHWAIN)


def catalogue(
    options: Iterable[Option], groups: Iterable[Group] = (), vans: Iterable[Option] = (SHORT, HUSH)
) -> Catalogue:
    """A catalogue with every ledger; groups that are not given take one answer."""
    options = (*vans, *options)
    given = {g.id: g for g in groups}
    for option in options:
        given.setdefault(option.group, worlds.group(option.group))
    made = worlds.catalogue(tuple(given.values()), options, ledgers=tuple(map(ledger, (*SUMS, *FIGURES))))
    steps = (_step("B1", 4, 0), _step("B4", 8, 0.35), _step("B8", 4, 0.25))
    return replace(
        made,
        work=MappingProxyType({step.id: step for step in steps}),
        tables=MappingProxyType({FUEL_ENERGY.id: FUEL_ENERGY}),
    )


def _step(id_: str, hours: float, per_circuit: float) -> WorkStep:
    return WorkStep(
        id=id_,
        work="Work",
        hours_fixed=hours,
        hours_per_circuit=per_circuit,
        hours_basis="",
        predecessors=(),
        hold_point="",
        hold_text="",
        freezes=(),
    )


def facts(
    answers: Mapping[str, Answer] | None = None,
    *,
    assumed: Iterable[str] = (),
    unknown: Iterable[str] = (),
    **more: Answer,
) -> Facts:
    """Known answers with some changed, some assumed and some unknown."""
    values = {**KNOWN, **(answers or {}), **more}
    return Facts(
        values=MappingProxyType({BriefKey(k): v for k, v in values.items() if k not in tuple(unknown)}),
        assumed=frozenset(map(BriefKey, assumed)),
        ranges=MappingProxyType({BriefKey(k): v for k, v in RANGES.items()}),
    )


def situation(
    catalogue_: Catalogue,
    *choices: Placed | Option | str,
    van: Option | None = SHORT,
    undecided: Mapping[str, Iterable[str]] | None = None,
    free: Iterable[str] = (),
    facts_: Facts | None = None,
) -> Situation:
    """These choices in this van; ``undecided`` and ``free`` name options by id."""
    options = catalogue_.options
    open_groups = {GroupId(g): tuple(options[OptionId(o)] for o in ids) for g, ids in (undecided or {}).items()}
    return Situation(
        catalogue=catalogue_,
        facts=facts_ or facts(),
        van=van,
        placed=(*((Placed(option=van),) if van else ()), *(_placed(catalogue_, c) for c in choices)),
        undecided=MappingProxyType(open_groups),
        free=tuple(options[OptionId(o)] for o in free),
    )


def _placed(catalogue_: Catalogue, choice: Placed | Option | str) -> Placed:
    if isinstance(choice, str):
        return Placed(option=catalogue_.options[OptionId(choice)])
    return choice if isinstance(choice, Placed) else Placed(option=choice)


def theirs(option: Option, mass_kg: float | None, count: int = 1) -> Placed:
    """A part the customer brings, weighed or not."""
    return Placed(option=option, count=count, owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=mass_kg))
