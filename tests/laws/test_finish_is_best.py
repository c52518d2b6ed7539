"""A proposal that says it is proven is the best of all ways to answer what is open, written down one by one."""

from __future__ import annotations

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from specbuilder.model.brief import Answers
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import Level, Pick
from specbuilder.model.spec import Spec
from specbuilder.model.ways import Aim, RankBy
from specbuilder.session.difference import choices_cost
from specbuilder.session.evaluate import evaluate
from specbuilder.session.finish import finish
from tests.laws.every_build import Build, Judge, Piece, judge_of, keeps
from tests.laws.ledger_worlds import QUICK, choice_of, few_builds, ledger_worlds, told

SAID = Answers({BriefKey("adults"): 2, BriefKey("children"): 0, BriefKey("wet"): "yes"})
RANKS = {Aim.PRICE: RankBy.PRICE, Aim.MASS: RankBy.MASS}


def worth(world: Catalogue, judge: Judge, spec: Spec, build: Build, aim: Aim) -> tuple[int, int, int]:
    """What goes before: less to be signed, fewer extras nobody asked for, then the aim."""
    (signs,) = judge.each(build, Level.SIGN)
    standing = {c.option for c in spec.choices}
    extras = [
        p for p in build if world.groups[world.options[p.option].group].pick is Pick.ANY and p.option not in standing
    ]
    return len(signs), sum(p.many for p in extras), choices_cost(world, tuple(map(choice_of, build)), RANKS[aim])


def is_build(world: Catalogue, build: Build) -> bool:
    many = Counter(world.options[piece.option].group for piece in build for _ in range(piece.many))
    return all(number <= world.groups[group].max_choices for group, number in many.items())


@QUICK
@given(ledger_worlds((Level.STOP, Level.STOP, Level.SIGN)), st.data())
def test_what_is_proven_is_the_best(world: Catalogue, data: st.DataObject) -> None:
    every = few_builds(world)
    judge = judge_of(world, Spec(answers=SAID))
    good = [build for build in every if judge.good(build)]
    if not good:
        return
    taken = [piece for piece in data.draw(st.sampled_from(good)) if data.draw(st.booleans())]
    spec = Spec(answers=SAID, choices=tuple(map(choice_of, taken)))
    if not evaluate(world, spec).undecided:
        return
    for aim in RANKS:
        ways = [b for b in good if keeps(b, spec.choices) and _only_adds(world, spec, b)]
        proposal = finish(world, spec, aim)
        if not ways:  # nothing answers it without a STOP: what is broken already may stay so, and nothing more
            broken = {f.rule for f in evaluate(world, spec).broken(Level.STOP)}
            after = set() if proposal is None else {f.rule for f in evaluate(world, proposal.spec).broken(Level.STOP)}
            assert after <= broken, told(world, spec)
            continue
        assert proposal is not None, told(world, spec)
        assert proposal.proven
        assert set(spec.choices) <= set(proposal.spec.choices)
        assert proposal.unanswered == ()
        build = tuple(sorted((Piece(c.option, c.place, c.count) for c in proposal.spec.choices), key=str))
        assert judge.good(build), (build, told(world, spec))
        if is_build(world, build):
            best = min(ways, key=lambda b: worth(world, judge, spec, b, aim))
            found = worth(world, judge, spec, build, aim)
            assert found <= worth(world, judge, spec, best, aim), (aim, build, best, told(world, spec))


def _only_adds(world: Catalogue, spec: Spec, build: Build) -> bool:
    """Nothing that is found on the van comes in, and of what stands there is no more than before."""
    standing = {c.option for c in spec.choices}
    new = [p for p in build if p.option not in standing]
    extras = [world.options[p.option] for p in new if world.groups[world.options[p.option].group].pick is Pick.ANY]
    return not any(o.found for o in extras) and len(build) - len(new) == len(spec.choices)
