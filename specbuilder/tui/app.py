"""The way into the counter screens. Nothing of the toolkit is imported before it is asked for."""

from __future__ import annotations

import gc
import os
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .keyboard import Keyboard


def run(
    *,
    jobs: Path | None,
    rules: Path | None,
    keys: Path | None = None,
    ascii: bool = False,
    light: bool = False,
    counter: str = "",
) -> int:
    """Run the app in this terminal until it is left; 0 when it was left by its own key.

    An empty ``NO_COLOR`` counts as not set. The look is decided before the toolkit sees the environment. Collecting
    garbage is off until the catalogue is read: hardly anything made before is garbage, and looking costs a tenth of it.
    ``keys``: a file of the house's own keys.

    Raises:
        KeysFaultsError: those keys cannot be used.
        DiskError: their file cannot be read.
    """
    gc.disable()
    from .counter_app import CounterApp, die_of
    from .ink import SIXTEEN, look_for
    from .start import Start

    if os.environ.get("NO_COLOR") == "":
        del os.environ["NO_COLOR"]
    look = look_for(os.environ, light)
    keyboard = _keyboard(keys)
    app = CounterApp(Start(jobs, rules, counter), look, ascii or look is SIXTEEN, keyboard)
    app.run()
    if app.ended_by is not None:
        die_of(app.ended_by)
    return app.return_code or 0


def _keyboard(keys: Path | None) -> Keyboard | None:
    """The house's own, where it has chosen any."""
    if keys is None:
        return None
    from .own_keys import own_keyboard

    return own_keyboard(keys)
