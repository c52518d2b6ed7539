"""The command line of ``compare``."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import JSON, Command

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


def _arguments(parser: ArgumentParser) -> None:
    parser.add_argument("a", metavar="A", help=_FILE)
    parser.add_argument("b", metavar="B", nargs="?", help="the same; with --today it may be left out and is A")
    parser.add_argument(
        "--today", action="store_true", help="hold B against the rules of today: gone, renamed, dearer, newly broken"
    )
    parser.add_argument("--json", action="store_true", help=JSON)


COMPARE = Command(
    name="compare",
    says="what differs from A to B: choices, price, figures, holes, circuits",
    example="0147@1 0147",
    arguments=_arguments,
    told="A and B are revisions, variants or files. What has left the house is held against the rules it was agreed "
    "on, a draft against those of today. Exit code: 0 compared, whether anything differs or not; 2 A or B cannot be "
    "used.",
    shape=_SHAPE,
)
