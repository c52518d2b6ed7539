"""The rules as they are shipped: whole, in the form the schema says, with nothing odd that is not known."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from specbuilder.calc import CALCULATIONS, missing_settings
from specbuilder.model import brief, ledger, rules
from specbuilder.model import catalogue as model
from specbuilder.model.audit import LintCode
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import Level, OptionState, Pick, Verdict
from specbuilder.model.parts import CircuitStart
from specbuilder.model.spec import Spec
from specbuilder.session.apply import apply
from specbuilder.session.audit import lints
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.spec_files import read_spec_file
from tests.cases.by_hand import RULES

ROOT = RULES.parent
FILES = sorted(RULES.rglob("*.toml"))
SCHEMA: dict[str, Any] = json.loads((RULES / "catalogue.schema.json").read_text("utf-8"))

KNOWN_LINTS = (
    {
        (LintCode.TAG_UNUSED, f"{thing}-tone-neutral"): "goes with every tone: said so that none is taken for forgotten"
        for thing in ("cloth", "panels", "worktop", "fridge", "blinds")
    }
    | {
        (LintCode.TAG_UNUSED, "curtains"): "asked for by the sheets: no cloth within reach of a flame",
    }
    | {
        (LintCode.REDUNDANT, rule): "guards what is true of every part shipped, and tells the customer why"
        for rule in (
            "two-doors-no-cut-roof",
            "curtain-airbags-no-kit",
            "roof-kit-comes-whole",
            "burner-breathes-outside",
            "plug-kit-comes-whole",
        )
    }
)
SILENT = frozenset((ROOT / "tests/cases/silent_ledgers.txt").read_text("utf-8").split())
"""Ledgers and figures whose sum is not made yet."""
REFUSED = {
    "awning-on-shell",
    "bench-own-no-report",
    "gas-three-small",
    "mains-charger-on-inverter",
    "own-diesel-tank-inside-filler",
    "split-relay",
    "swivel-passenger-plain",
    "van-own-unregistered",
}
"""Options that are there only to be refused with a reason."""
BUILDS = tomllib.loads((ROOT / "tests/cases/builds.toml").read_text("utf-8"))["build"]
WORKS = tuple(name for name, build in BUILDS.items() if build["works"])

# --- read and in form


def test_the_folder_reads_without_a_fault(catalogue: Catalogue) -> None:
    """A fault would stop the fixture; what is counted here is that nothing was passed over."""
    tables = [tomllib.loads(path.read_text("utf-8")) for path in FILES]

    def written(*sections: str) -> int:
        return sum(len(table.get(section, {})) for table in tables for section in sections)

    assert len(catalogue.options) == written("option", "van")
    assert len(catalogue.vans) == written("van") == 9
    assert len(catalogue.groups) == written("group")
    assert len(catalogue.rules) == written("rule")
    assert len(catalogue.ledgers) == written("ledger")
    assert len(catalogue.brief) == written("brief", "job")
    assert len(catalogue.questions) == written("question") == 11
    assert len(catalogue.work) == written("work")
    assert len(catalogue.cautions) == written("caution")
    assert len(catalogue.papers) == written("paper")
    assert len(catalogue.tables) == written("table")


def test_the_schema_is_a_schema() -> None:
    jsonschema.validators.validator_for(SCHEMA).check_schema(SCHEMA)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(RULES).as_posix())
def test_a_file_has_the_form_the_schema_says(path: Path) -> None:
    jsonschema.validate(tomllib.loads(path.read_text("utf-8")), SCHEMA)


@pytest.mark.parametrize(
    "slip",
    [
        {"option": {"lamp": {"group": "lights", "name": "Lamp", "mass": 1}}},
        {"option": {"lamp": {"group": "lights", "name": "Lamp", "mass_kg": "1"}}},
        {"rule": {"lamp-first": {"level": "HALT"}}},
        {"vans": {}},
    ],
)
def test_the_schema_tells_a_slip(slip: dict[str, Any]) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(slip, SCHEMA)


RECORDS = {
    "option": (model.Option, {"van", "circuits", "holes"}, {"circuit", "hole"}),
    "van": (model.Van, set(), set()),
    "group": (model.Group, set(), set()),
    "space": (model.Space, set(), set()),
    "power": (model.Power, set(), set()),
    "heat": (model.Heat, set(), set()),
    "water": (model.Water, set(), set()),
    "circuit": (model.Circuit, set(), {"id"}),
    "circuit-start": (CircuitStart, set(), set()),
    "hole": (model.Hole, set(), {"id"}),
    "rule": (rules.Rule, set(), set()),
    "ledger": (ledger.LedgerSpec, set(), set()),
    "brief": (brief.BriefLine, set(), set()),
    "job": (brief.BriefLine, {"question", "assumed_unless", "asked_when", "closed"}, set()),
    "firm": (model.Firm, set(), set()),
    "work": (model.WorkStep, {"pass_figures"}, {"pass_figure"}),
    "pass-figure": (model.PassFigure, set(), set()),
    "caution": (model.Caution, set(), set()),
    "paper": (model.Paper, set(), set()),
    "collection": (model.CollectionNote, set(), set()),
    "table": (model.Table, set(), set()),
}
"""Record of each table, the fields that are no key of it, and the keys that are no field of it."""


@pytest.mark.parametrize("table", RECORDS)
def test_the_schema_offers_what_the_reader_reads(table: str) -> None:
    """The reader takes a new field without a word; an editor that follows the schema must offer it as well."""
    record, no_key, no_field = RECORDS[table]
    read = {field.name for field in fields(record)} - {"id", "key", "origin"}
    assert set(SCHEMA["$defs"][table]["properties"]) == (read - no_key) | no_field


# --- nothing odd


def test_the_audit_finds_nothing_but_what_is_known(catalogue: Catalogue) -> None:
    found = {(lint.code, lint.subject) for lint in lints(catalogue) if lint.code is not LintCode.SILENT}
    assert found == set(KNOWN_LINTS)


def test_every_ledger_and_figure_has_its_sum_or_is_on_the_list(catalogue: Catalogue) -> None:
    made = [calculation.id for calculation in CALCULATIONS]
    assert len(made) == len(set(made))
    assert set(made) | SILENT == set(catalogue.ledgers)
    assert not set(made) & SILENT
    assert not missing_settings(catalogue)
    assert {lint.subject for lint in lints(catalogue) if lint.code is LintCode.SILENT} >= SILENT


def test_every_option_answers_a_group_in_the_file_of_its_step(catalogue: Catalogue) -> None:
    for option in catalogue.options.values():
        group = catalogue.groups[option.group]
        folder, _, file = option.origin.file.partition("/")
        assert folder == ("vans" if option.van is not None else "options"), option.id
        assert option.van is not None or file == f"{group.step.value}.toml", option.id
    assert {option.group for option in catalogue.options.values()} == set(catalogue.groups)


def test_every_question_can_be_answered(catalogue: Catalogue) -> None:
    for group in catalogue.groups.values():
        members = catalogue.options_of(group.id)
        assert set(group.usual) <= {option.id for option in members}, group.id
        nothing = [option.id for option in members if option.is_none]
        assert bool(nothing) is (group.pick is Pick.ONE and group.none_is_an_answer), group.id
        assert not [option for option in members if option.is_none and option.refused]


# --- refused on purpose


def test_options_to_be_refused_are_the_eight_that_are_known(catalogue: Catalogue) -> None:
    assert {option.id for option in catalogue.options.values() if option.refused} == REFUSED


@pytest.mark.parametrize("name", WORKS)
def test_no_build_that_works_takes_a_refused_option(name: str, catalogue: Catalogue) -> None:
    spec = read_spec_file(ROOT / "examples" / f"{name}.toml", catalogue).spec
    assert not {choice.option for choice in spec.choices} & REFUSED
    for option in sorted(REFUSED):
        outcome = apply(catalogue, spec, Take(option=OptionId(option)))
        assert outcome.refused is None
        broken = evaluate(catalogue, outcome.spec).broken(Level.STOP)
        assert option in {subject for finding in broken for subject in finding.subjects}, option


def test_every_other_option_fits_some_van(catalogue: Catalogue) -> None:
    """Blocked in every van would be a dead part of the catalogue."""
    live: set[str] = set()
    for van in catalogue.vans:
        report = evaluate(catalogue, apply(catalogue, Spec(), Take(option=van.id)).spec)
        live |= {option for option, status in report.options.items() if status.state is not OptionState.BLOCKED}
    assert set(catalogue.options) - live <= REFUSED


def test_nothing_said_breaks_nothing(catalogue: Catalogue) -> None:
    """No rule is broken before anybody has spoken."""
    assert not [f.rule for f in evaluate(catalogue, Spec()).findings if f.verdict is Verdict.BROKEN]


# --- words

PROPER = {
    "vans and kits of the house": "Fenwain Hushwain Tormwain Larchlid Marchlid Short Long Bench Two Three Rail Kettle "
    "Small",
    "the firm": "Pellowmarch Ossenthwick Van Joinery",
    "law and standards": "Act Annex Art Part Regulation Regulations Sch Traffic Gas Safety Installation Use I A B "
    "EC EU UN EN ISO IEC BS DIN CFR VDE SAP GOV UK M1 N1 C1 R14 R67 R122 R145",
    "places and months": "England Scotland Andalusia Andalusian GB FR DE IE April June July September December",
    "units and signs": "A Ah V W Wh Wac Voc L F T HV ZONE DC-to-DC AGM LFP Peukert U3 X Y Z",
    "steps and hold points": " ".join((*(f"B{n}" for n in range(12)), *(f"H{n}" for n in range(11)))),
}
"""Words that may begin with a capital within a sentence: anything else might be somebody's name or mark."""
_CAPITAL = re.compile(r"(?<![\w'’-])[A-Z][\w-]*")
_SENTENCE_STARTS = re.compile(r"(?:^|[.!?:;(]\s*|\d\.\s*)\W*$")


