"""Small random worlds in which rules, places, counts and ledgers pull at the same choices."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from itertools import islice

from hypothesis import HealthCheck, Phase, assume, settings
from hypothesis import strategies as st

from specbuilder.calc.limits.doubts import doubts_of
from specbuilder.model.brief import Answers, BriefLine
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, LedgerId, Zone
from specbuilder.model.kinds import AnswerType, Compare, Level, Owner, RoofPart, RuleKind
from specbuilder.model.parts import Heat, Space, Water
from specbuilder.model.plausible import has_body
from specbuilder.model.rules import (
    ALWAYS,
    AllOf,
    AnyOf,
    Atom,
    BriefIs,
    Chosen,
    FitsVan,
    Given,
    NeedsMet,
    Not,
    Rule,
    WithinBound,
    ZonesFree,
)
from specbuilder.model.spec import Choice, OwnPart, Spec
from tests import worlds
from tests.calc.scene import FENWAIN, HUSHWAIN, base_van, ledger
from tests.laws.every_build import FITS, NEEDS, Build, Piece, every_build

TAGS = ("a", "b", "c", "d")
SIDED = (*TAGS, "e@left", "e@right", "f@same")
ZONES = tuple(map(Zone, ("y", "z", "y@left", "y@right")))
LEDGERS = ("total-mass", "belts", "roof-load-closed", "gas-bottles")
PARTS = ("", "", "mass", "mass tank", "tank", "cap", "belts", "rack", "kit", "gas", "plate")
WET = BriefIs(BriefKey("wet"), Compare.EQUAL, "yes")
LINES = (
    BriefLine(key=BriefKey("adults"), ask="", type=AnswerType.WHOLE, question=1, least=1, most=6),
    BriefLine(key=BriefKey("children"), ask="", type=AnswerType.WHOLE, question=1, least=0, most=4, assumed=0),
    BriefLine(key=BriefKey("child_mass_kg"), ask="", type=AnswerType.WHOLE, question=1, least=10, most=60, assumed=30),
    BriefLine(key=BriefKey("extra_load_kg"), ask="", type=AnswerType.WHOLE, question=1, least=0, most=400, assumed=0),
    BriefLine(key=BriefKey("wet"), ask="", type=AnswerType.ONE_OF, question=1, values=("yes", "no")),
)
MOST_BUILDS = 400
SLOW = settings(
    max_examples=200,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),  # a failing world is told on one page as it is
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
QUICK = settings(SLOW, max_examples=60)


@st.composite
def ledger_worlds(draw: st.DrawFn, levels: tuple[Level, ...] = (Level.STOP,)) -> Catalogue:
    """One or two base vans, up to four groups, a handful of rules, the tables of four ledgers and of the places."""
    spare = draw(st.sampled_from([60, 120, 400]))
    vans = [base_van("short", replace(FENWAIN, m_max_kg=2_050 + spare, roof_load_kg=40, zones_taken=(Zone("z"),)))]
    if draw(st.booleans()):
        vans.append(base_van("hush", replace(HUSHWAIN, m_max_kg=2_490 + spare, roof_load_kg=25, zones_taken=())))
    groups = [worlds.group(BASE_VAN_GROUP)]
    options: list[Option] = []
    for number in range(draw(st.integers(1, 4))):
        most = draw(st.sampled_from([0, 0, 1, 2, 3]))
        groups.append(worlds.group(f"g{number}", any_=most))
        few = draw(st.integers(1, 3 if most == 0 else 2))
        options += [draw(_options(f"g{number}-{i}", f"g{number}", most, vans)) for i in range(few)]
    rules = [*_house_rules(), *draw(st.lists(_limits(levels), max_size=4, unique_by=lambda r: r.id))]
    rules += [draw(_plain(f"r{i}", options, levels)) for i in range(draw(st.integers(0, 4)))]
    ledgers = tuple(map(ledger, (*LEDGERS, "zone-use")))
    made = worlds.catalogue(tuple(groups), (*vans, *options), tuple(rules), ledgers, LINES)
    assert not doubts_of(made), "a figure that cannot be right silences what the laws look at"
    return made


@st.composite
def _options(draw: st.DrawFn, id_: str, group: str, most: int, vans: list[Option]) -> Option:
    traits = draw(st.sampled_from(PARTS))
    places = draw(st.sampled_from(["", "", "left", "left right"]))
    gives = draw(st.lists(st.sampled_from(TAGS), max_size=2, unique=True))
    gives += draw(st.sampled_from([[], ["e@side"], ["f@side"]])) if places else []
    zones = draw(st.sampled_from(["", "", "", "z", "y@side" if places else "y"]))
    frees = draw(st.sampled_from(["", "", "z"])) if not places and not zones else ""
    made = worlds.option(
        id_,
        group,
        gives=" ".join(gives),
        needs=tuple(draw(st.lists(st.sampled_from(["a", "b|c", "d"]), max_size=1))),
        zones=zones,
        places=places,
        frees=frees,
        vans=draw(st.sampled_from(["", "", "", vans[-1].id])),
        max_count=draw(st.integers(1, most)) if most else 1,
        price_net_pence=draw(st.integers(0, 9)) * 1_000,
        safety=draw(st.sampled_from([False, False, False, True])),
        found=draw(st.sampled_from([False] * 9 + [True])),
    )
    return _weighed(draw, made, traits)


def _weighed(draw: st.DrawFn, option: Option, traits: str) -> Option:
    """Some of what ledgers add up."""
    space, water, heat, mass_kg = Space(), Water(), Heat(), 0.0
    if "mass" in traits:
        mass_kg = draw(st.sampled_from([-20, 12.5, 30, 55, 80]))
    if "tank" in traits:
        filled_l = draw(st.sampled_from([20, 45]))
        water = Water(fresh_full_l=filled_l, fresh_travel_l=filled_l)
    if "cap" in traits:
        water = Water(fresh_travel_cap_l=draw(st.sampled_from([10, 30])))
    if "belts" in traits:
        space = Space(belts=draw(st.integers(1, 2)))
    if "rack" in traits:
        mass_kg = draw(st.sampled_from([9, 16, 22]))
        space = Space(roof_part=RoofPart.FIXED, roof_mass_kg=mass_kg)
    if "kit" in traits:
        space = Space(roof_allow_closed_kg=draw(st.sampled_from([15, 60])))
    if "gas" in traits:
        heat = Heat(gas_bottles=draw(st.integers(1, 2)))
    if "plate" in traits:
        mass_kg, space = 5, Space(plate_raise_kg=draw(st.sampled_from([40, 90])))
    made = replace(option, space=space, water=water, heat=heat, mass_kg=mass_kg)
    return replace(made, mass_kg=abs(mass_kg)) if has_body(made) else made


def _house_rules() -> tuple[Rule, ...]:
    """Those for which the options' own columns stand."""
    return (
        worlds.rule(NEEDS, RuleKind.NEEDS_ANY, ALWAYS, one(NeedsMet())),
        worlds.rule(FITS, RuleKind.NEEDS_ANY, ALWAYS, one(FitsVan())),
        worlds.rule("places", RuleKind.LIMIT, ALWAYS, one(ZonesFree(ZONES))),
    )


