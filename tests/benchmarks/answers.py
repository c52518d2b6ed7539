"""Exact answers on the demo catalogue: states, reasons, ways out and a finished build, beside their floors."""

from __future__ import annotations

import gc
import random
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import TypeVar

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import LeaveOut, Take
from specbuilder.model.kinds import Level, OptionState, Step
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Aim, ClearFindings, LetIn
from specbuilder.reasoning.reasons import minimal_reason
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.session.exact import make_peace, proven
from specbuilder.session.facts import facts_of
from specbuilder.session.finish import finish
from specbuilder.session.machine import machine_of
from specbuilder.session.rulebooks import rulebook_of
from specbuilder.session.situate import lay, run_of
from specbuilder.session.ways_out import ways_out
from specbuilder.storage.rules_files import read_rules, rules_folder

from .evaluation import examples

VISITED = (
    "half-done-family",
    "hush-family",
    "nurse-under-two-metres",
    "off-grid-pair",
    "saturday-family",
    "wheelchair-day-van",
    "winter-walkers",
)
CLASHING = ("kettle-on-small-pack", "right-door-muddle", "vanload-on-hushwain", "wide-bench-wrong-roof")
STEPS = 30

_T = TypeVar("_T")


def run() -> None:
    """Measure and print."""
    catalogue = read_rules(rules_folder())
    specs = examples(catalogue)
    gc.collect()
    gc.freeze()  # as the app does once the catalogue is read
    gc.set_threshold(20_000, 20, 50)
    _states(catalogue, specs)
    _reasons(catalogue, specs)
    _ways(catalogue, specs)
    _finished(catalogue, specs)


def _timed(work: Callable[[], _T]) -> tuple[float, _T]:
    began = time.perf_counter()
    found = work()
    return (time.perf_counter() - began) * 1000, found


def _spread(times: list[float]) -> str:
    ordered = sorted(times)
    return (
        f"median {ordered[len(ordered) // 2]:6.2f} ms, p95 {ordered[int(0.95 * (len(ordered) - 1))]:6.2f} ms,"
        f" most {ordered[-1]:6.2f} ms, n={len(ordered)}"
    )


def visit(catalogue: Catalogue, spec: Spec, seed: int) -> Iterator[Spec]:
    """A seeded visit at the counter: mostly taking what is open, sometimes leaving something out."""
    dice = random.Random(seed)
    for _ in range(STEPS):
        report = evaluate(catalogue, spec)
        open_ = [
            status.option
            for status in report.options.values()
            if status.state is OptionState.OPEN and catalogue.options[status.option].van is None
        ]
        edit = (
            LeaveOut(option=dice.choice(spec.choices).option)
            if spec.choices and dice.random() < 0.3
            else Take(option=dice.choice(open_))
        )
        outcome = apply(catalogue, spec, edit)
        if outcome.refused is None:
            spec = outcome.spec
            yield spec


