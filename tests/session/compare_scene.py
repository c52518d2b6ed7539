"""The examples as stands, and what edits make of one of them."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.comparison import Change, Comparison
from specbuilder.model.edits import Edit
from specbuilder.model.ids import LedgerId, OptionId
from specbuilder.session.compare import compare
from specbuilder.storage.rules_files import read_rules
from tests.conftest import RULES
from tests.session.edit_runs import EXAMPLES, done, example, stand

CATALOGUE = read_rules(RULES)
STANDS = {path.stem: example(CATALOGUE, path.stem) for path in sorted(EXAMPLES.glob("*.toml"))}
WANTED = STANDS["saturday-family"]
FINISHED = [
    s for s in STANDS.values() if not s.report.undecided and s.report.readings[LedgerId("total-mass")].value.settled
]
"""Without the build that holds a bench nobody has weighed: its weight is a range."""
AWNING, SIDE, POD = OptionId("awning-body-rail"), OptionId("side-galley"), OptionId("pod-galley")
SOCKET, CURTAINS, TABLE = OptionId("socket-usb-pair"), OptionId("curtains"), OptionId("table-rail")


def against(*edits: Edit) -> Comparison:
    """What these edits make of the example."""
    return compare(WANTED, stand(CATALOGUE, done(CATALOGUE, WANTED.spec, *edits)))


def only(comparison: Comparison) -> Change:
    (change,) = comparison.changes
    return change


def with_options(*options: Option, without: tuple[OptionId, ...] = ()) -> Catalogue:
    """The catalogue of another year."""
    known = {key: option for key, option in CATALOGUE.options.items() if key not in without}
    return replace(CATALOGUE, options=MappingProxyType(known | {option.id: option for option in options}))


def only_about(found: Comparison, option: OptionId) -> Change:
    (change,) = (c for c in found.changes if c.option == option)
    return change
