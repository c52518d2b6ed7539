"""Every rule judged on one situation: holds, broken or cannot tell, with what makes it so.

A rule that lands on MAYBE (``truth.py``) cannot be told yet.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.findings import Finding
from specbuilder.model.ids import LedgerId, RuleId
from specbuilder.model.kinds import Level, Place, RuleKind, Truth, Verdict
from specbuilder.model.ledger import Lack
from specbuilder.model.rules import (
    SAME,
    FigureAbove,
    Given,
    MarginBelow,
    Rule,
    WithinBound,
)

from .evidence import Evidence, gather
from .graph import atoms_of
from .standing import Standing
from .truth import any_of, denied


@dataclass(frozen=True, slots=True)
class Hearing:
    """A rule with what a look at it tells once and for all."""

    rule: Rule
    same: bool
    """It speaks of ``@same`` place and is judged once for each."""
    ledgers: frozenset[LedgerId]
    """The ledgers and figures it reads."""
    wakes: frozenset[str] | None
    """Capabilities of which one must be about for the condition to be met at all; None: it must be looked at."""
    holding: Finding
    """What is said while it holds."""

    def heard(self, made: frozenset[LedgerId]) -> bool:
        """False for a rule about a ledger that is not made: it is silent."""
        return self.ledgers <= made


def hearing(rule: Rule) -> Hearing:
    """Look at a rule."""
    holding = Finding(rule=rule.id, step=rule.step, level=rule.level, verdict=Verdict.HOLDS)
    return Hearing(rule, _speaks_of_same(rule), ledgers_of(rule), _wakes(rule), holding)


def _wakes(rule: Rule) -> frozenset[str] | None:
    """One capability of each and-list of the condition; None when an and-list asks for none."""
    found: set[str] = set()
    for term in rule.when.terms:
        tag = next((atom for atom in term.atoms if isinstance(atom, Given)), None)
        if tag is None:
            return None
        found.add(tag.tag if tag.place in (None, SAME) else f"{tag.tag}@{tag.place}")
    return frozenset(found)


def ledgers_of(rule: Rule) -> frozenset[LedgerId]:
    """The ledgers and figures a rule reads."""
    return frozenset(
        atom.ledger
        for side in (rule.when, rule.then)
        for atom, _ in atoms_of(side)
        if isinstance(atom, WithinBound | MarginBelow | FigureAbove)
    )


NOTHING = Evidence()
"""Of a rule that holds."""


def judge_all(hearings: Iterable[Hearing], standing: Standing, accepted: frozenset[RuleId]) -> tuple[Finding, ...]:
    """A finding for each rule, what stops first."""
    findings = [judge(hearing_, standing, accepted) for hearing_ in hearings]
    return tuple(sorted(findings, key=lambda f: f.rank))


def judge(hearing_: Hearing, standing: Standing, accepted: frozenset[RuleId] = frozenset()) -> Finding:
    """What one rule says."""
    rule, wakes = hearing_.rule, hearing_.wakes
    if wakes is not None and wakes.isdisjoint(standing.given) and wakes.isdisjoint(standing.may_give):
        return hearing_.holding
    verdict, evidence = _worst(hearing_, standing)
    if verdict is Verdict.HOLDS:
        return hearing_.holding
    order = {p.option.id: i for i, p in enumerate(standing.situation.placed)}
    return Finding(
        rule=rule.id,
        step=rule.step,
        level=rule.level,
        verdict=verdict,
        subjects=tuple(sorted(dict.fromkeys(evidence.subjects), key=lambda o: order.get(o, -1))),
        keys=tuple(dict.fromkeys(evidence.keys)),
        values=tuple(dict.fromkeys(evidence.values)),
        reading=evidence.reading,
        lacks=tuple(dict.fromkeys(evidence.lacks)),
        wanted=tuple(dict.fromkeys(evidence.wanted)),
        accepted=rule.id in accepted and verdict is Verdict.BROKEN,
    )


def _worst(hearing_: Hearing, standing: Standing) -> tuple[Verdict, Evidence]:
    """The worst over the places that ``@same`` may stand for."""
    if not hearing_.same:
        return _at(hearing_.rule, standing, None)
    results = [_at(hearing_.rule, standing, side) for side in Place]
    for wanted in (Verdict.BROKEN, Verdict.CANNOT_TELL):
        for verdict, evidence in results:
            if verdict is wanted:
                return verdict, evidence
    return results[0]


def _speaks_of_same(rule: Rule) -> bool:
    return any(isinstance(a, Given) and a.place == SAME for e in (rule.when, rule.then) for a, _ in atoms_of(e))


def _at(rule: Rule, standing: Standing, side: Place | None) -> tuple[Verdict, Evidence]:
    when = any_of(rule.when, standing, side)
    if when is Truth.NO:
        return Verdict.HOLDS, NOTHING
    then = any_of(rule.then, standing, side)
    match rule.kind:
        case RuleKind.EXCLUDES:
            truth = denied(min(when, then))
        case RuleKind.NEEDS_ANY | RuleKind.LIMIT | RuleKind.EXACTLY_ONE:
            truth = max(denied(when), then)
        case RuleKind.ADVICE:
            truth = max(denied(when), then) if rule.then.terms else denied(when)
        case _:
            assert_never(rule.kind)
    verdict = {Truth.YES: Verdict.HOLDS, Truth.NO: Verdict.BROKEN, Truth.MAYBE: Verdict.CANNOT_TELL}[truth]
    if verdict is Verdict.HOLDS:
        return verdict, NOTHING
    evidence = Evidence()
    gather(rule.when, standing, side, evidence, wanted=False)
    gather(rule.then, standing, side, evidence, wanted=rule.kind in (RuleKind.NEEDS_ANY, RuleKind.ADVICE))
    if verdict is Verdict.BROKEN:
        evidence.lacks[:] = _still_to_come(rule, standing, evidence)
        verdict = Verdict.CANNOT_TELL if evidence.lacks else Verdict.BROKEN
    return verdict, evidence


def _still_to_come(rule: Rule, standing: Standing, evidence: Evidence) -> list[Lack]:
    """Extras that may still bring what is wanted, below STOP: nobody has walked their step to its end yet.

    What stops is said at once, whatever may still come.
    """
    if rule.level is Level.STOP or rule.kind not in (RuleKind.NEEDS_ANY, RuleKind.ADVICE):
        return []
    return [Lack(group=group) for tag in evidence.wanted for group in standing.may_come.get(tag, ())]