@st.composite
def _limits(draw: st.DrawFn, levels: tuple[Level, ...]) -> Rule:
    id_ = draw(st.sampled_from(LEDGERS))
    factor, minus = draw(st.sampled_from([(1.0, 0.0), (1.0, 0.0), (0.75, 0.0), (1.0, 10.0)]))
    if id_ in ("belts", "gas-bottles", "total-mass"):
        factor = 1.0
    atom = WithinBound(LedgerId(id_), id_ != "belts", factor, 0.0 if id_ in ("belts", "gas-bottles") else minus)
    when = draw(st.sampled_from([ALWAYS, ALWAYS, worlds.tags("a"), worlds.tags("b+c", "e@left"), one(WET)]))
    return worlds.rule(id_, RuleKind.LIMIT, when, one(atom), draw(st.sampled_from(levels)))


@st.composite
def _plain(draw: st.DrawFn, id_: str, options: list[Option], levels: tuple[Level, ...]) -> Rule:
    atom = st.one_of(
        st.sampled_from(SIDED).map(_tag),
        st.sampled_from(SIDED[:-1]).map(_tag),
        st.sampled_from(options).map(lambda o: Chosen(o.id)),
        st.just(WET),
    )
    signed = st.tuples(atom, st.sampled_from([True, True, True, False])).map(lambda p: p[0] if p[1] else Not(p[0]))
    terms = st.lists(signed, min_size=1, max_size=2).map(lambda atoms: AllOf(tuple(atoms)))
    sides = st.lists(terms, min_size=1, max_size=2).map(lambda found: AnyOf(tuple(found)))
    kind = draw(st.sampled_from([RuleKind.NEEDS_ANY, RuleKind.EXCLUDES]))
    return worlds.rule(id_, kind, draw(sides), draw(sides), draw(st.sampled_from(levels)))


