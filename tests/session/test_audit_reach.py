"""What a catalogue can never do, on worlds small enough to see it."""

from __future__ import annotations

from dataclasses import replace

from specbuilder.model.audit import Lint, LintCode
from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BASE_VAN_GROUP
from specbuilder.model.kinds import Level, RuleKind
from specbuilder.session.audit_reach import reach_lints
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.wording.audit import lint_line
from tests.worlds import catalogue, group, option, rule, tags


def found(world: Catalogue, code: LintCode) -> list[Lint]:
    return [lint for lint in reach_lints(world) if lint.code is code]


def said(world: Catalogue, code: LintCode) -> list[str]:
    return [lint_line(world, lint) for lint in found(world, code)]


HEAT = (
    option("burner", "heat", gives="flame"),
    option("plug", "heat", gives="cable"),
    option("no-heat", "heat", is_none=True),
    option("alarm", "extras", gives="alarm"),
    option("inlet", "extras", gives="inlet"),
)
GROUPS = (group("heat"), group("extras", any_=3))


def test_a_sound_world_has_nothing_to_look_at() -> None:
    world = catalogue(GROUPS, HEAT, (rule("alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm")),))
    assert reach_lints(world) == ()


def test_rules_that_cannot_stand_together_are_named_with_each_other() -> None:
    must = rule("must", RuleKind.NEEDS_ANY, tags("flame", "cable", "none"), tags("alarm"))
    never = rule("never", RuleKind.EXCLUDES, tags("alarm"), tags("alarm"))
    spare = rule("spare", RuleKind.NEEDS_ANY, tags("cable"), tags("inlet"))
    options = (*HEAT[:2], option("no-heat", "heat", gives="none"), *HEAT[3:])
    world = catalogue(GROUPS, options, (must, never, spare))
    assert said(world, LintCode.CONTRADICTION) == [
        "contradiction must: cannot be kept together with never: no build stands while it does",
        "contradiction never: cannot be kept together with must: no build stands while it does",
    ]


def test_an_option_no_build_holds_is_named_with_the_rule_that_forbids_it() -> None:
    no_flame = rule("no-flame", RuleKind.EXCLUDES, tags("flame"), tags("flame"))
    world = catalogue(GROUPS, HEAT, (no_flame, rule("spare", RuleKind.NEEDS_ANY, tags("cable"), tags("inlet"))))
    assert said(world, LintCode.DEAD_OPTION) == [
        "dead-option burner (Burner): no build without a STOP has it, because of no-flame; "
        "if it is kept to be refused, say refused = true"
    ]


def test_what_is_kept_to_be_refused_may_be_dead_and_must_not_live() -> None:
    no_flame = rule("no-flame", RuleKind.EXCLUDES, tags("flame"), tags("flame"))
    options = (replace(HEAT[0], refused=True), replace(HEAT[1], refused=True), *HEAT[2:])
    world = catalogue(GROUPS, options, (no_flame,))
    assert not found(world, LintCode.DEAD_OPTION)
    assert said(world, LintCode.REFUSED_LIVES) == [
        "refused-lives plug (Plug): says refused = true, and some build without a STOP has it"
    ]


def test_a_base_van_that_nothing_can_be_built_on() -> None:
    house = read_rules(rules_folder())
    van = house.options[house.vans[0].id]
    lone, sound = replace(van, id="lone", gives=("lone",)), replace(van, id="sound", gives=())  # type: ignore[arg-type]
    world = catalogue(
        (group(BASE_VAN_GROUP),), (lone, sound), (rule("no", RuleKind.EXCLUDES, tags("lone"), tags("lone")),)
    )
    assert [lint.subject for lint in found(world, LintCode.VAN_WITHOUT_BUILD)] == ["lone"]


def test_a_question_without_an_answer() -> None:
    world = catalogue((*GROUPS, group("roof")), HEAT)
    assert said(world, LintCode.EMPTY_GROUP) == [
        "empty-group roof (Roof): has no answer: give it one, and one that means none"
    ]


def test_conditions_that_are_met_never_or_always() -> None:
    both = rule("both", RuleKind.EXCLUDES, tags("flame+cable"), tags("alarm"))
    options = (*HEAT[:2], option("no-heat", "heat", gives="none"), *HEAT[3:])
    all_ = rule("all", RuleKind.NEEDS_ANY, tags("flame", "cable", "none"), tags("alarm", "inlet"), Level.SIGN)
    world = catalogue(GROUPS, options, (both, all_))
    assert said(world, LintCode.NEVER_FIRES) == ["never-fires both: no build meets its condition"]
    assert said(world, LintCode.ALWAYS_FIRES) == ["always-fires all: every build meets its condition: say always"]


def test_a_rule_that_others_imply_names_them() -> None:
    first = rule("flame-inlet", RuleKind.NEEDS_ANY, tags("flame"), tags("inlet"))
    second = rule("inlet-alarm", RuleKind.NEEDS_ANY, tags("inlet"), tags("alarm"))
    third = rule("flame-alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm"))
    world = catalogue(GROUPS, HEAT, (first, second, third))
    assert said(world, LintCode.REDUNDANT) == [
        "redundant flame-alarm: says nothing that flame-inlet and inlet-alarm does not say already"
    ]


def test_options_that_need_each_other_in_a_circle() -> None:
    one = option("one", "extras", gives="x", needs=("y",))
    other = option("other", "extras", gives="y", needs=("x",))
    world = catalogue(GROUPS, (*HEAT, one, other))
    assert said(world, LintCode.NEEDS_LOOP) == [
        "needs-loop one (One): needs in a circle with other: each can only be taken with all of them"
    ]


def test_a_look_without_time_says_that_it_is_partial() -> None:
    world = catalogue(GROUPS, HEAT, (rule("alarm", RuleKind.NEEDS_ANY, tags("flame"), tags("alarm")),))
    assert [lint.code for lint in reach_lints(world, seconds=-1)] == [LintCode.UNSETTLED]


def test_the_house_can_build_everything_it_does_not_refuse() -> None:
    assert {lint.code for lint in reach_lints(read_rules(rules_folder()))} <= {LintCode.REDUNDANT}
