"""What the sums need of a catalogue beyond what its reader can know: lines of the brief and house settings."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.calc import made, missing_settings
from specbuilder.model.audit import Gap
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.span import ZERO, Span
from specbuilder.model.spec import Spec

from .situate import lay


class _Asked(dict[BriefKey, Span]):
    """Ranges of the brief that note what is asked for and not there."""

    def __init__(self, known: dict[BriefKey, Span]) -> None:
        super().__init__(known)
        self.missing: dict[BriefKey, None] = {}

    def __missing__(self, key: BriefKey) -> Span:
        self.missing[key] = None
        return ZERO


def gaps(catalogue: Catalogue) -> tuple[Gap, ...]:
    """Everything that is missing. With none, every sum can be made for every spec."""
    settings = tuple(Gap(ledger=ledger, setting=setting) for ledger, setting in missing_settings(catalogue))
    if settings:
        return settings
    # Not exact: the limits of an exact problem are sums as well, and would be the first to miss what is looked for.
    situation = lay(catalogue, Spec(), exact=False).situation
    asked = _Asked(dict(situation.facts.ranges))
    open_brief = replace(situation, facts=replace(situation.facts, ranges=asked))
    for calculation in made(catalogue):
        calculation.read(open_brief)
    return tuple(Gap(line=key) for key in asked.missing)
