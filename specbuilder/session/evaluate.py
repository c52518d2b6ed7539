"""Spec and catalogue in, report out: the one function every screen, command and paper stands on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial

from specbuilder.calc import CALCULATIONS, made
from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.calc.circuits.mains_protection import mains_protection
from specbuilder.calc.limits.doubts import told
from specbuilder.calc.order.effects import effects
from specbuilder.calc.order.price import price
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, RuleKind, Step, Truth, Verdict
from specbuilder.model.ledger import Reading
from specbuilder.model.report import Effect, GroupStatus, Judged, OptionStatus, Pence, Report, StepStatus
from specbuilder.model.rules import Rule
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span, point
from specbuilder.model.spec import Choice, Spec
from specbuilder.rulegraph.judge import Hearing, judge, judge_all
from specbuilder.rulegraph.standing import Standing, stand, swapped
from specbuilder.rulegraph.states import Stand
from specbuilder.workshop.runs import in_place

from .facts import asked
from .ledger_causes import with_ledgers
from .machine import lock_of
from .relevance import Relevance, memory_of
from .same import remembered
from .situate import Laid, lay

MADE: frozenset[LedgerId] = frozenset(calculation.id for calculation in CALCULATIONS)
"""Ledgers and figures that have their sum."""


def evaluate(catalogue: Catalogue, spec: Spec, *, exact: bool = True) -> Report:
    """Everything that follows from a spec.

    Not ``exact``: findings and readings in full, but of the states of options only what propagation tells.
    The same report for the same objects while it is among the last few: what is asked next of a spec begins with it.
    """
    with lock_of(catalogue):
        return _evaluate(catalogue, spec, exact)


def judged(catalogue: Catalogue, spec: Spec) -> Judged:
    """Findings and sums alone, as ``evaluate`` has them: for specs that are tried by the dozen and never shown."""
    with lock_of(catalogue):
        laid = lay(catalogue, spec, exact=False)
        standing, hearings = _standing(laid.situation), _hearings(laid)
        findings = _findings(spec, standing, hearings)
        return Judged(
            spec=spec,
            facts=laid.facts,
            findings=findings,
            readings=_as_asked(standing.readings, findings, hearings),
            price=price(laid.situation),
        )


def _standing(situation: Situation) -> Standing:
    """The situation with its sums; those whose part of it has not changed are remembered."""
    relevance, memory = Relevance(situation), memory_of(situation.catalogue)
    readings = {
        c.id: memory.recall(("reading", relevance.of(c.id)), partial(told, c, situation))
        for c in made(situation.catalogue)
    }
    return stand(situation, readings)


def _hearings(laid: Laid) -> Mapping[RuleId, Hearing]:
    return {h.rule.id: h for h in laid.run.rulebook.hearings if h.heard(MADE)}


def _findings(spec: Spec, standing: Standing, hearings: Mapping[RuleId, Hearing]) -> tuple[Finding, ...]:
    return judge_all(hearings.values(), standing, frozenset(a.rule for a in spec.accepted))


def _as_asked(
    readings: Mapping[LedgerId, Reading], findings: tuple[Finding, ...], hearings: Mapping[RuleId, Hearing]
) -> Mapping[LedgerId, Reading]:
    """A bound that no rule asks for as things stand is not told as broken: a van without lining needs no vents."""
    said: dict[LedgerId, set[Verdict]] = {}
    for finding in findings:
        if finding.reading is not None:
            said.setdefault(finding.reading, set()).add(finding.verdict)

    def asked_of(reading: Reading) -> Reading:
        verdicts = said.get(reading.id, set())
        if reading.verdict is not Verdict.BROKEN or Verdict.BROKEN in verdicts:
            return reading
        if Verdict.CANNOT_TELL in verdicts:
            return replace(reading, verdict=Verdict.CANNOT_TELL)
        judged = any(reading.id in hearing_.ledgers for hearing_ in hearings.values())
        return replace(reading, applies=False) if judged else reading

    return {ledger: asked_of(reading) for ledger, reading in readings.items()}


@remembered(8)
def _evaluate(catalogue: Catalogue, spec: Spec, exact: bool) -> Report:
    laid = lay(catalogue, spec, exact=exact)
    situation = laid.situation
    standing = _standing(situation)
    hearings = _hearings(laid)
    findings = _findings(spec, standing, hearings)
    effect = effects(situation)
    stands = with_ledgers(laid.stands, standing, hearings.values())
    options = _options(standing, hearings, findings, stands, effect)
    groups = _groups(spec, situation, findings, effect)
    unknown = tuple(
        line.key
        for line in catalogue.brief.values()
        if line.question is not None and not laid.facts.known(line.key) and asked(line, laid.facts) is Truth.YES
    )
    undecided = tuple(g for g in groups if g in situation.undecided)
    circuits = in_place(catalogue, spec, situation.van_data, circuit_schedule(situation))
    return Report(
        spec=spec,
        facts=laid.facts,
        van=situation.van.id if situation.van else None,
        options=options,
        groups=groups,
        steps=_steps(catalogue, spec, undecided, unknown, findings),
        findings=findings,
        readings=_as_asked(standing.readings, findings, hearings),
        price=price(situation),
        unknown=unknown,
        assumed=_assumed(catalogue, laid),
        undecided=undecided,
        strangers=tuple(c.option for c in spec.choices if c.option not in catalogue.options),
        unsettled=laid.unsettled,
        silent_rules=tuple(rule for rule in catalogue.rules if rule not in hearings),
        silent_ledgers=tuple(ledger for ledger in catalogue.ledgers if ledger not in MADE),
        circuits=circuits,
        mains=mains_protection(situation, circuits),
    )


def _assumed(catalogue: Catalogue, laid: Laid) -> tuple[BriefKey, ...]:
    return tuple(
        line.key
        for line in catalogue.brief.values()
        if line.key in laid.facts.assumed and line.question is not None and asked(line, laid.facts) is not Truth.NO
    )


def _options(
    standing: Standing,
    hearings: Mapping[RuleId, Hearing],
    findings: tuple[Finding, ...],
    stands: dict[OptionId, Stand],
    effect: Mapping[OptionId, Effect],
) -> dict[OptionId, OptionStatus]:
    catalogue = standing.situation.catalogue
    clashes: dict[OptionId, list[RuleId]] = {}
    for finding in findings:
        if finding.verdict is Verdict.BROKEN and finding.level is not Level.NOTE:
            for subject in finding.subjects:
                clashes.setdefault(subject, []).append(finding.rule)
    usual = {option for group in catalogue.groups.values() for option in group.usual}
    return {
        option.id: OptionStatus(
            option=option.id,
            state=(stand_ := stands[option.id]).state,
            place=stand_.place,
            effect=effect[option.id],
            cause=stand_.cause,
            brings=stand_.brings,
            asks=stand_.asks,
            clashes=tuple(clashes[option.id]) if option.id in clashes else (),
            would_clear=_would_clear(standing, hearings, option, stand_, clashes) if clashes else (),
            usual=option.id in usual,
        )
        for option in catalogue.options.values()
    }


def _would_clear(
    standing: Standing,
    hearings: Mapping[RuleId, Hearing],
    option: Option,
    stand_: Stand,
    clashes: dict[OptionId, list[RuleId]],
) -> tuple[RuleId, ...]:
    """Clashes of what stands in the option's pick-one group that end when the option takes its place."""
    situation, catalogue = standing.situation, standing.situation.catalogue
    if stand_.state is not OptionState.OPEN or catalogue.groups[option.group].pick is not Pick.ONE:
        return ()
    now = [p for p in situation.placed if p.option.group == option.group and p.option.van is None]
    rules = [r for p in now for r in clashes.get(p.option.id, ()) if not _about_sums(catalogue.rules[r])]
    if not rules:
        return ()
    after = swapped(standing, tuple(now), Placed(option=option, place=stand_.place))
    return tuple(r for r in dict.fromkeys(rules) if judge(hearings[r], after).verdict is Verdict.HOLDS)


