"""A catalogue of a few options with a van, holes and circuits, and a report of a spec, all made by hand."""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.model.brief import BriefLine, Question
from specbuilder.model.catalogue import (
    Catalogue,
    Caution,
    Circuit,
    Firm,
    Group,
    Hole,
    Option,
    Paper,
    Position,
    Space,
    Van,
    WorkStep,
)
from specbuilder.model.facts import Facts
from specbuilder.model.findings import Finding
from specbuilder.model.ids import (
    BASE_VAN_GROUP,
    BriefKey,
    CautionId,
    GroupId,
    LedgerId,
    OptionId,
    PaperId,
    RuleId,
)
from specbuilder.model.kinds import (
    Anchor,
    AnswerType,
    Confidence,
    LedgerKind,
    Level,
    Pick,
    Place,
    RuleKind,
    Sense,
    Step,
    Truth,
    Verdict,
)
from specbuilder.model.ledger import Lack, LedgerSpec, Reading
from specbuilder.model.report import Pence, Price, Report
from specbuilder.model.rules import ALWAYS, NEVER, Rule
from specbuilder.model.span import Span
from specbuilder.model.spec import Spec

VAN = Van(
    name="Fenwain Short",
    family="fenwain",
    fuel="diesel",
    driven_axle="front",
    sliding_doors=(Place.LEFT,),
    rear_doors="tailgate",
    steering_sides=(Place.RIGHT,),
    m_max_kg=3000,
    f_max_kg=1600,
    r_max_kg=1700,
    mro_kg=1960,
    mro_front_kg=1150,
    mro_rear_kg=810,
    wheelbase_mm=3040,
    length_mm=4930,
    width_mm=1920,
    height_mm=1960,
    load_length_mm=2520,
    inside_width_mm=1610,
    inside_height_mm=1400,
    between_arches_mm=1240,
    arch_start_x_mm=1600,
    arch_end_x_mm=2300,
    arch_height_mm=250,
    datum_from_front_axle_mm=1000,
    rear_axle_x_mm=2040,
    rear_sill_x_mm=2520,
    track_mm=1640,
    front_min_share=0.35,
    sliding_door_width_mm=930,
    roof_panel_length_mm=2400,
    roof_panel_width_mm=1300,
    roof_load_kg=150,
    roof_foot_kg=50,
    tank_l=70,
    fuel_density_kg_per_l=0.84,
    factory_fuel_tap=True,
    spare_tank_ports=1,
    fuel_reserve_l=7,
    alternator_type="variable",
    alternator_a=180,
    curtain_airbags=True,
    hv_battery=False,
    no_drill_zones=("sills", "floor above the tank"),
    zones_taken=(),
    ua_w_per_k=40,
    plan_area_m2=4,
    vent_high_flame_mm2=9000,
    vent_low_flame_mm2=9000,
    vent_high_sealed_mm2=4000,
    vent_low_sealed_mm2=4000,
    price_net_supplied_pence=3_000_000,
    lead_weeks=8,
    gives=(),
    remark="",
    source="scenario",
)


def group(id_: str, name: str, *, pick: Pick = Pick.ONE, turns_with: str = "", sits_at: str = "") -> Group:
    return Group(
        id=GroupId(id_),
        step=Step.KITCHEN,
        name=name,
        question=f"Which {name.lower()}?",
        pick=pick,
        none_is_an_answer=False,
        max_choices=1 if pick is Pick.ONE else 9,
        turns_with=GroupId(turns_with) if turns_with else None,
        sits_at=GroupId(sits_at) if sits_at else None,
    )


def at(x_mm: float, y_mm: float, z_mm: float, anchor: Anchor = Anchor.DATUM) -> Position:
    return Position(anchor=anchor, x_mm=x_mm, y_mm=y_mm, z_mm=z_mm)


