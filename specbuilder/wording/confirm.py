"""What is said before a key that cannot be taken back."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.spec import Spec

from .dates import written_day
from .key_names import pressed


@dataclass(frozen=True, slots=True, kw_only=True)
class Confirmed:
    """What would be done."""

    title: str
    sentences: tuple[str, ...]
    line: str
    """What Enter does."""


def give_up(spec: Spec) -> Confirmed:
    """Before a draft is laid aside."""
    before = spec.revision - 1
    what = "The change order" if spec.changes_signed else f"Revision {spec.revision}"
    return Confirmed(
        title=f"GIVE UP {'THE CHANGE' if spec.changes_signed else f'revision {spec.revision}'}",
        sentences=(
            f"{what} is laid aside with all that was said in it; its files are kept under another name.",
            f"Revision {before} holds again, as it left the house.",
        ),
        line=f"Enter gives it up; Esc goes on with revision {spec.revision}",
    )


def quote_again(spec: Spec) -> Confirmed:
    """Before a quote that has run out is quoted anew."""
    return Confirmed(
        title="QUOTE AGAIN",
        sentences=(
            f"Revision {spec.revision} was quoted until {written_day(spec.valid_until)}. It stays as it was.",
            f"Revision {spec.revision + 1} begins as a draft with the prices of today; "
            f"{pressed('sign')} quotes it then.",
        ),
        line=f"Enter begins revision {spec.revision + 1}; Esc leaves it",
    )
