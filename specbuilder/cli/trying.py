"""``--try``: what a change would do, done to a copy that nobody keeps."""

from __future__ import annotations

from collections.abc import Iterator

from specbuilder.model.comparison import Comparison
from specbuilder.model.stand import Stand
from specbuilder.office.house import House, stand_of
from specbuilder.session.compare import compare
from specbuilder.session.trial import trial_of
from specbuilder.wording.compare import finding_change_lines
from specbuilder.wording.differences import difference_spoken
from specbuilder.wording.lines import only_tried
from specbuilder.wording.plain import ended
from specbuilder.wording.spoken import standing_line

from .answers import Answer
from .opening import opened
from .output import Exit
from .working import Work


def tried(house: House, file: str, work: Work) -> Answer:
    """What was done, what all of it adds, what it breaks and clears, and where the spec would stand.

    What has left the house is tried as its next revision, with the work that a change makes useless in its price.

    Raises:
        StopError: it cannot be done, or the job cannot be read.
        SpecFaultsError, DiskError, RulesFaults: the file cannot be used.
    """
    was = opened(file, house)
    before = stand_of(was.catalogue, was.spec)
    base = house.base_of(was.spec) if was.job is not None else None
    worked = work(trial_of(before, base))
    after = stand_of(was.catalogue, worked.session.spec)
    told = _told(before, after, compare(before, after))
    return Answer((*worked.lines, *told, only_tried()), Exit.FINE)


def _told(before: Stand, after: Stand, comparison: Comparison) -> Iterator[str]:
    yield ended(f"All together: {difference_spoken(after.catalogue, comparison.difference)}")
    yield from finding_change_lines(before, after, comparison)
    yield standing_line(after.catalogue, after.report)