def _sentences() -> Iterator[tuple[str, str]]:
    """Every text of every file."""
    stack: list[tuple[str, object]] = [(p.name, tomllib.loads(p.read_text("utf-8"))) for p in FILES]
    while stack:
        where, value = stack.pop()
        if isinstance(value, dict):
            stack += ((f"{where} {key}", inner) for key, inner in value.items())
        elif isinstance(value, list):
            stack += ((where, inner) for inner in value)
        elif isinstance(value, str):
            yield where, value


def test_no_word_looks_like_a_name_of_somebody() -> None:
    known = {word for words in PROPER.values() for word in words.split()}
    strange = {
        (where, found[0])
        for where, text in _sentences()
        for found in _CAPITAL.finditer(text)
        if not _SENTENCE_STARTS.search(text[: found.start()]) and found[0] not in known
    }
    assert not strange


def test_nobody_is_counted_to_travel_sideways_or_on_a_seat_that_no_report_can_prove(catalogue: Catalogue) -> None:
    """Belts and places behind the cab come with a forward seat only, and such a seat names the vans of its report."""
    for option in catalogue.options.values():
        sideways = "side-facing-seat" in option.gives
        assert not (sideways and (option.space.belts or "travel-seat" in option.gives)), option.id
        if "seat-report" in option.gives:
            assert option.fits_vans, option.id
            assert "seat-report" in option.papers, option.id
        if option.space.belts and option.space.seat_x_mm is not None:
            assert "travel-seat" in option.gives, option.id


def test_no_text_holds_a_mark_a_company_or_an_address() -> None:
    mark = re.compile(r"[®™©]|\b(?:Ltd|GmbH|Inc|LLC|PLC|S\.A\.)|https?:|www\.|\w@\w+\.\w")
    assert not [(where, text) for where, text in _sentences() if mark.search(text)]


def test_no_text_promises_what_only_others_may() -> None:
    """Nor does any name a side that depends on the country. ``places-legal`` is a word of the rules' own writing."""
    promise = re.compile(r"\b(approved|certified|legal\w*|crash.tested|nearside|offside|maintenance.free)\b", re.I)
    said = [(where, text) for where, text in _sentences() if text != "places-legal"]
    assert not [(where, text) for where, text in said if promise.search(text)]
