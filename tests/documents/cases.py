"""Cases to make papers from: the examples, as they are or with something of the spec put in another way."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.papers import Case
from specbuilder.model.spec import Spec
from specbuilder.model.stand import Stand
from specbuilder.session.evaluate import evaluate
from specbuilder.session.papers import case_of
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import read_spec_file

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))
"""Of all the examples."""
TODAY = date(2031, 4, 18)
CHECKSUM = "0123456789abcdef"


@cache
def the_catalogue() -> Catalogue:
    """The house's own rules, read once."""
    return read_rules(rules_folder())


@cache
def spec_of(name: str) -> Spec:
    """The spec of an example, as it stands on disk."""
    return read_spec_file(EXAMPLES / f"{name}.toml", the_catalogue()).spec


def stand_of(spec: Spec) -> Stand:
    """A spec with all that follows from it."""
    catalogue = the_catalogue()
    return Stand(catalogue=catalogue, spec=spec, report=evaluate(catalogue, spec))


@cache
def plain_case(name: str) -> Case:
    """An example as it is: a draft."""
    return case_of(stand_of(spec_of(name)), TODAY, checksum=CHECKSUM)


def case(
    name: str,
    *,
    today: date = TODAY,
    before: Spec | None = None,
    replaced_by: int | None = None,
    **changes: Any,
) -> Case:
    """An example with other fields of its spec.

    Args:
        name: of the example.
        today: the day the papers are made.
        before: the revision it replaces.
        replaced_by: the revision that has replaced it.
        changes: fields of the spec, by name.
    """
    if not changes and before is None and replaced_by is None and today == TODAY:
        return plain_case(name)
    stand = stand_of(replace(spec_of(name), **changes))
    old = stand_of(before) if before is not None else None
    return case_of(stand, today, before=old, replaced_by=replaced_by, checksum=CHECKSUM)
