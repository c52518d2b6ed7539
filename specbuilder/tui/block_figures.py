"""Figures five rows high, drawn of one sign: read from where the customer sits."""

from __future__ import annotations

ROWS = 5
SIGN = "#"
_GAP = " "
_SPACE = 2
_WIDE: dict[str, tuple[str, str, str, str, str]] = {
    "0": ("#####", "#   #", "#   #", "#   #", "#####"),
    "1": ("  #  ", " ##  ", "  #  ", "  #  ", " ### "),
    "2": ("#####", "    #", "#####", "#    ", "#####"),
    "3": ("#####", "    #", " ####", "    #", "#####"),
    "4": ("#   #", "#   #", "#####", "    #", "    #"),
    "5": ("#####", "#    ", "#####", "    #", "#####"),
    "6": ("#####", "#    ", "#####", "#   #", "#####"),
    "7": ("#####", "    #", "   # ", "  #  ", "  #  "),
    "8": ("#####", "#   #", "#####", "#   #", "#####"),
    "9": ("#####", "#   #", "#####", "    #", "#####"),
    ",": ("  ", "  ", "  ", " #", "# "),
    ".": (" ", " ", " ", " ", "#"),
    "-": ("   ", "   ", "###", "   ", "   "),
    "£": (" ### ", " #   ", "#### ", " #   ", "#####"),
    "€": (" ####", "###  ", " #   ", "###  ", " ####"),
    "$": (" ####", "# #  ", " ### ", "  # #", "#### "),
    "t": (" #  ", "### ", " #  ", " #  ", " ## "),
    "o": ("    ", " ## ", "#  #", "#  #", " ## "),
}
_NARROW: dict[str, tuple[str, str, str, str, str]] = {
    "0": ("###", "# #", "# #", "# #", "###"),
    "1": (" # ", "## ", " # ", " # ", "###"),
    "2": ("###", "  #", "###", "#  ", "###"),
    "3": ("###", "  #", "###", "  #", "###"),
    "4": ("# #", "# #", "###", "  #", "  #"),
    "5": ("###", "#  ", "###", "  #", "###"),
    "6": ("###", "#  ", "###", "# #", "###"),
    "7": ("###", "  #", "  #", "  #", "  #"),
    "8": ("###", "# #", "###", "# #", "###"),
    "9": ("###", "# #", "###", "  #", "###"),
    ",": (" ", " ", " ", "#", "#"),
    ".": (" ", " ", " ", " ", "#"),
    "-": ("  ", "  ", "##", "  ", "  "),
    "£": ("###", "#  ", "## ", "#  ", "###"),
    "€": ("###", "#  ", "## ", "#  ", "###"),
    "$": ("###", "#  ", "###", "  #", "###"),
    "t": ("#  ", "###", "#  ", "#  ", "###"),
    "o": ("   ", "   ", "###", "# #", "###"),
}
_FONTS = (_WIDE, _NARROW)


def drawn(text: str, cells: int) -> tuple[str, ...]:
    """The text in the widest figures that fit, else one part of it below the other; else empty.

    Empty as well where it holds a sign that has no figure: then it is told in plain letters.
    """
    ways = [_row(text, font) for font in _FONTS]
    ways.append(_row(text.replace(" to ", "-"), _NARROW))
    ways += [_below(text, font) for font in _FONTS]
    return next((way for way in ways if way and max(map(len, way)) <= cells), ())


def doubled(rows: tuple[str, ...]) -> tuple[str, ...]:
    """The same twice as wide and twice as high."""
    wide = ("".join(sign * 2 for sign in row) for row in rows)
    return tuple(row for row in wide for _ in range(2))


def _row(text: str, font: dict[str, tuple[str, str, str, str, str]]) -> tuple[str, ...]:
    if any(sign not in font and sign != " " for sign in text):
        return ()
    shapes = [(" " * _SPACE,) * ROWS if sign == " " else font[sign] for sign in text]
    return tuple(_GAP.join(shape[row] for shape in shapes).rstrip() for row in range(ROWS))


def _below(text: str, font: dict[str, tuple[str, str, str, str, str]]) -> tuple[str, ...]:
    """``£17,532 to £24,024`` as two rows of figures, with the word between them in plain letters."""
    least, joint, most = text.partition(" to ")
    rows = _row(least, font), _row(most, font)
    return (*rows[0], joint.strip(), *rows[1]) if joint and all(rows) else ()
