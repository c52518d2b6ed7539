"""Spec and catalogue in, report out: the one function every screen, command and paper stands on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from specbuilder.calc import CALCULATIONS, Calculation, read_all
from specbuilder.calc.mass import mass_effect
from specbuilder.calc.price import gross_effect, gross_of, price
from specbuilder.model.catalogue import Catalogue, Group, Option
from specbuilder.model.findings import Cause, CauseKind, Finding
from specbuilder.model.ids import BriefKey, GroupId, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Level, OptionState, Pick, Place, RuleKind, Step, Truth, Verdict
from specbuilder.model.report import Effect, GroupStatus, OptionStatus, Pence, Report, StepStatus
from specbuilder.model.rules import Rule, WithinBound
from specbuilder.model.situation import Placed, Situation
from specbuilder.model.span import Span
from specbuilder.model.spec import Spec
from specbuilder.rulegraph.judge import Hearing, holds_for_certain, judge, judge_all
from specbuilder.rulegraph.standing import Standing, stand
from specbuilder.rulegraph.states import Stand
from specbuilder.rulegraph.truth import within

from .facts import asked
from .situate import Laid, lay

MADE: frozenset[LedgerId] = frozenset(calculation.id for calculation in CALCULATIONS)
"""Ledgers and figures that have their sum."""


def evaluate(catalogue: Catalogue, spec: Spec) -> Report:
    """Everything that follows from a spec."""
    laid = lay(catalogue, spec)
    situation = laid.situation
    readings = read_all(situation)
    standing = stand(situation, readings)
    hearings = {h.rule.id: h for h in laid.run.rulebook.hearings if h.heard(MADE)}
    findings = judge_all(hearings.values(), standing, frozenset(a.rule for a in spec.accepted))
    stands = _blocked_by_ledgers(laid.stands, standing, hearings.values())
    options = _options(standing, hearings, findings, stands)
    groups = _groups(catalogue, spec, situation, findings)
    unknown = tuple(
        line.key
        for line in catalogue.brief.values()
        if line.question is not None and not laid.facts.known(line.key) and asked(line, laid.facts) is Truth.YES
    )
    undecided = tuple(g for g in groups if g in situation.undecided)
    return Report(
        spec=spec,
        facts=laid.facts,
        van=situation.van.id if situation.van else None,
        options=options,
        groups=groups,
        steps=_steps(catalogue, spec, undecided, unknown, findings),
        findings=findings,
        readings=readings,
        price=price(situation),
        unknown=unknown,
        assumed=_assumed(catalogue, laid),
        undecided=undecided,
        strangers=tuple(c.option for c in spec.choices if c.option not in catalogue.options),
        silent_rules=tuple(rule for rule in catalogue.rules if rule not in hearings),
        silent_ledgers=tuple(ledger for ledger in catalogue.ledgers if ledger not in MADE),
    )


def _assumed(catalogue: Catalogue, laid: Laid) -> tuple[BriefKey, ...]:
    return tuple(
        line.key
        for line in catalogue.brief.values()
        if line.key in laid.facts.assumed and line.question is not None and asked(line, laid.facts) is not Truth.NO
    )


def _blocked_by_ledgers(
    stands: dict[OptionId, Stand], standing: Standing, hearings: Iterable[Hearing]
) -> dict[OptionId, Stand]:
    """Options that no completion can carry: with them, a STOP limit is out of reach whatever else is chosen.

    A limit that is broken already blocks nothing: it is in conflict, and states are told relative to the rest.
    """
    result = dict(stands)
    situation = standing.situation
    calculations = {calculation.id: calculation for calculation in CALCULATIONS}
    for rule in (h.rule for h in hearings):
        limit = _plain_limit(rule)
        if limit is None or standing.readings[limit.ledger].verdict is Verdict.BROKEN:
            continue
        if not holds_for_certain(rule, standing):
            continue
        calculation = calculations[limit.ledger]
        for option in touching(situation.catalogue, calculation):
            if result[option.id].state is OptionState.OPEN:
                place = _place_within(calculation, situation, option, limit, result[option.id].place)
                if place is None:
                    cause = Cause(kind=CauseKind.LEDGER, ledger=limit.ledger, rule=rule.id, option=option.id)
                    result[option.id] = replace(result[option.id], state=OptionState.BLOCKED, cause=cause)
    return result


def touching(catalogue: Catalogue, calculation: Calculation) -> tuple[Option, ...]:
    """Options that can change a ledger."""
    return tuple(o for o in catalogue.options.values() if o.van is None and calculation.touches(o))


def _plain_limit(rule: Rule) -> WithinBound | None:
    if rule.kind is not RuleKind.LIMIT or rule.level is not Level.STOP:
        return None
    atoms = [atom for term in rule.then.terms for atom in term.atoms]
    return atoms[0] if len(atoms) == 1 and isinstance(atoms[0], WithinBound) else None


def _place_within(
    calculation: Calculation, situation: Situation, option: Option, limit: WithinBound, place: Place | None
) -> tuple[Place | None] | None:
    reach = calculation.reach(situation, option, place)
    return None if reach is not None and within(limit, *reach) is Truth.NO else (place,)


def _options(
    standing: Standing,
    hearings: Mapping[RuleId, Hearing],
    findings: tuple[Finding, ...],
    stands: dict[OptionId, Stand],
) -> dict[OptionId, OptionStatus]:
    situation, catalogue = standing.situation, standing.situation.catalogue
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
            effect=Effect(
                gross_pence=gross_effect(situation, option, stand_.place),
                mass_kg=mass_effect(situation, option, stand_.place),
            ),
            cause=stand_.cause,
            brings=stand_.brings,
            asks=stand_.asks,
            clashes=tuple(clashes.get(option.id, ())),
            would_clear=_would_clear(standing, hearings, option, stand_, clashes),
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
    others = tuple(p for p in situation.placed if p not in now)
    swapped = replace(situation, placed=(*others, Placed(option=option, place=stand_.place)))
    after = stand(swapped, standing.readings)
    return tuple(r for r in dict.fromkeys(rules) if judge(hearings[r], after).verdict is Verdict.HOLDS)


def _about_sums(rule: Rule) -> bool:
    return rule.kind is RuleKind.LIMIT


def _groups(
    catalogue: Catalogue, spec: Spec, situation: Situation, findings: tuple[Finding, ...]
) -> dict[GroupId, GroupStatus]:
    broken = [f for f in findings if f.verdict is Verdict.BROKEN and f.level is not Level.NOTE]
    return {
        group.id: GroupStatus(
            group=group.id,
            decided=group.id not in situation.undecided,
            choices=tuple(c for c in spec.choices if _group_of(catalogue, c.option) == group.id),
            gross_added=_gross_added(group, situation),
            mass_added_kg=_mass_added(group, situation),
            clashes=tuple(f.rule for f in broken if any(_group_of(catalogue, s) == group.id for s in f.subjects)),
        )
        for group in catalogue.groups.values()
    }


def _group_of(catalogue: Catalogue, option: OptionId) -> GroupId | None:
    found = catalogue.options.get(option)
    return found.group if found else None


def _gross_added(group: Group, situation: Situation) -> Pence:
    if (live := situation.undecided.get(group.id)) is not None:
        amounts = [gross_effect(situation, o, None) for o in live] or [0]
        return Pence(least=min(amounts), most=max(amounts))
    total = gross_of(situation, tuple(p for p in situation.placed if p.option.group == group.id))
    return Pence(least=total, most=total)


def _mass_added(group: Group, situation: Situation) -> Span:
    if (live := situation.undecided.get(group.id)) is not None:
        amounts = [mass_effect(situation, o, None) for o in live] or [0.0]
        return Span(min(amounts), max(amounts))
    total = sum(p.option.mass_kg * p.count for p in situation.placed if p.option.group == group.id)
    return Span(total, total)


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
