"""Actions inside a job: steps and ledgers can be gone to by their names as well."""

from __future__ import annotations

from specbuilder.model.kinds import STEPS
from specbuilder.tui.items import Item, OnReading, OnStep
from specbuilder.tui.line import Line, line
from specbuilder.wording.finding_things import open_ledger
from specbuilder.wording.help import go_to_step

from .help import KEY_CELLS, ActionsPage
from .ledgers import LedgerPage, told


class JobActionsPage(ActionsPage):
    """Actions, steps and ledgers."""

    def places(self) -> list[Line]:
        """Every step, every ledger."""
        start = " " * (KEY_CELLS + 3)
        steps = [line(start, go_to_step(step), item=OnStep(step)) for step in STEPS]
        ledgers = [line(start, open_ledger(self.host.catalogue, r.id), item=OnReading(r.id)) for r in told(self.host)]
        return [*steps, *ledgers]

    def go(self, item: Item) -> None:
        """Go there."""
        match item:
            case OnStep(step):
                self.host.walk_to(step, None)
            case OnReading(ledger):
                self.host.show(LedgerPage(self.host, ledger))
            case _:
                pass
