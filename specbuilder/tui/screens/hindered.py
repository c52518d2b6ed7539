"""What stands in the way of a step of the job: a line each, which leads to where it can be settled."""

from __future__ import annotations

from collections.abc import Sequence

from specbuilder.model.findings import Finding
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level, Step, Verdict
from specbuilder.model.life import Hindrance, HindranceCode, LifeStep
from specbuilder.session.facts import DERIVED
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Field, Item, OnField, OnGroup, OnHindrance
from specbuilder.tui.line import EMPTY, Bit, Line, line, wrapped
from specbuilder.wording.life import hindrance_lines, not_yet
from specbuilder.wording.open_things import question_text

from .accept import AcceptPage
from .confirm import quoting_again
from .open_things import OpenPage
from .page import Host
from .who import WhoPage
from .why import WhyPage

_LAST = (
    HindranceCode.NOT_CHOSEN,
    HindranceCode.NOBODY_ASKED,
    HindranceCode.STOP_BROKEN,
    HindranceCode.NOT_ACCEPTED,
    HindranceCode.STOP_UNKNOWN,
)
"""What can be answered stands before what is broken, and what only waits for answers stands last."""


def in_order(found: Sequence[Hindrance]) -> tuple[Hindrance, ...]:
    """What is best settled first, first; what says the same once."""
    return tuple(sorted(dict.fromkeys(found), key=lambda each: _LAST.index(each.code) if each.code in _LAST else -1))


def hindrance_rows(host: Host, step: LifeStep, found: Sequence[Hindrance], cells: int) -> list[Line]:
    """The count over them, then one line each; what says the same stands once."""
    told: dict[str, Hindrance] = {}
    for each in found:
        told.setdefault(hindrance_lines(host.catalogue, step, (each,))[0], each)
    if not told:
        return []
    rows = [EMPTY, line(" ", Bit(not_yet(step, len(told)), Ink.HEAD))]
    for text, each in told.items():
        first, *rest = wrapped(text, cells - 4)
        rows.append(line(f" {host.marks.broken} ", Bit(first, Ink.CARE), item=OnHindrance(each)))
        rows += [line("   ", Bit(part, Ink.CARE)) for part in rest]
    return rows


def settle(host: Host, hindrance: Hindrance) -> None:
    """Go where this can be settled."""
    code = HindranceCode
    match hindrance.code:
        case code.STOP_BROKEN | code.STOP_UNKNOWN | code.NOT_ACCEPTED if hindrance.rule is not None:
            _settle_finding(host, hindrance.rule, hindrance.code)
        case code.NOBODY_ASKED if hindrance.key is not None:
            host.show(WhoPage(host, question_text(host.catalogue, key=hindrance.key)))
        case code.QUESTION_STOPS:
            host.show(WhoPage(host, hindrance.text))
        case code.NOT_CHOSEN if hindrance.group is not None:
            host.go_to(OnGroup(hindrance.group))
        case code.NAMELESS | code.NO_NAME_SIGNED:
            host.walk_to(Step.BRIEF, OnField(Field.NAME))
        case code.QUOTE_RAN_OUT:
            host.show(quoting_again(host))
        case code.STRANGER | code.NOT_CHANGED:
            host.walk_to(Step.CHECK, None)
        case code.EMPTY:
            host.walk_to(Step.BASE_VAN, None)
        case _:
            host.say(hindrance_lines(host.catalogue, LifeStep.ORDER, (hindrance,))[0])


def _settle_finding(host: Host, rule: RuleId, code: HindranceCode) -> None:
    """Accept it, see why; or, where it says nothing before the signature, go to the step it is of."""
    now = next((f for f in host.report.findings if f.rule == rule), None)
    then = host.deeds.finding_at_signing(rule)
    if now is not None and now.verdict is not Verdict.HOLDS:
        acceptable = now.verdict is Verdict.BROKEN and now.level is Level.SIGN
        host.show(AcceptPage(host, rule) if acceptable else WhyPage(host, now))
    elif then is not None:
        _go(host, then)


def _go(host: Host, finding: Finding) -> None:
    derived = DERIVED.intersection(finding.keys)
    if "unknowns" in derived:
        host.show(OpenPage(host))
    else:
        host.walk_to(finding.step, _field(host, finding.step))


def _field(host: Host, step: Step) -> Item | None:
    """Of the real van the first that is not known."""
    data = host.report.spec.van_data
    if step is not Step.BASE_VAN:
        return None
    return OnField(Field.YEAR if data.vin_tail and data.year is None else Field.VIN_TAIL)
