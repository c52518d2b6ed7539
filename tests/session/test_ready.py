"""A catalogue that reads without fault may still lack what the sums ask for: it is named before anything is summed."""

from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.audit import Gap
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.session.ready import gaps


def test_the_shipped_catalogue_lacks_nothing(catalogue: Catalogue) -> None:
    assert gaps(catalogue) == ()


def test_a_missing_line_of_the_brief_is_named(catalogue: Catalogue) -> None:
    brief = {key: line for key, line in catalogue.brief.items() if key != "weeks_wanted"}
    assert gaps(replace(catalogue, brief=MappingProxyType(brief))) == (Gap(line=BriefKey("weeks_wanted")),)


def test_a_missing_line_that_a_limit_asks_for_is_named_too(catalogue: Catalogue) -> None:
    brief = {key: line for key, line in catalogue.brief.items() if key != "adults"}
    assert Gap(line=BriefKey("adults")) in gaps(replace(catalogue, brief=MappingProxyType(brief)))


def test_a_missing_house_setting_is_named(catalogue: Catalogue) -> None:
    mass = LedgerId("total-mass")
    ledgers = {**catalogue.ledgers, mass: replace(catalogue.ledgers[mass], settings=MappingProxyType({}))}
    found = gaps(replace(catalogue, ledgers=MappingProxyType(ledgers)))
    assert Gap(ledger=mass, setting="grown_up_kg") in found
    shares_them = {ledger.id for ledger in catalogue.ledgers.values() if mass in ledger.settings_as}
    assert {mass} < {gap.ledger for gap in found} <= {mass, *shares_them}
