"""What the program says of the examples, held against sums that share no line of code with it."""

from __future__ import annotations

import contextlib
import io
import json
import math
from functools import cache

import pytest

from specbuilder.cli.main import main
from tests.independent.build import ROOT, Table, build
from tests.independent.limits import broken, is_heard, limits
from tests.independent.power_beside import cannot_run_together
from tests.independent.sums import NAMES, SUMS, results
from tests.independent.weights import front_kg, rear_kg

TOLERANCE = 0.005

each_build = pytest.mark.parametrize("name", NAMES)
each_sum = pytest.mark.parametrize("ledger", SUMS)


@cache
def check(name: str) -> Table:
    """The answer of the line command."""
    with contextlib.redirect_stdout(io.StringIO()) as out:
        main(["check", str(ROOT / "examples" / f"{name}.toml"), "--json"])
    answer: Table = json.loads(out.getvalue())
    return answer


def said(name: str, ledger: str) -> Table:
    """The program's reading of one sum."""
    answer = check(name)
    if ledger in answer["silent"]["ledgers"]:
        pytest.skip(f"the program does not make the sum {ledger} yet")
    (reading,) = [r for r in [*answer["ledgers"], *answer["figures"]] if r["id"] == ledger]
    return dict(reading)


def is_judged(name: str, ledger: str) -> bool:
    """Whether a rule asks for that sum in that build. Where none does, both may leave it out."""
    return any(t["then"].startswith(f"{ledger} ") and is_heard(build(name), t["when"]) for t in limits().values())


def agree(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=TOLERANCE, abs_tol=1e-6)


@each_build
@each_sum
def test_value_and_bound_agree(name: str, ledger: str) -> None:
    reading, (value, bound) = said(name, ledger), results(name)[ledger]
    if value is not None and math.isinf(value):
        assert reading["no_end"], f"without end here, {reading['least']} in the program"
    elif value is None or reading["least"] is None:
        assert value == reading["least"] or not is_judged(name, ledger), f"{value} here, {reading['least']} there"
        return  # a bound beside an empty value says nothing
    else:
        assert reading["least"] == reading["most"], "nothing is open in an example, so a sum is one number"
        assert agree(value, reading["least"]), f"{value} here, {reading['least']} in the program"
        assert not reading["no_end"]
    if bound is None or reading["bound"] is None:
        assert bound == reading["bound"] or not is_judged(name, ledger), f"{bound} here, {reading['bound']} there"
    else:
        assert agree(bound, reading["bound"]), f"bound {bound} here, {reading['bound']} in the program"


@each_build
def test_the_same_limits_are_broken(name: str) -> None:
    answer = check(name)
    judged = set(limits()) - set(answer["silent"]["rules"])
    found = {finding["id"] for finding in answer["findings"] if finding["verdict"] == "broken"}
    assert found & judged == broken(name, "STOP", "SIGN", "NOTE") & judged


@each_build
def test_both_axles_together_carry_the_whole_van(name: str) -> None:
    total, _ = results(name)["total-mass"]
    assert total == pytest.approx(front_kg(build(name)) + rear_kg(build(name)), abs=1e-6)


def test_the_energy_of_a_day_by_hand() -> None:
    """The family in summer: pump, fridge, heater, monitor, sockets, lights; laptop and idle; phones and always on."""
    value, _ = results("saturday-family")["daily-energy"]
    assert value == pytest.approx(20 + 432 + 46.7 + 24 + 34 + 36 + 60 * 2.5 / 0.88 + 8 * 3 + 33 + 48)


@each_build
def test_the_same_things_cannot_run_together(name: str) -> None:
    told = check(name)["cannot_run_together"]
    found = cannot_run_together(build(name))
    assert [one["feed"] for one in told] == [feed for feed, _, _ in found]
    for one, (_, given, sets) in zip(told, found, strict=True):
        assert agree(one["limit_w"], given)
        assert {frozenset((o["id"], o["count"]) for o in s["options"]): s["watts_w"] for s in one["sets"]} == sets
