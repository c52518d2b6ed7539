"""Headings of what stands beside the walk."""

from __future__ import annotations


def broken_head(count: int) -> str:
    """``BROKEN (1)``."""
    return f"BROKEN ({count})"


def open_count_head(count: int) -> str:
    """``UNDECIDED, NOT KNOWN (6)``."""
    return f"UNDECIDED, NOT KNOWN ({count})"
