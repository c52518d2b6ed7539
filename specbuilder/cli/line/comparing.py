"""The command line of ``compare``."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import JSON, Command

_FILE = "a spec file, the number of a job, or NUMBER@REVISION"


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
)
