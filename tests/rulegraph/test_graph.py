"""The graph keeps every connection with its kind and its rule."""

from __future__ import annotations

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import RuleKind
from specbuilder.rulegraph.graph import EdgeKind, Node, NodeKind, build_graph, option_node
from tests import worlds
from tests.worlds import group, option, rule, tags

WORLD = worlds.catalogue(
    (group("heat"), group("alarms", any_=4)),
    (
        option("burner", "heat", gives="flame exhaust@side", places="left rear", needs=("battery|plug",)),
        option("no-heat", "heat"),
        option("alarm", "alarms", gives="alarm battery"),
    ),
    (rule("flame-needs-alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm")),),
)


def test_a_sided_capability_is_given_bare_and_at_each_place_the_option_may_take() -> None:
    graph = build_graph(WORLD)
    for tag in ("exhaust", "exhaust@left", "exhaust@rear"):
        assert graph.givers(tag) == (OptionId("burner"),)
    assert graph.givers("exhaust@right") == ()


def test_edges_say_what_they_are_and_which_rule_put_them_there() -> None:
    graph = build_graph(WORLD)
    flame, alarm = Node(NodeKind.CAPABILITY, "flame"), Node(NodeKind.CAPABILITY, "alarm")
    of_rule = Node(NodeKind.RULE, "flame-needs-alarm")
    assert (of_rule, EdgeKind.CONDITION, RuleId("flame-needs-alarm")) in set(graph.edges_from(flame))
    assert (alarm, EdgeKind.NEEDS_ANY, RuleId("flame-needs-alarm")) in set(graph.edges_from(of_rule))
    assert (Node(NodeKind.CAPABILITY, "plug"), EdgeKind.NEEDS_ANY, None) in set(graph.edges_from(option_node("burner")))


def test_options_that_can_only_come_together_are_found_as_a_loop() -> None:
    world = worlds.catalogue(
        (group("a", any_=2),),
        (
            option("one", "a", gives="x", needs=("y",)),
            option("two", "a", gives="y", needs=("x",)),
            option("three", "a"),
        ),
    )
    assert build_graph(world).needs_loops() == ((OptionId("one"), OptionId("two")),)


def test_every_option_rule_and_ledger_of_the_house_is_in_it_and_joined_to_the_rest(catalogue: Catalogue) -> None:
    graph = build_graph(catalogue)
    named = {rule for _, _, rule in graph.net.edges(data="rule")}
    for option_id in catalogue.options:
        assert list(graph.edges_from(option_node(option_id)))
    for rule_id in catalogue.rules:
        assert Node(NodeKind.RULE, rule_id) in graph.net
    # This one only says that a choice sits where its own table allows: there is nothing to join it to.
    assert set(catalogue.rules) - named == {"parts-have-a-legal-side"}
    for ledger_id in catalogue.ledgers:
        assert Node(NodeKind.LEDGER, ledger_id) in graph.net
