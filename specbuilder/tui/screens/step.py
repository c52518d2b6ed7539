"""A step of the walk: its groups, folded or open, and their options."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import ClassVar, assert_never

from specbuilder.model.catalogue import Group, Option
from specbuilder.model.edits import LeaveOut, SetCount, Take
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.kinds import OptionState, Owner, Step
from specbuilder.model.own_parts import is_brought
from specbuilder.tui.columns import Row, drawn
from specbuilder.tui.ink import Ink
from specbuilder.tui.items import Item, OnField, OnGroup, OnOption
from specbuilder.tui.keys import Act, Where
from specbuilder.tui.line import EMPTY, Bit, Line, cut, left, line, wrapped
from specbuilder.wording.folded import folded_words
from specbuilder.wording.hints import open_it, type_it, why_it
from specbuilder.wording.rows import row_count_words, row_sentence, row_words
from specbuilder.wording.states import CHECKING, group_kind, group_state
from specbuilder.wording.what_if import what_changes

from .details import DetailsPage
from .fields import FieldLines, value_of
from .foresight import may_switch, switches, would_break
from .page import Host, Page
from .sheet import bring, ours_again
from .switch import SwitchPage
from .usual import UsualPage

NAME_CELLS, KIND_CELLS = 16, 12
ROOMY = 82
"""From this width on groups stand apart by an empty line."""


class StepPage(Page):
    """Groups and options of one step."""

    where: ClassVar[Where] = Where.WALK

    def __init__(self, host: Host, step: Step) -> None:
        super().__init__(host)
        self.step = step
        self.folded: set[GroupId] = set()
        self.fields = FieldLines(host, step)

    def entered(self) -> None:
        """Fold what is decided, open what is not; from here on nothing folds by itself."""
        report = self.host.report
        groups = self.host.catalogue.groups_of(self.step)
        self.folded = {g.id for g in groups if report.groups[g.id].decided and not report.groups[g.id].clashes}
        self.shown = ()
        undecided = next((g.id for g in groups if not report.groups[g.id].decided), None)
        if self.at is None and undecided is not None:
            self.unfold(undecided)

    # -- lines -----------------------------------------------------------------------------------------------------

    def lines(self, cells: int) -> Sequence[Line]:
        """Every group of the step."""
        result, after_folded = list[Line](), True
        rows = drawn(cells, self._rows)
        for group in self.host.catalogue.groups_of(self.step):
            folded = group.id in self.folded
            if result and cells >= ROOMY and not (folded and after_folded):
                result.append(EMPTY)
            after_folded = folded
            if folded:
                result.append(rows[OnGroup(group.id)])
                continue
            result.append(self._head(group, cells))
            result += (rows[OnOption(option.id)] for option in _in_order(self._options(group), group))
        return [*result, *self.fields.lines(cells, self.at, self.entry)]

    def _rows(self, note_cells: int) -> Iterator[Row]:
        for group in self.host.catalogue.groups_of(self.step):
            if group.id in self.folded:
                yield self._folded(group)
            else:
                yield from (self._option(option, note_cells) for option in self._options(group))

    def foot(self, cells: int) -> Sequence[Line]:
        """The sentences about the row under the cursor."""
        return [line(f" {text}") for text in wrapped(self._sentence(), cells - 2)]

    def _sentence(self) -> str:
        match self.at:
            case OnOption(option):
                return row_sentence(self.host.catalogue, self.host.report, option)
            case OnGroup(group):
                known = self.host.catalogue.groups[group]
                return f"{known.question} {known.seller_note}"
            case OnField():
                return self.fields.hint(self.at)
            case _:
                return ""

    def _options(self, group: Group) -> tuple[Option, ...]:
        return self.host.catalogue.options_of(group.id)

    def _head(self, group: Group, cells: int) -> Line:
        report, marks = self.host.report, self.host.marks
        status = report.groups[group.id]
        mark = marks.broken if status.clashes else (" " if status.decided else marks.doubt)
        state = group_state(self.host.catalogue, status)
        ink = Ink.CARE if status.clashes else Ink.PLAIN if status.decided else Ink.DOUBT
        kind = group_kind(self.host.catalogue, status)
        start = f" {mark} ", Bit(left(group.name, NAME_CELLS), Ink.HEAD), left(kind, KIND_CELLS)
        return line(*start, Bit(cut(state, cells - 3 - NAME_CELLS - KIND_CELLS), ink))

    def _folded(self, group: Group) -> Row:
        report = self.host.report
        mark = self.host.marks.chosen if report.groups[group.id].choices else " "
        told = folded_words(self.host.catalogue, report, group.id)
        return Row(mark=mark, ink=Ink.MINE, words=told, item=OnGroup(group.id))

    def _option(self, option: Option, note_cells: int) -> Row:
        catalogue, report = self.host.catalogue, self.host.report
        status = report.options[option.id]
        words = row_words(catalogue, report, option.id, note_cells)
        mark, ink = self.host.marks.of_state(status.state), ink_of(status.state)
        if status.clashes and report.spec.has(option.id):
            mark, ink = self.host.marks.broken, Ink.CARE
        elif option.id in report.unsettled:
            mark, ink, words = self.host.marks.doubt, Ink.DOUBT, replace(words, state=CHECKING)
        more = bool(row_count_words(catalogue, report, option.id))
        asks = status.state in (OptionState.BLOCKED, OptionState.FOLLOWS) or bool(status.clashes)
        return Row(mark=mark, ink=ink, words=words, item=OnOption(option.id), more=more, asks=asks)

    # -- acts ------------------------------------------------------------------------------------------------------

    def enter(self) -> None:
        """Open a folded group, take an option, or ask why it cannot be had."""
        match self.at:
            case OnGroup(group):
                self.unfold(group)
            case OnOption(option):
                self._enter_option(option)
            case OnField(field=field):
                self.open_text(value_of(self.host.report.spec, field))
            case _:
                pass

    def act(self, act: Act) -> bool:
        """More, fewer, whose, details, usual."""
        if act is Act.USUAL:
            self.host.show(UsualPage(self.host, self.step))
            return True
        if isinstance(self.at, OnField) and act is Act.LESS:
            return self.fields.clear(self.at)
        if not isinstance(self.at, OnOption):
            return act in (Act.MORE, Act.LESS, Act.THEIRS, Act.DETAILS)
        option = self.at.option
        match act:
            case Act.MORE:
                self._one_more(option)
            case Act.LESS:
                self._one_fewer(option)
            case Act.THEIRS:
                self._theirs(option)
            case Act.DETAILS:
                self.host.show(DetailsPage(self.host, option))
            case Act.WHY:
                self.host.why(option)
            case _:
                return False
        return True

    def digit(self, number: int) -> None:
        """An amount: of an option that may stand more than once, or the beginning of a typed text."""
        if isinstance(self.at, OnField):
            self.start_typing(str(number))
        elif isinstance(self.at, OnOption) and number and self._counts(self.at.option):
            if self.host.report.spec.has(self.at.option):
                self.host.edit(SetCount(option=self.at.option, count=number))
            else:
                self._enter_option(self.at.option, number)

    def hint_of(self, act: Act) -> str | None:
        """Enter does what the row asks for."""
        if isinstance(self.at, OnGroup):
            return {Act.ENTER: open_it(), Act.LESS: "", Act.DETAILS: ""}.get(act)
        if isinstance(self.at, OnField):
            return {Act.ENTER: type_it(), Act.WHY: "", Act.DETAILS: ""}.get(act)
        if act is Act.ENTER and isinstance(self.at, OnOption) and self._asks_why(self.at.option):
            return what_changes() if may_switch(self.host, self.at.option) else why_it()
        return None

    def take_text(self, text: str) -> bool:
        """A field of this step."""
        if isinstance(self.at, OnField) and self.fields.take(self.at, text):
            self.move(1)
            return True
        return False

    def unfold(self, group: GroupId) -> None:
        """Open a group and put the cursor on its answer, or on the first that may be had."""
        self.folded.discard(group)
        status, known = self.host.report.groups[group], self.host.catalogue.groups[group]
        options = [o.id for o in _in_order(self._options(known), known)]
        live = [o for o in options if self.host.report.options[o].state is not OptionState.BLOCKED]
        chosen = [c.option for c in status.choices if c.option in options]
        first = next(iter((*chosen, *live, *options)), None)
        self.at = OnOption(first) if first is not None else None

    def reach(self, item: Item) -> None:
        """Put the cursor on an item of the step, opening what hides it."""
        match item:
            case OnOption(option):
                self.folded.discard(self.host.catalogue.options[option].group)
                self.at = item
            case OnGroup(group):
                self.unfold(group)
            case _:
                self.at = item

    def order_of(self, item: Item | None) -> int:
        """Which place an item has in the step, counted in groups."""
        groups = [g.id for g in self.host.catalogue.groups_of(self.step)]
        match item:
            case OnOption(option):
                return groups.index(self.host.catalogue.options[option].group)
            case OnGroup(group):
                return groups.index(group)
            case OnField():
                return len(groups)
            case _:
                return -1

    def _enter_option(self, option: OptionId, count: int = 1) -> None:
        """Take what nothing is in the way of; what would clash or not fit is shown before anything is changed."""
        take = Take(option=option, count=count)
        if switches(self.host, option):
            self.host.show(SwitchPage(self.host, take))
        elif self._asks_why(option) or would_break(self.host, option, count):
            self.host.why(option)
        else:
            self.host.edit(replace(take, at=self.host.now()))

    def _asks_why(self, option: OptionId) -> bool:
        """True where Enter cannot take the option and tells why instead."""
        status = self.host.report.options[option]
        match status.state:
            case OptionState.BLOCKED:
                return True
            case OptionState.FOLLOWS:
                return self.host.report.spec.has(option)
            case OptionState.CHOSEN:
                return bool(status.clashes)
            case OptionState.OPEN:
                return False
            case _:
                assert_never(status.state)

    def _counts(self, option: OptionId) -> bool:
        return bool(row_count_words(self.host.catalogue, self.host.report, option))

    def _one_more(self, option: OptionId) -> None:
        chosen = self.host.report.spec.chosen(option)
        if chosen and self._counts(option):
            self.host.edit(SetCount(option=option, count=chosen[0].count + 1, place=chosen[0].place))
        else:
            self._enter_option(option)

    def _one_fewer(self, option: OptionId) -> None:
        chosen = self.host.report.spec.chosen(option)
        if chosen and chosen[-1].count > 1:
            self.host.edit(SetCount(option=option, count=chosen[-1].count - 1, place=chosen[-1].place))
        else:
            place = chosen[-1].place if len(chosen) > 1 else None
            self.host.edit(LeaveOut(option=option, place=place))

    def _theirs(self, option: OptionId) -> None:
        """Theirs, with its sheet; a part of the house that was marked so is ours again."""
        chosen = self.host.report.spec.chosen(option)
        if chosen and chosen[0].owner is Owner.CUSTOMER and not is_brought(self.host.catalogue.options[option]):
            ours_again(self.host, option)
        elif (meant := bring(self.host, option)) is not None:
            self.reach(OnOption(meant))
            self.host.show(DetailsPage(self.host, meant))


def ink_of(state: OptionState) -> Ink:
    """The ink of an option's mark and word."""
    match state:
        case OptionState.CHOSEN | OptionState.FOLLOWS:
            return Ink.MINE
        case OptionState.OPEN:
            return Ink.PLAIN
        case OptionState.BLOCKED:
            return Ink.CARE
        case _:
            assert_never(state)


def _in_order(options: Sequence[Option], group: Group) -> list[Option]:
    """The house usual first, then as the catalogue has them."""
    return sorted(options, key=lambda o: group.usual.index(o.id) if o.id in group.usual else len(group.usual))
