"""The choices of two stands, paired: what came, went, stands for something else, moved, or is not what it was."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specbuilder.model.comparison import Change, ChangeKind
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.plain_text import one_line
from specbuilder.model.spec import Choice
from specbuilder.model.stand import Stand
from specbuilder.model.ways import Difference

from .compare_order import WalkOrder, place_rank
from .line_figures import less, line_figures


@dataclass(frozen=True, slots=True)
class _Pair:
    """What stands on the one side, and what in its place on the other."""

    before: Choice | None
    after: Choice | None

    @property
    def choices(self) -> tuple[Choice, ...]:
        """One or two."""
        return tuple(choice for choice in (self.before, self.after) if choice is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sides:
    """Both stands, and the order in which their things are listed."""

    before: Stand
    after: Stand
    order: WalkOrder

    def changes(self) -> tuple[tuple[Change, ...], int]:
        """Every line that differs, in the order of the walk, and how many choices stand alike."""
        found = [self._change(pair) for pair in sorted(self._pairs(), key=self._rank)]
        changes = tuple(change for change in found if change is not None)
        return changes, len(found) - len(changes)

    def _pairs(self) -> Iterator[_Pair]:
        gone, come = list[Choice](), list[Choice]()
        both = (*self.before.spec.choices, *self.after.spec.choices)
        for option in sorted({choice.option for choice in both}, key=self.order.option):
            pairs, was, now = _matched(_by_place(self.before, option), _by_place(self.after, option))
            gone, come = gone + was, come + now
            yield from pairs
        for choice in gone:
            other = next((c for c in come if self._stands_for(choice, c)), None)
            if other is not None:
                come.remove(other)
            yield _Pair(choice, other)
        yield from (_Pair(None, choice) for choice in come)

    def _stands_for(self, one: Choice, other: Choice) -> bool:
        """Whether both answer the same pick-one question."""
        group = self.order.group_of(one.option)
        return group is not None and group == self.order.group_of(other.option) and self.order.one_answer(group)

    def _rank(self, pair: _Pair) -> tuple[list[tuple[int, int, str]], list[int]]:
        options = sorted(self.order.option(choice.option) for choice in pair.choices)
        return options, sorted(place_rank(choice.place) for choice in pair.choices)

    def _change(self, pair: _Pair) -> Change | None:
        """The line of a pair; None when it stands alike on both sides."""
        difference = less(line_figures(self.after, pair.after), line_figures(self.before, pair.before))
        kind = self._kind(pair, difference)
        if kind is None:
            return None
        return Change(
            kind=kind,
            group=self._group(pair),
            before=pair.before,
            after=pair.after,
            name_before=_name(self.before, self.after, pair.before),
            name_after=_name(self.after, self.before, pair.after),
            difference=difference,
        )

    def _kind(self, pair: _Pair, difference: Difference) -> ChangeKind | None:
        was, now = pair.before, pair.after
        if was is None or now is None:
            return ChangeKind.ADDED if was is None else ChangeKind.REMOVED
        if was.option != now.option:
            return ChangeKind.REPLACED
        known = [was.option in stand.catalogue.options for stand in (self.before, self.after)]
        names = [_name(one, one, was) for one in (self.before, self.after)]
        differs = {
            ChangeKind.GONE: known == [True, False],
            ChangeKind.BACK: known == [False, True],
            ChangeKind.MOVED: was.place is not now.place,
            ChangeKind.RESIZED: (was.count, was.owner, was.own_part) != (now.count, now.owner, now.own_part),
            ChangeKind.NOTED: was.note != now.note,
            ChangeKind.RENAMED: names[0] != names[1],
            ChangeKind.REPRICED: difference.gross_pence != 0,
            ChangeKind.REWEIGHED: difference.mass_kg != 0,
            ChangeKind.RETIMED: (difference.hours, difference.weeks) != (0, 0),
        }
        return next((kind for kind, true in differs.items() if true), None)

    def _group(self, pair: _Pair) -> GroupId | None:
        return next((g for c in pair.choices if (g := self.order.group_of(c.option)) is not None), None)


def _by_place(stand: Stand, option: OptionId) -> list[Choice]:
    return sorted(stand.spec.chosen(option), key=lambda choice: place_rank(choice.place))


def _matched(was: list[Choice], now: list[Choice]) -> tuple[list[_Pair], list[Choice], list[Choice]]:
    """Choices of one option: those at one place belong together, then the rest in order; and what is left of each."""
    stayed, moved, left = list[_Pair](), list[Choice](), list(now)
    for choice in was:
        at = next((n for n, other in enumerate(left) if other.place is choice.place), None)
        if at is None:
            moved.append(choice)
        else:
            stayed.append(_Pair(choice, left.pop(at)))
    both = min(len(moved), len(left))
    pairs = [*stayed, *(_Pair(one, other) for one, other in zip(moved, left, strict=False))]
    return pairs, moved[both:], left[both:]


def _name(own: Stand, other: Stand, choice: Choice | None) -> str:
    """As the catalogue of its own side calls it, else that of the other; one that has left both by its id."""
    if choice is None:
        return ""
    known = own.catalogue.options.get(choice.option) or other.catalogue.options.get(choice.option)
    return known.name if known is not None else one_line(choice.option)
