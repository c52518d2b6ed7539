"""Every way to finish a small build, one after the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from typing import NamedTuple

from specbuilder.model.brief import Answer
from specbuilder.model.ids import BASE_VAN_GROUP
from specbuilder.model.situation import Situation
from tests.calc.plain import Build, Piece
from tests.calc.scene import RANGES

WORDS: Mapping[str, tuple[str, ...]] = {"van_in_ceiling": ("yes", "no"), "plugged_every_night": ("yes", "no")}


class Finished(NamedTuple):
    """A finished build and how each open thing was settled."""

    build: Build
    settled: Mapping[str, object]


def finished(situation: Situation) -> Iterator[Finished]:
    """Every answer of every undecided group, every van left, least and most of every unknown number."""
    pieces = [Piece(p.option, p.count, p.place) for p in situation.placed if not p.option.van]
    open_groups: dict[str, list[Piece]] = {}
    for group, options in situation.undecided.items():
        if group != BASE_VAN_GROUP:
            open_groups[group] = [Piece(o, 1, at) for o in options for at in o.places or (None,)]
    vans = (situation.van,) if situation.van else situation.undecided.get(BASE_VAN_GROUP, ())
    facts = situation.facts
    unknown = {key: ends(key) for key in (*RANGES, *WORDS) if not facts.known(key)}
    known = {str(key): value for key, value in facts.values.items()}
    for van, answers in product(vans, product(*unknown.values())):
        assert van.van is not None
        brief = {**known, **dict(zip(unknown, answers, strict=True))}
        for ways in product(*open_groups.values()):
            settled = {BASE_VAN_GROUP: van.id, **dict(zip(open_groups, ways, strict=True))}
            yield Finished(
                Build(van.van, [*pieces, *ways], brief), {**settled, **dict(zip(unknown, answers, strict=True))}
            )


def ends(key: str) -> tuple[Answer, ...]:
    """Least and most of an answer, or its words."""
    if key in WORDS:
        return WORDS[key]
    span = RANGES[key]
    return span.least, span.most
