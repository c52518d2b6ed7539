"""A spec with its report, looked at the way a file is written: choices in build order, things by their names."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.ids import GroupId, OptionId
from specbuilder.model.ledger import Entry, Lack, LedgerSpec
from specbuilder.model.parts import Circuit, Hole
from specbuilder.model.plain_text import one_line
from specbuilder.model.report import Report
from specbuilder.model.spec import Choice, Spec

from .items import item_numbers
from .positions import Positions

_STEERING = "steering"
"""The key of the brief that says on which side the wheel is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A choice with its option; None when that has left the catalogue."""

    taken: int
    """Counted from 1, in the order of taking."""
    item: int
    """The number on its box, the same in every revision."""
    choice: Choice
    option: Option | None
    holes: tuple[Hole, ...] = ()
    """Those that are cut beside what else is chosen."""
    circuits: tuple[Circuit, ...] = ()
    """Those that are run beside what else is chosen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpecView:
    """What a file of a spec is made from."""

    catalogue: Catalogue
    spec: Spec
    report: Report
    van_option: Option | None
    """The chosen base van."""
    positions: Positions
    """Where the choices sit."""
    taken: tuple[Chosen, ...]
    """The choices, as they were taken."""

    @property
    def steering(self) -> str:
        """Side of the steering wheel as the brief says; empty while that is not known."""
        facts = self.report.facts
        side = facts.get(_STEERING)
        if not isinstance(side, str):
            return ""
        return f"{side} (assumed)" if _STEERING in facts.assumed else side

    def in_build_order(self) -> tuple[Chosen, ...]:
        """By build step, then as the catalogue lists groups and options; strangers last."""
        steps = {step: number for number, step in enumerate(self.catalogue.work)}
        groups = {group: number for number, group in enumerate(self.catalogue.groups)}
        options = {option: number for number, option in enumerate(self.catalogue.options)}

        def order(chosen: Chosen) -> tuple[int, int, int, int]:
            option = chosen.option
            if option is None:
                return len(steps) + 1, 0, 0, chosen.taken
            step = steps.get(self.build_step(option), len(steps))
            return step, groups[option.group], options[option.id], chosen.taken

        return tuple(sorted(self.taken, key=order))

    def names(self, options: Iterable[OptionId]) -> str:
        """The options by name, with semicolons between, each once."""
        return "; ".join(dict.fromkeys(self.name(option) for option in options))

    def name(self, option: OptionId) -> str:
        """The name, or the id of one that has left the catalogue."""
        found = self.catalogue.options.get(option)
        return found.name if found else one_line(option)

    def lacks(self, lacks: Iterable[Lack]) -> str:
        """What must be known or decided first, by name, with semicolons between."""
        return "; ".join(dict.fromkeys(self._lack(lack) for lack in lacks))

    def line_name(self, entry: Entry) -> str:
        """What a line of a sum is about."""
        if entry.label:
            return entry.label
        if entry.option is not None:
            return self.name(entry.option)
        return f"{self.group_name(entry.group)}, not chosen yet" if entry.group else ""

    def group_name(self, group: GroupId) -> str:
        """The name of a group, or its id when it has left the catalogue."""
        found = self.catalogue.groups.get(group)
        return found.name if found else one_line(group)

    def front_edge_x_mm(self, option: Option) -> float | None:
        """Front edge of a bench, with everything that sets it back; None for anything else."""
        front_mm = option.space.front_x_mm
        if front_mm is None:
            return None
        return front_mm + sum(one.option.space.bench_shift_mm for one in self.taken if one.option)

    def silent(self) -> tuple[LedgerSpec, ...]:
        """Sums that are not made."""
        ledgers = self.catalogue.ledgers
        return tuple(ledgers[key] for key in self.report.silent_ledgers if key in ledgers)

    def build_step(self, option: Option) -> str:
        """The step of the build that needs it; the van itself is there from the first one."""
        if option.van is not None and not option.build_step:
            return next(iter(self.catalogue.work), "")
        return option.build_step

    def work_name(self, step: str) -> str:
        """``B7 Cabinets, worktop, fridge, cooker``."""
        found = self.catalogue.work.get(step)
        return f"{step} {found.work}" if found else step

    def _lack(self, lack: Lack) -> str:
        if lack.group is not None and lack.group in self.catalogue.groups:
            return self.catalogue.groups[lack.group].name
        if lack.key is not None and lack.key in self.catalogue.brief:
            return self.catalogue.brief[lack.key].ask
        return "the base van"


def view_of(catalogue: Catalogue, spec: Spec, report: Report, signed: Sequence[Spec] = ()) -> SpecView:
    """Everything that a file of this spec is made from.

    ``signed`` are the signed revisions before it, oldest first: they gave their parts the numbers that stay.
    """
    van = catalogue.options.get(report.van) if report.van else None
    positions = Positions(catalogue=catalogue, spec=spec, van=van.van if van else None)
    taken: list[Chosen] = []
    for number, (choice, item) in enumerate(zip(spec.choices, item_numbers(signed, spec), strict=True), 1):
        option = catalogue.options.get(choice.option)
        holes = positions.holes_of(option) if option and option.holes else ()
        circuits = positions.circuits_of(option) if option and option.circuits else ()
        taken.append(Chosen(taken=number, item=item, choice=choice, option=option, holes=holes, circuits=circuits))
    return SpecView(
        catalogue=catalogue, spec=spec, report=report, van_option=van, positions=positions, taken=tuple(taken)
    )