def _states(catalogue: Catalogue, specs: dict[str, Spec]) -> None:
    """All states after an edit, counted on steps whose choices agree; the floor propagates the choices once."""
    times, floors, first, ready = list[float](), list[float](), list[float](), list[float]()
    rulebook = rulebook_of(catalogue)
    for seed, name in enumerate(VISITED):
        fresh = replace(catalogue)  # another catalogue, as far as anything remembered goes
        spec = specs[name]
        facts = facts_of(fresh, spec)
        ready.append(_timed(lambda f=fresh, s=spec, a=facts: (rulebook_of(f), machine_of(f, a, s.choices)))[0])
        first.append(_timed(lambda f=fresh, s=spec: lay(f, s))[0])
        _ask(catalogue, specs[name])
        for spec in visit(catalogue, specs[name], seed):
            facts = facts_of(catalogue, spec)
            held = run_of(rulebook, spec.choices, facts).choices
            asked = [o.id for o in catalogue.options.values() if not spec.has(o.id)]
            took, peace = _timed(lambda held=held, facts=facts: make_peace(catalogue, facts, held))
            if peace.kept != held:
                continue
            more, _ = _timed(lambda peace=peace, asked=asked: proven(peace, asked))
            times.append(took + more)
            reasoner, lits = peace.machine.reasoner, [*peace.firm, *peace.choices]
            reasoner.hold(())
            floors.append(_timed(lambda reasoner=reasoner, lits=lits: reasoner.hold(lits))[0])
            evaluate(catalogue, spec)
    print(f"states        {_spread(times)}   (bound 2, 10)")
    ratio = sorted(times)[len(times) // 2] / sorted(floors)[len(floors) // 2]
    print(f"              {ratio:4.1f}x propagating the choices once, {_spread(floors)}")
    print(f"first screen  {_spread(first)}   (bound 30)")
    print(f"made ready    {_spread(ready)}   (once for a catalogue, in the worker that reads it)")


def _ask(catalogue: Catalogue, spec: Spec) -> None:
    """The screen before the first edit."""
    held = run_of(rulebook_of(catalogue), spec.choices, facts_of(catalogue, spec)).choices
    peace = make_peace(catalogue, facts_of(catalogue, spec), held)
    proven(peace, [o.id for o in catalogue.options.values() if not spec.has(o.id)])


def _reasons(catalogue: Catalogue, specs: dict[str, Spec]) -> None:
    """A minimal reason for every blocked option of every finished example."""
    times = list[float]()
    for name in VISITED:
        spec = specs[name]
        report = evaluate(catalogue, spec)
        facts = facts_of(catalogue, spec)
        peace = make_peace(catalogue, facts, run_of(rulebook_of(catalogue), spec.choices, facts).choices)
        machine, choices = peace.machine, peace.choices
        for status in report.options.values():
            if status.state is not OptionState.BLOCKED:
                continue
            group = catalogue.options[status.option].group
            held = [*peace.firm, *(x for x, c in choices.items() if catalogue.options[c.option].group != group)]
            lit = machine.compiled.option(status.option)
            if not machine.stands([*held, lit]):
                times.append(_timed(lambda h=held, x=lit, m=machine: minimal_reason(m.reasoner, h, x))[0])
    print(f"reason        {_spread(times)}   (bound p95 1)")


def _ways(catalogue: Catalogue, specs: dict[str, Spec]) -> None:
    """Ways to let blocked options in, full evaluation included; and the way out of each clashing example."""
    first, three, complete = list[float](), list[float](), 0
    for name in VISITED:
        spec = specs[name]
        blocked = [o.option for o in evaluate(catalogue, spec).options.values() if o.state is OptionState.BLOCKED]
        for option in blocked[::9]:
            began = time.perf_counter()
            seen = False
            for found in ways_out(catalogue, spec, LetIn(option=option)):
                if found.ways and not seen:
                    first.append((time.perf_counter() - began) * 1000)
                    seen = True
                if len(found.ways) == 3 and not found.finished:
                    three.append((time.perf_counter() - began) * 1000)
            complete += found.complete
    print(f"first way     {_spread(first)}   (bound 50), {complete} lists complete")
    print(f"three ways    {_spread(three)}   (bound 200)")
    for name in CLASHING:
        spec = specs[name]
        stops = tuple(f.rule for f in evaluate(catalogue, spec).broken(Level.STOP))
        took, lists = _timed(lambda s=spec, r=stops: list(ways_out(catalogue, s, ClearFindings(rules=r))))
        best = lists[-1].ways[0]
        left = [f.rule for f in evaluate(catalogue, best.spec).broken(Level.STOP)]
        print(f"way out of    {name}: {len(stops)} STOP, {len(best.edits)} changes in {took:5.0f} ms; left: {left}")


def _finished(catalogue: Catalogue, specs: dict[str, Spec]) -> None:
    """From an empty kitchen, heating and power step."""
    emptied = {Step.KITCHEN, Step.HEATING, Step.POWER}
    for aim in Aim:
        times, proved = list[float](), 0
        for name in VISITED:
            spec = specs[name]
            kept = (c for c in spec.choices if catalogue.groups[catalogue.options[c.option].group].step not in emptied)
            spec = spec.with_choices(kept)
            evaluate(catalogue, spec)
            took, found = _timed(lambda s=spec, a=aim: finish(catalogue, s, a))
            times.append(took)
            proved += found is not None and found.proven
        print(f"finish {aim.value:6} {_spread(times)}, proved {proved}   (bound 300)")


if __name__ == "__main__":
    run()
