"""Every complete build of a small world, and what each of them breaks, read off the written page.

It knows nothing of clauses, variables or literals: a build is a list of pieces, and a rule is a sentence about it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cache, lru_cache
from itertools import chain, product
from typing import NamedTuple, TypeAlias

from specbuilder.calc.measuring.prepared import weighing
from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Catalogue, Group, Option
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import Compare, Level, Owner, Pick, Place, RuleKind
from specbuilder.model.rules import Always, AnyOf, Atom, BriefIs, Chosen, Given, Not, Rule, WithinBound, ZonesFree
from specbuilder.model.spec import Choice, Spec
from tests.calc import plain


class Piece(NamedTuple):
    """So many of an option at one of its places."""

    option: OptionId
    place: Place | None
    many: int = 1


Build: TypeAlias = tuple[Piece, ...]
Brief: TypeAlias = Mapping[str, Answer]
Expression: TypeAlias = AnyOf
NEEDS, FITS = "needs-are-met", "parts-fit-the-van"
"""The rules for which the options' own columns stand."""


def every_build(world: Catalogue) -> Iterator[Build]:
    """One answer of each pick-one group, at each of its places; of the others every count that the group takes."""
    for parts in product(*(_ways(world, group) for group in world.groups.values())):
        yield tuple(chain.from_iterable(parts))


def keeps(build: Build, choices: Iterable[Choice]) -> bool:
    """Whether a build holds these choices as they are."""
    return all(Piece(c.option, c.place, c.count) in build for c in choices)


def _ways(world: Catalogue, group: Group) -> list[Build]:
    seats = [(o, place) for o in world.options_of(group.id) for place in (o.places or (None,))]
    if group.pick is Pick.ONE:
        return [(Piece(o.id, place),) for o, place in seats] or [()]
    found: list[Build] = []
    for counts in product(*(range(o.max_count + 1) for o, _ in seats)):
        each = Counter[OptionId]()
        for (o, _), count in zip(seats, counts, strict=True):
            each[o.id] += count
        if sum(counts) <= group.max_choices and all(n <= world.options[o].max_count for o, n in each.items()):
            taken = zip(seats, counts, strict=True)
            found.append(tuple(Piece(o.id, place, count) for (o, place), count in taken if count))
    return found


class Judge:
    """What builds of one world break under one brief. ``theirs``: parts as the customer brings them."""

    def __init__(self, world: Catalogue, briefs: Iterable[Brief], theirs: Mapping[OptionId, Option]) -> None:
        self.world, self.briefs = world, tuple(briefs)
        self.options = {**world.options, **theirs}
        self._sides = {rule.id: _sides(rule) for rule in world.rules.values()}
        self.each = cache(self._each)

    def good(self, build: Build, without: frozenset[str] = frozenset(), level: Level = Level.STOP) -> bool:
        """Whether nothing of this level is broken, whatever is still unknown coming out at its kindest."""
        return any(broken <= without for broken in self.each(build, level))

    def can_finish(self, every: Iterable[Build], choices: Iterable[Choice]) -> bool:
        """Whether some good build holds these choices as they are."""
        held = tuple(choices)
        return any(keeps(build, held) and self.good(build) for build in every)

    def can_keep(self, build: Build, rule: str) -> bool:
        """Whether the build keeps this rule, whatever else it breaks."""
        return any(rule not in broken for broken in self.each(build, Level.STOP))

    def _each(self, build: Build, level: Level) -> tuple[frozenset[str], ...]:
        """The rules of one level that are broken, for each way the unknown may come out."""
        return tuple(dict.fromkeys(frozenset(self._under(build, brief, level)) for brief in self.briefs))

    def _under(self, build: Build, brief: Brief, level: Level) -> Iterator[str]:
        tags = {tag for piece in build for tag in _tags(self.options[piece.option], piece.place)}
        if level is Level.STOP:
            yield from self._structure(build, tags)
        ids = frozenset(piece.option for piece in build)
        for rule in self.world.rules.values():
            if rule.id in (NEEDS, FITS) or rule.level is not level:
                continue
            if any(self._breaks(rule, build, ids, tags, brief, side) for side in self._sides[rule.id]):
                yield rule.id

    def _structure(self, build: Build, tags: set[str]) -> Iterator[str]:
        standing = {piece.option for piece in build}
        for piece in build:
            option = self.options[piece.option]
            if any(tags.isdisjoint(need.any_of) for need in option.needs):
                yield NEEDS
            if option.fits_vans and standing.isdisjoint(option.fits_vans):
                yield FITS

    def _breaks(
        self, rule: Rule, build: Build, ids: frozenset[OptionId], tags: set[str], brief: Brief, side: Place
    ) -> bool:
        def holds(expression: Expression) -> bool:
            return any(all(self._true(atom, ids, tags, brief, side) for atom in t.atoms) for t in expression.terms)

        if not holds(rule.when):
            return False
        match rule.kind:
            case RuleKind.EXCLUDES:
                return holds(rule.then)
            case RuleKind.LIMIT:
                return not all(self._within(atom, build, brief) for t in rule.then.terms for atom in t.atoms)
            case _:
                return not holds(rule.then)

    def _true(self, atom: Atom, ids: frozenset[OptionId], tags: set[str], brief: Brief, side: Place) -> bool:
        match atom:
            case Not(inner):
                return not self._true(inner, ids, tags, brief, side)
            case Always():
                return True
            case Chosen(option):
                return option in ids
            case Given(tag, place):
                return (tag if place is None else f"{tag}@{side.value if place == 'same' else place}") in tags
            case BriefIs(key, compare, value):
                assert compare is Compare.EQUAL
                return brief[key] == value
            case _:
                raise AssertionError(atom)

    def _within(self, atom: Atom, build: Build, brief: Brief) -> bool:
        van = next(o.van for piece in build if (o := self.options[piece.option]).van is not None)
        pieces = [plain.Piece(self.options[p.option], p.many, p.place) for p in build]
        pieces = [piece for piece in pieces if piece.option.van is None]
        if isinstance(atom, ZonesFree):
            claims, claimed = Counter(van.zones_taken), set[str]()
            for option, count, place in pieces:
                for zone in option.zones:
                    where = zone.replace("@side", f"@{place}") if place else zone
                    claims[where] += count  # type: ignore[index]  # a zone is text
                    claimed.add(where)
                claims.subtract(Counter(option.frees_zones))
            return all(claims[zone] <= 1 for zone in atom.zones if zone in claimed)
        assert isinstance(atom, WithinBound)
        value, bound = plain.PLAIN[atom.ledger](plain.Build(van, pieces, brief))
        if value is None or bound is None:
            return True
        limit = bound * atom.factor - atom.minus
        return value <= limit + 1e-6 if atom.within else value >= limit - 1e-6


