"""Blocked and follows are proofs: checked against every completion of small random catalogues.

The oracle knows nothing of clauses: it writes every build down and reads the rules off the written page.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import chain, combinations, product

from hypothesis import given, settings
from hypothesis import strategies as st

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId
from specbuilder.model.kinds import OptionState, Pick, Place, RuleKind
from specbuilder.model.rules import AnyOf, Given
from specbuilder.model.spec import Choice
from specbuilder.rulegraph.clauses import tags_at
from specbuilder.rulegraph.rulebook import make_rulebook
from specbuilder.rulegraph.runs import run
from specbuilder.rulegraph.standing import zones_at
from specbuilder.rulegraph.states import forced, stands
from tests.worlds import catalogue, group, option, rule, tags

TAGS = ("a", "b", "c", "d")
SIDED = (*TAGS, "e@left", "e@right", "f@same")
Build = tuple[tuple[OptionId, Place | None], ...]


@st.composite
def worlds(draw: st.DrawFn) -> Catalogue:
    groups = tuple(group(f"g{i}", any_=draw(st.sampled_from([0, 0, 2]))) for i in range(draw(st.integers(1, 3))))
    options = []
    for g in groups:
        for i in range(draw(st.integers(1, 3))):
            places = draw(st.sampled_from(["", "", "left", "left right"]))
            gives = draw(st.lists(st.sampled_from(TAGS), max_size=2, unique=True))
            gives += draw(st.sampled_from([[], ["e@side"], ["f@side"]])) if places else []
            needs = draw(st.lists(st.sampled_from(["a", "b|c", "d"]), max_size=1))
            zones = draw(st.sampled_from(["", "", "z", "y@side" if places else "y"]))
            frees = draw(st.sampled_from(["", "", "", "z"]))
            options.append(
                option(
                    f"{g.id}-{i}",
                    g.id,
                    gives=" ".join(gives),
                    needs=tuple(needs),
                    zones=zones,
                    places=places,
                    frees=frees,
                )
            )
    terms = st.lists(st.sampled_from(SIDED), min_size=1, max_size=2, unique=True).map("+".join)
    expressions = st.lists(terms, min_size=1, max_size=2).map(lambda found: tags(*found))
    kinds = st.sampled_from([RuleKind.NEEDS_ANY, RuleKind.EXCLUDES])
    rules = tuple(
        rule(f"r{i}", draw(kinds), draw(expressions), draw(expressions)) for i in range(draw(st.integers(0, 4)))
    )
    return catalogue(groups, tuple(options), rules)


def builds(world: Catalogue) -> Iterator[Build]:
    """Every complete build, good or bad."""
    per_group = []
    for g in world.groups.values():
        places = [(o.id, p) for o in world.options_of(g.id) for p in (o.places or (None,))]
        if g.pick is Pick.ONE:
            per_group.append([(p,) for p in places])
        else:
            sets = chain.from_iterable(combinations(places, n) for n in range(len(places) + 1))
            per_group.append([s for s in sets if len({o for o, _ in s}) == len(s)])
    for parts in product(*per_group):
        yield tuple(chain.from_iterable(parts))


def good(world: Catalogue, build: Build) -> bool:
    given_ = {t for o, place in build for t in tags_at(world.options[o], place)}
    for o, _ in build:
        if any(not given_ & set(n.any_of) for n in world.options[o].needs):
            return False
    for r in world.rules.values():
        for side in Place:
            when, then = _holds(r.when, given_, side), _holds(r.then, given_, side)
            if (r.kind is RuleKind.EXCLUDES and when and then) or (r.kind is RuleKind.NEEDS_ANY and when and not then):
                return False
    claims = Counter(z for o, p in build for z in zones_at(world.options[o].zones, p.value if p else None))
    claims.subtract(Counter(z for o, _ in build for z in world.options[o].frees_zones))
    return all(n <= 1 for n in claims.values())


def _holds(expression: AnyOf, given_: set[str], side: Place) -> bool:
    names = [[_name(a, side) for a in term.atoms] for term in expression.terms]
    return any(all(n in given_ for n in term) for term in names)


def _name(atom: object, side: Place) -> str:
    assert isinstance(atom, Given)
    return atom.tag if atom.place is None else f"{atom.tag}@{side.value if atom.place == 'same' else atom.place}"


@settings(max_examples=400, deadline=None)
@given(worlds(), st.data())
def test_blocked_options_stand_in_no_completion_and_followers_in_all(world: Catalogue, data: st.DataObject) -> None:
    every = [b for b in builds(world) if good(world, b)]
    start = data.draw(st.sampled_from(every)) if every else ()
    taken = tuple(p for p in start if data.draw(st.booleans()))
    choices = tuple(Choice(option=o, place=p) for o, p in taken)
    run_ = run(make_rulebook(world), choices, ())
    standing = stands(run_, choices)
    completions = [set(b) for b in every if set(taken) <= set(b)]
    for placement in forced(run_):
        assert all(any(o == placement.option for o, _ in b) for b in completions), placement
    for o, stand in standing.items():
        if stand.state is OptionState.BLOCKED:
            me = world.options[o]
            one = world.groups[me.group].pick is Pick.ONE
            held = {p for p in taken if not (one and world.options[p[0]].group == me.group)}
            assert not any(held <= set(b) and any(x == o for x, _ in b) for b in every), (o, stand)


@settings(max_examples=200, deadline=None)
@given(worlds(), st.data())
def test_taking_every_choice_of_a_good_build_breaks_nothing(world: Catalogue, data: st.DataObject) -> None:
    every = [b for b in builds(world) if good(world, b)]
    if not every:
        return
    build = data.draw(st.sampled_from(every))
    run_ = run(make_rulebook(world), tuple(Choice(option=o, place=p) for o, p in build), ())
    assert run_.trail.conflicts == []


@settings(max_examples=200, deadline=None)
@given(worlds(), st.data(), st.randoms())
def test_the_order_of_choices_does_not_change_any_state(world: Catalogue, data: st.DataObject, random) -> None:  # type: ignore[no-untyped-def]
    every = list(builds(world))
    taken = [p for p in data.draw(st.sampled_from(every)) if data.draw(st.booleans())]
    book = make_rulebook(world)
    choices = tuple(Choice(option=o, place=p) for o, p in taken)
    mixed = list(choices)
    random.shuffle(mixed)
    first = {o: s.state for o, s in stands(run(book, choices, ()), choices).items()}
    second = {o: s.state for o, s in stands(run(book, tuple(mixed), ()), tuple(mixed)).items()}
    assert first == second
