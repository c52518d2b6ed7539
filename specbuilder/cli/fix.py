"""``fix``: ways out of what is broken, or to let a blocked option in; and taking one of them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings, Goal, LetIn, RankBy, WaysOut
from specbuilder.session.evaluate import evaluate
from specbuilder.session.ways_out import ways_out
from specbuilder.wording.findings import finding_line, strangers_words
from specbuilder.wording.plain import ended
from specbuilder.wording.spoken import option_words
from specbuilder.wording.ways import no_such_way, nothing_changed_yet, way_spoken, ways_closing

from . import asjson_ways
from .answers import Answer, verdict_code
from .change import Target
from .goals import asked_findings, goal_of
from .output import Exit, StopError
from .proposing import Offer, refuse, take_offer
from .values import whole

MOST = 3
"""So many ways are looked for."""
_REASONS = "why gives the reasons."


def fix(catalogue: Catalogue, report: Report, text: str | None, rank_by: RankBy, *, json: bool) -> Answer:
    """The ways out, and how far was looked.

    Raises:
        StopError: if nothing or more than one thing is called so.
    """
    goal = goal_of(catalogue, report, text)
    code = verdict_code(report)
    if isinstance(goal, str):
        lines = (*strangers_words(report), goal)
        return Answer((asjson_ways.nothing_json(rank_by, goal),) if json else lines, code)
    ways = _found(catalogue, report.spec, goal, rank_by)
    if json:
        return Answer((asjson_ways.ways_json(catalogue, report.spec, ways, _closing(ways)),), code)
    return Answer(tuple(_lines(catalogue, report, ways)), code)


def fix_taking(target: Target, text: str | None, rank_by: RankBy, number: str, *, json: bool) -> Answer:
    """Takes the way of that number, as one step of undo.

    Raises:
        StopError: there is no such way, or it was refused; nothing was changed.
        SpecFaultsError: the file cannot be used.
        DiskError: a file could not be read or written.
    """

    def choose(catalogue: Catalogue, spec: Spec) -> Offer:
        wanted = _number(target.file, number)
        ways = _ways_for(catalogue, spec, target.file, text, rank_by, wanted)
        way = ways.ways[wanted - 1]
        told = asjson_ways.way_json(catalogue, spec, ways.goal, way, wanted) if json else ""
        return Offer(edits=way.edits, json=told)

    return take_offer(target, choose)


def rank_of(text: str) -> RankBy:
    """What was typed behind ``--rank``.

    Raises:
        StopError: it is none of them.
    """
    for rank_by in RankBy:
        if text == rank_by.value:
            return rank_by
    raise StopError(Exit.UNUSABLE, f'--rank: "{text}" is nothing to go by: use price, mass, hours or weeks.')


def _number(file: str, text: str) -> int:
    """The number of a way.

    Raises:
        StopError: it is no number.
    """
    try:
        return whole(text)
    except ValueError:
        raise refuse(file, f'"{text[:40]}" is no number of a way: --take 1 takes the first that fix lists') from None


def _ways_for(catalogue: Catalogue, spec: Spec, file: str, text: str | None, rank_by: RankBy, wanted: int) -> WaysOut:
    """The ways among which the wanted one is.

    Raises:
        StopError: there is no such way.
    """
    goal = goal_of(catalogue, evaluate(catalogue, spec), text)
    if isinstance(goal, str):
        raise refuse(file, f"there is no way {wanted}. {goal}")
    ways = _found(catalogue, spec, goal, rank_by)
    if not 0 < wanted <= len(ways.ways):
        raise refuse(file, no_such_way(wanted, ways))
    return ways


def _found(catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy) -> WaysOut:
    """All that the search finds before it ends."""
    *_, ways = ways_out(catalogue, spec, goal, rank_by, MOST)
    return ways


def _lines(catalogue: Catalogue, report: Report, ways: WaysOut) -> Iterator[str]:
    yield from strangers_words(report)
    match ways.goal:
        case ClearFindings():
            for finding in asked_findings(report, ways.goal):
                yield f"{finding_line(catalogue, report, finding)} [{finding.rule}]"
        case LetIn(option=option):
            yield ended(option_words(catalogue, report, option))
        case _:
            assert_never(ways.goal)
    for number, way in enumerate(ways.ways, 1):
        title, *facts = way_spoken(catalogue, report.spec, ways.goal, way)
        yield f"Way {number}: {title}"
        yield from (f"  {fact}" for fact in facts)
    yield _closing(ways)
    if ways.ways:
        yield f"{nothing_changed_yet()} To take one, add --take and its number."


def _closing(ways: WaysOut) -> str:
    return ways_closing(ways, MOST, _REASONS)
