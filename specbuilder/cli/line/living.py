"""The command line of what happens to a job as a whole: quote, order, change, record, paper, verify."""

from __future__ import annotations

from argparse import ArgumentParser
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from argparse import _SubParsersAction

_P = TypeVar("_P", bound=ArgumentParser)

_JOB = "the number of a job"
_FILE = "a spec file, the number of a job, or NUMBER@REVISION"


def life(commands: _SubParsersAction[_P]) -> None:
    """Adds these commands."""
    quote = commands.add_parser("quote", help="a quote goes out: the revision is kept as it is, with its papers")
    quote.add_argument("file", metavar="JOB", help=_JOB)
    quote.add_argument("--by", metavar="NAME", help="who quotes; the counter without it")
    order = commands.add_parser("order", help="both sign: the order, or the change order to one")
    order.description = "Exit code: 0 signed, 1 something stands in the way; it is named, and nothing is changed."
    order.add_argument("file", metavar="JOB", help=_JOB)
    order.add_argument("--customer", metavar="NAME", help="who signs for the customer")
    order.add_argument("--firm", metavar="NAME", help="who signs for the firm")
    order.add_argument("--place", metavar="PLACE", help="where it is signed: premises, home or distance")
    accept = commands.add_parser("accept", help="accept findings in writing, in the words used")
    accept.add_argument("file", metavar="FILE", help=_FILE)
    accept.add_argument(
        "findings", metavar="RULE", nargs="+", help="a finding at SIGN or a NOTE, in brackets from check"
    )
    accept.add_argument("--by", metavar="NAME", help="who gives their word")
    accept.add_argument("--back", action="store_true", help="take the acceptance back")
    ask = commands.add_parser("ask", help="put an open question: who finds it out, by when, what it stops")
    ask.add_argument("file", metavar="FILE", help=_FILE)
    ask.add_argument("words", metavar="WORDS", nargs="+", help="the question")
    ask.add_argument("--who", metavar="NAME", help="who finds it out")
    ask.add_argument("--due", metavar="DATE", help="by when: YYYY-MM-DD")
    ask.add_argument("--stops", metavar="STEP", help="what it stops: signing, or a step of the build (B4)")
    ask.add_argument("--answered", action="store_true", help="close it")
    for command in (accept, ask):
        command.add_argument("--to", metavar="OUT", help="write there and leave FILE as it is")
    change = commands.add_parser("change", help="begin the next revision of what was quoted or signed")
    change.description = (
        "The revision before it stays as it is, and is what the workshop builds until this one is signed."
    )
    change.add_argument("file", metavar="JOB", help=_JOB)
    change.add_argument("--because", metavar="WORDS", help="the reason, printed on the change order")
    change.add_argument("--drop", action="store_true", help="give up a revision that was never quoted nor signed")
    record = commands.add_parser(
        "record", help="write down what happened: money, parts, hold points, readings, promises"
    )
    record.description = (
        "KIND and WORDS: deposit POUNDS | supply OPTION ordered|due|in store|received | passed H3 [REMARK] | "
        "reading H9 2,710 kg | promised WORDS | call WORDS --due DATE | built CUSTOMER. What is recorded stays."
    )
    record.add_argument("file", metavar="JOB", help=_JOB)
    record.add_argument("kind", metavar="KIND", help="deposit, supply, passed, reading, promised, call or built")
    record.add_argument("words", metavar="WORDS", nargs="*", help="see above")
    record.add_argument("--by", metavar="NAME", required=True, help="who says so or signs it")
    record.add_argument("--due", metavar="DATE", help="YYYY-MM-DD: when a part is due, or a call")
    paper = commands.add_parser("paper", help="write the papers that the state of the job calls for")
    paper.add_argument("file", metavar="FILE", help=_FILE)
    paper.add_argument(
        "sheets", metavar="PAPER", nargs="*", help="customer, change-order, workshop, handover, colleague"
    )
    paper.add_argument("--all", action="store_true", help="all papers there are, called for or not")
    paper.add_argument("--to", metavar="DIR", required=True, help="the folder they are written to")
    paper.add_argument("--as", metavar="FORMATS", dest="formats", help="pdf,text without it; markdown as well")
    verify = commands.add_parser("verify", help="is this spec whole, current and unaltered?")
    verify.description = "Exit code: 0 it is, 1 it is not and why; 2 it cannot be read at all."
    verify.add_argument("file", metavar="FILE", help=_FILE)
