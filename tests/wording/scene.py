"""One small kitchen, and reports on it made by hand, so that every sentence stands on values the test shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.brief import Answer, Answers, BriefLine, Question
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Facts
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import (
    AnswerType,
    Basis,
    Confidence,
    LedgerKind,
    Level,
    OptionState,
    RuleKind,
    Sense,
    Step,
    Truth,
    Verdict,
)
from specbuilder.model.ledger import LedgerSpec, Reading
from specbuilder.model.report import Effect, GroupStatus, OptionStatus, Pence, Price, Report, StepStatus
from specbuilder.model.rules import ALWAYS, AllOf, AnyOf, WithinBound
from specbuilder.model.span import Span
from specbuilder.model.spec import Choice, Customer, Spec
from tests import worlds
from tests.scenes.van import FENWAIN

GALLEY, COOKING, EXTRAS, ROOF = "galley", "cooking", "extras", "roof"


def _ledger(id_: str, name: str, short: str, unit: str, sense: Sense, level: Level, *, estimate: bool) -> LedgerSpec:
    return LedgerSpec(
        id=LedgerId(id_),
        kind=LedgerKind.FIGURE if id_ == "closed-height" else LedgerKind.LEDGER,
        name=name,
        short=short,
        unit=unit,
        formula="sum of all",
        bound="what may be",
        sense=sense,
        level=level,
        source="test sheet",
        estimate=estimate,
    )


LEDGERS = (
    _ledger("total-mass", "Weight of the loaded van", "Weight", "kg", Sense.AT_MOST, Level.STOP, estimate=True),
    _ledger("roof-load", "Weight on the lifting roof", "Roof load", "kg", Sense.AT_MOST, Level.STOP, estimate=False),
    _ledger("belts", "Seats with belts", "Belts", "places", Sense.AT_LEAST, Level.STOP, estimate=False),
    _ledger("price-gross", "Price with tax", "Price", "pence", Sense.AT_MOST, Level.SIGN, estimate=False),
    _ledger("nights", "Nights on the battery", "Nights", "nights", Sense.AT_LEAST, Level.SIGN, estimate=True),
    _ledger("closed-height", "Height closed", "Height", "mm", Sense.AT_MOST, Level.SIGN, estimate=True),
    _ledger("energy", "Energy of a day", "Day's energy", "Wh", Sense.SHOWN, Level.NOTE, estimate=False),
)


def _line(key: str, type_: AnswerType, question: int | None, **more: object) -> BriefLine:
    return BriefLine(key=BriefKey(key), ask=f"{key}?", type=type_, question=question, **more)  # type: ignore[arg-type]


BRIEF = (
    _line("adults", AnswerType.WHOLE, 1, least=1, most=6, unit="people"),
    _line("children", AnswerType.WHOLE, 1, most=4, unit="people"),
    _line("child_ages", AnswerType.AGES, 1, most=17, unit="years"),
    _line("parking_limit_mm", AnswerType.WHOLE, 4, most=3500, unit="mm", unnamed=0),
    _line("site_amps", AnswerType.ONE_OF, 6, values=("6", "10", "16"), unit="A", assumed="10"),
    _line("gas", AnswerType.ONE_OF, 7, values=("yes", "no", "any")),
    _line("must_run", AnswerType.LIST, 8, values=("none", "kettle", "hair-dryer", "laptop")),
    _line("ceiling_gross_pence", AnswerType.WHOLE, 9, most=20_000_000, unit="pence", unnamed=0),
    _line("drive_h_per_day", AnswerType.DECIMAL, 6, most=6, unit="h"),
    _line("signing", AnswerType.ONE_OF, None, values=("yes", "no"), assumed="no"),
)

OPTIONS = (
    replace(worlds.option("fenwain-short", BASE_VAN_GROUP), name="Fenwain Short", van=FENWAIN),
    replace(
        worlds.option("side-galley", GALLEY, places="right left", zones="wall@side", price_net_pence=234_000),
        name="Side galley",
        mass_kg=92,
        description="Worktop, sink and cupboards along the wall.",
        basis=Basis.SCENARIO,
    ),
    replace(worlds.option("pod-galley", GALLEY, lead_weeks=3), name="Pod galley"),
    replace(worlds.option("gas-bundle", COOKING, gives="flame", lead_weeks=2), name="Gas bundle"),
    replace(worlds.option("fuel-hob", COOKING, lead_weeks=5), name="Fuel hob bundle"),
    replace(worlds.option("no-cooking", COOKING, is_none=True), name="None built in"),
    replace(worlds.option("co-alarm", EXTRAS, gives="alarm"), name="CO alarm"),
    replace(worlds.option("usb-pair", EXTRAS, max_count=4), name="USB pair"),
    replace(
        worlds.option("solar", ROOF, needs=("high-cap|elevating-roof",)),
        name="Solar 160 W, framed",
        needs_because="It has to be bolted to something.",
    ),
    replace(worlds.option("long-roof", ROOF, vans="fenwain-long"), name="Larchlid tilting roof, long"),
)

RULES = (
    replace(
        worlds.rule(
            "roof-not-too-heavy", RuleKind.LIMIT, ALWAYS, AnyOf((AllOf((WithinBound(LedgerId("roof-load")),)),))
        ),
        because="Too heavy and you could not pull the roof shut.",
        fixes=("Light panel", "strong struts"),
        source="roof maker's sheet",
    ),
    replace(
        worlds.rule("height-under-barrier", RuleKind.LIMIT, ALWAYS, AnyOf(()), Level.SIGN),
        because="It would not go under your barrier.",
        confidence=Confidence.ESTIMATE,
    ),
    replace(
        worlds.rule("flame-needs-alarm", RuleKind.NEEDS_ANY, worlds.tags("flame"), worlds.tags("alarm")),
        because="You cannot smell it.",
        fixes=("Take an alarm",),
    ),
    replace(
        worlds.rule("nights-short", RuleKind.LIMIT, ALWAYS, AnyOf(()), Level.SIGN),
        because="By the second evening the fridge is off.",
    ),
)


def _world() -> Catalogue:
    made = worlds.catalogue(
        (
            worlds.group(BASE_VAN_GROUP, step=Step.BASE_VAN),
            replace(worlds.group(ROOF, any_=4, step=Step.ROOF), name="Roof top"),
            worlds.group(GALLEY),
            replace(worlds.group(COOKING), usual=(OptionId("gas-bundle"),)),
            worlds.group(EXTRAS, any_=6),
        ),
        OPTIONS,
        RULES,
        LEDGERS,
        BRIEF,
    )
    asks = (
        "Who travels",
        "Who sleeps",
        "Van",
        "Where it lives",
        "Season",
        "Nights off grid",
        "Gas",
        "Off grid",
        "Ceiling",
    )
    questions = {n: Question(number=n, asks=text) for n, text in enumerate(asks, 1)}
    questions[3] = replace(questions[3], group=BASE_VAN_GROUP)
    return replace(made, questions=MappingProxyType(questions))


CATALOGUE = _world()
NOTHING = Pence(least=0, most=0)


def choice(option: str, **more: object) -> Choice:
    return Choice(option=OptionId(option), **more)  # type: ignore[arg-type]


def spec(*choices: Choice, name: str = "The Saturday family", **answers: Answer) -> Spec:
    given = MappingProxyType({BriefKey(k): v for k, v in answers.items()})
    return Spec(number="0147", customer=Customer(name=name), answers=Answers(given), choices=choices)


def status(option: str, state: OptionState, *, pence: int = 0, kg: float = 0, **more: object) -> OptionStatus:
    return OptionStatus(
        option=OptionId(option),
        state=state,
        place=None,
        effect=Effect(gross_pence=pence, mass_kg=kg),
        **more,  # type: ignore[arg-type]
    )


def group_status(group: str, *choices: Choice, decided: bool = True, **more: object) -> GroupStatus:
    return GroupStatus(
        group=GroupId(group),
        decided=decided,
        choices=choices,
        gross_added=more.pop("gross_added", Pence(least=0, most=0)),  # type: ignore[arg-type]
        mass_added_kg=more.pop("mass_added_kg", Span(0, 0)),  # type: ignore[arg-type]
        **more,  # type: ignore[arg-type]
    )


def reading(id_: str, value: Span | None, bound: Span | None, verdict: Verdict, **more: object) -> Reading:
    sense = next(ledger.sense for ledger in LEDGERS if ledger.id == id_)
    return Reading(id=LedgerId(id_), value=value, bound=bound, verdict=verdict, sense=sense, **more)  # type: ignore[arg-type]


def finding(rule: str, verdict: Verdict, **more: object) -> Finding:
    level = CATALOGUE.rules[RuleId(rule)].level
    return Finding(rule=RuleId(rule), step=Step.ROOF, level=level, verdict=verdict, **more)  # type: ignore[arg-type]


def report(
    of: Spec,
    *,
    options: tuple[OptionStatus, ...] = (),
    groups: tuple[GroupStatus, ...] = (),
    readings: tuple[Reading, ...] = (),
    findings: tuple[Finding, ...] = (),
    counts: Mapping[Step, tuple[int, int, int]] = MappingProxyType({}),
    gross: Pence = NOTHING,
    van: str | None = "fenwain-short",
    van_included: Truth = Truth.NO,
    assumed: Mapping[str, Answer] = MappingProxyType({}),
    **more: object,
) -> Report:
    by_option = {o: status(o, OptionState.OPEN) for o in CATALOGUE.options}
    by_option.update({s.option: s for s in options})
    by_group = {g: group_status(g) for g in CATALOGUE.groups}
    by_group.update({g.group: g for g in groups})
    values = {**of.answers.given, **{BriefKey(k): v for k, v in assumed.items()}}
    rest: dict[str, object] = {
        "unknown": (),
        "undecided": (),
        "strangers": (),
        "unsettled": frozenset(),
        "silent_rules": (),
        "silent_ledgers": (),
        **more,
    }
    return Report(
        spec=of,
        facts=Facts(values=values, assumed=frozenset(BriefKey(k) for k in assumed), ranges={}),
        van=OptionId(van) if van else None,
        options=by_option,
        groups=by_group,
        steps={s: _counts(s, *counts.get(s, (0, 0, 0))) for s in Step},
        findings=findings,
        readings={r.id: r for r in readings},
        price=Price(net=gross, vat=gross, gross=gross, van_included=van_included),
        assumed=tuple(BriefKey(k) for k in assumed),
        **rest,  # type: ignore[arg-type]
    )


def _counts(step: Step, undecided: int, unknown: int, broken: int) -> StepStatus:
    return StepStatus(step=step, undecided=undecided, unknown=unknown, broken=broken)
