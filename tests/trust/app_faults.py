"""The app core on a disk that refuses: keys are pressed, the disk fails at a step, later it is sound again."""

from __future__ import annotations

from pathlib import Path

from .tally import Run


def tries(run: Run, states: Path) -> None:
    """To come."""
