"""The rule graph: options, capabilities, groups, rules, ledgers and answers, joined by edges that keep their reason.

The graph is built once for a catalogue and never changed; a spec is laid over it. It answers *static* questions (what
could give this, what does that lead to, who stands between the two). ``clauses.py`` compiles the same catalogue into
what ``propagate.py`` runs on; the two share their node names.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

import networkx as nx

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Pick, RuleKind
from specbuilder.model.rules import (
    AnyOf,
    Atom,
    BriefIs,
    Chosen,
    FigureAbove,
    FitsVan,
    Given,
    GroupAnswered,
    MarginBelow,
    NeedsMet,
    Not,
    Rule,
    WithinBound,
    ZonesFree,
)

SIDE_MARK = "@side"
"""In ``gives`` and ``zones``: stands for the place the choice takes."""


class NodeKind(StrEnum):
    """What a node stands for."""

    OPTION = "option"
    CAPABILITY = "capability"
    GROUP = "group"
    RULE = "rule"
    LEDGER = "ledger"
    ANSWER = "answer"
    ZONE = "zone"


@dataclass(frozen=True, slots=True)
class Node:
    """A node of the graph."""

    kind: NodeKind
    id: str


class EdgeKind(StrEnum):
    """What an edge says."""

    GIVES = "gives"
    """option -> capability"""
    MEMBER = "member"
    """option -> group"""
    FITS = "fits"
    """option -> base van it lists"""
    NEEDS_ANY = "needs any of"
    """option or rule -> capability, option or answer of which one is enough"""
    EXCLUDES = "excludes"
    """rule -> what may not stand beside its condition"""
    EXACTLY_ONE = "exactly one"
    """group or rule -> group"""
    LIMITS = "limits"
    """rule -> ledger or zone"""
    CLAIMS = "claims"
    """option -> zone"""
    ADVISES = "advises"
    """rule -> what would still the advice"""
    CONDITION = "condition"
    """capability, option, group, ledger or answer -> rule it wakes"""


def option_node(option: str) -> Node:
    """The node of an option."""
    return Node(NodeKind.OPTION, option)


def tags_given(option: Option) -> Iterator[str]:
    """Every capability the option can give, at whichever of its places: ``exhaust``, ``exhaust@left``, ..."""
    for tag in option.gives:
        if tag.endswith(SIDE_MARK):
            bare = tag.removesuffix(SIDE_MARK)
            yield bare
            yield from (f"{bare}@{place.value}" for place in option.places)
        elif "@" in tag:
            yield tag.split("@", 1)[0]
            yield tag
        else:
            yield tag


def atoms_of(expression: AnyOf) -> Iterator[tuple[Atom, bool]]:
    """Each atom with its sign (False: negated)."""
    for term in expression.terms:
        for atom in term.atoms:
            yield (atom.atom, False) if isinstance(atom, Not) else (atom, True)


def node_of(atom: Atom) -> Node | None:
    """The node an atom speaks of; None for those that speak of the whole spec."""
    match atom:
        case Chosen(option):
            return option_node(option)
        case Given(tag, place):
            return Node(NodeKind.CAPABILITY, tag if place in (None, "same") else f"{tag}@{place}")
        case GroupAnswered(group):
            return Node(NodeKind.GROUP, group)
        case BriefIs(key, compare, value):
            return Node(NodeKind.ANSWER, f"{key}{compare.value}{value}")
        case WithinBound(ledger=ledger) | MarginBelow(ledger=ledger) | FigureAbove(ledger=ledger):
            return Node(NodeKind.LEDGER, ledger)
        case _:
            return None


_THEN_EDGE = {
    RuleKind.NEEDS_ANY: EdgeKind.NEEDS_ANY,
    RuleKind.EXCLUDES: EdgeKind.EXCLUDES,
    RuleKind.EXACTLY_ONE: EdgeKind.EXACTLY_ONE,
    RuleKind.LIMIT: EdgeKind.LIMITS,
    RuleKind.ADVICE: EdgeKind.ADVISES,
}


@dataclass(frozen=True, slots=True)
class RuleGraph:
    """The frozen graph of one catalogue."""

    net: nx.MultiDiGraph[Node]

    def edges_from(self, node: Node) -> Iterator[tuple[Node, EdgeKind, RuleId | None]]:
        """Successors with the kind of edge and the rule that put it there (None: the catalogue's structure)."""
        for _, target, data in self.net.out_edges(node, data=True):
            yield target, data["kind"], data["rule"]

    def givers(self, tag: str) -> tuple[OptionId, ...]:
        """Options (base vans among them) that can give this capability."""
        node = Node(NodeKind.CAPABILITY, tag)
        if node not in self.net:
            return ()
        return tuple(OptionId(s.id) for s, _, d in self.net.in_edges(node, data=True) if d["kind"] is EdgeKind.GIVES)

    def needs_loops(self) -> tuple[tuple[OptionId, ...], ...]:
        """Sets of options that need one another in a circle, from the options' own needs, where nothing else gives it.

        Such a circle can still be entered as a whole, so it is a remark for the audit, not a fault.
        """
        only: nx.DiGraph[Node] = nx.DiGraph()
        for node in self.net:
            if node.kind is not NodeKind.OPTION:
                continue
            for tag, kind, _ in self.edges_from(node):
                givers = self.givers(tag.id) if kind is EdgeKind.NEEDS_ANY else ()
                if len(givers) == 1 and givers[0] != node.id:
                    only.add_edge(node, option_node(givers[0]))
        loops = (part for part in nx.strongly_connected_components(only) if len(part) > 1)
        return tuple(tuple(sorted(OptionId(n.id) for n in part)) for part in loops)


def build_graph(catalogue: Catalogue) -> RuleGraph:
    """The rule graph of a catalogue."""
    net: nx.MultiDiGraph[Node] = nx.MultiDiGraph()
    net.add_nodes_from(Node(NodeKind.RULE, rule) for rule in catalogue.rules)
    net.add_nodes_from(Node(NodeKind.LEDGER, ledger) for ledger in catalogue.ledgers)
    for source, target, kind, rule in _edges(catalogue):
        net.add_edge(source, target, kind=kind, rule=rule)
    return RuleGraph(net)


def _edges(catalogue: Catalogue) -> Iterator[tuple[Node, Node, EdgeKind, RuleId | None]]:
    for group in catalogue.groups.values():
        if group.pick is Pick.ONE:
            node = Node(NodeKind.GROUP, group.id)
            yield node, node, EdgeKind.EXACTLY_ONE, None
    fits, needs = _rule_with(catalogue, FitsVan), _rule_with(catalogue, NeedsMet)
    for option in catalogue.options.values():
        yield from _option_edges(option, fits, needs)
    for rule in catalogue.rules.values():
        yield from _rule_edges(rule)


def _rule_with(catalogue: Catalogue, atom: type[FitsVan | NeedsMet]) -> RuleId | None:
    """The rule that gives the options' own columns their level and words."""
    return next((r.id for r in catalogue.rules.values() for a, _ in atoms_of(r.then) if isinstance(a, atom)), None)


def _option_edges(
    option: Option, fits: RuleId | None, needs: RuleId | None
) -> Iterator[tuple[Node, Node, EdgeKind, RuleId | None]]:
    me = option_node(option.id)
    yield me, Node(NodeKind.GROUP, option.group), EdgeKind.MEMBER, None
    for tag in tags_given(option):
        yield me, Node(NodeKind.CAPABILITY, tag), EdgeKind.GIVES, None
    for van in option.fits_vans:
        yield me, option_node(van), EdgeKind.FITS, fits
    for need in option.needs:
        for wanted in need.any_of:
            yield me, Node(NodeKind.CAPABILITY, wanted), EdgeKind.NEEDS_ANY, needs
    for zone in option.zones:
        for side in (f"@{place.value}" for place in option.places) if zone.endswith(SIDE_MARK) else ("",):
            yield me, Node(NodeKind.ZONE, zone.removesuffix(SIDE_MARK) + side), EdgeKind.CLAIMS, None


def _rule_edges(rule: Rule) -> Iterator[tuple[Node, Node, EdgeKind, RuleId | None]]:
    me = Node(NodeKind.RULE, rule.id)
    for node in _nodes(rule.when):
        yield node, me, EdgeKind.CONDITION, rule.id
    for node in _nodes(rule.then):
        yield me, node, _THEN_EDGE[rule.kind], rule.id
    for zone in (z for atom, _ in atoms_of(rule.then) if isinstance(atom, ZonesFree) for z in atom.zones):
        yield me, Node(NodeKind.ZONE, zone), EdgeKind.LIMITS, rule.id


def _nodes(expression: AnyOf) -> Iterable[Node]:
    return dict.fromkeys(node for atom, _ in atoms_of(expression) if (node := node_of(atom)) is not None)
