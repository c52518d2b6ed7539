"""The spec's file on the shipped catalogue: every option in it, and every example as it stands."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from specbuilder.model.kinds import Place
from specbuilder.model.spec import Choice, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import WarningKind, read_spec, read_spec_file, spec_text

CATALOGUE = read_rules(rules_folder())
EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


def without_digests(text: str) -> list[str]:
    """The text but for what any change of any file of the rules changes."""
    return [line for line in text.splitlines() if not line.startswith(("checksum = ", "catalogue_digest = "))]


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_an_example_is_what_the_program_writes(path: Path) -> None:
    """When rules or sums change on purpose, the examples are written again from what they say."""
    read = read_spec_file(path, CATALOGUE)
    assert {warning.kind for warning in read.warnings} <= {WarningKind.OTHER_CATALOGUE}
    text = spec_text(CATALOGUE, read.spec, evaluate(CATALOGUE, read.spec))
    assert without_digests(text) == without_digests(path.read_text(encoding="utf-8"))


def test_every_option_at_every_place_comes_back() -> None:
    """More than any van can hold: the file only has to say it."""
    places: tuple[Place | None, ...] = (None, *Place)
    choices = tuple(
        Choice(option=option.id, place=place, count=option.max_count)
        for option in CATALOGUE.options.values()
        for place in places
        if place is None or place in option.places
    )
    spec = Spec(number="0001", choices=choices)
    text = spec_text(CATALOGUE, spec, evaluate(CATALOGUE, spec))
    assert read_spec(text, "a.toml", None).spec == spec
    table = tomllib.loads(text)
    steps = [choice["build_step"].partition(" ")[0] for choice in table["choice"]]
    assert steps == sorted(steps, key=list(CATALOGUE.work).index)
    holes = [hole for option in CATALOGUE.options.values() for hole in option.holes]
    given = {tag.partition("@")[0] for option in CATALOGUE.options.values() for tag in option.gives}
    assert {hole["id"] for hole in table["hole"]} == {hole.id for hole in holes if given.isdisjoint(hole.unless_given)}
    assert {run["id"] for run in table["circuit"]} == {c.id for o in CATALOGUE.options.values() for c in o.circuits}
