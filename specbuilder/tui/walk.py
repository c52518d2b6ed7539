"""The walk through one job: its nine pages, what is done on them, and the way from one open thing to the next."""

from __future__ import annotations

from typing import TypeAlias

from specbuilder.model.findings import Finding
from specbuilder.model.ids import BriefKey, GroupId, OptionId
from specbuilder.model.kinds import STEPS, Level, Step
from specbuilder.session.state import Done
from specbuilder.session.walk import OpenThing, open_things
from specbuilder.storage.journal import CursorPlace
from specbuilder.wording.jobs import saved
from specbuilder.wording.open_things import all_is_decided, only_this_is_open
from specbuilder.wording.why import nothing_broken_here

from .desk import Desk
from .doing import Doing
from .items import Field, Item, OnAnswer, OnField, OnFinding, OnGroup, OnOption, OnReading, row_of
from .keys import Act, Where
from .line import EMPTY, Line, fitted
from .screens.about import about_edit
from .screens.answering import broken_about
from .screens.brief import BriefPage
from .screens.check import CheckPage
from .screens.circuits import CircuitsPage
from .screens.customer import CustomerPage
from .screens.find import FindPage
from .screens.finish import FinishPage
from .screens.job_actions import JobActionsPage
from .screens.job_heading import heading
from .screens.ledgers import LedgerPage, LedgersPage, ledgers_head
from .screens.life import life_page
from .screens.margin import below, beside, open_lines, worst
from .screens.open_things import OpenPage, item_of
from .screens.page import Host, Page
from .screens.side_by_side import SideBySidePage
from .screens.step import StepPage
from .screens.why import WhyPage

BAR_ROWS = 3
BARS_FROM = 5
"""From so many rows on the foot holds ledgers as well."""

StopPage: TypeAlias = BriefPage | StepPage | CheckPage


