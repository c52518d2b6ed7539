"""The computed pages of a spec's file: what they add up to, and that nothing unknown looks good in them."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest

from specbuilder.model.circuits import CircuitCode
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Level, Owner, Place, Step, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.report import Report
from specbuilder.model.span import Span, point
from specbuilder.model.spec import Choice, OwnPart, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_circuits import _SHORT
from specbuilder.storage.spec_files import read_spec_file, spec_text
from tests.storage.scene import CATALOGUE, report_of

SHIPPED = read_rules(rules_folder())
EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
each_example = pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)

GALLEY = Choice(option=OptionId("side-galley"), place=Place.RIGHT)
MASS, HOURS = LedgerId("total-mass"), LedgerId("workshop-hours")
ROUNDED = 0.05
"""Lines are written to three decimals, so as many of them may be off by this together."""


def pages(spec: Spec, report: Report | None = None) -> dict[str, Any]:
    return tomllib.loads(spec_text(CATALOGUE, spec, report or report_of(spec)))


def shipped(path: Path) -> tuple[dict[str, Any], Report]:
    spec = read_spec_file(path, SHIPPED).spec
    report = evaluate(SHIPPED, spec)
    return tomllib.loads(spec_text(SHIPPED, spec, report)), report


def total(lines: list[dict[str, Any]], name: str, unit: str) -> tuple[float, float]:
    settled = sum(line.get(f"{name}_{unit}", 0) for line in lines)
    ends = (f"{name}_least_{unit}", f"{name}_most_{unit}")
    return settled + sum(line.get(ends[0], 0) for line in lines), settled + sum(line.get(ends[1], 0) for line in lines)


@each_example
def test_hours_of_the_steps_add_up_to_the_hours_of_the_workshop(path: Path) -> None:
    table, report = shipped(path)
    whole = report.readings[HOURS].value
    assert whole is not None
    least, most = total(table["hours"]["line"], "work", "h")
    if whole.settled:
        assert least == most == pytest.approx(whole.least)
        assert sum(step["work_h"] for step in table["step"]) == pytest.approx(whole.least)
    assert least <= whole.least + ROUNDED
    assert most >= whole.most - ROUNDED


@each_example
def test_the_mass_budget_adds_up_to_the_loaded_van(path: Path) -> None:
    table, report = shipped(path)
    reading = report.readings.get(MASS)
    if reading is None or reading.value is None:
        pytest.skip("no mass yet")
    least, most = total(table["mass_budget"]["line"], "mass", "kg")
    if reading.value.settled:
        assert least == most == pytest.approx(reading.value.least, abs=ROUNDED)
        assert table["mass_budget"]["left_kg"] == pytest.approx(
            table["mass_budget"]["plate_kg"] - table["mass_budget"]["total_kg"]
        )
    assert least <= reading.value.least + ROUNDED
    assert most >= reading.value.most - ROUNDED


@each_example
def test_what_is_not_summed_is_said_first_and_shows_no_verdict(path: Path) -> None:
    table, report = shipped(path)
    assert list(table).index("not_looked_at") == 2
    silent = [SHIPPED.ledgers[key].name for key in report.silent_ledgers]
    assert table["not_looked_at"]["sums"] == (silent or "None")
    assert not {line["sum"] for line in table["ledger"]["line"]} & set(silent)


@each_example
def test_what_sets_a_gap_stands_beside_it(path: Path) -> None:
    """Turning seat, fridge door and bench: the edges that the sums use, not the middles of the masses."""
    table, report = shipped(path)
    reading = report.readings[LedgerId("swivel-gap")]
    edges = [c["front_edge_x_mm"] for c in table.get("choice", ()) if "front_edge_x_mm" in c]
    reaches = [c["turns_back_to_x_mm"] for c in table.get("choice", ()) if "turns_back_to_x_mm" in c]
    if reading.applies and reading.value is not None and reading.value.settled:
        assert min(edges) - max(reaches) == reading.value.least


def test_hours_of_what_is_not_chosen_belong_to_no_step() -> None:
    lines = pages(Spec(choices=(GALLEY,)))["hours"]["line"]
    assert [(line["step"], line.get("work_h")) for line in lines] == [
        ("B0", 2),
        ("B2", 2),
        ("B7", 89),
        ("B8", 3),
        ("not settled", None),
    ]
    assert (lines[-1]["work_least_h"], lines[-1]["work_most_h"]) == (0, 8.5)


def test_hours_without_lines_are_not_made_up() -> None:
    report = report_of(Spec())
    bare = {**report.readings, HOURS: replace(report.readings[HOURS], entries=())}
    assert pages(Spec(), replace(report, readings=MappingProxyType(bare)))["hours"] == {"said": "NOT SUMMED BY STEP"}


def finding(level: Level) -> Finding:
    return Finding(rule=RuleId("plate"), step=Step.CHECK, level=level, verdict=Verdict.BROKEN)


def test_a_note_is_said_and_not_broken() -> None:
    report = replace(report_of(Spec()), findings=(finding(Level.STOP), finding(Level.SIGN), finding(Level.NOTE)))
    table = pages(Spec(), report)
    assert [found["verdict"] for found in table["finding"]] == ["broken", "broken", "to be said"]
    points = table["open_points"]
    assert (points["broken_at_stop"], points["broken_at_sign"], points["to_be_said"]) == (1, 1, 1)


def bounded(key: str, bound: Span | None, verdict: Verdict) -> dict[str, Any]:
    """The line of the mass with a bound that rests on this answer, whose range is 0 to 3500."""
    report = report_of(Spec())
    reading = Reading(
        id=MASS, value=point(20), bound=bound, verdict=verdict, lacks=(Lack(key=BriefKey(key)),) if key else ()
    )
    ranges = MappingProxyType({BriefKey("adults"): Span(0, 3500)})
    facts = replace(report.facts, ranges=ranges)
    report = replace(report, facts=facts, readings=MappingProxyType({MASS: reading}))
    return dict(pages(Spec(), report)["ledger"]["line"][0])


def test_a_bound_nobody_named_is_no_number() -> None:
    assert bounded("adults", Span(0, 3500), Verdict.CANNOT_TELL)["at_most"] == "NOT KNOWN"
    assert bounded("", None, Verdict.CANNOT_TELL)["at_most"] == "NOT KNOWN"
    free = bounded("", None, Verdict.HOLDS)
    assert (free["at_most"], free["verdict"]) == ("not named", "shown only")
    half = bounded("adults", Span(10, 30), Verdict.CANNOT_TELL)
    assert (half["at_most_least"], half["at_most_most"]) == (10, 30)


def test_real_height_and_spare_stand_apart() -> None:
    path = next(path for path in EXAMPLES if path.stem == "saturday-family")
    height = shipped(path)[0]["height"]
    assert height["closed_mm"] + height["spare_mm"] == height["with_spare_mm"]
    assert pages(Spec())["height"] == {"said": "NOT SUMMED"}


def test_everything_not_known_stands_at_one_place() -> None:
    window = Choice(option=OptionId("window-fixed"), place=Place.LEFT, owner=Owner.CUSTOMER)
    hob = Choice(option=OptionId("gas-bundle"), owner=Owner.CUSTOMER, own_part=OwnPart(mass_kg=20, cut_out_mm="44x30"))
    known = pages(Spec(choices=(window, hob)))["not_known"]
    assert known["own_parts"] == ["Fixed window: its sheet", 'Gas kit: hob, store, "drop vent": watts, date of arrival']
    assert known["van_before_signing"] == ["last six of the chassis number", "year"]
    assert "Galley" in known["not_chosen"]


@pytest.mark.parametrize(
    ("choice", "status"),
    [
        (GALLEY, "to be ordered"),
        (replace(GALLEY, owner=Owner.CUSTOMER), "the customer's: arrives NOT KNOWN"),
        (
            replace(GALLEY, owner=Owner.CUSTOMER, own_part=OwnPart(arrives="2031-05-02")),
            "the customer's: arrives 2031-05-02",
        ),
        (Choice(option=OptionId("fenwain-short")), None),
    ],
)
def test_status_of_a_part(choice: Choice, status: str | None) -> None:
    assert pages(Spec(choices=(choice,)))["choice"][0].get("status") == status


def test_holes_that_may_not_be_cut_yet_are_on_the_do_not_list() -> None:
    table = pages(Spec(choices=(Choice(option=OptionId("gas-bundle")),)))
    assert table["do_not"]["cut_yet"] == ["gas-bundle-h1: x is not known before the base van is decided"]
    assert table["do_not"]["drill"] == "NOT KNOWN: the base van is not decided"


def test_what_is_signed_stays_empty_here() -> None:
    table = pages(Spec(choices=(GALLEY, Choice(option=OptionId("gas-bundle")))))
    held = [step for step in table["step"] if "hold_point" in step]
    assert held
    assert all(one["signed"] == one["date"] == "" for one in (*held, *table["paper"]))
    assert "signed" not in table["step"][-1]


@each_example
def test_every_circuit_has_its_section_fuse_and_drop_or_what_must_be_settled(path: Path) -> None:
    table, report = shipped(path)
    lines = {line.id: line for line in report.circuits}
    assert {run["id"] for run in table.get("circuit", ())} == set(lines)
    for run in table.get("circuit", ()):
        line = lines[run["id"]]
        assert run["area_mm2"] == (line.area_mm2 if line.area_mm2 is not None else "NOT KNOWN")
        assert run.get("fuse_a") == line.fuse_a
        assert run.get("fuse_kind", "") == line.fuse_kind
        assert run.get("drop_pct") == (None if line.drop_pct is None else pytest.approx(line.drop_pct, abs=5e-4))
        assert run["basis"] == line.basis.value
        assert bool(run.get("to_settle")) is bool(line.serious)
        assert run["area_mm2"] != "NOT KNOWN" or run["to_settle"]
        assert run.get("count", 1) == sum(one.id == line.id for one in report.circuits)


def test_every_problem_of_a_circuit_has_its_words() -> None:
    assert set(_SHORT) == set(CircuitCode)
