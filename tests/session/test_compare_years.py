"""The same build under the rules of another year: what is renamed, dearer, gone or back, and a spec moved there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import MappingProxyType

import pytest

from specbuilder.model.catalogue import Option
from specbuilder.model.comparison import ChangeKind, Comparison
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.spec import Choice
from specbuilder.session.compare import compare, moved
from tests.session.compare_scene import CATALOGUE, TABLE, WANTED, only, only_about, with_options
from tests.session.edit_runs import stand


def other_year(change: Callable[[Option], Option], option: OptionId = TABLE) -> Comparison:
    return compare(WANTED, stand(with_options(change(CATALOGUE.options[option])), WANTED.spec))


@pytest.mark.parametrize(
    ("change", "kind"),
    [
        (lambda option: replace(option, name="Table on a rail"), ChangeKind.RENAMED),
        (lambda option: replace(option, price_net_pence=option.price_net_pence + 1000), ChangeKind.REPRICED),
        (lambda option: replace(option, mass_kg=option.mass_kg + 1), ChangeKind.REWEIGHED),
        (lambda option: replace(option, lead_weeks=option.lead_weeks + 1), ChangeKind.RETIMED),
    ],
)
def test_the_same_choice_in_another_year(change: Callable[[Option], Option], kind: ChangeKind) -> None:
    found = other_year(change)
    assert only(found).kind is kind
    assert only(found).turned == only(
        compare(stand(with_options(change(CATALOGUE.options[TABLE])), WANTED.spec), WANTED)
    )
    assert found.rest.gross_pence == 0


def test_an_option_that_is_gone_is_found_and_its_name_is_kept() -> None:
    today = with_options(without=(TABLE,))
    found = compare(WANTED, stand(today, moved(WANTED.spec, today)))
    line = only_about(found, TABLE)
    assert (line.kind, line.name_after) == (ChangeKind.GONE, CATALOGUE.options[TABLE].name)
    assert line.difference.gross_pence == -round(CATALOGUE.options[TABLE].price_net_pence * 1.2)
    back = only_about(compare(stand(today, WANTED.spec), WANTED), TABLE)
    assert back.kind is ChangeKind.BACK


def test_what_neither_catalogue_knows_stands_alike_on_both_sides() -> None:
    strange = WANTED.spec.with_choices((*WANTED.spec.choices, Choice(option=OptionId("old-stove"), note="keep")))
    one, other = stand(CATALOGUE, strange), stand(with_options(), strange)
    assert compare(one, other).empty
    added = only(compare(WANTED, one))
    assert (added.group, added.name_after) == (None, "old-stove")


def test_new_prices_of_all_parts_are_a_line_each() -> None:
    dearer = replace(CATALOGUE, firm=replace(CATALOGUE.firm, vat_percent=25.0))
    found = compare(WANTED, stand(dearer, WANTED.spec))
    assert {change.kind for change in found.changes} == {ChangeKind.REPRICED}
    assert abs(found.rest.gross_pence) <= len(found.changes)


def test_a_rule_of_another_year_that_is_broken_comes() -> None:
    rule = next(r for r in WANTED.report.findings if r.verdict.value == "broken").rule
    fewer = replace(CATALOGUE, rules=MappingProxyType({k: r for k, r in CATALOGUE.rules.items() if k != rule}))
    found = compare(stand(fewer, WANTED.spec), WANTED)
    assert [finding.rule for finding in found.came] == [rule]
    assert not found.changes


def test_moving_keeps_what_is_gone_and_forgets_answers_that_are_none_any_more() -> None:
    line = CATALOGUE.brief[BriefKey("gas")]
    lines = CATALOGUE.brief | {line.key: replace(line, values=("bottle", "no"))}  # type: ignore[operator]
    gone = BriefKey("height_m")
    today = replace(
        with_options(without=(TABLE,)), brief=MappingProxyType({k: v for k, v in lines.items() if k != gone})
    )
    spec = replace(WANTED.spec, answers=WANTED.spec.answers.with_answer(BriefKey("gas"), "yes").with_answer(gone, 300))
    there = moved(spec, today)
    assert there.choices == spec.choices
    assert there.answers.get(BriefKey("gas")) is None
    assert there.answers.get(gone) == 300
    assert moved(spec, CATALOGUE) is spec
