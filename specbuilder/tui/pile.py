"""The pages that lie on the counter: the main one, and what was opened beside or over it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .items import Item, OnAnswer, OnField, OnFinding, OnGroup, OnOption, OnReading
from .screens.jobs import JobsPage
from .screens.page import Page
from .sight import Sight

if TYPE_CHECKING:
    from specbuilder.model.ids import OptionId
    from specbuilder.model.kinds import Step


class Pile(Sight):
    """Which page is shown, which has the keys, and how one gets from one to another."""

    jobs: JobsPage
    sides: list[Page]
    side_cells: int

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

    def lay(self) -> None:
        """Lay out every page that can be seen."""
        raise NotImplementedError
