"""Ways out about a figure that is no sum of the choices, such as nights: tried, for no search holds it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import combinations

from specbuilder.model.edits import Edit, Take
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level, Pick, Verdict
from specbuilder.model.report import Judged
from specbuilder.model.rules import WithinBound

from .moves import alternatives
from .rulebooks import rulebook_of
from .way_goal import Quest
from .way_trial import Candidate, Trials

GIVING_UP = 5 * 10**9
"""Half a change: of two ways with one change, going without the thing altogether is told last."""
BEST = 8
"""Of the edits that help without being enough, so many are tried two by two."""


@dataclass(frozen=True, slots=True)
class _Step:
    """One edit, and by how much it helps."""

    edits: tuple[Edit, ...]
    room: float


def probe(quest: Quest, trials: Trials, is_over: Callable[[], bool]) -> Iterator[Candidate]:
    """Candidates that reach the goal: single edits, with what they then need; else the best of them in pairs."""
    steps: list[_Step] = []
    found = False
    now = _room(quest, quest.report)
    for edit in _edits(quest):
        if is_over():
            return
        for candidate in trials.tried((edit,)):
            report = trials.look(candidate)
            for held in _held(quest, trials, candidate, report):
                found = True
                yield held
            if (room := _room(quest, report)) > now:
                steps.append(_Step((edit,), room))
    if found:
        return
    best = sorted(steps, key=lambda step: -step.room)[:BEST]
    for one, other in combinations(best, 2):
        if is_over():
            return
        for candidate in trials.tried((*one.edits, *other.edits)):
            yield from _held(quest, trials, candidate, trials.look(candidate))


def _edits(quest: Quest) -> Iterator[Edit]:
    """Every edit that changes the figure: another answer, count or place of what stands, and extras."""
    options = quest.catalogue.options
    touched = {options[o].group for o in quest.touching}
    for choice in quest.soft().values():
        option = options[choice.option]
        if option.safety or option.group not in touched:
            continue
        for way in alternatives(quest.machine.compiled, choice):
            if choice.option in quest.touching or (way.option is not None and way.option.id in quest.touching):
                yield way.edit
    standing = {c.option for c in quest.spec.choices}
    for option_id in sorted(quest.touching - standing):
        option = options[option_id]
        if quest.catalogue.groups[option.group].pick is Pick.ANY and not (option.refused or option.found):
            yield Take(option=option_id)


def _held(quest: Quest, trials: Trials, candidate: Candidate, report: Judged) -> Iterator[Candidate]:
    """The candidate where it holds; and where it asks for more, with the cheapest of what it asks for."""
    if trials.holds(candidate):
        new = {c.option for c in candidate.spec.choices} - {c.option for c in quest.spec.choices}
        gives_up = any(quest.catalogue.options[option].is_none for option in new)
        candidate.key += GIVING_UP if gives_up else 0
        yield candidate
    missing = _missing(quest, report)
    if missing and not _broken(report) & set(quest.targets):
        for whole in trials.tried((*candidate.edits, *missing)):
            if trials.holds(whole):
                yield whole


def _missing(quest: Quest, report: Judged) -> tuple[Edit, ...]:
    """For each capability that is newly missing the cheapest extra that gives it."""
    before, options = _broken(quest.report), quest.catalogue.options
    givers = rulebook_of(quest.catalogue).givers
    edits: dict[Edit, None] = {}
    for finding in report.broken(Level.STOP, Level.SIGN):
        if finding.rule in before or not finding.wanted:
            continue
        offered = [options[o] for tag in finding.wanted for o in givers.get(tag, ()) if not options[o].refused]
        if offered:
            edits[Take(option=min(offered, key=lambda o: (o.price_net_pence, o.id)).id)] = None
    return tuple(edits)


def _broken(report: Judged) -> set[RuleId]:
    return {f.rule for f in report.findings if f.verdict is Verdict.BROKEN and not f.accepted}


def _room(quest: Quest, report: Judged) -> float:
    """What is left to the bounds of the targets together; more is better."""
    total = 0.0
    for rule in quest.targets:
        for term in quest.catalogue.rules[rule].then.terms:
            for atom in term.atoms:
                reading = report.readings.get(atom.ledger) if isinstance(atom, WithinBound) else None
                if reading is not None and reading.room is not None:
                    total += min(reading.room.least, 1e9)
    return total
