"""The few inks of the screens, for dark and light ground, for 16 colours and for none."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from rich.color import Color
from rich.style import Style


class Ink(Enum):
    """What a piece of text means; the look decides how that is painted."""

    PLAIN = "plain"
    HEAD = "head"
    """A heading, or a figure that must be found at a glance."""
    MINE = "mine"
    """In the van: chosen, follows, the used part of a bar."""
    DOUBT = "doubt"
    """Undecided, not known, cannot tell."""
    CARE = "care"
    """Blocked, broken, clash."""
    HERE = "here"
    """The cursor row, the current step."""
    TRIAL = "trial"
    """The banner of a what-if: nothing under it is kept in the job."""
    CARET = "caret"
    """The cell where typed text goes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How every ink is painted."""

    name: str
    styles: Mapping[Ink, Style]
    dark: bool
    own_colours: bool
    """True: the terminal's own palette is used (16 colours or none)."""

    @property
    def ground(self) -> str | None:
        """Colour behind everything, as ``#rrggbb``; None where the terminal's own is kept."""
        colour = self.styles[Ink.PLAIN].bgcolor
        return None if colour is None or colour.triplet is None else colour.triplet.hex

    @property
    def text(self) -> str | None:
        """Colour of plain text, as ``#rrggbb``; None where the terminal's own is kept."""
        colour = self.styles[Ink.PLAIN].color
        return None if colour is None or colour.triplet is None else colour.triplet.hex


def _style(ink: str, ground: str, bold: bool = False) -> Style:
    return Style(color=Color.parse(ink), bgcolor=Color.parse(ground), bold=bold)


def _full(name: str, *, ground: str, ink: str, mine: str, shade: str, care: str, trial: str, dark: bool) -> Look:
    return Look(
        name=name,
        dark=dark,
        own_colours=False,
        styles={
            Ink.PLAIN: _style(ink, ground),
            Ink.HEAD: _style(ink, ground, bold=True),
            Ink.MINE: _style(mine, ground),
            Ink.DOUBT: _style(ink, shade),
            Ink.CARE: _style(care, ground),
            Ink.HERE: _style(ground, mine, bold=True),
            Ink.TRIAL: _style(ink, trial, bold=True),
            Ink.CARET: _style(ground, ink),
        },
    )


DARK = _full(
    "dark", ground="#101418", ink="#e6e6e6", mine="#5fafff", shade="#3a3a3a", care="#ffaf5f", trial="#4a2a66", dark=True
)
LIGHT = _full(
    "light",
    ground="#e6e6e6",
    ink="#101418",
    mine="#002d7a",
    shade="#c8c8c8",
    care="#5c2e00",
    trial="#d3bce8",
    dark=False,
)
SIXTEEN = Look(
    name="sixteen",
    dark=True,
    own_colours=True,
    styles={
        Ink.PLAIN: Style.null(),
        Ink.HEAD: Style(bold=True),
        Ink.MINE: Style(color="bright_blue"),
        Ink.DOUBT: Style(color="black", bgcolor="white"),
        Ink.CARE: Style(color="yellow"),
        Ink.HERE: Style(reverse=True),
        Ink.TRIAL: Style(color="bright_white", bgcolor="magenta", bold=True),
        Ink.CARET: Style(underline=True, bold=True),
    },
)
COLOURLESS = Look(
    name="colourless",
    dark=True,
    own_colours=True,
    styles={
        Ink.PLAIN: Style.null(),
        Ink.HEAD: Style(bold=True),
        Ink.MINE: Style(bold=True),
        Ink.DOUBT: Style(underline=True),
        Ink.CARE: Style(bold=True),
        Ink.HERE: Style(reverse=True),
        Ink.TRIAL: Style(reverse=True, bold=True),
        Ink.CARET: Style(underline=True, bold=True),
    },
)

_FEW_COLOURS = ("linux", "screen", "xterm", "vt100", "vt220", "ansi")


def look_for(environment: Mapping[str, str], light: bool) -> Look:
    """The look this terminal can paint. An empty ``NO_COLOR`` counts as not set, as its convention says."""
    if environment.get("NO_COLOR"):
        return COLOURLESS
    term = environment.get("TERM", "")
    if term == "dumb":
        return COLOURLESS
    told = environment.get("COLORTERM", "").lower() in ("truecolor", "24bit")
    if not told and (term in _FEW_COLOURS or environment.get("TEXTUAL_COLOR_SYSTEM") == "standard"):
        return SIXTEEN
    return LIGHT if light else DARK


def turned(look: Look) -> Look:
    """The same look on the other ground; a look in the terminal's own colours stays."""
    return {DARK.name: LIGHT, LIGHT.name: DARK}.get(look.name, look)
