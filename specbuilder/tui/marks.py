"""The alphabet of the screens: full shape = in the van, hollow = may come, dot = free. A word stands beside each."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.kinds import OptionState, Verdict

BOX = "─━═│┃┌┐└┘┏┓┗┛├▌"
"""Signs that the papers draw with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """One set of marks; every mark is one terminal cell wide."""

    chosen: str
    """Also the used part of a bar."""
    open: str
    """Also the part of a bar that may still come."""
    follows: str
    blocked: str
    cursor: str
    doubt: str = "?"
    broken: str = "!"
    holds: str = "="
    mind: str = "*"
    """Something to mind that needs no settling: of a circuit, or a note of a ledger."""
    free: str = "."
    past: str = ">"
    novalue: str = "-"
    line: str = "-"
    side: str = "|"
    thumb: str = ":"
    """Where in a long list the lines shown are."""

    box: str = ""
    """What stands for the lines of a paper, where they cannot be shown: one sign for each of ``BOX``."""

    def drawn(self, text: str) -> str:
        """A line of a paper as it can be shown."""
        return text.translate(dict(zip(map(ord, BOX), self.box, strict=True))) if self.box else text

    def of_state(self, state: OptionState) -> str:
        """The mark of an option."""
        return {
            OptionState.CHOSEN: self.chosen,
            OptionState.OPEN: self.open,
            OptionState.FOLLOWS: self.follows,
            OptionState.BLOCKED: self.blocked,
        }[state]

    def of_verdict(self, verdict: Verdict) -> str:
        """The mark of a finding or a reading."""
        return {
            Verdict.HOLDS: self.holds,
            Verdict.BROKEN: self.broken,
            Verdict.CANNOT_TELL: self.doubt,
        }[verdict]


SHAPES = Marks(chosen="▰", open="▱", follows="↳", blocked="✗", cursor="►", thumb="▮")
PLAIN = Marks(chosen="#", open="~", follows="&", blocked="x", cursor=">", box="-==||+++++++++|")
"""For ``--ascii``, 16-colour consoles and old fonts."""
