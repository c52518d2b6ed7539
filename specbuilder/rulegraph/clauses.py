"""The catalogue's STOP rules and structure as clauses over yes-or-no variables.

A *clause* is a set of literals of which at least one must be true. A literal is an int: ``2 * v`` says variable ``v``
is true, ``2 * v + 1`` that it is false; ``lit ^ 1`` is the opposite. Variables are placements (an option at one place),
options with several places, capabilities, and atoms of the brief. Each clause keeps what put it there, so that a chain
of reasons can be read off.

What is left out is left out soundly (it only makes propagation weaker): ledgers and zones (checked apart), SIGN and
NOTE rules (they never block), and how many of a pick-any group may be taken.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

from specbuilder.model.catalogue import Catalogue, Group, Option
from specbuilder.model.findings import CauseKind
from specbuilder.model.ids import GroupId, OptionId, RuleId, Tag
from specbuilder.model.kinds import Level, Pick, Place, RuleKind
from specbuilder.model.rules import SAME, AllOf, Always, Atom, BriefIs, Chosen, Given, Not, Rule

from .graph import SIDE_MARK


@dataclass(frozen=True, slots=True, kw_only=True)
class Why:
    """What put a clause there."""

    kind: CauseKind
    rule: RuleId | None = None
    option: OptionId | None = None
    group: GroupId | None = None
    tag: Tag | None = None


@dataclass(frozen=True, slots=True)
class Placement:
    """An option at one of its places."""

    option: OptionId
    place: Place | None


@dataclass(slots=True)
class Clauses:
    """Filled while compiling, read-only afterwards."""

    names: list[Placement | OptionId | Tag | BriefIs] = field(default_factory=list)
    """What each variable stands for."""
    placement: dict[Placement, int] = field(default_factory=dict)
    option: dict[OptionId, int] = field(default_factory=dict)
    """The variable *this option, wherever it sits*."""
    tag: dict[str, int] = field(default_factory=dict)
    atom: dict[BriefIs, int] = field(default_factory=dict)
    lits: list[tuple[int, ...]] = field(default_factory=list)
    why: list[Why] = field(default_factory=list)
    one_of: dict[GroupId, tuple[int, ...]] = field(default_factory=dict)
    """Placement variables of each pick-one group: at most one of them is true."""
    group_of: dict[int, GroupId] = field(default_factory=dict)
    """Pick-one group of a placement variable."""
    watching: list[list[int]] = field(default_factory=list)
    """For each literal, the clauses it stands in."""
    units: list[int] = field(default_factory=list)
    """Clauses of one literal."""

    def new(self, name: Placement | OptionId | Tag | BriefIs) -> int:
        """A fresh variable."""
        self.names.append(name)
        self.watching += ([], [])
        return len(self.names) - 1

    def add(self, lits: Sequence[int], why: Why) -> None:
        """Add a clause; a clause that is always true is dropped."""
        unique = tuple(dict.fromkeys(lits))
        if any(lit ^ 1 in unique for lit in unique):
            return
        index = len(self.lits)
        self.lits.append(unique)
        self.why.append(why)
        if len(unique) == 1:
            self.units.append(index)
        for lit in unique:
            self.watching[lit].append(index)


def yes(variable: int) -> int:
    """The literal *this variable is true*."""
    return 2 * variable


def no(variable: int) -> int:
    """The literal *this variable is false*."""
    return 2 * variable + 1


def compile_clauses(catalogue: Catalogue, levels: tuple[Level, ...] = (Level.STOP,)) -> Clauses:
    """All clauses of a catalogue: its structure, and its rules of these levels."""
    clauses = Clauses()
    for option in catalogue.options.values():
        _add_variables(clauses, option)
    givers = _givers(clauses, catalogue)
    for group in catalogue.groups.values():
        _add_group(clauses, catalogue, group)
    for tag, placements in givers.items():
        _add_capability(clauses, tag, placements)
    for option in catalogue.options.values():
        _add_needs(clauses, option)
    for rule in catalogue.rules.values():
        if rule.level in levels:
            _add_rule(clauses, rule)
    return clauses


def placements_of(option: Option) -> tuple[Placement, ...]:
    """The option at each of its places; one without a place when it has no side."""
    return tuple(Placement(option.id, place) for place in option.places) or (Placement(option.id, None),)


def tags_at(option: Option, place: Place | None) -> Iterator[str]:
    """What the option gives when it sits there."""
    for tag in option.gives:
        bare = tag.split("@", 1)[0]
        yield bare
        if tag.endswith(SIDE_MARK):
            if place is not None:
                yield f"{bare}@{place.value}"
        elif "@" in tag:
            yield tag


def _add_variables(clauses: Clauses, option: Option) -> None:
    placed = [clauses.new(p) for p in placements_of(option)]
    clauses.placement.update(zip(placements_of(option), placed, strict=True))
    if len(placed) == 1:
        clauses.option[option.id] = placed[0]
        return
    whole = clauses.option[option.id] = clauses.new(option.id)
    why = Why(kind=CauseKind.GIVES, option=option.id)
    for variable in placed:
        clauses.add((no(variable), yes(whole)), why)
    clauses.add((no(whole), *map(yes, placed)), why)


def _givers(clauses: Clauses, catalogue: Catalogue) -> dict[str, list[int]]:
    givers: dict[str, list[int]] = {}
    for option in catalogue.options.values():
        for placement in placements_of(option):
            for tag in dict.fromkeys(tags_at(option, placement.place)):
                givers.setdefault(tag, []).append(clauses.placement[placement])
    wanted = {t for o in catalogue.options.values() for need in o.needs for t in need.any_of}
    for tag in sorted(wanted - givers.keys()):
        givers[tag] = []
    for tag in givers:
        clauses.tag[tag] = clauses.new(Tag(tag))
    return givers


def _add_group(clauses: Clauses, catalogue: Catalogue, group: Group) -> None:
    if group.pick is not Pick.ONE:
        return
    members = tuple(clauses.placement[p] for o in catalogue.options_of(group.id) for p in placements_of(o))
    clauses.one_of[group.id] = members
    clauses.group_of.update(dict.fromkeys(members, group.id))
    if members:
        clauses.add(tuple(map(yes, members)), Why(kind=CauseKind.ONE_ANSWER, group=group.id))


def _add_capability(clauses: Clauses, tag: str, givers: list[int]) -> None:
    variable = clauses.tag[tag]
    for giver in givers:
        name = clauses.names[giver]
        option = name.option if isinstance(name, Placement) else None
        clauses.add((no(giver), yes(variable)), Why(kind=CauseKind.GIVES, option=option, tag=Tag(tag)))
    clauses.add((no(variable), *map(yes, givers)), Why(kind=CauseKind.NOTHING_GIVES, tag=Tag(tag)))
    groups = {clauses.group_of.get(giver) for giver in givers}
    if len(groups) == 1 and (group := next(iter(groups))) is not None:
        # All that give it answer one question, so an answer that does not give it rules it out.
        for other in clauses.one_of[group]:
            if other not in givers:
                clauses.add((no(variable), no(other)), Why(kind=CauseKind.ONE_ANSWER, group=group, tag=Tag(tag)))


def _add_needs(clauses: Clauses, option: Option) -> None:
    me = clauses.option[option.id]
    for need in option.needs:
        clauses.add(
            (no(me), *(yes(clauses.tag[t]) for t in need.any_of)),
            Why(kind=CauseKind.NEEDS, option=option.id),
        )
    if option.fits_vans:
        listed = tuple(yes(clauses.option[van]) for van in option.fits_vans if van in clauses.option)
        clauses.add((no(me), *listed), Why(kind=CauseKind.FITS, option=option.id))


def _add_rule(clauses: Clauses, rule: Rule) -> None:
    why = Why(kind=CauseKind.RULE, rule=rule.id)
    for side in _sides(rule):
        when = [_literals(clauses, term, side) for term in rule.when.terms]
        then = [_literals(clauses, term, side) for term in rule.then.terms]
        if rule.kind is RuleKind.EXCLUDES:
            for a, b in product(when, then):
                if a is not None and b is not None:
                    clauses.add(tuple(lit ^ 1 for lit in (*a, *b)), why)
        elif rule.kind in (RuleKind.NEEDS_ANY, RuleKind.ADVICE) and all(term is not None for term in then):
            for condition in when:
                if condition is None:
                    continue
                for picked in product(*(term for term in then if term is not None)):
                    clauses.add((*(lit ^ 1 for lit in condition), *picked), why)


def _sides(rule: Rule) -> tuple[Place | None, ...]:
    terms = (*rule.when.terms, *rule.then.terms)
    same = any(isinstance(_plain(a), Given) and _plain(a).place == SAME for t in terms for a in t.atoms)  # type: ignore[union-attr]
    return tuple(Place) if same else (None,)


def _plain(atom: Atom) -> Atom:
    return atom.atom if isinstance(atom, Not) else atom


def _literals(clauses: Clauses, term: AllOf, side: Place | None) -> list[int] | None:
    """The and-list as literals; None when an atom of it cannot be a variable (ledgers and the like)."""
    lits: list[int] = []
    for atom in term.atoms:
        sign = 1 if isinstance(atom, Not) else 0
        plain = _plain(atom)
        if isinstance(plain, Always):
            continue
        variable = _variable(clauses, plain, side)
        if variable is None:
            return None
        lits.append(2 * variable + sign)
    return lits


def condition_literals(clauses: Clauses, term: AllOf) -> list[int] | None:
    """The and-list of a condition as literals; None when an atom of it cannot be one (ledgers and the like).

    Call it while the clauses may still grow: a capability or an answer nobody spoke of yet gets its variable.
    """
    return _literals(clauses, term, None)


def conditions(clauses: Clauses, rule: Rule) -> list[list[int] | None]:
    """Every and-list of a rule's condition as literals, at each place that ``@same`` may stand for; None as above."""
    return [_literals(clauses, term, side) for side in _sides(rule) for term in rule.when.terms]


def _variable(clauses: Clauses, atom: Atom, side: Place | None) -> int | None:
    match atom:
        case Chosen(option):
            return clauses.option[option]
        case Given(tag, place):
            name = tag if place is None else f"{tag}@{side.value if place == SAME and side else place}"
            if name not in clauses.tag:  # nobody gives it at this place
                clauses.tag[name] = clauses.new(Tag(name))
                clauses.add((no(clauses.tag[name]),), Why(kind=CauseKind.NOTHING_GIVES, tag=Tag(name)))
            return clauses.tag[name]
        case BriefIs():
            if atom not in clauses.atom:
                clauses.atom[atom] = clauses.new(atom)
            return clauses.atom[atom]
        case _:
            return None
