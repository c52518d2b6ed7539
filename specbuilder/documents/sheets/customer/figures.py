"""The figures of a build that every customer asks for, and where they stand among what was worked out."""

from __future__ import annotations

from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, LedgerId
from specbuilder.model.kinds import JobState, Level
from specbuilder.model.ledger import Reading
from specbuilder.model.papers import Case
from specbuilder.model.span import Span

WEIGHT = LedgerId("total-mass")
BELTS, BERTHS = LedgerId("belts"), LedgerId("berths")
ROOF_BED = LedgerId("roof-bed-load")
HEIGHT = LedgerId("closed-height")
"""With ``spare_mm`` in it, which is no part of the van."""
NIGHTS = LedgerId("battery-nights")
PITCH, CARRIED = LedgerId("hook-up-watts"), LedgerId("mains-for-good")
"""What the weakest pitch gives is the bound of the first; the second is what the battery carries for good."""
SEASON, NIGHTS_ASKED = BriefKey("season"), BriefKey("nights_off_grid")
DRIVE, BARRIER = BriefKey("drive_h_per_day"), BriefKey("parking_limit_mm")
CONTRACT_PLACE = BriefKey("contract_place")
UNSIGNED = (JobState.DRAFT, JobState.QUOTED, JobState.EXPIRED)
"""States of a job in which nothing is agreed yet."""
_CHANGE_ORDER = BriefKey("change_order")
_GROWN_UP, _GROWN_UP_KG, _SPARE, _LUGGAGE = "grown_up_kg", 75.0, "spare_mm", "luggage"


def is_of_the_build(finding: Finding) -> bool:
    """False for what only says that a change is not signed yet: the paper itself is there to be signed."""
    return _CHANGE_ORDER not in finding.keys


def stops(case: Case) -> tuple[Finding, ...]:
    """Why this cannot be built as it stands."""
    return tuple(finding for finding in case.stand.report.broken(Level.STOP) if is_of_the_build(finding))


def reading(case: Case, ledger: LedgerId) -> Reading | None:
    """What was worked out, if there is anything to measure."""
    found = case.stand.report.readings.get(ledger) or next((one for one in case.beside if one.id == ledger), None)
    return found if found is not None and found.applies else None


def value(case: Case, ledger: LedgerId) -> Span | None:
    """The figure alone; None while nothing can be said, or where there is nothing to measure."""
    found = reading(case, ledger)
    return found.value if found else None


def bound(case: Case, ledger: LedgerId) -> Span | None:
    """What it is held against, also where the build has nothing that draws on it."""
    found = case.stand.report.readings.get(ledger)
    return found.bound if found else None


def closed_height_mm(case: Case) -> Span | None:
    """Height with everything down, without the spare that a barrier asks for."""
    found = case.stand.report.readings.get(HEIGHT)
    spec = case.stand.catalogue.ledgers.get(HEIGHT)
    if found is None or found.value is None or spec is None:
        return None
    return found.value - spec.settings.get(_SPARE, 0)


def grown_up_kg(case: Case) -> float:
    """What a person counts in the sums of weight."""
    spec = case.stand.catalogue.ledgers.get(WEIGHT)
    return spec.settings.get(_GROWN_UP, _GROWN_UP_KG) if spec else _GROWN_UP_KG


def luggage_kg(case: Case) -> Span | None:
    """What the sum of weight holds for luggage; None where no line of it says so."""
    found = reading(case, WEIGHT)
    return next((entry.amount for entry in found.entries if entry.label == _LUGGAGE), None) if found else None
