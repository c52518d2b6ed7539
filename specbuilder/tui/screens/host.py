"""What a page may ask of the counter it stands on."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol, TypeVar

from specbuilder.tui.items import Item
from specbuilder.tui.keyboard import Keyboard
from specbuilder.tui.keys import Act
from specbuilder.tui.marks import Marks

if TYPE_CHECKING:  # the list of jobs is a page before any catalogue is there
    from specbuilder.model.catalogue import Catalogue
    from specbuilder.model.edits import Edit
    from specbuilder.model.ids import OptionId
    from specbuilder.model.kinds import Step
    from specbuilder.model.report import Report
    from specbuilder.tui.deeds import Deeds
    from specbuilder.tui.errands import Errand
    from specbuilder.tui.searches import Searches

    from .page import Page

T = TypeVar("T")


class Host(Protocol):
    """The counter, as pages see it."""

    marks: Marks
    keyboard: Keyboard
    rows_high: int
    """Lines of the page that can be seen at once."""
    window_cells: int
    """Cells of a line of the window."""
    pressed_at_s: float
    """When the key was pressed that is at work now, by the clock of the keys."""
    drafts: dict[Item, str]
    """Texts that were typed and not taken, by the line they were typed on."""

    @property
    def catalogue(self) -> Catalogue:
        """What can be built."""
        ...

    @property
    def report(self) -> Report:
        """Everything about the spec as it stands."""
        ...

    @property
    def editable(self) -> Report:
        """Everything about what an edit is done to: the job, or of what has left the house its next revision."""
        ...

    @property
    def deeds(self) -> Deeds:
        """What is done to the job as a whole."""
        ...

    def now(self) -> str:
        """Date and time, ``YYYY-MM-DD HH:MM``."""
        ...

    @property
    def searches(self) -> Searches:
        """What can be searched."""
        ...

    @property
    def trying(self) -> bool:
        """True while a what-if is on."""
        ...

    def send(self, errand: Errand[T]) -> None:
        """Have something searched beside the screens."""
        ...

    def would_be(self, edit: Edit) -> Report:
        """What would follow from an edit; nothing is changed."""
        ...

    def may_write_down(self) -> bool:
        """True where the job can be quoted, signed and recorded; else it is said why not."""
        ...

    def edit(self, edit: Edit, told: str = "") -> bool:
        """Do this to the spec and say it, in these words or its own; False when it was refused."""
        ...

    def say(self, text: str, hint: str = "") -> None:
        """Put a sentence on the last line; the hint behind it is never cut."""
        ...

    def show(self, page: Page) -> None:
        """Open a page beside or over the walk."""
        ...

    def close(self) -> None:
        """Close the page on top."""
        ...

    def anew(self) -> None:
        """Another revision lies on the desk: fresh pages for it, with the cursor where it was."""
        ...

    def edit_job(self, edit: Edit) -> bool:
        """Do this to the job itself while a what-if lies over it."""
        ...

    def begin_variant(self) -> None:
        """A copy of what is on the screens becomes a variant of the job, and is open."""
        ...

    def go_over(self, number: str) -> None:
        """Leave this job and open that one."""
        ...

    def walk_to(self, step: Step, item: Item | None) -> None:
        """Close every page over the walk and put its cursor there."""
        ...

    def go_to(self, item: Item) -> None:
        """Stand on an item wherever it is: its row of the walk, or its page."""
        ...

    def do(self, act: Act) -> None:
        """What this act means where the cursor is."""
        ...

    def why(self, option: OptionId) -> None:
        """Show why an option is as it is."""
        ...