def one(atom: Atom) -> AnyOf:
    """An expression of one atom."""
    return AnyOf((AllOf((atom,)),))


def _tag(word: str) -> Atom:
    found = worlds.tags(word).terms[0].atoms[0]
    assert isinstance(found, Given)
    return found


@st.composite
def answers(draw: st.DrawFn) -> Answers:
    """Some of the brief, the rest not known or assumed."""
    said = Answers()
    for key, values in (("adults", (1, 2, 4, None)), ("children", (0, 2, None)), ("wet", ("yes", "no", None))):
        said = said.with_answer(BriefKey(key), draw(st.sampled_from(values)))
    return said


@st.composite
def specs(draw: st.DrawFn, world: Catalogue, every: list[Build], said: Answers) -> Spec:
    """Part of some build, good or bad, in any order; now and then a part is the customer's."""
    build = draw(st.sampled_from(every))
    taken = [piece for piece in build if draw(st.integers(0, 2))]
    choices = [choice_of(piece) for piece in draw(st.permutations(taken))]
    theirs = draw(st.sampled_from([None] * 4 + [c for c in choices if world.options[c.option].van is None]))
    if theirs is not None:
        sheet = OwnPart(mass_kg=draw(st.sampled_from([1.5, 40, None])))
        choices = [replace(c, owner=Owner.CUSTOMER, own_part=sheet) if c is theirs else c for c in choices]
    return Spec(answers=said, choices=tuple(choices))


def choice_of(piece: Piece) -> Choice:
    """A piece of a build as a choice."""
    return Choice(option=piece.option, place=piece.place, count=piece.many)


def few_builds(world: Catalogue) -> list[Build]:
    """Every complete build, good or bad; a world of too many to look at is passed over."""
    found = list(islice(every_build(world), MOST_BUILDS + 1))
    assume(0 < len(found) <= MOST_BUILDS)
    return found


def worked_out(data: st.DataObject, world: Catalogue) -> tuple[list[Build], Spec]:
    """Every complete build, and a spec made of some of one."""
    every = few_builds(world)
    return every, data.draw(specs(world, every, data.draw(answers())))


def _said(record: object) -> Iterator[str]:
    """Every field that is not as it is when nobody says anything, also of the records inside."""
    assert is_dataclass(record)
    for field in fields(record):
        value = getattr(record, field.name)
        if value == field.default or field.name in ("id", "group", "name", "needs_because", "van"):
            continue
        if is_dataclass(value):
            yield from _said(value)
        else:
            yield f"{field.name}={value!r}"


def told(world: Catalogue, spec: Spec) -> str:
    """A world and a spec on one page, for whoever has to find out."""
    lines = [f"group {g.id} {g.pick} {g.max_choices}" for g in world.groups.values()]
    lines += [f"option {o.id} of {o.group}: {', '.join(_said(o))}" for o in world.options.values()]
    vans = [(v.id, v.van) for v in world.vans if v.van]
    lines += [f"van {id_}: {v.m_max_kg} kg, roof {v.roof_load_kg} kg, takes {v.zones_taken}" for id_, v in vans]
    lines += [f"rule {r.id} {r.level} {r.kind}: {r.when} -> {r.then}" for r in world.rules.values()]
    lines += [f"says {spec.answers.given}", *(f"choice {c}" for c in spec.choices)]
    return "\n".join(lines)
