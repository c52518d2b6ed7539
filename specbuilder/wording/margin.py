"""Headings of what stands beside the walk."""

from __future__ import annotations


def broken_head(count: int) -> str:
    """``Broken (1)``."""
    return f"Broken ({count})"


def open_count_head(count: int) -> str:
    """``Undecided, not known (6)``."""
    return f"Undecided, not known ({count})"
