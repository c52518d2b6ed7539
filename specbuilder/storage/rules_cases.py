"""Which rules have a case: a story in TOML that breaks the rule and mends it."""

from __future__ import annotations

import tomllib
from pathlib import Path

from specbuilder.model.ids import RuleId

from .faults import Fault
from .rules_files import RulesFaults


def cased_rules(folder: Path) -> frozenset[RuleId]:
    """The rules that a table ``[case.RULE]`` in some file of the folder is about.

    Raises:
        RulesFaults: the folder or a file of it cannot be read, with its name.
    """
    found: set[RuleId] = set()
    try:
        for path in sorted(folder.iterdir()):
            if path.suffix == ".toml":
                found |= _cased(path)
    except OSError as reason:
        told = f"the cases cannot be read ({reason.strerror}): look at path and rights."
        raise RulesFaults((Fault(str(folder), 0, "", told),)) from reason
    return frozenset(found)


def _cased(path: Path) -> frozenset[RuleId]:
    try:
        cases = tomllib.loads(path.read_text("utf-8")).get("case")
    except ValueError as reason:
        raise RulesFaults(
            (Fault(str(path), 0, "", f"this file is not written as TOML ({reason}): mend it."),)
        ) from reason
    return frozenset(RuleId(name) for name in cases) if isinstance(cases, dict) else frozenset()
