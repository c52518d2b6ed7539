"""Ways out in words: what one would do, what it clears and costs, and how far the search has looked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import LeaveOut, SetCount, Together
from specbuilder.model.ids import OptionId, RuleId
from specbuilder.model.spec import Spec
from specbuilder.model.ways import ClearFindings, Goal, LetIn, RankBy, WayOut, WaysOut

from .differences import DifferenceCells, difference_cells, difference_spoken
from .edits import done, single
from .key_names import pressed
from .names import listed, option_name, rule_name
from .plain import ended, fitted
from .way_parts import Telling, main_name

_FEW = 3
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_ORDINALS = ("", "", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")


@dataclass(frozen=True, slots=True, kw_only=True)
class WayWords:
    """A way out, part by part."""

    title: str
    """``Bench Three, and Pod galley instead``: in one line."""
    under: tuple[str, ...]
    """``clears both``, ``lost: Side galley``, ...: one fact each."""
    cells: DifferenceCells


def ranked_by(rank_by: RankBy) -> str:
    """``fewest changes first, then price``: what the order goes by."""
    return f"fewest changes first, then {rank_word(rank_by)}"


def rank_word(rank_by: RankBy) -> str:
    """``price``, ``kg``, ``hours``, ``weeks``."""
    return "kg" if rank_by is RankBy.MASS else rank_by.value


def way_words(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> WayWords:
    """All of a way; its facts are short and may be joined or wrapped."""
    return WayWords(
        title=way_title(catalogue, before, goal, way),
        under=tuple(_under(catalogue, goal, way, way.left)),
        cells=difference_cells(way.difference),
    )


def way_title(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut, width: int = 200) -> str:
    """``Solar 120 W, light, instead``, ``Bench Three, and Pod galley instead``.

    Where that is too long, names end at their first comma, and then it is cut.
    """
    telling = _telling(catalogue, before, goal, way)
    titles = [telling.title(name) for name in (option_name, main_name)]
    return next((title for title in titles if len(title) <= width), fitted(titles[-1], width))


def way_sentence(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> str:
    """What to do instead of what: ``Bench Three, and Pod galley instead of Side galley.``"""
    return ended(_telling(catalogue, before, goal, way).title(option_name, whole=True))


def way_spoken(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> tuple[str, ...]:
    """A way one fact a line, for line commands: what to do instead of what, what it costs, clears, brings and loses."""
    telling = _telling(catalogue, before, goal, way)
    lost = tuple(option for option in way.left if option not in telling.replaced())
    parts = telling.parts(option_name, whole=True)
    if len(parts) <= _FEW:
        does = [way_sentence(catalogue, before, goal, way)]
    else:
        does = [f"{_changes(len(parts))}:", *map(ended, parts)]
    return (
        *does,
        ended(difference_spoken(catalogue, way.difference)),
        *(ended(fact) for fact in _under(catalogue, goal, way, lost)),
    )


def way_taken(catalogue: Catalogue, before: Spec, way: WayOut) -> str:
    """What the last line says once it is taken; no full stop, so that a hint may follow."""
    edit = way.edits[0] if len(way.edits) == 1 else Together(edits=way.edits)
    return done(catalogue, edit, before, way.spec, way.brought, way.left)


def looking() -> str:
    """While the search goes on; what was found stands above it."""
    return "looking for ways out"


def nothing_changed_yet() -> str:
    """Below the list, before one is taken."""
    return "Nothing is changed yet."


def breaks_legend(mark: str) -> str:
    """What the mark before the number of a way says."""
    return f"{mark} before a number: breaks something else, to be accepted in writing."


def its_sheet() -> str:
    """Under the ways out of a part that the customer brings and nobody has measured."""
    return f"{pressed('details')} on the row of their part opens its sheet: filled in, it clears this."


def ways_closing(ways: WaysOut, most: int = 3, reasons_at: str = "The reasons are above.") -> str:
    """How far was looked, below the list; ``most`` ways were asked for.

    ``No third way within three changes. All kinds of change were tried.`` A search that ended early says so.
    """
    if not ways.finished:
        return looking()
    found = len(ways.ways)
    if not ways.complete:
        return f"{_stopped_early(found)} {_looked_at(ways.within)}".rstrip()
    within = f"within {_changes(ways.within)}"
    if not found and not ways.within:
        return f"No change of the choices is a way out. {reasons_at}".rstrip()
    if not found:
        return f"No way found {within}. {reasons_at}".rstrip()
    if found >= most:
        return "No other way goes before these. All kinds of change were tried."
    return f"No {_ordinal(found + 1)} way {within}. All kinds of change were tried."


def no_such_way(number: int, ways: WaysOut) -> str:
    """Said when a way is asked for that is not on the list."""
    found = len(ways.ways)
    if not found:
        return f"There is no way {number}: no way out was found."
    if found == 1:
        return f"There is no way {number}: way 1 is the only one."
    return f"There is no way {number}: ways 1 to {found} can be taken."


def more_in_fix() -> str:
    """Behind what a line command broke."""
    return "fix lists the ways out."


def first_offer(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> str:
    """``fix would offer: Larchlid tilting roof, long, instead of Larchlid tilting roof, short.``"""
    return f"fix would offer: {way_sentence(catalogue, before, goal, way)}"


def nothing_to_mend() -> str:
    """Said when nothing is broken at STOP or SIGN."""
    return "Nothing is broken at STOP or SIGN: there is nothing to find a way out of."


def _telling(catalogue: Catalogue, before: Spec, goal: Goal, way: WayOut) -> Telling:
    asked = goal.option if isinstance(goal, LetIn) else None
    return Telling(catalogue=catalogue, before=before, edits=tuple(single(way.edits)), asked=asked)


def _under(catalogue: Catalogue, goal: Goal, way: WayOut, left: tuple[OptionId, ...]) -> Iterator[str]:
    yield from _cleared(catalogue, goal, way)
    if way.breaks:
        yield f"SIGN, in writing: {_rules(catalogue, way.breaks)}"
    if way.brought:
        yield f"brings {listed((main_name(catalogue, o) for o in way.brought), most=_FEW)}"
    named = {e.option for e in single(way.edits) if isinstance(e, LeaveOut | SetCount)}
    if lost := [option for option in left if option not in named]:
        yield f"lost: {listed((main_name(catalogue, o) for o in lost), most=_FEW)}"


def _cleared(catalogue: Catalogue, goal: Goal, way: WayOut) -> Iterator[str]:
    match goal:
        case ClearFindings(rules=asked):
            bad = tuple(rule for rule in asked if rule not in way.clears)
            if not bad:
                yield f"clears {_all_of(len(asked))}"
            else:
                good = tuple(rule for rule in asked if rule in way.clears)
                yield f"clears {_rules(catalogue, good) or 'none of them'}"
                yield f"stays broken: {_rules(catalogue, bad)}"
            if more := tuple(rule for rule in way.clears if rule not in asked):
                yield f"clears {_rules(catalogue, more)} as well"
        case LetIn():
            if way.clears:
                yield f"clears {_rules(catalogue, way.clears)} as well"
        case _:
            assert_never(goal)


def _all_of(count: int) -> str:
    """``it``, ``both``, ``all 3``."""
    match count:
        case 1:
            return "it"
        case 2:
            return "both"
        case _:
            return f"all {count}"


def _rules(catalogue: Catalogue, rules: tuple[RuleId, ...]) -> str:
    return listed((rule_name(catalogue, rule) for rule in rules), most=_FEW)


def _stopped_early(found: int) -> str:
    if not found:
        return "No way found yet; the search stopped before it knew whether there is one."
    return "The search stopped before it knew whether there are better ones."


def _looked_at(within: int) -> str:
    return ended(f"Every way of up to {_changes(within)} was looked at") if within else ""


def _changes(count: int) -> str:
    number = _NUMBERS[count] if count < len(_NUMBERS) else str(count)
    return f"{number} {'change' if count == 1 else 'changes'}"


def _ordinal(number: int) -> str:
    return _ORDINALS[number] if number < len(_ORDINALS) else f"{number}th"
