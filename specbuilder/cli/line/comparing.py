"""The command line of ``compare``."""

from __future__ import annotations

from argparse import ArgumentParser
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from argparse import _SubParsersAction

_P = TypeVar("_P", bound=ArgumentParser)

_FILE = "a spec file, the number of a job, or NUMBER@REVISION"
_SHAPE = (
    "With --json: a and b say what was held against which catalogue, with price and verdict; difference is b less a, "
    "rest what of it no line does alone. changes has a line for each choice that differs: kind, mark, group, before "
    "and after (nothing where none stands; option, name, place, count, whose, own_part, note), price_gross_pence, "
    "mass_kg, hours, weeks of the line alone. answers, van_data, figures (value and bound) and pieces (holes and "
    "circuits) have before and after as well: a hole surface, x_mm, y_mm, z_mm, width_mm, height_mm, diameter_mm, "
    "corner_radius_mm, cut_from, count and measured_on_the_van; a circuit mark, from, to, load_a, run_one_way_m, "
    "area_mm2, side_by_side, insulation_c, fuse_a, fuse_kind and fuse_place. findings_came and findings_went are rules "
    "broken in b or in a alone, doubts_came and doubts_went those that cannot be told there: id, level, accepted, "
    "subjects, because. same counts the choices that stand alike, empty says "
    "whether nothing differs. words has the lines that are printed without --json."
)


def comparing(commands: _SubParsersAction[_P]) -> None:
    """Adds the command."""
    compare = commands.add_parser("compare", help="what differs from A to B: choices, price, figures, holes, circuits")
    compare.description = (
        "A and B are revisions, variants or files. What has left the house is held against the rules it was agreed on, "
        "a draft against those of today. Exit code: 0 compared, whether anything differs or not; 2 A or B cannot be "
        "used."
    )
    compare.epilog = _SHAPE
    compare.add_argument("a", metavar="A", help=_FILE)
    compare.add_argument("b", metavar="B", nargs="?", help="the same; with --today it may be left out and is A")
    compare.add_argument(
        "--today", action="store_true", help="hold B against the rules of today: gone, renamed, dearer, newly broken"
    )
    compare.add_argument("--json", action="store_true", help="every figure, for other programs")
