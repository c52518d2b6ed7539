"""Every rule of the house breaks in a story and is mended in it. The stories stand in ``tests/cases/STEP.toml``."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, replace
from functools import cache, partial
from pathlib import Path
from types import MappingProxyType

import pytest

from specbuilder.cli.main import main
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.cases.sayings import said, written

CASES = Path(__file__).parent / "cases"
EXAMPLES = Path(__file__).parent.parent / "examples"


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """The story of one rule; ``tests/cases/__init__.py`` says what each line means."""

    start: str = ""
    begin: tuple[str, ...] = ()
    fire: tuple[str, ...]
    raw: bool = False
    without: str = ""
    subjects: tuple[str, ...] = ()
    among: tuple[str, ...] | None = None
    keys: tuple[str, ...] = ()
    wanted: tuple[str, ...] = ()
    reading: str | None = None
    cure: tuple[str, ...]


def _cases() -> dict[tuple[str, str], Case]:
    """By file and rule."""
    return {
        (path.stem, rule): Case(**{k: tuple(v) if isinstance(v, list) else v for k, v in table.items()})
        for path in sorted(CASES.glob("*.toml"))
        for rule, table in tomllib.loads(path.read_text("utf-8")).get("case", {}).items()
    }


ALL = _cases()
SILENT = frozenset((CASES / "silent_rules.txt").read_text("utf-8").split())
"""Rules whose sum is not made yet. Whoever makes the sum takes the rule off and writes its case."""


@cache
def _example(catalogue: Catalogue, name: str) -> Spec:
    return read_spec_file(EXAMPLES / f"{name}.toml", catalogue).spec if name else Spec()


def _finding(catalogue: Catalogue, spec: Spec, rule: str) -> Finding:
    found = evaluate(catalogue, spec, exact=False).findings
    return next(f for f in found if f.rule == rule)


def _lacking(catalogue: Catalogue, option: str, tag: str) -> Catalogue:
    """The catalogue with an option that does not give a capability."""
    known = catalogue.options[OptionId(option)]
    assert tag in known.gives
    poorer = replace(known, gives=tuple(t for t in known.gives if t != tag))
    return replace(catalogue, options=MappingProxyType({**catalogue.options, known.id: poorer}))


@pytest.mark.parametrize(("step", "rule"), ALL)
def test_a_rule_breaks_and_is_mended(step: str, rule: str, catalogue: Catalogue) -> None:
    case = ALL[step, rule]
    start = _example(catalogue, case.start)
    for saying in case.begin:
        start = said(catalogue, start, saying)
    assert _finding(catalogue, start, rule).verdict is not Verdict.BROKEN, "it is broken before anything breaks it"

    judged = _lacking(catalogue, *case.without.split()) if case.without else catalogue
    say = partial(written if case.raw else said, judged)
    fired = start
    for saying in case.fire:
        fired = say(fired, saying)
    broken = _finding(judged, fired, rule)
    assert broken.verdict is Verdict.BROKEN
    if case.among is not None:
        assert set(case.among) <= set(broken.subjects)
    else:
        assert broken.subjects == case.subjects
    assert broken.keys == case.keys
    assert broken.wanted == case.wanted
    assert broken.reading == case.reading

    cured = fired
    for saying in case.cure:
        cured = said(judged, cured, saying)
    assert _finding(judged, cured, rule).verdict is Verdict.HOLDS


def test_every_rule_that_is_heard_has_its_case_in_the_file_of_its_step(catalogue: Catalogue) -> None:
    heard = [rule for rule in catalogue.rules.values() if rule.id not in SILENT]
    assert {(Path(rule.origin.file).stem, rule.id) for rule in heard} == set(ALL)


def test_every_case_has_something_to_break_and_something_to_mend() -> None:
    assert all(case.fire and case.cure for case in ALL.values())
    assert all(case.subjects or case.among or case.keys or case.raw or case.reading for case in ALL.values())


def test_rules_that_wait_for_a_sum_are_listed(catalogue: Catalogue) -> None:
    assert frozenset(_silent(catalogue).silent_rules) == SILENT


def test_check_names_every_sum_that_is_not_made_and_counts_the_rules_that_wait(
    catalogue: Catalogue, capsys: pytest.CaptureFixture[str]
) -> None:
    report = _silent(catalogue)
    main(["check", str(EXAMPLES / "saturday-family.toml")])
    line = [line for line in capsys.readouterr().out.splitlines() if line.startswith("Not summed yet")]
    if not report.silent_ledgers:
        assert not line
        return
    for ledger in report.silent_ledgers:
        assert catalogue.ledgers[ledger].name in line[0]
    assert f"{len(SILENT)} rule" in line[0]


def _silent(catalogue: Catalogue) -> Report:
    return evaluate(catalogue, _example(catalogue, "saturday-family"))


def test_a_rule_without_its_sum_says_nothing(catalogue: Catalogue) -> None:
    """Nothing is known about it, so it must not stand among the findings as if it held."""
    heard = {finding.rule for finding in _silent(catalogue).findings}
    assert not heard & {RuleId(rule) for rule in SILENT}
    assert heard | SILENT == set(catalogue.rules)
