"""A page of rows of which the one under the cursor says more below itself."""

from __future__ import annotations

from .page import Host, Page


class UnfoldingPage(Page):
    """Its ``lines`` count in ``below`` the lines under the row of the cursor, so that those stay in view with it."""

    def __init__(self, host: Host) -> None:
        super().__init__(host)
        self.below = 0

    def lay(self, cells: int) -> None:
        """Lay the lines out; those of another row once more when the cursor had to go to it."""
        before = self.at
        super().lay(cells)
        if self.at != before:
            super().lay(cells)

    def kept(self) -> int:
        """What is under the row is looked at with it."""
        return self.below
