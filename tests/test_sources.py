"""The page of sources says what the formulas say, whole, and every formula has its use or its reason.

``python -m tests.test_sources --write`` writes the page again, for when a formula, a sum or a table was changed on
purpose.
"""

from __future__ import annotations

import re
import sys
import tomllib
from pathlib import Path

import pytest

from specbuilder.calc import CALCULATIONS, formulas
from specbuilder.calc.formulas import KEPT
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import LedgerId
from specbuilder.model.kinds import Confidence
from specbuilder.model.sources import FormulaText
from specbuilder.session.calculation_names import calculation_names
from specbuilder.storage.formula_texts import read_formulas
from specbuilder.storage.rules_files import read_rules
from specbuilder.wording.sources import formula_lines, sources_page
from tests.cli.counter import Counter

ROOT = Path(__file__).parent.parent
PAGE = Path(formulas.__file__).parent / "SOURCES.md"
FORMULAS = read_formulas(calculation_names())

each_formula = pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.name)


def _page(catalogue: Catalogue) -> str:
    return "\n".join(sources_page(catalogue, FORMULAS)) + "\n"


def test_the_page_is_what_the_formulas_say(catalogue: Catalogue) -> None:
    """Else: ``python -m tests.test_sources --write``."""
    assert PAGE.read_text("utf-8") == _page(catalogue)


def test_the_page_is_found_from_the_readme() -> None:
    assert "](specbuilder/calc/formulas/SOURCES.md)" in (ROOT / "README.md").read_text("utf-8")


@each_formula
def test_a_formula_says_everything_of_itself(formula: FormulaText) -> None:
    for part in (formula.says, formula.equation, formula.valid, formula.source, formula.confidence):
        assert part.strip(), formula.name
    assert formula.says.endswith(".")
    assert formula.confidence.replace(",", " ").split()[0] in {word.value for word in Confidence}
    assert formula.result or formula.name.startswith("kind_"), "the result of all others is a number"


@each_formula
def test_a_formula_is_used_or_kept_for_a_paper(formula: FormulaText) -> None:
    """What a sum begins to use leaves the list in ``formulas/__init__.py``; what nothing uses is put on it or goes."""
    assert bool(formula.used_by or formula.schedule) is not bool(formula.kept)


def test_what_is_kept_is_there_and_kept_once() -> None:
    kept = [name for names in KEPT.values() for name in names.split()]
    assert len(kept) == len(set(kept))
    assert set(kept) <= {formula.name for formula in FORMULAS}


def test_users_are_calculations_and_followed_through_the_files() -> None:
    users = {formula.name: set(formula.used_by) for formula in FORMULAS}
    assert set().union(*users.values()) <= {calculation.id for calculation in CALCULATIONS}
    assert {"rear-axle", "front-axle", "front-share"} <= users["axle_loads_kg"]
    assert "unladen-mass" in users["dry_mass_kg"]
    assert "unladen-mass" not in users["luggage_kg"], "it stands in the same file, and does not use it"
    assert "battery-nights" in users["load_wh"], "through the energy of a day"
    assert {f.name for f in FORMULAS if f.schedule} >= {"drop_v", "bundle_share", "fuse_in_window_a", "start_voltage_v"}


def test_a_ledger_is_no_surer_than_the_formulas_it_rests_on(catalogue: Catalogue) -> None:
    surest = [Confidence.ESTIMATE, Confidence.KNOWN, Confidence.VERIFIED]
    for formula in FORMULAS:
        word = Confidence(formula.confidence.replace(",", " ").split()[0])
        for ledger in (one for one in formula.used_by if catalogue.ledgers[one].part_of is None):
            assert surest.index(catalogue.ledgers[ledger].confidence) <= surest.index(word), (ledger, formula.name)


def test_every_ledger_says_how_sure_it_is() -> None:
    """Figures told beside one may leave it out: they count as estimates then."""
    tables = tomllib.loads((ROOT / "rules" / "ledgers.toml").read_text("utf-8"))["ledger"]
    assert [id_ for id_, table in tables.items() if "part_of" not in table and "confidence" not in table] == []


def test_every_ledger_and_figure_stands_in_the_table(catalogue: Catalogue) -> None:
    rows = [line for line in sources_page(catalogue, FORMULAS) if line.startswith("| `")]
    assert len(rows) == len(catalogue.ledgers)
    for ledger in catalogue.ledgers.values():
        (row,) = (row for row in rows if row.startswith(f"| `{ledger.id}` "))
        assert ledger.source.replace("|", "/") in row
        assert row.count(" | ") == 5


def test_the_line_command_prints_the_page_and_one_entry(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], catalogue: Catalogue
) -> None:
    counter = Counter(tmp_path, capsys, ROOT / "rules")
    how, empty, *page = counter("sources").out
    assert how.startswith("One of them by itself: specbuilder sources NAME")
    assert empty == ""
    assert "\n".join(page) == _page(catalogue).rstrip("\n")
    (formula,) = (f for f in FORMULAS if f.name == "water_days")
    assert counter("sources", "water_days").out == formula_lines(formula)
    assert counter("sources", "water.water_days").out == counter("sources", "water_days").out
    wrong = counter("sources", "water_day")
    assert wrong.code == 2
    assert "water_days" in " ".join(wrong.err)


def test_a_ledger_is_told_by_its_id_or_short_name_with_the_formulas_it_uses(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], catalogue: Catalogue
) -> None:
    counter = Counter(tmp_path, capsys, ROOT / "rules")
    for name in ("heat", "battery-nights", "usable-in-cold", "total-mass"):
        spec, told = catalogue.ledgers[LedgerId(name)], counter("sources", name).out
        assert told[0].startswith(f"{spec.name} ({name})")
        assert any(spec.formula in line for line in told)
        assert any(spec.source in line for line in told)
        used = [f.name for f in FORMULAS if spec.id in f.used_by]
        assert used
        assert [line.split(" ")[0] for line in told[-len(used) :]] == used
    short = catalogue.ledgers[LedgerId("total-mass")].short
    assert counter("sources", short).out == counter("sources", "total-mass").out
    assert "battery-nights" in " ".join(counter("sources", "batery-nights").err)


_CODE = re.compile(r"[a-z]_[a-z]|\*|#|\b(sum|max|min|abs|sqrt)\(|\b(eta|mro)\b|\bbrief [a-z]")


def test_formulas_and_bounds_are_words_that_can_be_read_aloud(catalogue: Catalogue) -> None:
    told = {(one.id, text) for one in catalogue.ledgers.values() for text in (one.formula, one.bound)}
    assert {(id_, found[0]) for id_, text in told if (found := _CODE.search(text))} == set()


if __name__ == "__main__" and sys.argv[1:] == ["--write"]:
    PAGE.write_text(_page(read_rules(ROOT / "rules")), "utf-8")
