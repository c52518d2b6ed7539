"""Findings in whole sentences."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, OptionId
from specbuilder.model.kinds import AnswerType, Confidence, Level, Verdict
from specbuilder.model.ledger import Lack, Reading
from specbuilder.model.report import Report
from specbuilder.model.rules import FitsVan, NeedsMet, PlacesLegal, Rule, WithinBound, ZonesFree
from specbuilder.model.spec import Choice

from . import ledger_detail, quantities, readings
from .brief import line_words, value_word
from .dates import written_moment
from .names import choice_name, group_name, key_name, lack_name, listed, option_name, tag_name
from .plain import ended, lowered, raised
from .states import step_name, to_be_said

_FEW = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingWords:
    """A finding told in full, part by part."""

    head: str
    """``STOP, broken: Too heavy and you could not pull the roof shut.``"""
    rests_on: tuple[str, ...]
    """The choices, answers and the ledger it rests on, one line each."""
    lacks: tuple[str, ...]
    """What must be known or decided before it can be told, one line each."""
    fixes: tuple[str, ...]
    """What the house offers, one line each; empty when it holds."""
    source: str
    """``Source: mass-seats 41. ESTIMATE``"""


def finding_words(catalogue: Catalogue, report: Report, finding: Finding) -> FindingWords:
    """All of it."""
    rule = catalogue.rules[finding.rule]
    return FindingWords(
        head=finding_head(catalogue, report, finding),
        rests_on=_rests_on(catalogue, report, finding, rule),
        lacks=tuple(_lack_line(catalogue, lack) for lack in finding.lacks),
        fixes=() if finding.verdict is Verdict.HOLDS else tuple(raised(fix) for fix in rule.fixes),
        source=_source(rule),
    )


def finding_reasons(catalogue: Catalogue, report: Report, finding: Finding) -> tuple[str, ...]:
    """What it rests on as a numbered chain, the ledger with its largest entries."""
    lines = _rests_on(catalogue, report, finding, catalogue.rules[finding.rule])
    reading = report.readings.get(finding.reading) if finding.reading else None
    if reading is not None:
        spec = catalogue.ledgers[reading.id]
        largest = (
            f"of it, {ledger_detail.entry_line(catalogue, spec, e)}" for e in reading.entries[: readings.LARGEST]
        )
        lines = (lines[0], *largest, *lines[1:])
    return tuple(f"{number}. {line}" for number, line in enumerate(lines, 1))


def finding_head(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """Level, verdict and what the customer hears; what holds has no level.

    A NOTE stops nothing, so it is not called broken but *to be said*.
    """
    because = catalogue.rules[finding.rule].because
    level = finding.level.value
    match finding.verdict:
        case Verdict.HOLDS:
            return f'Holds. If it were broken: "{because}"'
        case Verdict.BROKEN if finding.accepted:
            return f"{level}, {_acceptance(report, finding)}: {ended(because)}"
        case Verdict.BROKEN if finding.level is Level.NOTE:
            return f"{level}, {to_be_said()}: {ended(because)}"
        case Verdict.BROKEN:
            return f"{level}, broken: {ended(because)}"
        case Verdict.CANNOT_TELL:
            return f'{level}, cannot tell yet{_needs(catalogue, finding)}. At stake: "{because}"'
        case _:
            assert_never(finding.verdict)


def finding_line(catalogue: Catalogue, report: Report, finding: Finding) -> str:
    """One or two sentences, for lists: the head, and the choices or the figure behind it."""
    head = finding_head(catalogue, report, finding)
    if finding.verdict is not Verdict.BROKEN:
        return " ".join((head, *_outside(catalogue, report, finding)))
    reading = report.readings.get(finding.reading) if finding.reading else None
    if reading is not None and reading.value is not None:
        name = catalogue.ledgers[reading.id].name
        return f"{head} {ended(f'{name}: {_measured(catalogue, finding, reading)}')}"
    about = [_subject(catalogue, report, option) for option in finding.subjects]
    about += [
        _key_told(catalogue, report, key, "{} ({})", named_answers(catalogue, finding, key)) for key in finding.keys
    ]
    missing = _missing(catalogue, finding)
    told = f"{head} It is about {listed(about, most=_FEW)}." if about else head
    return f"{told} {ended(f'Missing: {missing}')}" if missing else told


def offers_line(catalogue: Catalogue, finding: Finding) -> str:
    """``What we can do: take the lighter panel; leave it out.``; empty where the house names nothing."""
    fixes = catalogue.rules[finding.rule].fixes
    return ended(f"What we can do: {'; '.join(lowered(fix.rstrip('.')) for fix in fixes)}") if fixes else ""


def now_broken(catalogue: Catalogue, before: Report, after: Report) -> str:
    """``now broken: Too heavy, and you could not pull the roof shut``: what an edit broke; empty when nothing."""
    levels = (Level.STOP, Level.SIGN)
    was = {finding.rule for finding in before.broken(*levels)}
    new = [finding for finding in after.broken(*levels) if finding.rule not in was]
    if not new:
        return ""
    more = f", and {len(new) - 1} more" if len(new) > 1 else ""
    return f"{new[0].level.value} now broken: {_told_of(catalogue, new[0]).rstrip('.')}{more}"


def _told_of(catalogue: Catalogue, finding: Finding) -> str:
    """What the customer hears; of a part that lacks another one by the part's own name."""
    rule = catalogue.rules[finding.rule]
    option = next((catalogue.options[each] for each in finding.subjects if each in catalogue.options), None)
    if option is None or not _asks(rule, NeedsMet):
        return rule.because
    return f"{option.name}: {option.needs_because or lowered(rule.because)}"


