"""What is said of an unfinished spec stays true when it is finished: spans hold the final value, verdicts never turn.

Each good example is a finished build that keeps every STOP. Take answers and decisions away at random and evaluate:
nothing may hold or break that the finished build turns round, and no option of it may be blocked.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import OptionState, Pick, Verdict
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec

GOOD = (
    "saturday-family",
    "winter-walkers",
    "nurse-under-two-metres",
    "hush-family",
    "off-grid-pair",
    "wheelchair-day-van",
)
EXAMPLES = Path(__file__).parents[2] / "examples"
_FINISHED: dict[str, tuple[Spec, Report]] = {}


def finished(catalogue: Catalogue, name: str) -> tuple[Spec, Report]:
    if name not in _FINISHED:
        spec = read_spec((EXAMPLES / f"{name}.toml").read_text("utf-8"), name, catalogue).spec
        _FINISHED[name] = spec, evaluate(catalogue, spec)
    return _FINISHED[name]


@st.composite
def unfinished(draw: st.DrawFn, catalogue: Catalogue, spec: Spec) -> Spec:
    """The spec without some of its answers and without the decisions of some pick-one groups."""
    asked = sorted(k for k in spec.answers.given if catalogue.brief[k].question is not None)
    forgotten = draw(st.sets(st.sampled_from(asked), max_size=4))
    answers = spec.answers
    for key in sorted(forgotten):
        answers = answers.with_answer(key, None)
    groups = sorted({catalogue.options[c.option].group for c in spec.choices})
    one = [g for g in groups if catalogue.groups[g].pick is Pick.ONE]
    undone = draw(st.sets(st.sampled_from(one), max_size=len(one)))
    kept = tuple(c for c in spec.choices if catalogue.options[c.option].group not in undone)
    return replace(spec, answers=answers, choices=kept)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.sampled_from(GOOD), st.data())
def test_what_an_unfinished_spec_says_the_finished_one_bears_out(
    catalogue: Catalogue, name: str, data: st.DataObject
) -> None:
    spec, full = finished(catalogue, name)
    part = evaluate(catalogue, data.draw(unfinished(catalogue, spec)))
    final = {finding.rule: finding.verdict for finding in full.findings}
    for finding in part.findings:
        if finding.verdict is not Verdict.CANNOT_TELL and not _assumed_otherwise(part, full):
            assert finding.verdict is final[finding.rule], finding
    for choice in spec.choices:
        if not _assumed_otherwise(part, full):
            assert part.options[choice.option].state is not OptionState.BLOCKED, part.options[choice.option]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.sampled_from(GOOD), st.data())
def test_a_span_holds_the_value_of_the_finished_build(catalogue: Catalogue, name: str, data: st.DataObject) -> None:
    spec, full = finished(catalogue, name)
    part = evaluate(catalogue, data.draw(unfinished(catalogue, spec)))
    if _assumed_otherwise(part, full):
        return
    assert part.price.gross.least <= full.price.gross.least <= part.price.gross.most
    for id_, reading in part.readings.items():
        settled = full.readings[id_].value
        if reading.value is not None and settled is not None and full.readings[id_].applies and reading.applies:
            assert reading.value.least - 1e-6 <= settled.least, (id_, reading)
            assert settled.most <= reading.value.most + 1e-6, (id_, reading)


def test_water_in_a_tank_nobody_chose_yet_may_be_stopped_short(catalogue: Catalogue) -> None:
    """The travel fill stops at 20 litres: the tank that is still open turns the van by those, not by all it holds."""
    spec, full = finished(catalogue, "winter-walkers")
    kept = tuple(c for c in spec.choices if catalogue.options[c.option].group != "fresh-water")
    part = evaluate(catalogue, replace(spec, choices=kept)).readings[LedgerId("side-balance")].value
    settled = full.readings[LedgerId("side-balance")].value
    assert part is not None
    assert settled is not None
    assert part.least <= settled.least == settled.most <= part.most


def _assumed_otherwise(part: Report, full: Report) -> bool:
    """A forgotten answer may be replaced by the house's assumption, which is shown and may well be another."""
    return any(part.facts.get(key) != full.facts.get(key) for key in part.facts.assumed - full.facts.assumed)
