"""Commands that read a spec: nothing of it is changed."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import FILE, JSON, Command, Group, file_and_json
from .comparing import COMPARE


def _show(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("what", metavar="STEP|GROUP", nargs="?", help="brief, van, roof, kitchen, ... or a group")
    parser.add_argument("--as-it-was", action="store_true", help="under the rules and prices it was written with")
    parser.add_argument("--json", action="store_true", help=JSON)


def _details(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("option", metavar="OPTION", help="an option by its id or name")
    parser.add_argument("--json", action="store_true", help=JSON)


def _find(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("words", metavar="WORDS", nargs="+", help="a few letters of its name")
    parser.add_argument("--json", action="store_true", help=JSON)


def _why(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("thing", metavar="THING", help="an option, a group, a ledger, or a rule in brackets from check")
    parser.add_argument("--json", action="store_true", help="with the chain of reasons as a tree")


def _ledgers(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("ledger", metavar="LEDGER", nargs="?", help="one of them, by its id or name")
    parser.add_argument("--json", action="store_true", help=JSON)


def _customer(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("--prices", action="store_true", help="with the price of each part")
    parser.add_argument("--json", action="store_true", help=JSON)


def _brief(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)


READING = Group(
    title="Read a job or a spec file",
    commands=(
        Command(
            name="show",
            says="the spec line by line; with STEP or GROUP every option there",
            example="0147 kitchen",
            arguments=_show,
        ),
        Command(
            name="brief",
            says="the eleven questions and what was answered; customer and note",
            example="0147",
            arguments=_brief,
        ),
        Command(
            name="check",
            says="what is broken, what cannot be told yet, what is open",
            example="0147",
            arguments=file_and_json,
            told="Exit code: 0 nothing broken and nothing unknown at STOP, 1 something broken at STOP, "
            "3 nothing broken but something at STOP cannot be told yet, 2 the file cannot be used.",
        ),
        Command(
            name="open",
            says="everything that is open: who finds it out, by when, what it stops",
            example="0147",
            arguments=file_and_json,
            told="What stands in brackets is asked with ask, taken with set, and explained by why.",
        ),
        Command(
            name="find", says="find options, questions, sums and rules by a few letters", example="0147 galley",
            arguments=_find,
        ),
        Command(
            name="details",
            says="one option: places, count, whose part it is, note, hours, papers, cables",
            example='0147 "bench two"',
            arguments=_details,
        ),
        Command(
            name="why",
            says="why an option is as it is, what a finding or a ledger rests on",
            example='0147 "bench three"',
            arguments=_why,
        ),
        Command(
            name="ledgers",
            says="every sum with its bound, worst first; with LEDGER its entries, formula and source",
            example="0147 price",
            arguments=_ledgers,
        ),
        Command(
            name="circuits",
            says="every cable run with its section, fuse and drop",
            example="0147",
            arguments=file_and_json,
            told="Exit code: 0 every circuit has cable and fuse, 1 something must be settled before a cable is cut.",
        ),
        COMPARE,
        Command(
            name="customer",
            says="what the customer reads, when the screen is turned round",
            example="0147 --prices",
            arguments=_customer,
        ),
    ),
)  # fmt: skip
