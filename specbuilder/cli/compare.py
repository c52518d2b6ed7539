"""``compare``: two revisions, variants or files side by side, each held against its own rules or those of today."""

from __future__ import annotations

from argparse import Namespace
from datetime import date

from specbuilder.model.stand import Stand
from specbuilder.office.house import House, stand_of
from specbuilder.office.variants import works_in
from specbuilder.session.compare import compare, moved
from specbuilder.wording.compare import comparison_lines
from specbuilder.wording.side_by_side import works_line, works_rows

from .answers import Answer
from .asjson_compare import comparison_json
from .opening import Opened, opened
from .output import Exit, StopError


def compared(house: House, arguments: Namespace, today: date) -> Answer:
    """What differs from A to B, one fact a line or as JSON.

    Raises:
        StopError: there is nothing to compare with, or a job cannot be read.
        SpecFaultsError, DiskError, RulesFaults: a file, or the rules it was agreed on, cannot be used.
    """
    if arguments.b is None and not arguments.today:
        raise StopError(Exit.UNUSABLE, "Say what A is compared with: B, or --today for A under the rules of today.")
    was = opened(arguments.a, house)
    now = opened(arguments.b, house) if arguments.b is not None else was
    before = stand_of(was.catalogue, was.spec)
    after = _today(house, now) if arguments.today else stand_of(now.catalogue, now.spec)
    found = compare(before, after)
    works = works_rows(works_in(before, today), works_in(after, today))
    if arguments.json:
        return Answer((comparison_json(before, after, found, works),))
    return Answer(comparison_lines(before, after, found, list(map(works_line, works))))


def _today(house: House, was: Opened) -> Stand:
    """Held against the rules of today, whatever it was agreed on."""
    return stand_of(house.catalogue, moved(was.spec, house.catalogue))
