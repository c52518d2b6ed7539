"""``why``: what an option, a finding or a ledger rests on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Reasons
from specbuilder.model.ids import BriefKey, LedgerId, OptionId, RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.model.report import Report
from specbuilder.session.beside import figures_beside
from specbuilder.session.explain import reasons as reasons_of
from specbuilder.session.explain import why_finding
from specbuilder.session.power_notes import power_notes
from specbuilder.wording import findings, reasons, rows, spoken
from specbuilder.wording.brief import line_words
from specbuilder.wording.ledger_detail import detail_texts
from specbuilder.wording.names import key_name, ledger_name
from specbuilder.wording.plain import ended
from specbuilder.wording.power import power_lines
from specbuilder.wording.readings import silent_line
from specbuilder.wording.why import asked_for, perhaps_more_reasons, reason_number

from . import asjson
from .answers import Answer, finding_lines
from .output import Exit, StopError
from .things import (
    CustomerThing,
    GroupThing,
    LedgerThing,
    LineThing,
    NoteThing,
    OptionThing,
    RuleThing,
    Unclear,
    VanThing,
    thing,
)


def why(catalogue: Catalogue, report: Report, text: str, *, json: bool) -> Answer:
    """Why an option is as it is, what a finding rests on, what a ledger adds up.

    Raises:
        StopError: if nothing or more than one thing is called so.
    """
    meant = thing(catalogue, text)
    match meant:
        case Unclear(words):
            raise StopError(Exit.UNUSABLE, words)
        case OptionThing(option=option):
            return _why_option(catalogue, report, option, json)
        case RuleThing(rule):
            return _why_rule(catalogue, report, rule, json)
        case LedgerThing(ledger):
            return why_ledger(catalogue, report, ledger, json)
        case GroupThing(group):
            lines = spoken.group_lines(catalogue, report, group)
            return _plain("group", group, lines, json)
        case LineThing(key):
            return _plain("answer", key, (_line_words(catalogue, report, key),), json)
        case VanThing() | CustomerThing() | NoteThing():
            raise StopError(Exit.UNUSABLE, f"{text} is simply as it was typed; nothing stands behind it.")
        case _:
            assert_never(meant)


def _why_option(catalogue: Catalogue, report: Report, option: OptionId, json: bool) -> Answer:
    found = reasons_of(catalogue, report.spec, option)
    sentence = rows.row_sentence(catalogue, report, option, keys=False)
    words = f"{ended(spoken.option_words(catalogue, report, option))} {sentence}".rstrip()
    said = asked_for(catalogue, report, option)
    if json:
        told = f"{words} {said}".rstrip()
        return Answer((asjson.option_json(catalogue, report, option, told, found),))
    lines = [words, said] if said else [words]
    if found is not None:
        lines += _reasons(catalogue, report, found, words)
    broken = [f for f in report.findings if f.verdict is Verdict.BROKEN and option in f.subjects]
    lines += (line for finding in broken for line in finding_lines(catalogue, report, finding))
    return Answer(tuple(lines))


def _reasons(catalogue: Catalogue, report: Report, found: Reasons, words: str) -> Iterator[str]:
    """Each reason as a numbered chain, under the sentence the customer hears and above who was first."""
    for number, cause in enumerate(found.causes, 1):
        if over := reason_number(number, len(found.causes)):
            yield over
        head = reasons.reason_head(catalogue, report, cause)
        if head and head not in words:
            yield f'"{head}"'
        yield from reasons.reasons(catalogue, report, cause)
        if first := reasons.first_taken(catalogue, report, cause):
            yield first
    if not found.complete:
        yield perhaps_more_reasons()


def _why_rule(catalogue: Catalogue, report: Report, rule: RuleId, json: bool) -> Answer:
    finding = next((f for f in report.findings if f.rule == rule), None)
    if finding is None:
        words = f'"{catalogue.rules[rule].because}" is {silent_line()}'
        return _plain("finding", rule, (ended(words),), json)
    cause = why_finding(catalogue, report.spec, finding)
    chain = reasons.reasons(catalogue, report, cause)
    if json:
        return Answer((asjson.finding_json(catalogue, report, finding, cause, chain),))
    told = findings.finding_words(catalogue, report, finding)
    rests_on = findings.finding_reasons(catalogue, report, finding)
    first = reasons.first_of(catalogue, report, finding.subjects)
    fixes = (f"offer: {ended(fix)}" for fix in told.fixes)
    return Answer((told.head, *rests_on, *filter(None, (first,)), *told.lacks, *fixes, told.source))


def why_ledger(catalogue: Catalogue, report: Report, ledger: LedgerId, json: bool) -> Answer:
    """What a ledger or figure adds up to, and what is told beside it."""
    of = catalogue.ledgers[ledger].part_of
    others = figures_beside(catalogue, report.spec, ledger if of is None else of)
    reading = report.readings.get(ledger) or next((r for r in others if r.id == ledger), None)
    if reading is None:
        return _plain("ledger", ledger, (f"{ledger_name(catalogue, ledger)}: {silent_line()}.",), json)
    notes = power_lines(catalogue, power_notes(catalogue, report.spec, ledger))
    detail = detail_texts(catalogue, reading, others if of is None else (), notes)
    if json:
        return Answer((asjson.reading_json(catalogue, reading, detail),))
    return Answer(detail)


def _line_words(catalogue: Catalogue, report: Report, key: BriefKey) -> str:
    return f"{key_name(catalogue, key)}: {line_words(catalogue, report, key)}"


def _plain(kind: str, id_: str, lines: tuple[str, ...], json: bool) -> Answer:
    return Answer((asjson.plain_json(kind, id_, "\n".join(lines)),) if json else lines)
