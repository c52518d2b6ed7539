"""How many of each choice a spec may hold: what the counter refuses is refused in a file as well."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import NamedTuple

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import Pick, Place
from specbuilder.model.spec import Choice

from .faults import Spot, quotable

_TIMES: Mapping[int, str] = MappingProxyType({1: "once", 2: "twice"})


class PlacedChoice(NamedTuple):
    """A choice and the place of its table in the file."""

    choice: Choice
    spot: Spot


def note_counts(placed: Iterable[PlacedChoice], catalogue: Catalogue) -> None:
    """Notes a fault at every choice that is one too many. What has left the catalogue has no count to be held against.

    What came along with another choice does not fill up its group: it comes whether there is room or not.
    """
    seen: set[tuple[OptionId, Place | None]] = set()
    standing: Counter[OptionId] = Counter()
    in_group: Counter[GroupId] = Counter()
    for choice, spot in placed:
        option = catalogue.options.get(choice.option)
        if option is None:
            continue
        if (option.id, choice.place) in seen:
            _note_repeated(choice, spot)
            continue
        seen.add((option.id, choice.place))
        standing[option.id] += choice.count
        if standing[option.id] > option.max_count:
            _note_too_many(option, choice.count, standing[option.id], spot)
        elif not choice.came_with:
            in_group[option.group] += choice.count
            _note_full(in_group[option.group], option, catalogue, spot)


def _note_repeated(choice: Choice, spot: Spot) -> None:
    where = f"on the {choice.place.value}" if choice.place is not None else "at the same place"
    words = f"{quotable(choice.option)} stands {where} already: take one of the two out."
    (spot.at("place") if choice.place is not None else spot).fault(words)


def _note_too_many(option: Option, count: int, standing: int, spot: Spot) -> None:
    most = option.max_count
    may = f"{quotable(option.id)} may stand {_times(most)}"
    if count > most:
        spot.at("count").fault(f"{count}, and {may}: write {most}{' or less' if most > 1 else ''}.")
    else:
        spot.fault(f"with this it is {standing}, and {may} in one van: take {standing - most} out.")


def _note_full(count: int, option: Option, catalogue: Catalogue, spot: Spot) -> None:
    group = catalogue.groups.get(option.group)
    if group is not None and group.pick is Pick.ANY and count > group.max_choices:
        words = f"with this {quotable(group.id)} holds {count}, and it may hold {group.max_choices}"
        spot.fault(f"{words}: take {count - group.max_choices} out.")


def _times(most: int) -> str:
    return _TIMES.get(most, f"{most} times at most")
