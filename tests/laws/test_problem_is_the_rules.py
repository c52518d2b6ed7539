"""The compiled problem and the judged rules say the same of every complete spec of the shipped catalogue.

One way of reading the rules is `evaluate`: it looks at what is chosen and judges rule after rule. The other is the
problem that the reasoner searches. Of a spec in which nothing is open they have to agree on every single rule.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Level, Owner, Pick, Verdict
from specbuilder.model.report import Report
from specbuilder.model.rules import BriefIs, Not, Rule
from specbuilder.model.spec import Choice, OwnPart, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.machine import Machine, machine_of
from specbuilder.storage.spec_files import read_spec_file
from tests.reasoning.referee import SatReferee

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@cache
def example(catalogue: Catalogue, path: Path) -> Spec:
    return read_spec_file(path, catalogue).spec


@st.composite
def complete_specs(draw: st.DrawFn, catalogue: Catalogue) -> Spec:
    """An example with some answers, extras, places, counts and owners changed; whatever comes of it."""
    spec = example(catalogue, draw(st.sampled_from(EXAMPLES)))
    choices = list(spec.choices)
    for _ in range(draw(st.integers(0, 5))):
        group = catalogue.groups[draw(st.sampled_from(sorted(catalogue.groups)))]
        option = draw(st.sampled_from(catalogue.options_of(group.id)))
        out = {o.id for o in catalogue.options_of(group.id)} if group.pick is Pick.ONE else {option.id}
        choices = [c for c in choices if c.option not in out]
        taken = sum(c.count for c in choices if catalogue.options[c.option].group == group.id)
        room = min(option.max_count, group.max_choices - taken)
        if room < 1:
            continue
        count = draw(st.integers(1, room)) if group.pick is Pick.ANY else 1
        place = draw(st.sampled_from(option.places)) if option.places else None
        new = Choice(option=option.id, place=place, count=count)
        if option.van is None and draw(st.integers(0, 29)) == 0:
            sheet = OwnPart(mass_kg=draw(st.sampled_from([None, 3.5, 60])))
            new = replace(new, owner=Owner.CUSTOMER, own_part=sheet)
        choices.append(new)
    return replace(spec, choices=tuple(choices))


def exactly(machine: Machine, report: Report) -> list[int]:
    """The literals of a build with these choices and answers and nothing else."""
    held = {lit for choice in report.spec.choices for lit in machine.compiled.held(choice)}
    for counts in machine.compiled.counts.values():
        for at, lit in enumerate(counts):
            if held.isdisjoint(counts[at:]):
                held.add(-lit)
    return [*held, *machine.answers(report.facts), *machine.theirs(report.spec.choices)]


def rests_on_the_job(catalogue: Catalogue, rule: Rule) -> bool:
    """Whether it looks at the state of the job, which moves on by itself: such a rule blocks nothing."""
    atoms = [atom for side in (rule.when, rule.then) for term in side.terms for atom in term.atoms]
    plain = [atom.atom if isinstance(atom, Not) else atom for atom in atoms]
    return any(isinstance(atom, BriefIs) and catalogue.brief[atom.key].question is None for atom in plain)


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_the_problem_keeps_a_rule_where_it_is_not_broken(catalogue: Catalogue, data: st.DataObject) -> None:
    report = evaluate(catalogue, data.draw(complete_specs(catalogue)), exact=False)
    if report.undecided:
        return
    machine = machine_of(catalogue, report.facts, report.spec.choices, selectable=True)
    held = exactly(machine, report)
    heard = {
        rule: lit
        for rule, lit in machine.compiled.selectors.items()
        if not rests_on_the_job(catalogue, catalogue.rules[rule]) and rule not in machine.compiled.unheard
    }
    broken = {f.rule for f in report.findings if f.verdict is Verdict.BROKEN}
    assert machine.stands([*held, *(lit for rule, lit in heard.items() if rule not in broken)]), report.spec.choices
    missed = [rule for rule, lit in heard.items() if rule in broken and machine.stands([*held, lit])]
    assert not missed, report.spec.choices


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_an_established_engine_says_so_too(catalogue: Catalogue, data: st.DataObject) -> None:
    report = evaluate(catalogue, data.draw(complete_specs(catalogue)), exact=False)
    if report.undecided:
        return
    machine = machine_of(catalogue, report.facts, report.spec.choices)
    broken = {f.rule for f in report.broken(Level.STOP)} - machine.dropped
    fits = not any(not rests_on_the_job(catalogue, catalogue.rules[rule]) for rule in broken)
    held = exactly(machine, report)
    assert (SatReferee(machine.compiled.problem).build(held) is not None) is fits, report.spec.choices
    assert machine.stands(held) is fits, report.spec.choices


NO_SUM = {"nights-on-the-battery"}
"""Below STOP, and no sum of the choices: judged when a build is looked at in full."""


def test_no_other_rule_is_left_to_the_full_look_alone(catalogue: Catalogue) -> None:
    for path in EXAMPLES:
        report = evaluate(catalogue, example(catalogue, path), exact=False)
        machine = machine_of(catalogue, report.facts, report.spec.choices, selectable=True)
        assert set(machine.compiled.unheard) <= NO_SUM, path.stem
