"""Edits as a title: what one would do, in noun form."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, LeaveOut, Move, SetCount, Take
from specbuilder.model.ids import BASE_VAN_GROUP, GroupId, OptionId
from specbuilder.model.kinds import Pick
from specbuilder.model.spec import Spec

from .edits import done
from .names import listed, option_name, place_name
from .plain import lowered

Namer: TypeAlias = Callable[[Catalogue, OptionId], str]
"""How options are called: in full, or up to their first comma."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """Edits that are told together."""

    catalogue: Catalogue
    before: Spec
    edits: tuple[Edit, ...]
    """One change each."""
    asked: OptionId | None = None
    """What the customer asked for: it is in the place of nothing."""

    def title(self, name: Namer, *, whole: bool = False) -> str:
        """``Bench Three, and Pod galley instead``; ``whole``: with what gives way behind *instead of*."""
        return _joined(self.parts(name, whole=whole))

    def parts(self, name: Namer, *, whole: bool = False) -> list[str]:
        """The same, each change by itself."""
        return [words for edit in self.edits if (words := self._part(edit, name, whole))]

    def replaced(self) -> frozenset[OptionId]:
        """What leaves because something of these takes its place."""
        return frozenset(o for e in self.edits if isinstance(e, Take) for o in self._gives_way(e.option))

    def _part(self, edit: Edit, name: Namer, whole: bool) -> str:
        """One edit; empty for what another part tells."""
        match edit:
            case Take():
                return self._take(edit, name, whole)
            case LeaveOut(option=option, place=place):
                where = f" {place_name(place)}" if place and len(self.before.chosen(option)) > 1 else ""
                return "" if option in self.replaced() else f"leave out {name(self.catalogue, option)}{where}"
            case SetCount(option=option, count=0):
                return f"leave out {name(self.catalogue, option)}"
            case SetCount(option=option, count=count, place=place):
                was = sum(c.count for c in self.before.chosen(option) if place in (None, c.place))
                return f"{count} x {name(self.catalogue, option)}, not {was}"
            case Move(option=option, to=to):
                return f"{name(self.catalogue, option)} {place_name(to)} instead"
            case _:
                return lowered(done(self.catalogue, edit, self.before, self.before))

    def _take(self, edit: Take, name: Namer, whole: bool) -> str:
        """``Pod galley instead``, ``Solar 120 W, light, instead of Solar 160 W``, ``CO alarm``."""
        known = self.catalogue.options.get(edit.option)
        told = name(self.catalogue, edit.option)
        if edit.count and edit.count > 1:
            told = f"{edit.count} x {told}"
        if edit.place and known and len(known.places) > 1:
            told = f"{told} {place_name(edit.place)}"
        if known and known.group == BASE_VAN_GROUP:
            told = f"{told} as base van"
        gone = self._gives_way(edit.option)
        comma = "," if "," in told else ""
        if gone and whole:
            return f"{told}{comma} instead of {listed(name(self.catalogue, option) for option in gone)}"
        return f"{told}{comma} instead" if gone and edit.option != self.asked else told

    def _gives_way(self, option: OptionId) -> tuple[OptionId, ...]:
        """What leaves for it: the answer that stands in its pick-one group, or what is left out of a pick-any one."""
        group = self._group(option)
        beside = [c.option for c in self.before.choices if c.option != option and self._group(c.option) == group]
        if group is None or not beside:
            return ()
        if self.catalogue.groups[group].pick is Pick.ONE:
            return tuple(dict.fromkeys(beside))
        left_out = {edit.option for edit in self.edits if isinstance(edit, LeaveOut)}
        return tuple(o for o in dict.fromkeys(beside) if o in left_out)

    def _group(self, option: OptionId) -> GroupId | None:
        known = self.catalogue.options.get(option)
        return known.group if known else None


def main_name(catalogue: Catalogue, option: OptionId) -> str:
    """The name up to its first comma or colon."""
    return option_name(catalogue, option).partition(",")[0].partition(":")[0]


def _joined(parts: list[str]) -> str:
    """Two with ``, and``; more, or with commas of their own, with a semicolon."""
    if len(parts) < 2:
        return "".join(parts)
    if len(parts) == 2 and not any("," in words for words in parts):
        return ", and ".join(parts)
    return f"{'; '.join(parts[:-1])}; and {parts[-1]}"
