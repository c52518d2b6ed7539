"""The counter: which pages lie on it, which of them has the keys, and what every key asks for.

All keys come through one door, in the order they were pressed, so that what is typed ahead is neither lost nor
reordered. The toolkit only paints. Until the catalogue is read, keys that need it are kept.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf
from typing import TYPE_CHECKING, TypeVar

from specbuilder.wording.last_line import own_mistake, reading_catalogue

from .errands import Errand, Errands
from .items import Item, OnAnswer, OnField, OnFinding, OnGroup, OnJob, OnOption, OnReading
from .keys import Act, Where, act_of
from .marks import Marks
from .screens.help import ActionsPage, KeysPage
from .screens.jobs import JobRow, JobsPage, NoticePage
from .screens.page import Page
from .sight import Sight
from .strokes import begins_text, swallowed, type_on

if TYPE_CHECKING:
    from specbuilder.model.edits import Edit
    from specbuilder.model.ids import OptionId
    from specbuilder.model.kinds import Step

    from .opening import Opening

T = TypeVar("T")

MOVES: dict[Act, int] = {Act.UP: -1, Act.DOWN: 1, Act.FIRST: -100_000, Act.LAST: 100_000}
OPENING = (Act.ENTER, Act.NEW, Act.PAPERS, Act.EARLIER)
"""Acts on the list of jobs that need the catalogue."""
OF_A_STEP = (Where.WHY, Where.DETAILS, Where.USUAL, Where.SWITCH)
"""Pages about lines of one step."""
LIFE_ACTS = (Act.PAPERS, Act.SIGN, Act.BUILD)
TURNED_ACTS = (Act.CUSTOMER, Act.SIDE_BY_SIDE)
SIDE_ACTS = (Act.LEDGERS, Act.CIRCUITS, Act.OPEN_THINGS, Act.FIND, Act.KEYS, Act.ACTIONS, *LIFE_ACTS, *TURNED_ACTS)


class Counter(Sight):
    """Pages, keys and the last thing said."""

    def __init__(
        self, marks: Marks, rows: Sequence[JobRow], leave: Callable[[], None], turn: Callable[[], None]
    ) -> None:
        self.marks = marks
        self.drafts: dict[Item, str] = {}
        self.message = self.hint = ""
        self.sides: list[Page] = []
        self.opening = None
        self.main_cells = self.side_cells = 78
        self.rows_high = 12
        self.pressed_at_s = inf
        """When the key was pressed that is at work now; without a clock everything painted counts."""
        self.errands = Errands(runner=lambda errand: None)
        self.jobs = JobsPage(self, rows)
        self._ahead: list[tuple[str, str | None]] = []
        self._waits = False
        self._leave, self._turn = leave, turn

    # -- what lies on it -------------------------------------------------------------------------------------------

    @property
    def main(self) -> Page:
        """The page in the main place."""
        return self.walk.page if self.walk is not None else self.jobs

    @property
    def top(self) -> Page:
        """The page that has the keys."""
        return self.sides[-1] if self.sides else self.main

    @property
    def full(self) -> bool:
        """True while a page takes the whole window."""
        return any(side.full for side in self.sides)

    @property
    def shut(self) -> bool:
        """True while the customer reads the screen."""
        return any(side.shut for side in self.sides)

    def send(self, errand: Errand[T]) -> None:
        """Have something searched beside the screens."""
        self.errands.send(errand)

    def lay(self) -> None:
        """Lay out every page that can be seen. Nobody waits any more for what was asked about another spec."""
        self.errands.only_for(self.report.spec if self.walk is not None else None)
        self.main.lay(self.main_cells)
        if self.sides:
            self.top.lay(self.side_cells)

    # -- keys ------------------------------------------------------------------------------------------------------

    def loaded(self, opening: Opening) -> None:
        """The catalogue is read: do what was pressed meanwhile."""
        self.opening = opening
        self.jobs.rows = opening.rows()
        if self._waits:
            self._waits = False
            self.say("")
            ahead, self._ahead = self._ahead, []
            for key, character in ahead:
                self.press(key, character)
        self.lay()

    def failed(self, sentences: Sequence[str]) -> None:
        """The catalogue cannot be read."""
        self._waits, self._ahead = False, []
        self.sides = [NoticePage(self, sentences, stays=True)]
        self.lay()

    def painted(self, at_s: float = 0) -> None:
        """Everything laid out stands on the screen since then, by the clock of the keys."""
        self.top.painted(at_s)

    def press(self, key: str, character: str | None, at_s: float = inf) -> None:
        """One key, and when it was pressed."""
        page, self.pressed_at_s = self.top, at_s
        act = act_of(key, page.where, typing=page.entry is not None)
        if self._waits or (self.opening is None and page is self.jobs and act in OPENING):
            self._ahead.append((key, character))
            self._waits = True
            self.say(reading_catalogue())
            return
        if page.stray(act) or swallowed(page, act, character):
            self.lay()
            return
        at, said = page.at, self.message
        if page.entry is not None:
            type_on(self, page, key, character, act)
        elif begins_text(page, act, character):
            page.start_typing(character or "")
        elif act is not None:
            self.do(act)
        elif character is not None and len(character) == 1 and character in "0123456789":
            page.digit(int(character))
        self.lay()
        if (self.top, self.top.at) != (page, at) and self.message == said:
            self._forget()
        if self.opening is not None and self.main.entry is not None:
            self.opening.remember()

    def paste(self, text: str) -> None:
        """Text from the clipboard goes where text is being typed, and nowhere else."""
        page = self.top
        if page.entry is None and page.takes_text():
            page.start_typing()
        if page.entry is not None:
            page.type_text(text)
            self.lay()

    def _forget(self) -> None:
        """What was said about another line goes; what was done stays, and so does trouble with the disk."""
        if not self.hint and (self.opening is None or self.opening.desk.trouble is None):
            self.say("")

    def do(self, act: Act) -> None:
        """What an act means on the page that has the keys."""
        page = self.top
        if act in MOVES:
            page.move(MOVES[act])
        elif act in (Act.PAGE_UP, Act.PAGE_DOWN):
            page.move_rows(self.rows_high if act is Act.PAGE_DOWN else -self.rows_high)
        elif act is Act.ENTER and page is self.jobs:
            self.open_job()
        elif act is Act.ENTER:
            page.enter()
        elif not page.act(act):
            self._do_here(act)

    def _do_here(self, act: Act) -> None:
        """Acts that mean the same on every page."""
        walk = self.walk
        if act is Act.BACK:
            self.back()
        elif act is Act.LEAVE:
            self._leave()
        elif act is Act.GROUND:
            self._turn()
        elif act is Act.NEW and self.opening is not None:
            self.opening.begin()
        elif act is Act.EARLIER and self.opening is not None:
            self.opening.earlier(self.jobs.at)
        elif act in SIDE_ACTS:
            self._open_side(act)
        elif act is Act.HAND_OVER and self.opening is not None:
            self.opening.hand_over()
        elif walk is not None:
            if act is Act.NEXT:
                self.close_all()
            step = walk.step
            walk.do(act)
            if walk.step is not step:
                self._close_of_step()

    def _close_of_step(self) -> None:
        """A step back or forward led elsewhere: what tells about a line of the step before tells nothing there."""
        while self.sides and self.top.where in OF_A_STEP:
            self.close()

    # -- pages beside the main one ---------------------------------------------------------------------------------

    def show(self, page: Page) -> None:
        """Open a page beside or over the main one; the same kind of page is not stacked twice."""
        while page.shut and self.shut:
            self.close()
        if self.sides and type(self.top) is type(page):
            self.sides.pop().left()
        self.sides.append(page)
        page.lay(self.side_cells)

    def close(self) -> None:
        """Close the page on top."""
        if self.sides:
            self.top.stop_typing()
            self.sides.pop().left()
        self.lay()

    def back(self) -> None:
        """One step back: the page on top, then the job."""
        if self.sides:
            if not (isinstance(self.top, NoticePage) and self.top.stays):
                self.close()
        elif self.walk is not None and self.opening is not None:
            self.main.stop_typing()
            if self.trying:
                self.walk.doing.back_to_job()
            else:
                self.opening.leave()

    def walk_to(self, step: Step, item: Item | None) -> None:
        """Close every page beside the walk and stand there."""
        self.close_all()
        if self.walk is not None:
            self.walk.go(step, item)
            self.lay()

    def go_to(self, item: Item) -> None:
        """Stand on an item wherever it is, or open its page."""
        if self.walk is None:
            return
        if isinstance(item, OnReading | OnFinding):
            self.show(self.walk.page_of(item))
        elif isinstance(item, OnGroup | OnAnswer | OnOption | OnField):
            self.close_all()
            self.walk.reach(item)

    def why(self, option: OptionId) -> None:
        """Show why an option is as it is."""
        if self.walk is not None:
            self.show(self.walk.why_page(option))

    def close_all(self) -> None:
        """Close every page beside the main one."""
        while self.sides:
            self.close()

    def _open_side(self, act: Act) -> None:
        below = self.top.where
        if act is Act.PAPERS and self.walk is None:
            self.open_job()
        if act is Act.KEYS:
            self.show(KeysPage(self, below))
        elif self.walk is not None and (side := self.walk.side_page(act)) is not None:
            self.show(side)
        elif act is Act.ACTIONS:
            page = ActionsPage(self, below) if self.walk is None or self.shut else self.walk.actions_page(below)
            self.show(page)

    # -- the job ---------------------------------------------------------------------------------------------------

    def edit(self, edit: Edit, told: str = "") -> bool:
        """Do this to the spec of the open job."""
        done = self.walk is not None and self.walk.doing.edit(edit, told)
        self.lay()
        return done

    def say(self, text: str, hint: str = "") -> None:
        """Put a sentence on the last line; the hint behind it is never cut."""
        self.message, self.hint = text, hint

    def mistaken(self, mistake: Exception) -> None:
        """The program met a mistake of its own: say so, and let go of what may be in its way."""
        self.errands.only_for(None)
        self.sides = [side for side in self.sides if side.shut]
        self.say(own_mistake(f"{type(mistake).__name__}: {mistake}"))

    def open_job(self) -> None:
        """Open the job under the cursor of the list."""
        if self.opening is not None and isinstance(self.jobs.at, OnJob):
            self.opening.open(self.jobs.at.name)