GALLEY = Option(
    id=OptionId("side-galley"),
    group=GroupId("galley"),
    name="Side galley",
    price_net_pence=234000,
    lead_weeks=4,
    mass_kg=92,
    position=at(1250, -585, 450),
    build_step="B7",
    places=(Place.RIGHT, Place.LEFT),
    hold_points=("H6",),
    space=Space(length_mm=1950, width_mm=440, height_mm=900),
)
HOB = Option(
    id=OptionId("gas-bundle"),
    group=GroupId("cooking"),
    name='Gas kit: hob, store, "drop vent"',
    price_net_pence=78000,
    mass_kg=21,
    position=at(1250, -585, 600),
    build_step="B7",
    papers=(PaperId("gas-paper"),),
    cautions=(CautionId("gas-work"),),
    holes=(
        Hole(
            id="gas-bundle-h1",
            what="drop vent",
            surface="floor",
            position=at(-350, -520, 0, Anchor.REAR),
            width_mm=None,
            height_mm=None,
            diameter_mm=60,
            corner_radius_mm=None,
            cut_from="inside",
            edge_treatment="primer, sealant",
            check_behind="fuel pipe, brake pipe",
            freeze_step="B2",
            tolerance_mm=2,
        ),
    ),
)
FRIDGE = Option(
    id=OptionId("fridge-drawer"),
    group=GroupId("fridge"),
    name="Drawer fridge",
    price_net_pence=69000,
    mass_kg=19,
    position=at(300, -400, 300),
    build_step="B7",
    circuits=(
        Circuit(
            id="fridge-drawer-c1",
            circuit="fridge feed",
            from_point="12 V panel",
            to_point="fridge",
            bus="dc",
            load_w=60,
            load_a=5,
            run_one_way_m=3.5,
            drop_limit_pct=3,
            protection="blade fuse",
        ),
    ),
)
WINDOW = Option(
    id=OptionId("window-fixed"),
    group=GroupId("windows"),
    name="Fixed window",
    price_net_pence=29000,
    mass_kg=12,
    position=at(-750, 840, 900, Anchor.REAR),
    build_step="B2",
    places=(Place.LEFT, Place.RIGHT),
    max_count=2,
)
BATTERY = Option(
    id=OptionId("battery-small"),
    group=GroupId("battery"),
    name="Small pack",
    price_net_pence=89000,
    mass_kg=13,
    position=at(1550, -560, 250),
    build_step="B8",
)
BOX = Option(
    id=OptionId("place-box"),
    group=GroupId("battery-place"),
    name="In the driver's box",
    position=at(-180, -350, 120),
    build_step="B8",
)
FENWAIN = Option(id=OptionId("fenwain-short"), group=BASE_VAN_GROUP, name="Fenwain Short", build_step="B0", van=VAN)

_GROUPS = (
    group("base-van", "Base van"),
    group("galley", "Galley"),
    group("cooking", "Cooking", turns_with="galley"),
    group("fridge", "Fridge", turns_with="galley"),
    group("windows", "Windows", pick=Pick.ANY),
    group("battery", "Battery", sits_at="battery-place"),
    group("battery-place", "Battery place"),
)
_OPTIONS = (FENWAIN, GALLEY, HOB, FRIDGE, WINDOW, BATTERY, BOX)
_LINES = (
    BriefLine(key=BriefKey("adults"), ask="How many grown-ups?", type=AnswerType.WHOLE, question=1, least=1, most=6),
    BriefLine(key=BriefKey("ages"), ask="How old are the children?", type=AnswerType.AGES, question=1, most=17),
    BriefLine(
        key=BriefKey("drive_h_per_day"),
        ask="How long do you drive?",
        type=AnswerType.DECIMAL,
        question=2,
        most=6,
        unit="h",
        assumed=1.5,
    ),
    BriefLine(
        key=BriefKey("steering"),
        ask="Which side is the wheel?",
        type=AnswerType.ONE_OF,
        question=2,
        values=("right", "left"),
    ),
    BriefLine(
        key=BriefKey("must_run"),
        ask="What must run?",
        type=AnswerType.LIST,
        question=2,
        values=("kettle", "laptop"),
    ),
    BriefLine(key=BriefKey("signing"), ask="Are we about to sign?", type=AnswerType.ONE_OF, values=("yes", "no")),
)


def _ledger(id_: str, name: str, unit: str, bound: str, *, estimate: bool = True) -> LedgerSpec:
    return LedgerSpec(
        id=LedgerId(id_),
        kind=LedgerKind.LEDGER,
        name=name,
        short=name[:12],
        unit=unit,
        formula="sum(mass)",
        bound=bound,
        sense=Sense.AT_MOST,
        level=Level.STOP,
        source="house",
        estimate=estimate,
    )


_LEDGERS = (
    _ledger("total-mass", "Weight of the loaded van", "kg", "plate"),
    _ledger("workshop-hours", "Hours in the workshop", "hours", "none"),
    _ledger("heat", "Heat at the cold you named", "kW", "need"),
)
_RULE = Rule(
    id=RuleId("plate"),
    step=Step.CHECK,
    kind=RuleKind.LIMIT,
    level=Level.STOP,
    when=ALWAYS,
    then=NEVER,
    because="A van above its plate may not be driven.",
    fixes=(),
    source="house",
    confidence=Confidence.KNOWN,
)
_SILENT = Rule(
    id=RuleId("cold"),
    step=Step.HEATING,
    kind=RuleKind.LIMIT,
    level=Level.SIGN,
    when=ALWAYS,
    then=NEVER,
    because="It would be too cold.",
    fixes=(),
    source="house",
    confidence=Confidence.KNOWN,
)

