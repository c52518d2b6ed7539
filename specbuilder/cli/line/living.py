"""Commands of what happens to a job as a whole."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import FILE, JSON, Command, Group, file_and_json, job_only


def _quote(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--by", metavar="NAME", help="who quotes; the counter without it")


def _order(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--customer", metavar="NAME", help="who signs for the customer")
    parser.add_argument("--firm", metavar="NAME", help="who signs for the firm")
    parser.add_argument("--place", metavar="PLACE", help="where it is signed: premises, home or distance")


def _change(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--because", metavar="WORDS", help="the reason, printed on the change order")
    parser.add_argument("--drop", action="store_true", help="give up a revision that was never quoted nor signed")


def _record(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("kind", metavar="KIND", help="deposit, supply, passed, reading, promised, call or built")
    parser.add_argument("words", metavar="WORDS", nargs="*", help="see above")
    parser.add_argument("--by", metavar="NAME", required=True, help="who says so or signs it")
    parser.add_argument("--due", metavar="DATE", help="YYYY-MM-DD: when a part is due, or a call")


def _build(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--json", action="store_true", help=JSON)


def _paper(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument(
        "sheets", metavar="PAPER", nargs="*", help="customer, change-order, workshop, handover, colleague"
    )
    parser.add_argument("--all", action="store_true", help="all papers there are, called for or not")
    parser.add_argument("--to", metavar="DIR", help="the folder they are written to; without it they are read out")
    parser.add_argument("--as", metavar="FORMATS", dest="formats", help="pdf,text without it; spoken, markdown as well")


def _export(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("--to", metavar="DIR", required=True, help="the folder it is written to")


LIVING = Group(
    title="From quote to collection day",
    commands=(
        Command(
            name="quote",
            says="a quote goes out: the revision is kept as it is, with its papers",
            example="0147",
            arguments=_quote,
        ),
        Command(
            name="order",
            says="both sign: the order, or the change order to one",
            example='0147 --customer "M. Hale" --firm "the counter" --place premises',
            arguments=_order,
            told="Exit code: 0 signed, 1 something stands in the way; it is named, and nothing is changed.",
        ),
        Command(
            name="change",
            says="begin the next revision of what was quoted or signed; give one up",
            example='0147 --because "another hob"',
            arguments=_change,
            told="The revision before it stays as it is, and is what the workshop builds until this one is signed.",
        ),
        Command(
            name="record",
            says="write down what happened: money, parts, hold points, readings, promises",
            example="0147 passed H3 --by foreman",
            arguments=_record,
            told="KIND and WORDS: deposit POUNDS | supply OPTION ordered|due|in store|received | passed H3 [REMARK] | "
            "reading H9 2,710 kg | promised WORDS | call WORDS --due DATE | built CUSTOMER. What is recorded stays.",
        ),
        Command(
            name="build",
            says="how far the build is: deposit, hold points, parts, promises, next call",
            example="0147",
            arguments=_build,
        ),
        Command(
            name="paper",
            says="where the job stands and its papers; one read out, or written with --to",
            example="0147 workshop --to papers",
            arguments=_paper,
            told="With --to and no PAPER those are written that the state of the job calls for.",
        ),
        Command(name="export", says="write the spec for the workshop", example="0147 --to workshop", arguments=_export),
        Command(
            name="verify",
            says="is this spec whole, current and unaltered?",
            example="0147-r1.toml",
            arguments=file_and_json,
            told="Exit code: 0 it is, 1 it is not and why; 2 it cannot be read at all.",
        ),
    ),
)