def _sides(rule: Rule) -> tuple[Place, ...]:
    """The places ``@same`` may stand for; a rule that does not speak of it is looked at once."""
    atoms = [atom for side in (rule.when, rule.then) for term in side.terms for atom in term.atoms]
    plain_atoms = [atom.atom if isinstance(atom, Not) else atom for atom in atoms]
    same = any(isinstance(atom, Given) and atom.place == "same" for atom in plain_atoms)
    return tuple(Place) if same else (Place.LEFT,)


def _tags(option: Option, place: Place | None) -> Iterator[str]:
    for tag in (*option.gives, *(option.van.gives if option.van else ())):
        bare, _, where = tag.partition("@")
        yield bare
        if where == "side" and place is not None:
            yield f"{bare}@{place.value}"
        elif where and where != "side":
            yield tag


def judge_of(world: Catalogue, spec: Spec) -> Judge:
    """Whoever judges builds that could come of a spec; the same for the same brief and the same parts brought along."""
    theirs = tuple(c for c in spec.choices if c.owner is Owner.CUSTOMER)
    return _judge_of(world, tuple(spec.answers.given.items()), theirs)


@lru_cache(maxsize=4)
def _judge_of(world: Catalogue, answers: tuple[tuple[BriefKey, Answer], ...], theirs: tuple[Choice, ...]) -> Judge:
    given = dict(answers)
    said = {key: given.get(key) for key in world.brief}
    open_ = {str(key): _ends(world, key) for key, answer in said.items() if answer is None}
    known = {str(key): answer for key, answer in said.items() if answer is not None}
    briefs = [{**known, **dict(zip(open_, ways, strict=True))} for ways in product(*open_.values())]
    return Judge(world, briefs, {c.option: _brought(world, c) for c in theirs})


def _ends(world: Catalogue, key: BriefKey) -> tuple[Answer, ...]:
    line = world.brief[key]
    if line.assumed is not None:
        return (line.assumed,)
    return line.values or (line.least, line.most)


def _brought(world: Catalogue, choice: Choice) -> Option:
    """A part as the customer brings it; nothing of its own while nobody has weighed it."""
    kg = choice.own_part.mass_kg if choice.own_part else None
    option = weighing(world.options[choice.option], kg or 0.0)
    return replace(option, mass_kg=kg or 0.0)
