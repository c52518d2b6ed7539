"""Small catalogues made in code, for laws and for tests that show their whole input."""

from __future__ import annotations

from types import MappingProxyType

from specbuilder.model.brief import BriefLine, Question
from specbuilder.model.catalogue import Catalogue, Firm, Group, Option
from specbuilder.model.ids import BASE_VAN_GROUP, BriefKey, GroupId, LedgerId, OptionId, RuleId, Tag, Zone
from specbuilder.model.kinds import AnswerType, Confidence, Level, Pick, Place, RuleKind, Step
from specbuilder.model.ledger import LedgerSpec
from specbuilder.model.parts import Need
from specbuilder.model.rules import AllOf, AnyOf, Atom, Given, Rule
from specbuilder.model.vans import Van

FIRM = Firm(
    name="Pellowmarch Van Joinery",
    town="Ossenthwick",
    currency="£",
    vat_percent=20,
    deposit_percent=10,
    quote_valid_days=30,
    undo_rate_net_pence_per_h=4200,
    catalogue_version="test",
)


def option(
    id_: str,
    group: str,
    *,
    gives: str = "",
    needs: tuple[str, ...] = (),
    zones: str = "",
    places: str = "",
    frees: str = "",
    vans: str = "",
    **more: object,
) -> Option:
    """An option from words separated by blanks; each of ``needs`` is ``a|b``."""
    return Option(
        id=OptionId(id_),
        group=GroupId(group),
        name=id_.replace("-", " ").capitalize(),
        gives=tuple(Tag(t) for t in gives.split()),
        needs=tuple(Need(any_of=tuple(Tag(t) for t in need.split("|"))) for need in needs),
        needs_because="It needs that." if needs else "",
        zones=tuple(Zone(z) for z in zones.split()),
        frees_zones=tuple(Zone(z) for z in frees.split()),
        places=tuple(Place(p) for p in places.split()),
        fits_vans=tuple(OptionId(v) for v in vans.split()),
        **more,  # type: ignore[arg-type]
    )


def group(id_: str, *, any_: int = 0, step: Step = Step.KITCHEN) -> Group:
    """A pick-one group, or a pick-any group of at most ``any_`` choices."""
    return Group(
        id=GroupId(id_),
        step=step,
        name=id_.capitalize(),
        question=f"Which {id_}?",
        pick=Pick.ANY if any_ else Pick.ONE,
        none_is_an_answer=True,
        max_choices=any_ or 1,
    )


def tags(*terms: str) -> AnyOf:
    """An either-or list of ``a+b`` lists of tags."""
    return AnyOf(tuple(AllOf(tuple(_atom(word) for word in term.split("+"))) for term in terms))


def _atom(word: str) -> Atom:
    bare, _, place = word.partition("@")
    return Given(Tag(bare), place or None)


def rule(id_: str, kind: RuleKind, when: AnyOf, then: AnyOf, level: Level = Level.STOP) -> Rule:
    """A rule with stock words."""
    return Rule(
        id=RuleId(id_),
        step=Step.KITCHEN,
        kind=kind,
        level=level,
        when=when,
        then=then,
        because=f"Because of {id_}.",
        fixes=("Do something else",),
        source="test",
        confidence=Confidence.KNOWN,
    )


def catalogue(
    groups: tuple[Group, ...],
    options: tuple[Option, ...],
    rules: tuple[Rule, ...] = (),
    ledgers: tuple[LedgerSpec, ...] = (),
    brief: tuple[BriefLine, ...] = (),
) -> Catalogue:
    """A catalogue of these, in this order."""
    return Catalogue(
        firm=FIRM,
        questions=MappingProxyType({1: Question(number=1, asks="Who travels")}),
        brief=MappingProxyType({line.key: line for line in brief}),
        groups=MappingProxyType({g.id: g for g in groups}),
        options=MappingProxyType({o.id: o for o in options}),
        rules=MappingProxyType({r.id: r for r in rules}),
        ledgers=MappingProxyType({led.id: led for led in ledgers}),
        work=MappingProxyType({}),
        cautions=MappingProxyType({}),
        papers=MappingProxyType({}),
        tables=MappingProxyType({}),
        digest="test",
    )


__all__ = [
    "BASE_VAN_GROUP",
    "AnswerType",
    "BriefKey",
    "LedgerId",
    "Van",
    "catalogue",
    "group",
    "option",
    "rule",
    "tags",
]
