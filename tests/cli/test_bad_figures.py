"""A slip of the pen in the rules: no traceback and no number that rests on it, but the figure with its file."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest

from specbuilder.storage.rules_files import rules_folder
from tests.cli.counter import Counter

HOUSE = Path(str(rules_folder()))
EXAMPLE = Path(__file__).parents[2] / "examples" / "off-grid-pair.toml"


def planted(folder: Path, file: str, table: str, key: str, value: str) -> int:
    """A figure of a table written anew; the line of the table."""
    path = folder / file
    lines = path.read_text("utf-8").splitlines()
    start = lines.index(f"[{table}]")
    at = next(i for i in range(start + 1, len(lines)) if re.match(rf"{key} = ", lines[i]) or lines[i].startswith("["))
    assert not lines[at].startswith("["), f"{table} has no {key}"
    lines[at] = f"{key} = {value}"
    path.write_text("\n".join(lines) + "\n", "utf-8")
    return start + 1


@pytest.fixture
def rules(tmp_path: Path) -> Path:
    """A copy of the rules of the house."""
    return Path(shutil.copytree(HOUSE, tmp_path / "rules"))


WEIGHTS = "total-mass pay-mass unladen-mass"
AXLES = "rear-axle front-axle front-share"
VAN, VAN_FILE = "van.fenwain-long", "vans/fenwain-long.toml"
GALLEY, BATTERY = "option.side-galley", "option.battery-twin"
PLANTED = [
    ("options/kitchen.toml", GALLEY, "mass_kg", "1e9", f"{WEIGHTS} {AXLES} side-balance"),
    ("options/kitchen.toml", GALLEY, "mass_kg", "-5", f"{WEIGHTS} {AXLES} side-balance"),
    ("options/power.toml", BATTERY, "mass_kg", "-5", f"{WEIGHTS} {AXLES} side-balance"),
    ("options/kitchen.toml", GALLEY, "position", '{ anchor = "datum", x_mm = 9000, y_mm = 0, z_mm = 0 }', AXLES),
    ("options/kitchen.toml", GALLEY, "position", '{ anchor = "rear", x_mm = 1200, y_mm = 0, z_mm = 0 }', AXLES),
    (
        "options/kitchen.toml",
        GALLEY,
        "position",
        '{ anchor = "datum", x_mm = 900, y_mm = 4000, z_mm = 0 }',
        "side-balance",
    ),
    ("options/power.toml", "option.solar-light-120.space", "roof_mass_kg", "-900", "roof-load-closed"),
    (VAN_FILE, VAN, "r_max_kg", "0", "rear-axle"),
    (VAN_FILE, VAN, "f_max_kg", "0", "front-axle"),
    (VAN_FILE, VAN, "m_max_kg", "0", "total-mass pay-mass"),
    (VAN_FILE, VAN, "wheelbase_mm", "0", AXLES),
    (VAN_FILE, VAN, "wheelbase_mm", "-3400", AXLES),
    (VAN_FILE, VAN, "track_mm", "0", "side-balance"),
    (VAN_FILE, VAN, "front_min_share", "4", "front-share"),
    (VAN_FILE, VAN, "mro_kg", "0", f"{WEIGHTS} {AXLES}"),
    (VAN_FILE, VAN, "height_mm", "0", "closed-height"),
    (VAN_FILE, VAN, "ua_w_per_k", "0", "heat"),
    (VAN_FILE, VAN, "alternator_a", "-1", "alternator-input"),
    (VAN_FILE, VAN, "vent_high_sealed_mm2", "0", "high-vents"),
    ("options/power.toml", f"{BATTERY}.power", "bms_continuous_a", "0", "battery-current"),
    ("options/power.toml", f"{BATTERY}.power", "packs_parallel", "0", "battery-current"),
    ("options/power.toml", f"{BATTERY}.power", "battery_ah", "1e9", "battery-nights charge-rate"),
    ("options/power.toml", f"{BATTERY}.power", "depth_of_discharge", "0", "battery-nights"),
]


@pytest.mark.parametrize(("file", "table", "key", "value", "blind"), PLANTED)
def test_nothing_is_told_that_rests_on_it(
    counter: Counter, rules: Path, file: str, table: str, key: str, value: str, blind: str
) -> None:
    planted(rules, file, table, key, value)
    answer = counter("--rules", str(rules), "check", str(EXAMPLE), "--json")
    assert answer.code in (0, 1, 3)
    said = json.loads("\n".join(answer.out))
    readings = {one["id"]: one for one in (*said["ledgers"], *said["figures"])}
    owner = table.split(".")[1]
    assert answer.code or "STOP" not in {readings[ledger]["level"] for ledger in blind.split()}
    for ledger in blind.split():
        reading = readings[ledger]
        assert reading["verdict"] == "cannot tell", ledger
        assert reading["value"] is None, ledger
        assert reading["absurd"]["option"] == owner, ledger
        assert key in reading["absurd"]["quantity"], ledger
        assert reading["absurd"]["written_in"].startswith(f"{file}:"), ledger


@pytest.mark.parametrize(("file", "table", "key", "value", "blind"), PLANTED[::6])
def test_check_and_why_say_it_in_a_sentence(
    counter: Counter, rules: Path, file: str, table: str, key: str, value: str, blind: str
) -> None:
    line = planted(rules, file, ".".join(table.split(".")[:2]), "name", '"The thing itself"')
    planted(rules, file, table, key, value)
    told = counter("--rules", str(rules), "check", str(EXAMPLE)).out
    (mend,) = [one for one in told if one.startswith("To mend: ") and key in one]
    assert "of the thing itself" in mend
    assert f"({file}, line {line})" in mend
    (ledger,) = [
        one for one in counter("--rules", str(rules), "why", str(EXAMPLE), blind.split()[0]).out if file in one
    ]
    assert "Nothing can be said: of the thing itself" in ledger


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("run_one_way_m", "0", "a one-way run of 0 m is no length"),
        ("run_one_way_m", "-3", "a one-way run of -3 m is no length"),
        ("load_a", "0", "a load of 0 A is no load"),
        ("load_a", "-20", "a load of -20 A is no load"),
    ],
)
def test_a_circuit_without_length_or_load_has_no_cable(
    counter: Counter, rules: Path, key: str, value: str, words: str
) -> None:
    line = planted(rules, "options/power.toml", f"[{BATTERY}.circuit]", key, value)
    said = counter("--rules", str(rules), "check", str(EXAMPLE))
    (told,) = [told for told in said.out if told.startswith("To mend: ")]
    assert words in told
    assert f"options/power.toml:{line}" in told
    schedule = json.loads("\n".join(counter("--rules", str(rules), "circuits", str(EXAMPLE), "--json").out))
    (circuit,) = [one for one in schedule["circuits"] if one["id"] == "battery-twin-c1"]
    assert (circuit["area_mm2"], circuit["fuse_a"], circuit["drop_v"]) == (None, None, None)
    assert circuit["problems"]


@pytest.mark.parametrize("file", ["half-done-family", "first-ten-minutes"])
def test_an_answer_that_may_still_be_given_counts_too(counter: Counter, rules: Path, file: str) -> None:
    """Whatever the undecided question may bring: a sum over it has no end that could be told."""
    planted(rules, "options/kitchen.toml", GALLEY, "mass_kg", "1e9")
    example = EXAMPLE.with_name(f"{file}.toml")
    said = json.loads("\n".join(counter("--rules", str(rules), "check", str(example), "--json").out))
    (weight,) = [one for one in said["ledgers"] if one["id"] == "total-mass"]
    assert (weight["value"], weight["verdict"]) == (None, "cannot tell")
    for command in (("finish", str(example)), ("show", str(example), "kitchen"), ("circuits", str(example))):
        assert counter("--rules", str(rules), *command).code in (0, 1), command


def test_a_part_nobody_takes_silences_nothing(counter: Counter, rules: Path) -> None:
    before = json.loads("\n".join(counter("--rules", str(HOUSE), "check", str(EXAMPLE), "--json").out))
    planted(rules, "options/kitchen.toml", "option.pod-galley", "mass_kg", "1e9")
    planted(
        rules,
        "options/kitchen.toml",
        "option.tail-galley",
        "position",
        '{ anchor = "rear", x_mm = 9e5, y_mm = 0, z_mm = 0 }',
    )
    planted(rules, "vans/hushwain.toml", "van.hushwain", "wheelbase_mm", "0")
    after = json.loads("\n".join(counter("--rules", str(rules), "check", str(EXAMPLE), "--json").out))
    assert [one["value"] for one in after["ledgers"]] == [one["value"] for one in before["ledgers"]]
    assert after["verdict"] == before["verdict"]


def test_the_audit_names_it(counter: Counter, rules: Path) -> None:
    line = planted(rules, "options/kitchen.toml", GALLEY, "mass_kg", "1e9")
    said = counter("audit", str(rules))
    assert [one for one in said.out if one.startswith("implausible")] == [
        f"implausible options/kitchen.toml:{line} side-galley (Side galley): mass_kg is 1e+09, expected 0 to 1000"
    ]
