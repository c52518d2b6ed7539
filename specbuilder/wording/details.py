"""What the details of an option say: its places, how many, whose, and what the workshop needs to know."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Owner, Place
from specbuilder.model.report import Report

from . import quantities
from .names import listed
from .plain import ended, raised
from .rows import row_count_words
from .states import owner_word, place_explained

_COUNTRY = BriefKey("country")


def place_line(catalogue: Catalogue, report: Report, option: OptionId, place: Place) -> str:
    """``left (kerb side in the UK, sliding-door side)``, with how many sit there."""
    country = report.facts.get(_COUNTRY)
    chosen = catalogue.options.get(report.van) if report.van is not None else None
    van = chosen.van if chosen is not None else None
    words = place_explained(place, country if isinstance(country, str) else None, van.sliding_doors if van else ())
    count = sum(c.count for c in report.spec.chosen(option) if c.place is place)
    return f"{words}: {count} there" if count > 1 else words


def count_line(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``How many: 2 of 4``; empty where there is only one."""
    words = row_count_words(catalogue, report, option)
    return f"How many: {words}" if words else ""


def whose_line(owner: Owner) -> str:
    """``Whose part: ours   1 ours  2 theirs``."""
    return f"Whose part: {owner_word(owner)}   1 {owner_word(Owner.HOUSE)}  2 {owner_word(Owner.CUSTOMER)}"


def detail_lines(catalogue: Catalogue, option: OptionId) -> tuple[str, ...]:
    """Weeks, hours, build step, papers and source of an option, one sentence each."""
    known = catalogue.options[option]
    lines: list[str] = []
    if known.labour_h:
        lines.append(f"Takes {quantities.hours(known.labour_h)} of work, in the price.")
    if known.build_step:
        work = catalogue.work.get(known.build_step)
        lines.append(ended(f"Build step {known.build_step}{f': {work.work}' if work else ''}"))
    if known.papers:
        names = listed(catalogue.papers[p].name if p in catalogue.papers else p for p in known.papers)
        lines.append(ended(f"Papers: {names}"))
    if known.zero_note:
        lines.append(ended(raised(known.zero_note)))
    if known.source:
        lines.append(ended(f"Source: {known.source}"))
    return tuple(lines)
