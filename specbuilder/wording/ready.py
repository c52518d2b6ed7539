"""What a catalogue lacks that the sums need, in sentences for its owner."""

from __future__ import annotations

from collections.abc import Iterable

from specbuilder.model.audit import Gap


def gap_lines(gaps: Iterable[Gap]) -> tuple[str, ...]:
    """One sentence a gap, with file, place and cure."""
    return tuple(_words(gap) for gap in gaps)


def _words(gap: Gap) -> str:
    if gap.line is not None:
        return (
            f"brief.toml: there is no table [brief.{gap.line}], and the sums ask for it. Add it, with least and most."
        )
    place = f"[ledger.{gap.ledger}.settings]"
    return f"ledgers.toml: {place} has no {gap.setting}, and its sum asks for it. Add it with its number."
