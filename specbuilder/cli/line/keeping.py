"""Commands about the list of jobs, the rules, and the program itself."""

from __future__ import annotations

from argparse import ArgumentParser

from .command import JSON, THING, Command, Group, job_only


def _jobs(parser: ArgumentParser) -> None:
    parser.add_argument("words", metavar="WORDS", nargs="*", help="only those whose line has these letters")
    parser.add_argument("--prices", action="store_true", help="with the price of each, which takes a while")
    parser.add_argument("--json", action="store_true", help=JSON)


def _new(parser: ArgumentParser) -> None:
    parser.add_argument("things", metavar="THING[=VALUE]", nargs="*", help=THING)
    parser.add_argument("--from", metavar="FILE", dest="source", help="begin with what this spec says; a job is copied")


def _revisions(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--json", action="store_true", help=JSON)


def _today(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--move", action="store_true", help="go on under the rules and prices of today")


def _restore(parser: ArgumentParser) -> None:
    job_only(parser)
    parser.add_argument("--instead", metavar="COPY", help="journal or yesterday; the better one without it")


def _audit(parser: ArgumentParser) -> None:
    parser.add_argument("dir", metavar="DIR", nargs="?", help="a folder of rules; the program's own without it")
    parser.add_argument("--cases", metavar="DIR", help="a folder of cases: a rule without one is named")


def _sources(parser: ArgumentParser) -> None:
    parser.add_argument(
        "formula", metavar="LEDGER|FORMULA", nargs="?", help="a ledger, figure or formula; all without it"
    )


def _keys(parser: ArgumentParser) -> None:
    parser.add_argument("where", metavar="SCREEN", nargs="?", help="walk, brief, check, ...; all screens without it")


def _completion(parser: ArgumentParser) -> None:
    parser.add_argument("shell", metavar="SHELL", help="bash, zsh or fish")
    parser.add_argument("typed", metavar="TYPED", nargs="*", help="with words in place of SHELL: what was typed so far")


JOBS = Group(
    title="Jobs",
    commands=(
        Command(name="jobs", says="the list of jobs; with WORDS those that have them", example="hale", arguments=_jobs),
        Command(
            name="new",
            says="a new job with its first answers; prints its number",
            example='adults=2 "customer=The Saturday family"',
            arguments=_new,
        ),
        Command(
            name="variant", says="a copy of a job beside it; prints its number", example="0147", arguments=job_only
        ),
        Command(
            name="revisions", says="every revision of a job, and its variants", example="0147", arguments=_revisions
        ),
        Command(
            name="today",
            says="a job written under older rules, held against those of today; moved to them",
            example="0147 --move",
            arguments=_today,
            told="As it was: show JOB --as-it-was.",
        ),
        Command(
            name="restore",
            says="a job whose file cannot be read, opened from what is kept of it",
            example="0147",
            arguments=_restore,
            told="What cannot be read is set aside, and kept.",
        ),
    ),
)
PROGRAM = Group(
    title="The catalogue and the program",
    commands=(
        Command(
            name="audit", says="read the rules and say what is faulty or odd", example="my-rules", arguments=_audit
        ),
        Command(
            name="sources",
            says="where every sum and formula comes from, and how sure it is",
            example="price",
            arguments=_sources,
        ),
        Command(name="keys", says="the keys of the screens", example="walk", arguments=_keys),
        Command(
            name="completion",
            says="a script that completes commands, flags, jobs and options as you type",
            example="bash",
            arguments=_completion,
            told="bash: source <(specbuilder completion bash). zsh: source <(specbuilder completion zsh). "
            "fish: specbuilder completion fish | source. The program must be found as specbuilder on the search path.",
        ),
    ),
)