def _about_sums(rule: Rule) -> bool:
    return rule.kind is RuleKind.LIMIT


def _groups(
    spec: Spec, situation: Situation, findings: tuple[Finding, ...], effect: Mapping[OptionId, Effect]
) -> dict[GroupId, GroupStatus]:
    catalogue = situation.catalogue
    broken = [f for f in findings if f.verdict is Verdict.BROKEN and f.level is not Level.NOTE]
    clashes: dict[GroupId, list[RuleId]] = {}
    for finding in broken:
        for group in dict.fromkeys(_group_of(catalogue, s) for s in finding.subjects):
            if group is not None:
                clashes.setdefault(group, []).append(finding.rule)
    choices: dict[GroupId, list[Choice]] = {}
    for choice in spec.choices:
        if (group := _group_of(catalogue, choice.option)) is not None:
            choices.setdefault(group, []).append(choice)
    return {
        group: _group(group, tuple(choices.get(group, ())), situation, tuple(clashes.get(group, ())), effect)
        for group in catalogue.groups
    }


def _group_of(catalogue: Catalogue, option: OptionId) -> GroupId | None:
    found = catalogue.options.get(option)
    return found.group if found else None


def _group(
    group: GroupId,
    choices: tuple[Choice, ...],
    situation: Situation,
    clashes: tuple[RuleId, ...],
    effect: Mapping[OptionId, Effect],
) -> GroupStatus:
    """While undecided, what the group may add goes from its least live answer to its most."""
    live = situation.undecided.get(group)
    if live is not None:
        each = [effect[o.id] for o in live] or [Effect(gross_pence=0, mass_kg=0)]
        pence = Pence(least=min(e.gross_pence for e in each), most=max(e.gross_pence for e in each))
        mass = Span(min(e.mass_kg for e in each), max(e.mass_kg for e in each))
    else:
        each = [effect[o] for o in dict.fromkeys(c.option for c in choices)]
        total = sum(e.gross_pence for e in each)
        pence, mass = Pence(least=total, most=total), point(sum(e.mass_kg for e in each))
    return GroupStatus(
        group=group, decided=live is None, choices=choices, gross_added=pence, mass_added_kg=mass, clashes=clashes
    )


def _steps(
    catalogue: Catalogue,
    spec: Spec,
    undecided: tuple[GroupId, ...],
    unknown: tuple[BriefKey, ...],
    findings: tuple[Finding, ...],
) -> dict[Step, StepStatus]:
    broken = [f for f in findings if f.verdict is Verdict.BROKEN and f.level is not Level.NOTE and not f.accepted]
    missing = {
        Step.BRIEF: len(unknown),
        Step.BASE_VAN: 0 if spec.van_data.complete else 1,
        Step.CHECK: len(spec.questions),
    }
    return {
        step: StepStatus(
            step=step,
            undecided=sum(catalogue.groups[g].step is step for g in undecided),
            unknown=missing.get(step, 0),
            broken=sum(f.step is step for f in broken),
        )
        for step in Step
    }
