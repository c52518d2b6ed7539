"""Where the equations come from: what each formula says of itself, and what rests on it."""

from __future__ import annotations

from dataclasses import dataclass

from .ids import LedgerId


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaText:
    """One formula as it explains itself, part by part, each in its own words."""

    module: str
    name: str
    parameters: tuple[str, ...]
    says: str
    """One sentence in plain words."""
    result: str
    """The unit of the result, with what stands beside it; empty where the result is no number."""
    equation: str
    valid: str
    source: str
    confidence: str
    """``verified``, ``known`` or ``estimate``, with what belongs to it."""
    check: str
    """What goes before it, or must be compared with the bought standard or the part's own papers; empty: nothing."""
    used_by: tuple[LedgerId, ...] = ()
    """Ledgers and figures that rest on it."""
    schedule: bool = False
    """The circuit schedule rests on it."""
    used_in: tuple[str, ...] = ()
    """Formulas that call it."""
    kept: str = ""
    """Why it stands here although nothing rests on it yet."""

    @property
    def against_standard(self) -> bool:
        """True where its own words ask for a comparison with the text of a standard or a law."""
        words = f"{self.confidence}; {self.check}"
        return "check" in words
