"""Where things stand on a machine when nobody says otherwise."""

from __future__ import annotations

from pathlib import Path

from platformdirs import user_config_path, user_data_path


def default_jobs_path() -> Path:
    """The jobs: in the user's own data folder."""
    return user_data_path("specbuilder") / "jobs"


def default_keys_path() -> Path:
    """A house's own keys, for whoever has chosen any."""
    return user_config_path("specbuilder") / "keys.toml"
