"""The clashes that go wrong most in real vans: each is told the moment it arises, and an offered way out cures it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.circuits import CircuitCode
from specbuilder.model.ids import LedgerId, RuleId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.session.ways_out import ways_out
from specbuilder.storage.spec_files import read_spec_file
from tests.cases.sayings import said

EXAMPLES = Path(__file__).parents[2] / "examples"


@dataclass(frozen=True, slots=True, kw_only=True)
class Story:
    """What is said in a build that works, the last word of it being the one that clashes."""

    start: str
    before: tuple[str, ...] = ()
    last: str
    rule: str


STORIES = {
    "rear axle over, total legal": Story(
        start="saturday-family",
        before=("answer extra_load_where rack", "answer extra_load_kg 70"),
        last="take battery-lead-200",
        rule="weight-rear-axle",
    ),
    "3 kW inverter on one 200 A battery": Story(
        start="winter-walkers",
        before=("take battery-kettle",),
        last="take inverter-3000",
        rule="battery-carries-inverter",
    ),
    "10 A pitch with kettle and charger": Story(
        start="saturday-family",
        before=("take mains-charger-30",),
        last="take kettle-household",
        rule="pitch-amps",
    ),
    "sun too heavy for a roof lifted by hand": Story(
        start="saturday-family",
        before=("take controller-20a-50v",),
        last="take solar-framed-160",
        rule="roof-load-raised",
    ),
    "diesel heater on a petrol van": Story(
        start="winter-walkers",
        last="take air-heater-diesel-2@right",
        rule="heater-burns-what-is-there-diesel",
    ),
    "heater too small with the roof up at -5 degrees": Story(
        start="saturday-family",
        before=("answer season winter",),
        last="answer design_temp_c -5",
        rule="heat-enough",
    ),
    "high vent in a wall that is too low": Story(
        start="off-grid-pair",
        last="take vents-wall-high-pair",
        rule="wall-vent-needs-tall-wall",
    ),
}


def told(catalogue: Catalogue, story: Story) -> tuple[Spec, Spec]:
    """The spec before and after the last word."""
    spec = read_spec_file(EXAMPLES / f"{story.start}.toml", catalogue).spec
    for saying in story.before:
        spec = said(catalogue, spec, saying)
    return spec, said(catalogue, spec, story.last)


def is_broken(report: Report, rule: str) -> bool:
    return any(f.rule == rule and f.verdict is Verdict.BROKEN for f in report.findings)


@pytest.mark.parametrize("story", STORIES.values(), ids=list(STORIES))
def test_it_is_told_at_once_and_a_way_out_that_is_offered_cures_it(catalogue: Catalogue, story: Story) -> None:
    before, after = told(catalogue, story)
    assert not is_broken(evaluate(catalogue, before), story.rule)
    report = evaluate(catalogue, after)
    assert is_broken(report, story.rule)
    *_, found = ways_out(catalogue, after, ClearFindings(rules=(RuleId(story.rule),)))
    assert found.ways, "a way out is offered"
    for way in found.ways:
        spec = after
        for edit in way.edits:
            spec = apply(catalogue, spec, edit).spec
        cured = evaluate(catalogue, spec)
        assert not is_broken(cured, story.rule)
        assert {f.rule for f in cured.broken(Level.STOP)} <= {f.rule for f in report.broken(Level.STOP)}


def test_the_total_is_legal_while_the_rear_axle_is_over(catalogue: Catalogue) -> None:
    _, after = told(catalogue, STORIES["rear axle over, total legal"])
    report = evaluate(catalogue, after)
    assert report.readings[LedgerId("total-mass")].verdict is Verdict.HOLDS
    assert report.readings[LedgerId("rear-axle")].verdict is Verdict.BROKEN


def test_a_fuse_window_that_is_empty_is_told_and_the_next_cable_taken(catalogue: Catalogue) -> None:
    spec = read_spec_file(EXAMPLES / "winter-walkers.toml", catalogue).spec
    (feed,) = [run for run in evaluate(catalogue, spec).circuits if run.id == "inverter-2000-c1"]
    (told_,) = [p for p in feed.problems if p.code is CircuitCode.FUSE_WINDOW_EMPTY_UNTIL]
    assert told_.needs == feed.area_mm2
    assert told_.has is not None
    assert told_.needs is not None
    assert told_.has < told_.needs, "the cable that load and drop ask for"
    assert feed.fuse_a is not None
    assert feed.carries_a is not None
    assert 1.25 * feed.load_a <= feed.fuse_a <= feed.carries_a


def test_a_battery_empty_too_soon_has_ways_out_that_keep_every_wish(catalogue: Catalogue) -> None:
    spec = read_spec_file(EXAMPLES / "saturday-family.toml", catalogue).spec
    spec = said(catalogue, spec, "answer nights_off_grid 4")
    rule = "nights-on-the-battery"
    assert is_broken(evaluate(catalogue, spec), rule)
    *_, found = ways_out(catalogue, spec, ClearFindings(rules=(RuleId(rule),)))
    assert found.ways
    assert not found.complete, "no search holds nights, so nobody knows whether there are better ones"
    for way in found.ways:
        assert not is_broken(evaluate(catalogue, way.spec), rule)
    given_up = [c.option for c in found.ways[0].spec.choices if catalogue.options[c.option].is_none]
    assert set(given_up) <= {c.option for c in spec.choices}, "going without the fridge is told last"
