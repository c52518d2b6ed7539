"""A late switch of the base van or the roof: what stays, what does not fit, and what could take its place."""

from __future__ import annotations

from collections.abc import Callable

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Take, Together
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.report import Report
from specbuilder.model.rules import FitsVan, NeedsMet
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.ways import LetIn, RankBy, Switch, Unfit

from .apply import apply
from .asked_first import asked_first
from .difference import difference
from .evaluate import evaluate
from .explain import why_finding
from .way_goal import Waiving, make_quest
from .ways_out import search


def switch(catalogue: Catalogue, spec: Spec, take: Take, stop: Callable[[], bool] | None = None) -> Switch:
    """What taking an option in place of what stands in its group would do, with the smallest change that makes it fit.

    What nothing makes fit stays broken and is told. Raises KeyError for an option the catalogue does not know.
    """
    goal = LetIn(option=take.option, place=take.place)
    for waiving in (Waiving.BRIEF_FIRST, Waiving.BRIEF_LAST):
        *_, found = search(make_quest(catalogue, spec, goal, waiving), RankBy.PRICE, 1, stop)
        if found.ways or (stop is not None and stop()):
            break
    alone = apply(catalogue, spec, take).spec
    edits = asked_first(catalogue, spec, found.ways[0].edits, take.option) if found.ways else (take,)
    after_spec = apply(catalogue, spec, Together(edits=edits)).spec
    before, after, bare = evaluate(catalogue, spec), evaluate(catalogue, after_spec), evaluate(catalogue, alone)
    group = catalogue.options[take.option].group
    others = [c for c in spec.choices if c.option in catalogue.options and catalogue.options[c.option].group != group]
    return Switch(
        take=take,
        edits=edits,
        spec=after_spec,
        stays=tuple(c for c in others if after_spec.keeps(c)),
        unfit=tuple(
            Unfit(choice=c, cause=_cause(catalogue, alone, bare, c), instead=_instead(catalogue, spec, after_spec, c))
            for c in others
            if not after_spec.keeps(c)
        ),
        difference=difference(before, after),
        came=_rules(after, Verdict.BROKEN, before),
        went=_rules(before, Verdict.BROKEN, after),
        cannot_tell=_rules(after, Verdict.CANNOT_TELL, before),
        undecided=tuple(g for g in after.undecided if g not in before.undecided),
        complete=bool(found.ways) and found.complete,
    )


def _rules(report: Report, verdict: Verdict, other: Report) -> tuple[RuleId, ...]:
    """Rules at STOP or SIGN with this verdict in one report and not in the other."""
    known = {f.rule for f in other.findings if f.verdict is verdict}
    levels = (Level.STOP, Level.SIGN)
    return tuple(f.rule for f in report.findings if f.verdict is verdict and f.level in levels and f.rule not in known)


def _cause(catalogue: Catalogue, spec: Spec, report: Report, choice: Choice) -> Cause | None:
    """The broken rule the choice takes part in once the switch is made and nothing else is changed."""
    about = next((f for f in report.broken(Level.STOP, Level.SIGN) if choice.option in f.subjects), None)
    if about is None:
        return None
    atoms = [atom for term in catalogue.rules[about.rule].then.terms for atom in term.atoms]
    if any(isinstance(atom, FitsVan) for atom in atoms) and catalogue.options[choice.option].fits_vans:
        return Cause(kind=CauseKind.FITS, option=choice.option)
    if any(isinstance(atom, NeedsMet) for atom in atoms):
        return Cause(kind=CauseKind.NEEDS, option=choice.option)
    return why_finding(catalogue, spec, about)


def _instead(catalogue: Catalogue, before: Spec, after: Spec, choice: Choice) -> tuple[OptionId, ...]:
    """What came into the group of a choice that left it."""
    group = catalogue.options[choice.option].group
    old = {c.option for c in before.choices}
    moved = [c.option for c in after.chosen(choice.option)]
    came = (c.option for c in after.choices if c.option not in old and catalogue.options[c.option].group == group)
    return tuple(dict.fromkeys((*moved, *came)))
