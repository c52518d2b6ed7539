"""A figure that cannot be right, or that is missing: whose it is, and what then cannot be told.

Only what a reading rests on counts: the choices, what is still an answer of an undecided question, and the base van.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from math import isnan

from specbuilder.calc.measuring.calculation import Calculation
from specbuilder.calc.measuring.prepared import as_brought
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, LedgerId, OptionId
from specbuilder.model.kinds import Owner, Verdict
from specbuilder.model.ledger import Lack, Outside, Reading
from specbuilder.model.plausible import Doubt, option_doubts, van_doubts
from specbuilder.model.situation import Situation
from specbuilder.model.vans import Van

from .missing import missing_of
from .rests_on import keys_of


def told(calculation: Calculation, situation: Situation) -> Reading:
    """What a calculation reads; nothing but the figure and its owner where one it rests on cannot be right."""
    reading = calculation.read(situation)
    if not reading.applies:
        return reading
    found = next(_doubted(situation, reading.id), None)
    if found is not None:
        option, doubt = found
        lack = Lack(group=option.group)
        lacks = reading.lacks if option.van is not None or lack in reading.lacks else (*reading.lacks, lack)
        outside = Outside(doubt.key, doubt.value, needs(doubt), option.id)
        return replace(
            reading, value=None, bound=None, verdict=Verdict.CANNOT_TELL, lacks=lacks, entries=(), outside=outside
        )
    if reading.outside is None or reading.outside.option is not None:
        return reading
    owner = _owner(situation, reading.id)
    if owner is not None:
        sheet = any(placed.option.id == owner and placed.owner is Owner.CUSTOMER for placed in situation.placed)
        return replace(reading, outside=replace(reading.outside, option=owner, sheet=sheet))
    unanswered = isnan(reading.outside.value) and any(lack.key is not None for lack in reading.lacks)
    return replace(reading, outside=None) if unanswered else reading


def is_doubted(catalogue: Catalogue, ledger: LedgerId) -> bool:
    """Whether some option of the catalogue has a figure the ledger rests on that cannot be right."""
    doubts = doubts_of(catalogue)
    return bool(doubts) and any(
        _counts(catalogue, ledger, catalogue.options[option], doubt)
        for option, all_ in doubts.items()
        for doubt in all_
    )


def needs(doubt: Doubt) -> str:
    """What the figure would have to be."""
    bounds = doubt.range
    if bounds.open:
        return f"above {bounds.least:g} and up to {bounds.most:g}"
    return f"from {bounds.least:g} to {bounds.most:g}"


@lru_cache(maxsize=4)
def doubts_of(catalogue: Catalogue) -> Mapping[OptionId, tuple[Doubt, ...]]:
    """Options and base vans with figures that cannot be right. A memo of the catalogue; empty where all is well."""
    found: dict[OptionId, tuple[Doubt, ...]] = {}
    for option in catalogue.options.values():
        doubts = (
            van_doubts(option.van) if option.van is not None else option_doubts(option, _fitting(catalogue, option))
        )
        if all_ := tuple(doubts):
            found[option.id] = all_
    return found


def _fitting(catalogue: Catalogue, option: Option) -> tuple[Van, ...]:
    """The base vans an option fits: those it names, those that name it, or all."""
    vans = [(van.id, van.van) for van in catalogue.vans if van.van is not None]
    if not option.fits_vans:
        return tuple(van for _, van in vans)
    return tuple(van for id_, van in vans if id_ in option.fits_vans or option.id in van.fitting_parts)


def _counts(catalogue: Catalogue, ledger: LedgerId, option: Option, doubt: Doubt) -> bool:
    keys = keys_of(catalogue, ledger)
    return doubt.key in (keys.vans if option.van is not None else keys.options)


def _doubted(situation: Situation, ledger: LedgerId) -> Iterator[tuple[Option, Doubt]]:
    doubts = doubts_of(situation.catalogue)
    for option in _standing(situation) if doubts else ():
        for doubt in doubts.get(option.id, ()):
            if _counts(situation.catalogue, ledger, option, doubt):
                yield option, doubt


def _standing(situation: Situation) -> Iterator[Option]:
    """The base van, the choices as they are brought, and what may still be the answer of an undecided question."""
    if situation.van is not None:
        yield situation.van
    yield from (as_brought(placed) for placed in situation.placed if placed.option.van is None)
    for group, options in situation.undecided.items():
        if group != BASE_VAN_GROUP or situation.van is None:
            yield from options


def _owner(situation: Situation, ledger: LedgerId) -> OptionId | None:
    """The one option that lacks a figure of the ledger; None where there is none or more than one."""
    found = {
        option.id
        for option in _standing(situation)
        for gap in missing_of(option)
        if ledger in gap.ledgers or situation.catalogue.ledgers[ledger].part_of in gap.ledgers
    }
    return found.pop() if len(found) == 1 else None
