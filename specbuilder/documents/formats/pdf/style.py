"""Measures of a page, in points of 1/72 inch, and how black what is on it."""

from __future__ import annotations

from typing import TypeAlias

Shade: TypeAlias = tuple[float, float, float]
"""Red, green and blue from 0 to 1. Nothing is told by shade alone: papers come from black-and-white printers too."""

INK: Shade = (0.0, 0.0, 0.0)
SOFT: Shade = (0.27, 0.27, 0.27)
"""Small print and names of figures."""
ACCENT: Shade = (0.09, 0.23, 0.30)
"""Headings; almost black."""
RULE: Shade = (0.62, 0.62, 0.62)

MM = 72 / 25.4
PAGE_WIDTH = 210 * MM
PAGE_HEIGHT = 297 * MM
LEFT = 20 * MM
"""Wide enough for the holes of a ring binder."""
RIGHT = 16 * MM
TOP = 12 * MM
BOTTOM = 11 * MM
WIDTH = PAGE_WIDTH - LEFT - RIGHT

HAIR = 0.35
THIN = 0.6
FIRM = 1.0
HEAVY = 1.8

BODY = (9.2, 12.6)
"""Size of the letters and distance of the lines."""
SMALL = (7.8, 10.4)
TABLE_SIZES = ((8.6, 11.0), (8.0, 10.2), (7.2, 9.2), (6.5, 8.4))
"""A table takes the first in which its words need not be broken."""
TITLE = (21.0, 25.0)
HEADINGS = {1: (15.0, 18.5), 2: (11.5, 14.5), 3: (9.6, 12.6)}
HEADING_GAPS = {1: 21.0, 2: 14.0, 3: 11.5}
BIG_SIZES = (26.0, 22.0, 18.0, 15.0)
BANNER = (15.0, 18.5)
RUNNING = (8.6, 11.2)
RUNNING_JOB = (10.5, 13.4)
FOOT = (7.0, 9.0)
DIAGRAM_TITLE = (7.6, 9.2)
DIAGRAM_NOTE = (6.8, 8.4)

GAP = 6.0
"""Above a block."""
COLUMN_GAP = 9.0
WRITING_HEIGHT = 21.0
"""Room to write by hand above a line."""
BOX_SIDE = 8.6
"""Of a box to tick."""