CATALOGUE = Catalogue(
    firm=Firm(
        name="Pellowmarch Van Joinery",
        town="Ossenthwick",
        currency="£",
        vat_percent=20,
        deposit_percent=10,
        quote_valid_days=30,
        undo_rate_net_pence_per_h=5200,
        catalogue_version="2031-04",
    ),
    questions=MappingProxyType({1: Question(number=1, asks="Who travels"), 2: Question(number=2, asks="Where")}),
    brief=MappingProxyType({line.key: line for line in _LINES}),
    groups=MappingProxyType({g.id: g for g in _GROUPS}),
    options=MappingProxyType({o.id: o for o in _OPTIONS}),
    rules=MappingProxyType({r.id: r for r in (_RULE, _SILENT)}),
    ledgers=MappingProxyType({ledger.id: ledger for ledger in _LEDGERS}),
    work=MappingProxyType(
        {
            step: WorkStep(
                id=step,
                work=work,
                hours_fixed=2,
                hours_per_circuit=0,
                hours_basis="fixed",
                predecessors=after,
                hold_point=hold,
                hold_text=text,
                pass_figures="",
                freezes=(),
            )
            for step, work, after, hold, text in (
                ("B0", "Receive the van", (), "H0", "Identity as the spec says"),
                ("B2", "Cut", ("B0",), "H2", "Water test"),
                ("B7", "Cabinets, cooker", ("B2",), "H6", "Door swing"),
                ("B8", "Second fix", ("B7",), "", ""),
            )
        }
    ),
    cautions=MappingProxyType(
        {
            CautionId("gas-work"): Caution(
                id=CautionId("gas-work"),
                text="Gas is fitted by a licensed engineer.",
                shown_where="kitchen step",
                who_must_do_or_sign="gas engineer",
            )
        }
    ),
    papers=MappingProxyType(
        {
            PaperId("gas-paper"): Paper(
                id=PaperId("gas-paper"), name="Gas test record", signed_by="gas engineer", at_hold_point="H8"
            )
        }
    ),
    tables=MappingProxyType({}),
    digest="d1",
)


def report_of(spec: Spec, catalogue: Catalogue = CATALOGUE) -> Report:
    """A report that is the same for every spec but for what the spec itself says."""
    van = next((c.option for c in spec.choices if c.option == FENWAIN.id), None)
    known = {key: value for key, value in spec.answers.given.items() if key in catalogue.brief}
    drive = BriefKey("drive_h_per_day")
    assumed = () if drive in known else (drive,)
    unknown = tuple(k for k, line in catalogue.brief.items() if line.question and k not in known and k not in assumed)
    answered = {catalogue.options[c.option].group for c in spec.choices if c.option in catalogue.options}
    undecided = tuple(g.id for g in catalogue.groups.values() if g.pick is Pick.ONE and g.id not in answered)
    return Report(
        spec=spec,
        facts=Facts(
            values=MappingProxyType(known | dict.fromkeys(assumed, 1.5)),
            assumed=frozenset(assumed),
            ranges=MappingProxyType({}),
        ),
        van=van,
        options=MappingProxyType({}),
        groups=MappingProxyType({}),
        steps=MappingProxyType({}),
        findings=(
            Finding(
                rule=RuleId("plate"),
                step=Step.CHECK,
                level=Level.STOP,
                verdict=Verdict.CANNOT_TELL,
                reading=LedgerId("total-mass"),
                lacks=(Lack(group=GroupId("cooking")), Lack(key=BriefKey("adults")), Lack()),
                subjects=(OptionId("side-galley"),),
            ),
        ),
        readings=MappingProxyType(
            {
                LedgerId("total-mass"): Reading(
                    id=LedgerId("total-mass"),
                    value=Span(2751.3333333, 2900),
                    bound=Span(2800, 2800),
                    verdict=Verdict.CANNOT_TELL,
                    lacks=(Lack(group=GroupId("cooking")),),
                    assumed=assumed,
                    sense=Sense.AT_MOST,
                ),
                LedgerId("workshop-hours"): Reading(
                    id=LedgerId("workshop-hours"), value=Span(96, 104.5), bound=None, verdict=Verdict.HOLDS
                ),
            }
        ),
        price=Price(
            net=Pence(least=1_000_000, most=1_100_000),
            vat=Pence(least=200_000, most=220_000),
            gross=Pence(least=1_200_000, most=1_320_000),
            van_included=Truth.NO,
            lacks=(Lack(group=GroupId("cooking")),),
        ),
        unknown=unknown,
        assumed=assumed,
        undecided=undecided,
        strangers=tuple(c.option for c in spec.choices if c.option not in catalogue.options),
        silent_rules=(RuleId("cold"),),
        silent_ledgers=(LedgerId("heat"),),
    )
