"""The counter: which pages lie on it, which of them has the keys, and what every key asks for.

All keys come through one door, in the order they were pressed, so that what is typed ahead is neither lost nor
reordered. The toolkit only paints. Until the catalogue is read, keys that need it are kept.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf
from typing import TYPE_CHECKING, TypeVar

from specbuilder.wording.around import nothing_pasted, pasted_too_long
from specbuilder.wording.last_line import nothing_here, own_mistake, reading_catalogue

from .entry import LONGEST
from .errands import Errand, Errands
from .items import Item, OnJob
from .keyboard import Keyboard
from .keys import Act, Where
from .marks import Marks
from .pile import Pile
from .screens.help import ActionsPage, KeysPage
from .screens.jobs import JobRow, JobsPage, NoticePage
from .screens.page import Page
from .strokes import begins_text, swallowed, type_on

if TYPE_CHECKING:
    from specbuilder.model.edits import Edit

    from .guide import Guide
    from .opening import Opening

T = TypeVar("T")

MOVES: dict[Act, int] = {Act.UP: -1, Act.DOWN: 1, Act.FIRST: -100_000, Act.LAST: 100_000}
OPENING = (Act.ENTER, Act.NEW, Act.PAPERS, Act.EARLIER, Act.PRACTISE)
"""Acts on the list of jobs that need the catalogue."""
OF_A_STEP = (Where.WHY, Where.DETAILS, Where.USUAL, Where.SWITCH)
"""Pages about lines of one step."""
LIFE_ACTS = (Act.PAPERS, Act.SIGN, Act.BUILD)
TURNED_ACTS = (Act.CUSTOMER, Act.SIDE_BY_SIDE)
SIDE_ACTS = (Act.LEDGERS, Act.CIRCUITS, Act.OPEN_THINGS, Act.FIND, Act.KEYS, Act.ACTIONS, *LIFE_ACTS, *TURNED_ACTS)


class Counter(Pile):
    """Pages, keys and the last thing said."""

    def __init__(
        self,
        marks: Marks,
        rows: Sequence[JobRow],
        leave: Callable[[], None],
        turn: Callable[[], None],
        practise: Callable[[], None] = lambda: None,
        keyboard: Keyboard | None = None,
    ) -> None:
        self.marks, self.keyboard = marks, keyboard or Keyboard()
        self.drafts: dict[Item, str] = {}
        self.message = self.hint = ""
        self.sides: list[Page] = []
        self.opening = None
        self.main_cells = self.side_cells = 78
        self.window_cells = 80
        self.rows_high = 12
        self.pressed_at_s = inf
        """When the key was pressed that is at work now; without a clock everything painted counts."""
        self.errands = Errands(runner=lambda errand: None)
        self.jobs = JobsPage(self, rows)
        self._ahead: list[tuple[str, str | None]] = []
        self._waits = False
        self._leave, self._turn, self._practise = leave, turn, practise
        self.guide: Guide | None = None
        """On while a seller practises."""

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
        self.jobs.rows, self.jobs.alone = opening.rows(), None
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
        act = self.keyboard.act_of(key, page.where, page.entry is not None, character)
        if self._waits or (self.opening is None and page is self.jobs and act in OPENING):
            self._ahead.append((key, character))
            self._waits = True
            self.say(reading_catalogue())
            return
        if page.stray(act) or swallowed(page, act):
            self.lay()
            return
        at, said = page.at, self.message
        if page.entry is not None:
            type_on(self, page, key, character, act)
        elif begins_text(page, act, character):
            page.begin_text(character or "")
        elif act is not None:
            self.do(act)
        elif character is not None and len(character) == 1 and character in "0123456789":
            page.digit(int(character))
        elif character is not None and len(character) == 1 and not character.isspace() and not page.shut:
            self.say(nothing_here(character, self.keyboard.places_of(character)))
        self.lay()
        if (self.top, self.top.at) != (page, at) and self.message == said:
            self.forget()
        if self.opening is not None and self.main.entry is not None:
            self.opening.remember()

    def paste(self, text: str) -> None:
        """Text from the clipboard goes where text may be typed, and nowhere else."""
        page = self.top
        if page.entry is None and (page.takes_text() or page.letters()):
            page.start_typing(anew=True)
        if page.entry is not None:
            before = page.entry.text
            page.type_text(text)
            taken = len(page.entry.text) - len(before)
            if len(page.entry.text) == LONGEST and taken < len(text):
                self.say(pasted_too_long(taken, len(text), LONGEST))
            elif page.entry.text.strip() == before.strip() and text.strip():
                self.say(nothing_pasted())
            self.lay()

    def forget(self) -> None:
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
        elif act is Act.PRACTISE:
            self._practise()
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
