"""Nobody takes a mild night for granted who sleeps in it in winter."""

from __future__ import annotations

from specbuilder.model.brief import Answers
from specbuilder.model.edits import Take
from specbuilder.model.ids import BriefKey, OptionId, RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.model.spec import Spec
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from tests.journeys.bench import catalogue

COLD, SEASON = BriefKey("design_temp_c"), BriefKey("season")


def spec(**said: object) -> Spec:
    answers = {BriefKey("adults"): 2, BriefKey("sleepers"): 2, **{BriefKey(k): v for k, v in said.items()}}
    start = Spec(answers=Answers(answers))  # type: ignore[arg-type]
    for option in ("fenwain-short", "air-heater-diesel-2"):
        start = apply(catalogue(), start, Take(option=OptionId(option))).spec
    return start


def verdict(asked: Spec) -> Verdict:
    return next(f.verdict for f in evaluate(catalogue(), asked).findings if f.rule == RuleId("heat-enough"))


def test_in_summer_a_mild_night_is_assumed_and_told_as_such() -> None:
    report = evaluate(catalogue(), spec(season="summer"))
    assert report.facts.get(COLD) == 5
    assert COLD in report.assumed


def test_in_winter_the_cold_is_not_known_until_somebody_names_it() -> None:
    report = evaluate(catalogue(), spec(season="winter"))
    assert report.facts.get(COLD) is None
    assert COLD in report.unknown
    assert verdict(spec(season="winter")) is Verdict.CANNOT_TELL


def test_a_cold_that_was_named_counts_whatever_the_season() -> None:
    assert evaluate(catalogue(), spec(season="winter", design_temp_c=-5)).facts.get(COLD) == -5
    assert verdict(spec(season="winter", design_temp_c=-20)) is Verdict.BROKEN
