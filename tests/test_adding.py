"""An owner who never opens the code adds an option, a rule and a base van, touching one file of the rules each."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.model.kinds import OptionState, Verdict
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import RulesFaults, read_rules
from specbuilder.storage.spec_files import read_spec_file

ROOT = Path(__file__).parent.parent
FAMILY = ROOT / "examples" / "saturday-family.toml"
MASS = LedgerId("total-mass")

OPTION = """
[option.hook-rail]
group = "inside-extras"
name = "Rail with six hooks"
description = "An oak rail with brass hooks over the sliding door."
price_net_pence = 4_200
labour_h = 0.5
lead_weeks = 1
mass_kg = 1.25
position = { anchor = "datum", x_mm = 900, y_mm = 600, z_mm = 1250 }
build_step = "B7"
source = "estimate: weighed on the kitchen scales"
"""
RULE = """
[rule.blinds-or-curtains]
step = "finish"
kind = "excludes"
level = "SIGN"
when = "pleated-blinds"
then = "curtains"
because = "Blinds and curtains at one window are one too many."
fixes = ["Leave one of them out"]
source = "ordinary trade practice"
confidence = "known"
"""


@pytest.fixture
def rules(tmp_path: Path) -> Path:
    """A copy of the house's rules."""
    return Path(shutil.copytree(ROOT / "rules", tmp_path / "rules"))


def _added(rules: Path, file: str, table: str) -> None:
    path = rules / file
    before = path.read_text("utf-8") if path.exists() else ""
    path.write_text(before + table, "utf-8")


def _family(catalogue: Catalogue) -> Spec:
    return read_spec_file(FAMILY, catalogue).spec


def _with(catalogue: Catalogue, spec: Spec, option: str) -> Report:
    outcome = apply(catalogue, spec, Take(option=OptionId(option)))
    assert outcome.refused is None
    return evaluate(catalogue, outcome.spec)


def _mass_kg(report: Report) -> float:
    value = report.readings[MASS].value
    assert value is not None
    assert value.settled
    return value.least


def _new_van(rules: Path) -> str:
    """The table of a van, copied and changed as the note at the head of the file says."""
    text = (rules / "vans" / "fenwain-short.toml").read_text("utf-8")
    table = text[text.index("[van.fenwain-short]") : text.index("# ---", text.index("[van.fenwain-short]"))]
    table = table.replace("[van.fenwain-short]", "\n[van.fenwain-short-heavy]").replace(
        'name = "Fenwain Short', 'name = "Fenwain Short, heavy plate'
    )
    table = re.sub(r"(?m)^m_max_kg = .*$", "m_max_kg = 3200", table)
    table = re.sub(r"(?m)^mro_kg = .*$", "mro_kg = 2010", table)
    return table + 'fitting_parts = ["larchlid-short", "bench-two"]\n'


def test_an_option_is_open_and_counts_in_price_and_mass(rules: Path) -> None:
    _added(rules, "options/finish.toml", OPTION)
    catalogue = read_rules(rules)
    before = evaluate(catalogue, _family(catalogue))
    status = before.options[OptionId("hook-rail")]
    assert status.state is OptionState.OPEN
    assert (status.effect.gross_pence, status.effect.mass_kg) == (5040, 1.25)
    after = _with(catalogue, before.spec, "hook-rail")
    assert after.options[OptionId("hook-rail")].state is OptionState.CHOSEN
    assert after.price.gross.least == before.price.gross.least + 5040
    assert _mass_kg(after) == pytest.approx(_mass_kg(before) + 1.25)
    assert after.verdict is before.verdict


def test_a_rule_fires_and_is_mended(rules: Path) -> None:
    _added(rules, "constraints/finish.toml", RULE)
    catalogue = read_rules(rules)
    family = _family(catalogue)

    def verdict(report: Report) -> Verdict:
        return next(f.verdict for f in report.findings if f.rule == "blinds-or-curtains")

    assert verdict(evaluate(catalogue, family)) is Verdict.HOLDS
    both = _with(catalogue, family, "pleated-blinds")
    assert verdict(both) is Verdict.BROKEN
    assert {o for o, s in both.options.items() if "blinds-or-curtains" in s.clashes} == {"pleated-blinds", "curtains"}
    one = both.spec.with_choices(tuple(c for c in both.spec.choices if c.option != "curtains"))
    assert verdict(evaluate(catalogue, one)) is Verdict.HOLDS


def test_a_base_van_can_be_chosen_and_has_its_weight(rules: Path) -> None:
    _added(rules, "vans/fenwain-short-heavy.toml", _new_van(rules))
    catalogue = read_rules(rules)
    family = _family(catalogue)
    before = evaluate(catalogue, family)
    assert OptionId("fenwain-short-heavy") in {van.id for van in catalogue.vans}
    after = _with(catalogue, family, "fenwain-short-heavy")
    assert after.van == "fenwain-short-heavy"
    assert _mass_kg(after) == pytest.approx(_mass_kg(before) + 50)
    bound = after.readings[MASS].bound
    assert bound is not None
    assert bound.least == bound.most == 3200
    assert after.verdict is Verdict.HOLDS


def test_parts_that_do_not_list_a_new_base_van_are_refused_for_it(rules: Path) -> None:
    _added(rules, "vans/fenwain-short-heavy.toml", _new_van(rules).replace("fitting_parts", "# fitting_parts"))
    catalogue = read_rules(rules)
    after = _with(catalogue, _family(catalogue), "fenwain-short-heavy")
    misfits = next(f for f in after.findings if f.rule == "parts-fit-the-van")
    assert misfits.verdict is Verdict.BROKEN
    assert misfits.subjects == ("larchlid-short", "bench-two")


SLIPS: dict[str, tuple[str, Callable[[Path], str], str, str]] = {
    "option with a figure in quotes": (
        "options/finish.toml",
        lambda _: OPTION.replace("mass_kg = 1.25", 'mass_kg = "1.25"'),
        'mass_kg = "1.25"',
        "option.hook-rail.mass_kg: ",
    ),
    "option in a group there is not": (
        "options/finish.toml",
        lambda _: OPTION.replace('"inside-extras"', '"inside-extra"'),
        'group = "inside-extra"',
        "option.hook-rail.group: ",
    ),
    "rule about an option there is not": (
        "constraints/finish.toml",
        lambda _: RULE.replace('"curtains"', '"curtain"'),
        'then = "curtain"',
        "rule.blinds-or-curtains.then: ",
    ),
    "van without its wheelbase": (
        "vans/fenwain-short-heavy.toml",
        lambda rules: re.sub(r"(?m)^wheelbase_mm = .*\n", "", _new_van(rules)),
        "[van.fenwain-short-heavy]",
        "van.fenwain-short-heavy",
    ),
    "van with a key misspelt": (
        "vans/fenwain-short-heavy.toml",
        lambda rules: _new_van(rules).replace("fitting_parts", "fiting_parts"),
        "fiting_parts",
        "van.fenwain-short-heavy",
    ),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_told_with_file_and_line(slip: str, rules: Path) -> None:
    file, table, at, told = SLIPS[slip]
    _added(rules, file, table(rules))
    lines = (rules / file).read_text("utf-8").splitlines()
    line = next(n for n, text in enumerate(lines, 1) if text.startswith(at))
    with pytest.raises(RulesFaults) as caught:
        read_rules(rules)
    (fault,) = caught.value.faults
    assert str(fault).startswith(f"{file}:{line}: {told}")