class Walk:
    """Where the seller is in the open job."""

    def __init__(self, host: Host, desk: Desk) -> None:
        self.host = host
        self.desk = desk
        self.doing = Doing(host, desk)
        self.step = Step.BRIEF
        self.pages: dict[Step, StopPage] = {}
        self._asked_in_brief = {q.group for q in desk.catalogue.questions.values() if q.group is not None}

    @property
    def page(self) -> StopPage:
        """The page of the step."""
        return self.pages[self.step]

    def start(self, place: CursorPlace | None) -> None:
        """Fresh pages for a job, with the cursor where it was left."""
        self.pages = {step: self._page(step) for step in STEPS}
        self.step = place.step if place is not None else Step.BRIEF
        self.page.entered()
        if place is None:
            return
        if (item := self._item(place.row)) is not None:
            self.page.reach(item)
            if place.typed:
                self.host.drafts[item] = place.typed

    def place(self) -> CursorPlace:
        """Where the cursor is, with what is half typed."""
        at, entry = self.page.at, self.page.entry
        typed = entry.text if entry is not None else self.host.drafts.get(at, "") if at is not None else ""
        return CursorPlace(step=self.step, row=row_of(at), typed=typed)

    # -- doing -----------------------------------------------------------------------------------------------------

    def do(self, act: Act) -> None:
        """Acts that mean the same on every step."""
        match act:
            case Act.NEXT:
                self.next_thing()
            case Act.WHY:
                self.why()
            case Act.UNDO:
                self._stand_where(self.doing.undo())
            case Act.REDO:
                self._stand_where(self.doing.redo())
            case Act.BEFORE:
                self.step_by(-1)
            case Act.AFTER:
                self.step_by(1)
            case Act.WHAT_IF:
                self.doing.what_if()
            case Act.KEEP:
                self.doing.keep()
            case Act.FINISH:
                self.host.show(FinishPage(self.host))
            case _:
                pass

    # -- going -----------------------------------------------------------------------------------------------------

    def go(self, step: Step, item: Item | None = None) -> None:
        """Enter a step, and stand on an item of it."""
        if step is not self.step:
            self.step = step
            self.page.entered()
        if item is not None:
            self.page.reach(item)

    def step_by(self, by: int) -> None:
        """The step before or after; the ends stay."""
        index = STEPS.index(self.step) + by
        if 0 <= index < len(STEPS):
            self.go(STEPS[index])

    def next_thing(self) -> None:
        """The next undecided, unknown or broken thing behind the cursor, wherever it is; behind the last the first."""
        places = [
            place for thing in open_things(self.desk.catalogue, self.desk.report) if (place := self._target(thing))
        ]
        if not places:
            self.host.say(all_is_decided())
            return
        here = STEPS.index(self.step), self.page.order_of(self.page.at)
        orders = [(STEPS.index(step), self.pages[step].order_of(item)) for step, item in places]
        later = [(order, place) for order, place in zip(orders, places, strict=True) if order > here]
        step, item = min(later, key=lambda found: found[0])[1] if later else places[0]
        if len(set(places)) == 1 and not later:
            self.host.say(only_this_is_open())
        self.go(step, item)

    def why(self) -> None:
        """Why the thing under the cursor is as it is."""
        match self.page.at:
            case OnOption(option):
                self.host.why(option)
            case item:
                found = broken_about(self.desk.report, item) or self._just_broken()
                if found is not None:
                    self.host.show(WhyPage(self.host, found))
                else:
                    self.host.say(nothing_broken_here())

    def _just_broken(self) -> Finding | None:
        """What the last edit broke, while the last line speaks of it."""
        return next((f for f in self.desk.report.broken(Level.STOP, Level.SIGN) if f.rule == self.doing.broke), None)

    def side_page(self, act: Act) -> Page | None:
        """The page an act opens beside the walk."""
        match act:
            case Act.LEDGERS:
                return LedgersPage(self.host)
            case Act.CIRCUITS:
                return CircuitsPage(self.host)
            case Act.OPEN_THINGS:
                return OpenPage(self.host)
            case Act.FIND:
                return FindPage(self.host)
            case Act.CUSTOMER:
                return CustomerPage(self.host)
            case Act.SIDE_BY_SIDE:
                return SideBySidePage(self.host)
            case Act.PAPERS | Act.SIGN | Act.BUILD:
                return life_page(self.host, act)
            case _:
                return None

    def actions_page(self, below: Where) -> Page:
        """Everything that can be done or gone to from there."""
        return JobActionsPage(self.host, below)

    def why_page(self, option: OptionId) -> Page:
        """Why an option is as it is."""
        return WhyPage(self.host, option)

    def page_of(self, item: OnReading | OnFinding) -> Page:
        """The page that tells a ledger or a finding."""
        if isinstance(item, OnReading):
            return LedgerPage(self.host, item.ledger)
        found = next(f for f in self.desk.report.findings if f.rule == item.rule)
        return WhyPage(self.host, found)

    def reach(self, item: Item) -> None:
        """Stand on an item, in whichever step it is."""
        catalogue = self.desk.catalogue
        match item:
            case OnOption(option):
                self.go(catalogue.groups[catalogue.options[option].group].step, item)
            case OnGroup(group):
                self.go(catalogue.groups[group].step, item)
            case OnAnswer(key):
                self.go(Step.BRIEF if catalogue.brief[key].question is not None else Step.CHECK, item)
            case OnField():
                self.go(Step.BASE_VAN, item)
            case _:
                pass

    # -- what is seen ----------------------------------------------------------------------------------------------

    def heading(self, cells: int) -> list[Line]:
        """Job, glance, steps and the question of the step."""
        told = saved(self.desk.changed_at) if self.desk.changed_at and self.desk.trouble is None else ""
        return heading(self.host, self.step, cells, told, self.desk.aside.report if self.desk.aside else None)

    def foot(self, told: list[Line], cells: int, rows: int) -> list[Line]:
        """Under the page in a small window: sentences and six ledgers, in the lowest windows the worst of them."""
        if self.step in (Step.BRIEF, Step.CHECK):
            return fitted(told, rows, cells)
        if rows < BARS_FROM:
            sentences = fitted(told, rows - 1, cells)
            return [*sentences, *[EMPTY] * (rows - 1 - len(sentences)), *worst(self.host, cells)]
        room = rows - BAR_ROWS
        sentences = fitted(told, room, cells)
        return [*sentences, *[EMPTY] * (room - len(sentences)), *below(self.host, cells)]

    def beside(self, cells: int, rows: int, third: bool) -> list[Line]:
        """The right pane while no page is open in it."""
        return beside(self.host, cells, rows, third)

    def beside_heading(self, cells: int) -> Line:
        """The line over it."""
        return ledgers_head(cells)

    def third(self, cells: int) -> list[Line]:
        """The third pane."""
        return open_lines(self.host, cells)

    # -- inside ----------------------------------------------------------------------------------------------------

    def _page(self, step: Step) -> StopPage:
        match step:
            case Step.BRIEF:
                return BriefPage(self.host)
            case Step.CHECK:
                return CheckPage(self.host)
            case _:
                return StepPage(self.host, step)

    def _target(self, thing: OpenThing) -> tuple[Step, Item] | None:
        """Where the cursor goes for an open thing."""
        item = item_of(thing)
        if isinstance(item, OnGroup) and item.group in self._asked_in_brief:
            return Step.BRIEF, item
        if not isinstance(item, OnFinding):
            return thing.step, item
        found = next((f for f in self.desk.report.findings if f.rule == item.rule), None)
        subjects = [o for o in found.subjects if o in self.desk.catalogue.options] if found is not None else []
        if not subjects:
            return Step.CHECK, item
        last = subjects[-1]
        return self.desk.catalogue.groups[self.desk.catalogue.options[last].group].step, OnOption(last)

    def _item(self, row: str) -> Item | None:
        catalogue = self.desk.catalogue
        if row in catalogue.options:
            return OnOption(OptionId(row))
        if row in catalogue.groups:
            return OnGroup(GroupId(row))
        if row in catalogue.brief:
            return OnAnswer(BriefKey(row))
        return OnField(Field(row)) if row in list(Field) else None

    def _stand_where(self, done: Done | None) -> None:
        if done is not None and (item := about_edit(self.desk.catalogue, done.edit)) is not None:
            self.reach(item)
