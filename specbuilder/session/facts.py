"""From answers to facts: given, derived, closed, assumed, or unknown."""

from __future__ import annotations

from specbuilder.model.brief import Answer, Answers, BriefLine
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.facts import Facts, Weighed
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import AnswerType, Truth
from specbuilder.model.own_parts import blanks_of, is_theirs
from specbuilder.model.record import Undone
from specbuilder.model.rules import AnyOf, BriefIs, Not
from specbuilder.model.span import Span
from specbuilder.model.spec import Spec
from specbuilder.rulegraph.truth import brief_truth, denied

from .same import as_before, remembered

CHILD_AGE_LIMIT_YEARS = 12
"""Below this age a child is counted as under 135 cm until its height is known (ESTIMATE; UK child-restraint rule)."""


DERIVED: frozenset[BriefKey] = frozenset(map(BriefKey, ("van_data", "unknowns", "own_parts")))
"""Lines of the job's state that the rest of the spec answers; a line command may still answer them outright."""


def facts_of(catalogue: Catalogue, spec: Spec) -> Facts:
    """What holds for this spec. Lines are settled in catalogue order, so a line may open on an earlier one.

    The same object as long as nothing of it has changed.
    """
    derived = tuple(_derived(catalogue, spec).items())
    weighed, undone = as_before(_weighed(catalogue, spec)), as_before(spec.undone)
    return _facts(catalogue, spec.answers, as_before(derived), weighed, undone)


@remembered(32)
def _facts(
    catalogue: Catalogue,
    given: Answers,
    derived: tuple[tuple[BriefKey, Answer], ...],
    weighed: Weighed | None,
    undone: tuple[Undone, ...],
) -> Facts:
    values: dict[BriefKey, Answer] = {}
    assumed: set[BriefKey] = set()
    ranges = {k: Span(line.least, line.most) for k, line in catalogue.brief.items() if _is_number(line)}
    facts = Facts(values=values, assumed=frozenset(), ranges=ranges)
    by_themselves = dict(derived)
    for key, line in catalogue.brief.items():
        if (answer := given.get(key)) is not None:
            values[key] = answer
        elif key in by_themselves:
            values[key] = by_themselves[key]
            if line.question is not None:
                assumed.add(key)
        elif line.closed is not None and asked(line, facts) is Truth.NO:
            values[key] = line.closed
        elif line.assumed is not None and _any(line.assumed_unless, facts) is not Truth.YES:
            values[key] = line.assumed
            assumed.add(key)
    return Facts(values=values, assumed=frozenset(assumed), ranges=ranges, weighed=weighed, undone=undone)


def _weighed(catalogue: Catalogue, spec: Spec) -> Weighed | None:
    front_kg, rear_kg = spec.van_data.weighed_front_kg, spec.van_data.weighed_rear_kg
    van = next((c.option for c in spec.choices if (o := catalogue.options.get(c.option)) and o.van is not None), None)
    if van is None or front_kg is None or rear_kg is None:
        return None
    return Weighed(van, front_kg, rear_kg)


def asked(line: BriefLine, facts: Facts) -> Truth:
    """Whether the line is asked now."""
    return _any(line.asked_when, facts)


def open_lines(catalogue: Catalogue, spec: Spec) -> tuple[BriefLine, ...]:
    """The lines of the brief that are asked now, in catalogue order (the job state's are not asked)."""
    facts = facts_of(catalogue, spec)
    return tuple(
        line for line in catalogue.brief.values() if line.question is not None and asked(line, facts) is Truth.YES
    )


def _any(expression: AnyOf, facts: Facts) -> Truth:
    return max((_all(term.atoms, facts) for term in expression.terms), default=Truth.NO)


def _all(atoms: tuple[object, ...], facts: Facts) -> Truth:
    return min((_truth(atom, facts) for atom in atoms), default=Truth.YES)


def _truth(atom: object, facts: Facts) -> Truth:
    """Only answers may open a line; ``always`` does too."""
    match atom:
        case BriefIs():
            return brief_truth(atom, facts)
        case Not(inner):
            return denied(_truth(inner, facts))
        case _:
            return Truth.YES


def _is_number(line: BriefLine) -> bool:
    return line.type in (AnswerType.WHOLE, AnswerType.DECIMAL)


def _derived(catalogue: Catalogue, spec: Spec) -> dict[BriefKey, Answer]:
    """Answers that other parts of the spec already hold; an answer that was given goes before them."""
    derived: dict[str, Answer] = {
        "van_data": "complete" if spec.van_data.complete else "missing",
        "unknowns": "owned" if all(q.owned for q in spec.questions) else "open",
        "own_parts": _own_parts(catalogue, spec),
    }
    ages, children = spec.answers.get(BriefKey("child_ages")), spec.answers.get(BriefKey("children"))
    if isinstance(ages, tuple) and children in (None, len(ages)):  # a child whose age nobody said may need a seat
        derived["children_under_135cm"] = sum(int(age) < CHILD_AGE_LIMIT_YEARS for age in ages)
    return {BriefKey(k): v for k, v in derived.items() if BriefKey(k) in catalogue.brief}


def _own_parts(catalogue: Catalogue, spec: Spec) -> str:
    """What has left the catalogue has no sheet that could be read."""
    theirs = [(c, option) for c in spec.choices if is_theirs(option := catalogue.options.get(c.option), c)]
    if not theirs:
        return "none"
    whole = all(option is not None and not blanks_of(option, choice.own_part) for choice, option in theirs)
    return "complete" if whole else "missing"
