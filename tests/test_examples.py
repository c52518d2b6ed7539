"""The examples, held against what is said of them elsewhere and against sums worked out by hand.

``python -m tests.test_examples --write`` writes the computed part of every example and the text of its check again, for
when rules, sums or words were changed on purpose. What was said in an example is never touched by it.
"""

from __future__ import annotations

import contextlib
import io
import sys
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from specbuilder.cli.main import main
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.report import Report
from specbuilder.model.span import point
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import read_rules
from specbuilder.storage.spec_files import read_spec, read_spec_file, spec_text
from tests.cases.by_hand import ByHand, parsed

ROOT = Path(__file__).parent.parent
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
BUILDS: dict[str, dict[str, Any]] = tomllib.loads((ROOT / "tests/cases/builds.toml").read_text("utf-8"))["build"]
HALF_FINISHED = {"first-ten-minutes", "half-done-family"}

each_example = pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
each_build = pytest.mark.parametrize("name", BUILDS)


@cache
def _report(catalogue: Catalogue, name: str) -> Report:
    return evaluate(catalogue, read_spec_file(ROOT / "examples" / f"{name}.toml", catalogue).spec)


@cache
def _check(path: Path) -> tuple[int, str]:
    """Exit code and answer of the line command."""
    with contextlib.redirect_stdout(io.StringIO()) as out:
        code = main(["check", str(path)])
    return code, out.getvalue()


def _without_digests(text: str) -> list[str]:
    """The text but for what any change of any file of the rules changes."""
    return [line for line in text.splitlines() if not line.startswith(("checksum = ", "catalogue_digest = "))]


def test_there_are_ten_builds_and_two_half_finished_ones() -> None:
    assert len(BUILDS) == 10
    assert {path.stem for path in EXAMPLES} == set(BUILDS) | HALF_FINISHED


@each_build
def test_a_build_holds_what_is_said_of_it(name: str, catalogue: Catalogue) -> None:
    report = _report(catalogue, name)
    choices = {(c.option, c.place.value if c.place else None, c.count) for c in report.spec.choices}
    assert choices == {parsed(text) for text in BUILDS[name]["choices"]}
    for key, answer in BUILDS[name]["answers"].items():
        assert report.facts.get(key) == (tuple(answer) if isinstance(answer, list) else answer), key


@each_build
def test_a_build_breaks_what_it_was_made_to_break_and_nothing_else(name: str, catalogue: Catalogue) -> None:
    build, report = BUILDS[name], _report(catalogue, name)
    for level, expected in ((Level.STOP, build["stop"]), (Level.SIGN, build["sign"])):
        assert set(expected) <= set(catalogue.rules)
        broken = {f.rule for f in report.findings if f.verdict is Verdict.BROKEN and f.level is level}
        assert broken == set(expected) - set(report.silent_rules), level
    assert not report.cannot_tell(*Level)
    assert not report.undecided
    assert not report.unknown
    assert not report.strangers


@each_build
def test_the_verdict_and_the_exit_code_follow_from_what_stops(name: str, catalogue: Catalogue) -> None:
    works = BUILDS[name]["works"]
    assert works is not bool(BUILDS[name]["stop"])
    assert _report(catalogue, name).verdict is (Verdict.HOLDS if works else Verdict.BROKEN)
    assert _check(ROOT / "examples" / f"{name}.toml")[0] == (0 if works else 1)


@pytest.mark.parametrize("name", sorted(HALF_FINISHED))
def test_a_half_finished_build_cannot_be_told_yet(name: str, catalogue: Catalogue) -> None:
    report = _report(catalogue, name)
    assert report.verdict is Verdict.CANNOT_TELL
    assert not report.broken(Level.STOP)
    assert report.undecided
    assert _check(ROOT / "examples" / f"{name}.toml")[0] == 3


@each_build
def test_price_and_mass_are_what_they_come_to_by_hand(name: str, catalogue: Catalogue) -> None:
    hand, report = ByHand(BUILDS[name]), _report(catalogue, name)
    mass = report.readings[LedgerId("total-mass")]
    assert mass.value is not None
    assert mass.bound == point(hand.plate_kg)
    assert mass.value.settled
    assert mass.value.least == pytest.approx(hand.mass_kg, abs=1e-6)
    assert (mass.verdict is Verdict.BROKEN) is (hand.mass_kg > hand.plate_kg)
    assert report.price.gross.least == report.price.gross.most == hand.gross_pence
    assert report.readings[LedgerId("price-gross")].value == point(hand.gross_under_ceiling_pence)


@each_build
def test_belts_berths_and_height_are_what_they_come_to_by_hand(name: str, catalogue: Catalogue) -> None:
    hand, readings = ByHand(BUILDS[name]), _report(catalogue, name).readings
    assert readings[LedgerId("belts")].value == point(hand.belts)
    assert readings[LedgerId("berths")].value == point(hand.berths)
    assert readings[LedgerId("berths-over-belts")].value == point(hand.berths - hand.belts)
    assert readings[LedgerId("closed-height")].value == point(hand.height_mm)


@each_example
def test_what_is_written_is_read_back(path: Path, catalogue: Catalogue) -> None:
    spec = read_spec_file(path, catalogue).spec
    text = spec_text(catalogue, spec, evaluate(catalogue, spec))
    assert read_spec(text, path.name, catalogue).spec == spec
    assert _without_digests(text) == _without_digests(path.read_text("utf-8"))


@each_example
def test_check_says_what_it_said(path: Path) -> None:
    assert _check(path)[1] == path.with_suffix(".check.txt").read_text("utf-8")


def test_every_text_of_a_check_belongs_to_an_example() -> None:
    texts = {path.name.removesuffix(".check.txt") for path in (ROOT / "examples").glob("*.check.txt")}
    assert texts == {path.stem for path in EXAMPLES}


def _write() -> None:
    catalogue = read_rules(ROOT / "rules")
    for path in EXAMPLES:
        spec = read_spec_file(path, catalogue).spec
        path.write_text(spec_text(catalogue, spec, evaluate(catalogue, spec)), "utf-8")
        path.with_suffix(".check.txt").write_text(_check(path)[1], "utf-8")


if __name__ == "__main__" and sys.argv[1:] == ["--write"]:
    _write()
