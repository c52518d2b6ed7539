"""The rules that come with the program, as the reader gives them."""

from __future__ import annotations

from pathlib import Path

import pytest

from specbuilder.model.brief import BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.rules import BriefIs
from specbuilder.storage.expressions import parse_expression
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.storage.expression_text import expression_text

SHIPPED = Path(str(rules_folder()))


@pytest.fixture(scope="module")
def shipped() -> Catalogue:
    return read_rules(rules_folder())


def test_the_shipped_rules_are_read(shipped: Catalogue) -> None:
    assert shipped.vans
    assert shipped.rules


def test_origins_name_the_head_of_each_table(shipped: Catalogue) -> None:
    lines = {path: path.read_text("utf-8").splitlines() for path in SHIPPED.rglob("*.toml")}
    for option in shipped.options.values():
        head = lines[SHIPPED / option.origin.file][option.origin.line - 1]
        assert head == f"[{'van' if option.van else 'option'}.{option.id}]"
        for circuit in option.circuits:
            here = lines[SHIPPED / circuit.origin.file][circuit.origin.line - 1 :]
            assert here[0] == f"[[option.{option.id}.circuit]]"
            assert f'id = "{circuit.id}"' in here[:3]


def test_written_rules_come_back_the_same(shipped: Catalogue) -> None:
    job_keys = {line.key for line in shipped.brief.values() if line.question is None}
    for rule in shipped.rules.values():
        for half in (rule.when, rule.then):
            text = expression_text(half, job_keys)
            read = parse_expression(text)
            assert not read.faults
            assert expression_text(read.expression, job_keys) == text


def test_words_of_the_brief_are_words_also_where_they_look_like_figures(shipped: Catalogue) -> None:
    halves = [half for rule in shipped.rules.values() for half in (rule.when, rule.then)]
    halves += [line.asked_when for line in shipped.brief.values()]
    for half in halves:
        for term in half.terms:
            for atom in term.atoms:
                if isinstance(atom, BriefIs):
                    assert _is_answer(shipped.brief[atom.key], atom.value)


def _is_answer(line: BriefLine, value: str | float) -> bool:
    return value in line.values if line.values else isinstance(value, float)
