"""Find by a few letters: options, questions of the walk and of the brief, ledgers and rules."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.kinds import Step


class HitKind(StrEnum):
    """What was found."""

    OPTION = "option"
    GROUP = "group"
    QUESTION = "question"
    LEDGER = "ledger"
    RULE = "rule"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """A thing that was found; its name is looked up in the catalogue."""

    kind: HitKind
    id: str
    step: Step


def find(catalogue: Catalogue, text: str) -> tuple[Hit, ...]:
    """Everything whose name holds all the words typed, best first: beginnings before middles, names before text."""
    words = text.casefold().split()
    if not words:
        return ()
    ranked = [
        (rank, order, hit)
        for order, (hit, name, more) in enumerate(_things(catalogue))
        if (rank := _rank(words, name.casefold(), more.casefold())) is not None
    ]
    return tuple(hit for _, _, hit in sorted(ranked, key=lambda r: r[:2]))


def _rank(words: list[str], name: str, more: str) -> int | None:
    if name.startswith(words[0]) and all(w in name for w in words):
        return 0
    if all(any(part.startswith(w) for part in name.split()) for w in words):
        return 1
    if all(w in name for w in words):
        return 2
    if all(w in name or w in more for w in words):
        return 3
    return None


def _things(catalogue: Catalogue) -> Iterator[tuple[Hit, str, str]]:
    """What can be found, the things a seller asks for most first."""
    for option in catalogue.options.values():
        step = catalogue.groups[option.group].step
        yield Hit(kind=HitKind.OPTION, id=option.id, step=step), option.name, option.description
    for group in catalogue.groups.values():
        yield Hit(kind=HitKind.GROUP, id=group.id, step=group.step), group.name, group.question
    for line in catalogue.brief.values():
        if line.question is not None:
            name = f"{catalogue.questions[line.question].asks} {line.key.replace('_', ' ')}"
            yield Hit(kind=HitKind.QUESTION, id=line.key, step=Step.BRIEF), name, line.ask
    for ledger in catalogue.ledgers.values():
        yield Hit(kind=HitKind.LEDGER, id=ledger.id, step=Step.CHECK), f"{ledger.name} {ledger.short}", ""
    for rule in catalogue.rules.values():
        yield Hit(kind=HitKind.RULE, id=rule.id, step=rule.step), rule.because, ""
