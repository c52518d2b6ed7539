"""A catalogue of a few options with a van, holes and circuits, and a report of a spec, all made by hand."""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.model.brief import BriefLine, Question
from specbuilder.model.catalogue import Catalogue, Caution, Firm, Group, Paper, WorkStep
from specbuilder.model.facts import Facts
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, CautionId, GroupId, LedgerId, OptionId, PaperId, RuleId
from specbuilder.model.kinds import (
    AnswerType,
    Confidence,
    LedgerKind,
    Level,
    Pick,
    RuleKind,
    Sense,
    Step,
    Truth,
    Verdict,
)
from specbuilder.model.ledger import Entry, Lack, LedgerSpec, Reading
from specbuilder.model.report import Pence, Price, Report
from specbuilder.model.rules import ALWAYS, NEVER, Rule
from specbuilder.model.span import Span, point
from specbuilder.model.spec import Spec
from specbuilder.storage.spec_files import spec_text
from tests.storage.scene_options import BATTERY, BOX, FRIDGE, FRIDGE_FEEDS, GALLEY, HOB, SHORT, WINDOW


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


_GROUPS = (
    group("base-van", "Base van"),
    group("galley", "Galley"),
    group("cooking", "Cooking", turns_with="galley"),
    group("fridge", "Fridge", turns_with="galley"),
    group("windows", "Windows", pick=Pick.ANY),
    group("battery", "Battery", sits_at="battery-place"),
    group("battery-place", "Battery place"),
)
_OPTIONS = (SHORT, GALLEY, HOB, FRIDGE, WINDOW, BATTERY, BOX)
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
                hours_per_circuit=0.5 if step == "B8" else 0,
                hours_basis="fixed",
                predecessors=after,
                hold_point=hold,
                hold_text=text,
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
    van = next((c.option for c in spec.choices if c.option == SHORT.id), None)
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
                    entries=(
                        Entry("van with driver", point(1960), option=SHORT.id),
                        Entry("people", point(135), assumed=bool(assumed)),
                        Entry("", Span(0, 21), group=GroupId("cooking")),
                        Entry("", point(92), option=GALLEY.id),
                        Entry("", point(38), option=FRIDGE.id, count=2),
                    ),
                    assumed=assumed,
                    sense=Sense.AT_MOST,
                ),
                LedgerId("workshop-hours"): Reading(
                    id=LedgerId("workshop-hours"),
                    value=Span(96, 104.5),
                    bound=None,
                    verdict=Verdict.HOLDS,
                    entries=(
                        Entry("", point(87), option=GALLEY.id),
                        Entry("work on every van", point(8)),
                        Entry("", Span(0, 8.5), group=GroupId("cooking")),
                        Entry("cable runs", point(1)),
                    ),
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
        unsettled=frozenset(),
        silent_rules=(RuleId("cold"),),
        silent_ledgers=(LedgerId("heat"),),
        circuits=FRIDGE_FEEDS if any(c.option == FRIDGE.id for c in spec.choices) else (),
    )


def written(spec: Spec) -> str:
    """The text of its file, with that report."""
    return spec_text(CATALOGUE, spec, report_of(spec))
