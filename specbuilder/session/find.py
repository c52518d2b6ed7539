"""Find by a few letters: options, questions of the walk and of the brief, ledgers and rules."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.ids import BriefKey
from specbuilder.model.kinds import Step

_CALLED = re.compile(r"[,:]")


class HitKind(StrEnum):
    """What was found."""

    OPTION = "option"
    GROUP = "group"
    QUESTION = "question"
    LEDGER = "ledger"
    RULE = "rule"
    FIELD = "field"
    """Something that is typed and is no line of the brief: its names are the caller's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """A thing that was found; its name is looked up in the catalogue."""

    kind: HitKind
    id: str
    step: Step


def find(
    catalogue: Catalogue,
    text: str,
    called: Mapping[BriefKey, str] = MappingProxyType({}),
    fields: Sequence[tuple[Hit, str]] = (),
) -> tuple[Hit, ...]:
    """Everything whose name holds all the words typed, best first: beginnings before middles, names before text.

    What a thing is called stands before the first comma or colon of its name; what is behind only tells it apart.

    ``called`` holds what the lines of the brief are called on screen, ``fields`` what is typed beside them.
    """
    words = text.casefold().split()
    if not words:
        return ()
    ranked = [
        (rank, order, hit)
        for order, (hit, name, more) in enumerate(_things(catalogue, called, fields))
        if (rank := _rank(words, name.casefold(), more.casefold(), first=hit.kind is HitKind.GROUP)) is not None
    ]
    return tuple(hit for _, _, hit in sorted(ranked, key=lambda r: r[:2]))


def _rank(words: list[str], name: str, more: str, *, first: bool) -> int | None:
    """``first``: it is found before all others by the beginning of its name: there are few of its kind."""
    if first and name.startswith(" ".join(words)):
        return -1
    if _begin(words, _CALLED.split(name, maxsplit=1)[0]):
        return 0
    if _begin(words, name):
        return 1
    if all(w in name for w in words):
        return 2
    if all(w in name or w in more for w in words):
        return 3
    return None


def _begin(words: list[str], name: str) -> bool:
    """True when each of the words begins a word of the name."""
    return all(any(part.startswith(w) for part in name.split()) for w in words)


def _things(
    catalogue: Catalogue, called: Mapping[BriefKey, str], fields: Sequence[tuple[Hit, str]]
) -> Iterator[tuple[Hit, str, str]]:
    """What can be found, the questions first: there are few of them, and they are asked for by name."""
    for line in catalogue.brief.values():
        if line.question is not None:
            name = called.get(line.key, line.key.replace("_", " "))
            more = f"{catalogue.questions[line.question].asks} {line.key.replace('_', ' ')} {line.ask}"
            yield Hit(kind=HitKind.QUESTION, id=line.key, step=Step.BRIEF), name, more
    for hit, name in fields:
        yield hit, name, ""
    for option in catalogue.options.values():
        step = catalogue.groups[option.group].step
        yield Hit(kind=HitKind.OPTION, id=option.id, step=step), option.name, option.description
    for group in catalogue.groups.values():
        yield Hit(kind=HitKind.GROUP, id=group.id, step=group.step), group.name, group.question
    for ledger in catalogue.ledgers.values():
        yield Hit(kind=HitKind.LEDGER, id=ledger.id, step=Step.CHECK), f"{ledger.name} {ledger.short}", ""
    for rule in catalogue.rules.values():
        yield Hit(kind=HitKind.RULE, id=rule.id, step=rule.step), rule.because, ""
