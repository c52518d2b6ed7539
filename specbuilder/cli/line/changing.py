"""Commands that change a spec, each as one step of undo."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import FILE, JSON, OUT, THING, TRY, Command, Group, job_only


def _set(parser: ArgumentParser) -> None:
    _things(parser, "THING[=VALUE]")


def _drop(parser: ArgumentParser) -> None:
    _things(parser, "THING")


def _things(parser: ArgumentParser, metavar: str) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("things", metavar=metavar, nargs="+", help=THING)
    parser.add_argument("--try", action="store_true", dest="trying", help=TRY)
    parser.add_argument("--to", metavar="OUT", help=OUT)


def _usual(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("step", metavar="STEP", help="van, roof, seating, kitchen, heating, power or finish")
    parser.add_argument("--take", action="store_true", help="take all of it, as one step of undo")
    _proposes(parser)


def _fix(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument(
        "thing", metavar="THING", nargs="?", help="an option, a ledger, or a rule in brackets from check"
    )
    parser.add_argument(
        "--rank", metavar="BY", default="price", help="price, mass, hours or weeks: behind fewest changes"
    )
    parser.add_argument("--take", metavar="N", help="take way N, as one step of undo")
    _proposes(parser)


def _finish(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("--by", metavar="AIM", default="usual", help="price, mass, weeks or usual; usual without it")
    parser.add_argument("--take", action="store_true", help="take all of it, as one step of undo")
    _proposes(parser)


def _switch(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("option", metavar="OPTION", help="a base van, a roof, or another answer in place of one")
    parser.add_argument("--take", action="store_true", help="take it with what is proposed, as one step of undo")
    _proposes(parser)


def _proposes(parser: ArgumentParser) -> None:
    """What everything takes that proposes: nothing is changed unless it is told to take what was found."""
    parser.add_argument("--to", metavar="OUT", help="write what is taken there and leave FILE as it is")
    parser.add_argument("--json", action="store_true", help=JSON)


def _merge(parser: ArgumentParser) -> None:
    parser.add_argument("source", metavar="FROM", help=FILE)
    parser.add_argument("file", metavar="FILE", help="what it is brought into: a job, a variant or a file")
    parser.add_argument(
        "things", metavar="THING", nargs="+", help="an option, a group, a line of the brief or a field of the real van"
    )
    parser.add_argument("--try", action="store_true", dest="trying", help=TRY)
    parser.add_argument("--to", metavar="OUT", help=OUT)


def _accept(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument(
        "findings", metavar="RULE", nargs="+", help="a finding at SIGN or a NOTE, in brackets from check"
    )
    parser.add_argument("--by", metavar="NAME", help="who gives their word")
    parser.add_argument("--back", action="store_true", help="take the acceptance back")
    parser.add_argument("--to", metavar="OUT", help=OUT)


def _ask(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help=FILE)
    parser.add_argument("words", metavar="WORDS", nargs="+", help="the question, or what stands in brackets in open")
    parser.add_argument("--who", metavar="NAME", help="who finds it out")
    parser.add_argument("--due", metavar="DATE", help="by when: YYYY-MM-DD")
    parser.add_argument("--stops", metavar="STOPS", help="what it stops: signing, or a step of the build (B4)")
    parser.add_argument("--answered", action="store_true", help="close it; its first words are enough")
    parser.add_argument("--to", metavar="OUT", help=OUT)


CHANGING = Group(
    title="Change a job or a spec file",
    commands=(
        Command(
            name="set",
            says="take options, answer the brief, fill in van, customer, notes and sheets",
            example='0147 adults=2 "side galley@left"',
            arguments=_set,
            told="All of it is done, or nothing. Numbers take a decimal comma or a point; 1,500 is fifteen hundred.",
        ),
        Command(
            name="drop",
            says="leave out, one fewer (OPTION*1), or make not known again",
            example='0147 "usb pair*1"',
            arguments=_drop,
        ),
        Command(
            name="usual",
            says="the house usual of a step, shown with its sum",
            example="0147 kitchen --take",
            arguments=_usual,
            told="Without --take and --to nothing is changed.",
        ),
        Command(
            name="fix",
            says="ways out of what is broken; with THING of that, or to let an option in",
            example='0147 "bench three" --take 2',
            arguments=_fix,
            told="Without --take nothing is changed, and the exit code is that of check. With --take it is 0 when the "
            "way was taken and 1 when there is no such way.",
        ),
        Command(
            name="finish",
            says="answers for all that is undecided, shown with their sum",
            example="0147 --by price",
            arguments=_finish,
            told="Without --take and --to nothing is changed. Exit code: 0 every question has an answer, 1 nothing "
            "fits some.",
        ),
        Command(
            name="switch",
            says="what another base van or roof would do to the rest",
            example='0147 "fenwain long, tailgate"',
            arguments=_switch,
            told="Without --take and --to nothing is changed.",
        ),
        Command(
            name="merge",
            says="bring lines that differ from one variant, revision or file into another",
            example="0147b 0147 galley",
            arguments=_merge,
            told="compare names the lines. What follows from them comes and goes with them.",
        ),
        Command(
            name="accept",
            says="accept findings in writing, in the words used",
            example='0147 RULE --by "M. Hale"',
            arguments=_accept,
        ),
        Command(
            name="ask",
            says="put an open question: who finds it out, by when, what it stops; close it",
            example='0147 "Colour of the cloth" --who customer --due 2031-04-28',
            arguments=_ask,
        ),
        Command(
            name="undo",
            says="take the last change of a job back; says which",
            example="0147",
            arguments=job_only,
            told="What was quoted, signed or recorded stays. Exit code: 0 taken back, 1 nothing was left.",
        ),
        Command(
            name="redo",
            says="put back what undo took",
            example="0147",
            arguments=job_only,
            told="Exit code: 0 put back, 1 nothing was left.",
        ),
    ),
)