def _missing(catalogue: Catalogue, finding: Finding) -> str:
    """What would bring the capability that is wanted, as long as that is a short list."""
    if finding.verdict is Verdict.HOLDS or not finding.wanted:
        return ""
    wanted = set(finding.wanted)
    givers = [
        option.name
        for option in catalogue.options.values()
        if not option.refused and option.van is None and any(tag.split("@")[0] in wanted for tag in option.gives)
    ]
    return listed(givers, "or") if len(givers) <= _FEW else ""


def findings_none() -> str:
    """``Nothing is broken.``"""
    return "Nothing is broken."


def silent_words(catalogue: Catalogue, report: Report) -> str:
    """One line on what this report says nothing about because its sum is not made; empty when all is summed."""
    if not report.silent_ledgers and not report.silent_rules:
        return ""
    names = listed(catalogue.ledgers[ledger].name for ledger in report.silent_ledgers)
    rules = len(report.silent_rules)
    waiting = f"{rules} {'rule waits' if rules == 1 else 'rules wait'} for it" if rules else "no rule waits for it"
    return f"Not summed yet, nothing is known about it: {names or 'what some rules ask for'} ({waiting})."


def silent_count(report: Report) -> str:
    """``21 sums are not made yet: nothing is known about them``; empty when all is summed."""
    sums = len(report.silent_ledgers)
    if not sums:
        return ""
    return f"{sums} {'sum is' if sums == 1 else 'sums are'} not made yet: nothing is known about them; named below"


def strangers_words(report: Report) -> tuple[str, ...]:
    """A sentence for each choice whose option is not in this catalogue."""
    return tuple(
        f'"{option}" is chosen and not in this catalogue: take another option in its place or leave it out.'
        for option in report.strangers
    )


def _outside(catalogue: Catalogue, report: Report, finding: Finding) -> tuple[str, ...]:
    """The figure because of which it cannot be told."""
    reading = report.readings.get(finding.reading) if finding.reading else None
    if finding.verdict is not Verdict.CANNOT_TELL or reading is None or reading.outside is None:
        return ()
    return (ledger_detail.outside_words(catalogue, reading.outside),)


def _needs(catalogue: Catalogue, finding: Finding) -> str:
    lacks = listed((lack_name(catalogue, lack) for lack in finding.lacks), most=_FEW)
    return f", needs {lacks}" if lacks else ""


def _acceptance(report: Report, finding: Finding) -> str:
    accepted = next((a for a in report.spec.accepted if a.rule == finding.rule), None)
    if accepted is None or not accepted.by:
        return "accepted in writing"
    return f"accepted in writing by {accepted.by}" + (f" on {written_moment(accepted.at)}" if accepted.at else "")


def named_answers(catalogue: Catalogue, finding: Finding, key: BriefKey) -> str:
    """``kettle and laptop``: of an answer of several words those the finding is about; empty of any other answer."""
    line = catalogue.brief.get(key)
    if line is None or line.type is not AnswerType.LIST:
        return ""
    return listed(value_word(line, value) for about, value in finding.values if about == key)


def _key_told(catalogue: Catalogue, report: Report, key: BriefKey, both: str, named: str = "") -> str:
    """A line of the brief with its answer, or with what is ``named`` of it; once where both say the same."""
    name, told = key_name(catalogue, key), named or line_words(catalogue, report, key)
    return name if name == told else both.replace("{}", name, 1).replace("{}", told, 1)


