"""Every way to finish a small build, one after the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from typing import NamedTuple

from specbuilder.model.brief import Answer
from specbuilder.model.catalogue import Option
from specbuilder.model.ids import BASE_VAN_GROUP
from specbuilder.model.kinds import Pick, Place
from specbuilder.model.situation import Situation
from tests.calc.plain import Build, Piece
from tests.calc.scene import RANGES

WORDS: Mapping[str, tuple[str, ...]] = {"van_in_ceiling": ("yes", "no")}


class Finished(NamedTuple):
    """A finished build and how each open thing was settled."""

    build: Build
    settled: Mapping[str, object]


def finished(situation: Situation) -> Iterator[Finished]:
    """Every answer of every undecided group, every van left, least and most of every unknown number."""
    yield from _ways(situation, [Piece(p.option, p.count, p.place) for p in situation.placed if not p.option.van], {})


def finished_with(situation: Situation, option: Option, place: Place | None) -> Iterator[Finished]:
    """The same with an option in the spec, and every free extra in or out."""
    catalogue = situation.catalogue
    one = catalogue.groups[option.group].pick is Pick.ONE and option.van is None
    left = [
        Piece(p.option, p.count, p.place)
        for p in situation.placed
        if not p.option.van and not (one and p.option.group == option.group)
    ]
    extras: dict[str, list[Piece | None]] = {}
    if option.van is None and not any(p.option.id == option.id and place in (None, p.place) for p in left):
        counts = range(1, 2 if one else option.max_count + 1)
        places = (place,) if place else option.places or (None,)
        extras["option"] = [Piece(option, count, at) for count in counts for at in places]
    for extra in situation.free:
        if extra.id != option.id:
            counts = range(1, extra.max_count + 1)
            extras[extra.id] = [None, *(Piece(extra, c, at) for c in counts for at in extra.places or (None,))]
    for ways in product(*extras.values()):
        pieces = [*left, *(w for w in ways if w is not None)]
        yield from _ways(situation, pieces, {option.group: (option,)} if one or option.van else {})


def _ways(situation: Situation, pieces: list[Piece], fixed: Mapping[str, tuple[Option, ...]]) -> Iterator[Finished]:
    open_groups: dict[str, list[Piece]] = {}
    for group, options in situation.undecided.items():
        if group != BASE_VAN_GROUP and group not in fixed:
            open_groups[group] = [Piece(o, 1, at) for o in options for at in o.places or (None,)]
    vans = (situation.van,) if situation.van else situation.undecided.get(BASE_VAN_GROUP, ())
    vans = fixed.get(BASE_VAN_GROUP, vans)
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
