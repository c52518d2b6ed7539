"""Where things stand on a machine when nobody says otherwise."""

from __future__ import annotations

from pathlib import Path

from platformdirs import user_data_path


def default_jobs_path() -> Path:
    """The jobs: in the user's own data folder."""
    return user_data_path("specbuilder") / "jobs"