def _subject(catalogue: Catalogue, report: Report, option: OptionId) -> str:
    """``Side galley, right``; where it stands more than once, each place."""
    choices = report.spec.chosen(option)
    if not choices:
        return option_name(catalogue, option)
    return listed(choice_name(catalogue, choice) for choice in choices)


def _rests_on(catalogue: Catalogue, report: Report, finding: Finding, rule: Rule) -> tuple[str, ...]:
    lines: list[str] = []
    reading = report.readings.get(finding.reading) if finding.reading else None
    if reading is not None:
        name = catalogue.ledgers[reading.id].name
        lines.append(f"{name}: {_measured(catalogue, finding, reading)}")
        lines += _outside(catalogue, report, finding)
        lines += _strict(catalogue, rule, reading)
    lines += (
        _choice_line(catalogue, rule, choice)
        for option in finding.subjects
        for choice in report.spec.chosen(option) or (Choice(option=option),)
    )
    lines += (_key_told(catalogue, report, key, "{}: {}") for key in finding.keys)
    if finding.wanted and finding.verdict is not Verdict.HOLDS:
        missing = _missing(catalogue, finding) or listed((tag_name(tag) for tag in finding.wanted), "or")
        lines.append(f"missing: {missing}")
    if _asks(rule, ZonesFree):
        lines += (f"one place for one thing: {zone}" for zone in _claimed_twice(catalogue, finding))
    return tuple(dict.fromkeys(lines))


def _measured(catalogue: Catalogue, finding: Finding, reading: Reading) -> str:
    """The reading's own line; where only the rule is broken, not the plain bound, just the amount."""
    if reading.verdict is finding.verdict:
        return readings.reading_measure(catalogue, reading)
    amount = readings.reading_amount(catalogue, reading) or "cannot tell"
    return f"{amount} ({readings.ESTIMATE})" if catalogue.ledgers[reading.id].estimate else amount


def _strict(catalogue: Catalogue, rule: Rule, reading: Reading) -> list[str]:
    """What the rule asks where it is stricter than the plain bound: ``asked here: at most 160 A``."""
    spec, lines = catalogue.ledgers[reading.id], list[str]()
    for term in rule.then.terms:
        for atom in term.atoms:
            if isinstance(atom, WithinBound) and reading.bound and (atom.factor, atom.minus) != (1.0, 0.0):
                limit = reading.bound * atom.factor - atom.minus
                words = "at most" if atom.within else "at least"
                lines.append(f"asked here: {words} {quantities.span(limit, spec.unit, catalogue.firm.currency)}")
    return lines


def _choice_line(catalogue: Catalogue, rule: Rule, choice: Choice) -> str:
    name = choice_name(catalogue, choice)
    option = catalogue.options.get(choice.option)
    if option is not None and option.needs_because and _asks(rule, NeedsMet):
        return f"{name}: {option.needs_because}"
    if option is not None and _asks(rule, FitsVan) and option.fits_vans:
        return f"{name}: made for {listed((option_name(catalogue, van) for van in option.fits_vans), 'or')}"
    if option is not None and _asks(rule, PlacesLegal) and option.places:
        return f"{name}: may stand {listed((place.value for place in option.places), 'or')}"
    return f"{name}, taken {choice.at}" if choice.at else name


def _asks(rule: Rule, kind: type[FitsVan | NeedsMet | PlacesLegal | ZonesFree]) -> bool:
    return any(isinstance(atom, kind) for term in rule.then.terms for atom in term.atoms)


def _claimed_twice(catalogue: Catalogue, finding: Finding) -> tuple[str, ...]:
    """Zones that two of the subjects name; sides are as in the catalogue, so ``@side`` is left open."""
    known = [catalogue.options[o] for o in finding.subjects if o in catalogue.options]
    zones = [zone.partition("@")[0] for option in known for zone in dict.fromkeys(option.zones)]
    return tuple(dict.fromkeys(zone.replace("-", " ") for zone in zones if zones.count(zone) > 1))


def _lack_line(catalogue: Catalogue, lack: Lack) -> str:
    if lack.group is not None and lack.key is None:
        group = catalogue.groups.get(lack.group)
        where = f" (step {step_name(group.step)})" if group else ""
        return f"needs a decision: {group_name(catalogue, lack.group)}{where}"
    if lack.key is not None:
        line = catalogue.brief.get(lack.key)
        return f"needs an answer: {lack_name(catalogue, lack)}" + (f' - "{line.ask}"' if line else "")
    return f"needs {lack_name(catalogue, lack)}"


def _source(rule: Rule) -> str:
    source = ended(f"Source: {rule.source}")
    return f"{source} {readings.ESTIMATE}" if rule.confidence is Confidence.ESTIMATE else source
