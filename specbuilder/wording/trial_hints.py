"""Words of the hint line in a what-if; apart from the rest, for the first frame has hints too."""

from __future__ import annotations


def to_the_job() -> str:
    """Escape in a what-if."""
    return "back to the job"


def keep_it() -> str:
    """``k`` in a what-if."""
    return "keep"
