"""The table the harness ends with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .kinds import KINDS
from .tally import Tally

_WIDE = 50


def table(found: Sequence[Tally], seed: int) -> Iterator[str]:
    """One line for each kind, what was done in it, every example of what went wrong, and the total."""
    head = f"{'fault':<{_WIDE}} {'tried':>9} {'edits lost':>10} {'tracebacks':>10} {'lacking':>8} {'seconds':>8}"
    yield head
    yield "-" * len(head)
    for tally in found:
        yield _line(KINDS[tally.kind].name, tally)
        if tally.notes:
            yield "    " + ", ".join(f"{count:,} {what}" for what, count in tally.notes.items())
    yield "-" * len(head)
    total = Tally(kind="total")
    for tally in found:
        total.tried += tally.tried
        total.lost += tally.lost
        total.tracebacks += tally.tracebacks
        total.unclear += tally.unclear
        total.took_s += tally.took_s
    yield _line(f"total (seed {seed})", total)
    for tally in found:
        yield from tally.examples


def _line(name: str, tally: Tally) -> str:
    return (
        f"{name:<{_WIDE}} {tally.tried:>9,} {tally.lost:>10,} {tally.tracebacks:>10,} {tally.unclear:>8,} "
        f"{tally.took_s:>8.0f}"
    )
