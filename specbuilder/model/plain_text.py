"""Text that was typed by somebody: what may not stand in it, and how it is made fit for a file, a paper or a screen."""

from __future__ import annotations

import re
from types import MappingProxyType

_TOLD = MappingProxyType({"\n": "a line break", "\t": "a tab"})
_HIDDEN = re.compile(
    "[\x00-\x1f\x7f-\x9f\u00ad\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff\ud800-\udfff\ufff9-\ufffb"
    "\u180e\U0001d173-\U0001d17a\U000e0000-\U000e007f]"
)


def hidden_character(text: str, *, lines: bool = False) -> str | None:
    """What must not stand in a text, or None when all is well.

    Control characters could steer the terminal and direction marks could turn what is read; neither can be seen.
    With ``lines`` the text may break into several.
    """
    for found in _HIDDEN.finditer(text):
        if not (lines and found[0] == "\n"):
            told = _TOLD.get(found[0], f"the hidden character U+{ord(found[0]):04X}")
            return f"{told} at place {found.start() + 1}"
    return None


def one_line(text: str) -> str:
    """The text fit for a file: line ends and tabs become blanks, any other hidden character a sign that shows it.

    Hidden characters are refused where text is put in. One that comes all the same must not keep a job from being
    saved, nor make a file that cannot be read.
    """
    return _shown(text.replace("\r\n", " ").replace("\n", " ").replace("\t", " "), lines=False)


def lines(text: str) -> str:
    """The text fit for a file as with ``one_line``, but it may have several lines."""
    return _shown(text.replace("\r\n", "\n").replace("\t", " "), lines=True)


def _shown(text: str, *, lines: bool) -> str:
    if hidden_character(text, lines=lines) is None:
        return text
    return "".join("\N{REPLACEMENT CHARACTER}" if hidden_character(c, lines=lines) else c for c in text)
