"""What works elsewhere than before: what a change takes from the owner of the van, and what it gives."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from .names import listed
from .plain import ended, raised
from .works_where import FILLING, Works, WorksWhere

_PLACES = (
    ("Away from a plug", "away", "away from a plug"),
    ("On a campsite plug", "plugged", "on a campsite plug"),
    ("While driving", "driving", "while driving"),
)
"""The three places: as a sentence begins, as a line of the grid calls them, and inside a sentence."""
_WORKS = (Works.YES, Works.LIMITS)


def works_changes(before: tuple[WorksWhere, ...], after: tuple[WorksWhere, ...]) -> tuple[str, ...]:
    """``Away from a plug: Gas kit worked; Induction hob works on a campsite plug only.``: a sentence for each place.

    Nothing of a place where one thing only took the place of another.
    """
    was, now = _by_name(before), _by_name(after)
    return tuple(sentence for place in _PLACES for sentence in _sentence(place, was, now))


def _by_name(lines: tuple[WorksWhere, ...]) -> dict[str, WorksWhere]:
    return {name: line for line in lines for name in line.names}


def _sentence(
    place: tuple[str, str, str], was: Mapping[str, WorksWhere], now: Mapping[str, WorksWhere]
) -> Iterator[str]:
    head, at, _ = place
    lost = [name for name, line in was.items() if _works(line, at) and not _works(now.get(name), at)]
    gained = [name for name, line in now.items() if _works(line, at) and not _works(was.get(name), at)]
    elsewhere = [name for name, line in now.items() if name not in was and not _works(line, at)]
    only_swapped = all(name not in now for name in lost) and all(name not in was for name in gained) and not elsewhere
    if not (lost or gained) or (lost and gained and only_swapped):
        return
    said = [f"{_named(lost)} worked"] if lost else []
    said += [f"{_named(gained)} {'works' if len(gained) == 1 else 'work'} now"] if gained else []
    kept = [name for name in lost if name in now]
    said += [f"{raised(name)} {_where(now[name])}" for name in (*kept, *elsewhere) if lost or name in kept]
    yield ended(f"{head}: {'; '.join(said)}")


def _works(line: WorksWhere | None, at: str) -> bool:
    return line is not None and getattr(line, at) in _WORKS


def _where(line: WorksWhere) -> str:
    """Where it does work now."""
    if any(getattr(line, at) is Works.UNKNOWN for _, at, _ in _PLACES):
        return "is not known yet"
    places = [inside for _, at, inside in _PLACES if getattr(line, at) in _WORKS]
    return f"works {listed(places)} only" if places else "works nowhere any more"


def _named(names: list[str]) -> str:
    return listed(name if name != FILLING else "Filling of the leisure battery" for name in names)
