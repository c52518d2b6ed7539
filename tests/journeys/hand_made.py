"""Searches made by hand: the screens are tried with answers whose every part is known, when a test wants them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, Take, Together
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.kinds import Level, Step
from specbuilder.model.report import Report
from specbuilder.model.spec import Spec
from specbuilder.model.ways import (
    Aim,
    Difference,
    Goal,
    LetIn,
    Proposal,
    RankBy,
    Switch,
    Unfit,
    WayOut,
    WaysOut,
)
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.session.usual import usual_takes
from specbuilder.tui.errands import Errand, Stop
from specbuilder.tui.searches import Searches

LOUD = (Level.STOP, Level.SIGN)


class Held:
    """Keeps errands until a test lets them run."""

    def __init__(self) -> None:
        self.errands: list[Errand[object]] = []

    def __call__(self, errand: Errand[object]) -> None:
        self.errands.append(errand)

    def let_run(self) -> None:
        """Run all that wait, to their end."""
        waiting, self.errands = self.errands, []
        for errand in waiting:
            errand.run(lambda piece: piece())


def at_once(errand: Errand[object]) -> None:
    """Run an errand where it is sent."""
    errand.run(lambda piece: piece())


def way(catalogue: Catalogue, spec: Spec, *edits: Edit) -> WayOut:
    """These edits as a way out."""
    before, outcome = evaluate(catalogue, spec), apply(catalogue, spec, Together(edits=edits))
    after = evaluate(catalogue, outcome.spec)
    was, now = ({f.rule for f in report.broken(*LOUD)} for report in (before, after))
    return WayOut(
        edits=edits,
        spec=outcome.spec,
        difference=difference(before, after),
        clears=tuple(was - now),
        breaks=tuple(now - was),
        brought=outcome.brought,
        left=outcome.left,
    )


def difference(before: Report, after: Report) -> Difference:
    """Price as it is; the rest is not what these tests are about."""
    return Difference(gross_pence=after.price.gross.least - before.price.gross.least, mass_kg=4.0, hours=1.5, weeks=0.0)


def ways_of(*takes: Sequence[Edit]) -> Searches:
    """Ways out that are always these, found one after the other."""

    def search(catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
        found: tuple[WayOut, ...] = ()
        for edits in takes:
            if stop():
                return
            found = (*found, way(catalogue, spec, *edits))
            yield WaysOut(goal=goal, rank_by=rank_by, ways=found, within=1)
        yield WaysOut(goal=goal, rank_by=rank_by, ways=found, within=3, finished=True, complete=True)

    return Searches(ways_out=search)


def no_ways(catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
    """None at all."""
    yield WaysOut(goal=goal, rank_by=rank_by, within=3, finished=True, complete=True)


def let_in(catalogue: Catalogue, spec: Spec, goal: Goal, rank_by: RankBy, stop: Stop) -> Iterator[WaysOut]:
    """Taking what is asked for, and nothing else; nothing for what is broken."""
    found = (way(catalogue, spec, Take(option=goal.option)),) if isinstance(goal, LetIn) else ()
    yield WaysOut(goal=goal, rank_by=rank_by, ways=found, within=3, finished=True, complete=True)


def switch(catalogue: Catalogue, spec: Spec, take: Take, stop: Stop) -> Switch:
    """The option, and for each choice that is made for other vans one of its group that fits or nothing."""
    outcome = apply(catalogue, spec, take)
    edits: list[Edit] = [take]
    unfit: list[Unfit] = []
    for choice in outcome.spec.choices:
        option = catalogue.options[choice.option]
        if option.fits_vans and take.option not in option.fits_vans and not option.is_none:
            instead = next(
                (o for o in catalogue.options_of(option.group) if take.option in o.fits_vans and not o.is_none), None
            )
            edits += [Take(option=instead.id)] if instead else []
            cause = Cause(kind=CauseKind.FITS, option=choice.option)
            unfit.append(Unfit(choice=choice, cause=cause, instead=(instead.id,) if instead else ()))
    after = apply(catalogue, spec, Together(edits=tuple(edits))).spec
    reports = evaluate(catalogue, spec), evaluate(catalogue, after)
    was, now = ({f.rule for f in report.broken(*LOUD)} for report in reports)
    return Switch(
        take=take,
        edits=tuple(edits),
        spec=after,
        stays=tuple(c for c in spec.choices if after.has(c.option)),
        unfit=tuple(unfit),
        difference=difference(*reports),
        came=tuple(now - was),
        went=tuple(was - now),
        cannot_tell=(),
        undecided=tuple(g for g in reports[1].undecided if g not in reports[0].undecided),
        complete=True,
    )


def finish(catalogue: Catalogue, spec: Spec, aim: Aim, stop: Stop) -> Proposal | None:
    """The house usual of every step."""
    takes = tuple(take for step in Step for take in usual_takes(catalogue, spec, step))
    if not takes:
        return None
    after = apply(catalogue, spec, Together(edits=takes)).spec
    report = evaluate(catalogue, after)
    return Proposal(
        aim=aim,
        edits=takes,
        spec=after,
        takes=tuple(c for c in after.choices if not spec.has(c.option)),
        difference=difference(evaluate(catalogue, spec), report),
        proven=aim is Aim.USUAL,
        still_broken=tuple(f.rule for f in report.broken(*LOUD)),
        unanswered=report.undecided,
    )


ALL = Searches(ways_out=let_in, finish=finish, switch=switch)
