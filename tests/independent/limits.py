"""Which limits an example breaks, judged over the independent sums.

``python -m tests.independent.limits [NAME...]`` prints them. Only limits that hang on one of those sums are judged.
"""

from __future__ import annotations

import re
import sys

from tests.independent.build import Build, Table, build, tables
from tests.independent.sums import NAMES, SUMS, results

LIMIT = re.compile(r"([a-z-]+) (<=|>=) ([0-9.]+ )?bound(?: - ([0-9.]+))?")
ASKED = re.compile(r"brief\.([a-z_]+)(!=|=|>|<)(.+)")


def limits() -> Table:
    """The rules that hold one of the independent sums against its bound."""
    rules = tables("constraints", "rule").items()
    return {rule: table for rule, table in rules if table["kind"] == "limit" and table["then"].split(" ")[0] in SUMS}


def holds(b: Build, atom: str) -> bool:
    """One condition of a rule. For a list of the brief ``=`` asks whether the word is in it."""
    if atom.startswith("!"):
        return not holds(b, atom[1:])
    if atom.startswith("#"):
        return atom[1:] in b.tags
    asked = ASKED.fullmatch(atom)
    if asked is None:
        if atom == "always":
            return True
        raise ValueError(f"no way to judge {atom!r} here")
    key, sign, value = asked.groups()
    said = b.brief[key]
    if sign in "<>":
        return bool(said > float(value)) if sign == ">" else bool(said < float(value))
    same = value in said if isinstance(said, list) else str(said) == value
    return same == (sign == "=")


def is_heard(b: Build, when: str) -> bool:
    """Either-or lists of and-lists."""
    return any(all(holds(b, atom) for atom in both.split(" + ")) for both in when.split(" | "))


def is_broken(value: float, bound: float, then: str) -> bool:
    limit = LIMIT.fullmatch(then)
    if limit is None:
        raise ValueError(f"no way to judge {then!r} here")
    _, sense, share, spare = limit.groups()
    most = bound * float(share or 1) - float(spare or 0)
    slack = 1e-9 * max(1.0, abs(most))  # what is equal but for binary fractions is equal
    return value > most + slack if sense == "<=" else value < most - slack


def broken(name: str, *levels: str) -> set[str]:
    """The limits of these levels that an example breaks. A sum that does not apply breaks nothing."""
    b, readings, found = build(name), results(name), set()
    for rule, table in limits().items():
        value, bound = readings[table["then"].split(" ")[0]]
        if table["level"] not in levels or value is None or bound is None or not is_heard(b, table["when"]):
            continue
        if is_broken(value, bound, table["then"]):
            found.add(rule)
    return found


def main(names: list[str]) -> None:
    for name in names or NAMES:
        print(name)
        for level in ("STOP", "SIGN", "NOTE"):
            print(f"  {level}:", ", ".join(sorted(broken(name, level))) or "none")


if __name__ == "__main__":
    main(sys.argv[1:])
