"""Reasons as lines of a page: what a finding rests on, the chain behind a state, and what the house offers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from specbuilder.model.findings import Cause, Finding
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.kinds import Verdict
from specbuilder.session.explain import why_finding
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnText
from specbuilder.tui.line import EMPTY, Bit, Line, cut, line, wrapped
from specbuilder.wording.findings import finding_words
from specbuilder.wording.reasons import first_taken, reason_head, reasons_about
from specbuilder.wording.why import offers_head

from .about import about_cause, about_lack, about_line
from .page import Host

MOST_UNSEEN = 5
"""Behind so many lines without a stop for the cursor the next one is a stop, so that all can be scrolled to."""


@dataclass(frozen=True, slots=True)
class Told:
    """A sentence of the page."""

    text: str
    ink: Ink = Ink.PLAIN
    about: Item | None = None
    """What Enter goes to."""
    ends: bool = True
    """False: words of the house that nothing can be done with; the cursor goes past them while it can."""
    one_line: bool = False
    """True: cut rather than wrapped."""


def of_finding(host: Host, finding: Finding) -> tuple[list[Told], list[Told]]:
    """What a finding rests on; and what the house offers, with the source."""
    catalogue, report = host.catalogue, host.report
    words = finding_words(catalogue, report, finding)
    told = [Told(words.head, Ink.CARE if finding.verdict is Verdict.BROKEN else Ink.HEAD)]
    told += [Told(f"  {text}", about=about_line(catalogue, finding, text)) for text in words.rests_on]
    told += [Told(f"  {text}", about=about_lack(lack)) for text, lack in zip(words.lacks, finding.lacks, strict=True)]
    if taken := first_taken(catalogue, report, why_finding(catalogue, report.spec, finding)):
        told.append(Told(f"  {taken}"))
    return told, [*_offered(words.fixes), Told(f"  {words.source}")]


def chain(host: Host, cause: Cause, asked: OptionId) -> list[Told]:
    """The sentence the customer hears, and each link of the chain."""
    catalogue, report = host.catalogue, host.report
    head = reason_head(catalogue, report, cause)
    told = [Told(f'"{head}"', Ink.HEAD)] if head else []
    links = reasons_about(catalogue, report, cause)
    told += [Told(f"  {text}", about=about_cause(catalogue, node, asked)) for text, node in links]
    taken = first_taken(catalogue, report, cause)
    return [*told, Told(f"  {taken}")] if taken else told


def offered_by(host: Host, cause: Cause) -> list[Told]:
    """What the house offers where the rules of a chain are in the way."""
    rules = host.catalogue.rules
    return _offered(fix for rule in _rules_of(cause) if rule in rules for fix in rules[rule].fixes)


def _offered(fixes: Iterable[str]) -> list[Told]:
    """What the house offers, under its heading."""
    told = [Told(f"  {fix}", ends=False) for fix in dict.fromkeys(fixes)]
    return [Told(offers_head(), Ink.HEAD), *told] if told else []


def laid(sentences: Iterable[Told], cells: int, start: int = 0) -> list[Line]:
    """The sentences as lines; the cursor may stand on what can be gone to, and often enough to scroll to all."""
    rows, standing, unseen = list[Line](), set[Item](), MOST_UNSEEN
    for told in sentences:
        texts = [cut(told.text, cells - 2)] if told.one_line else _indented(told.text, cells - 2)
        for number, text in enumerate(texts):
            item = told.about if number == 0 and told.about not in standing else None
            unseen += 1
            if item is None and text and unseen > (MOST_UNSEEN if told.ends else 2 * MOST_UNSEEN):
                item = OnText(start + len(rows))
            if item is not None:
                standing.add(item)
                unseen = 0
            rows.append(line(" ", Bit(text, told.ink), item=item) if text else EMPTY)
    return rows


def _rules_of(cause: Cause) -> list[RuleId]:
    rules = [cause.rule] if cause.rule is not None else []
    return rules + [rule for below in cause.because for rule in _rules_of(below)]


def _indented(text: str, cells: int) -> list[str]:
    """Wrapped, with what follows under the beginning."""
    bare = text.lstrip(" ")
    indent = " " * (len(text) - len(bare))
    first, *rest = wrapped(bare, cells - len(indent) - 2) or [""]
    return [f"{indent}{first}", *(f"{indent}  {part}" for part in rest)]
