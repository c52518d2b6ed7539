"""A propagation over the choices of one spec, with the choices at hand."""

from __future__ import annotations

from dataclasses import dataclass

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.findings import Cause, CauseKind
from specbuilder.model.ids import OptionId
from specbuilder.model.spec import Choice

from .clauses import Placement, placements_of
from .propagate import BY_GROUP, Trail, propagate
from .rulebook import Rulebook


@dataclass(frozen=True, slots=True)
class Run:
    """A propagation over the choices of one spec."""

    rulebook: Rulebook
    choices: tuple[Choice, ...]
    """The choices that were held, in the order of the mask's bits: that of the catalogue."""
    trail: Trail

    def culprits(self, mask: int) -> tuple[Choice, ...]:
        """The choices of a mask."""
        found: list[Choice] = []
        while mask:
            low = mask & -mask
            found.append(self.choices[low.bit_length() - 1])
            mask ^= low
        return tuple(found)

    def is_beside(self, option: OptionId) -> bool:
        """True when nothing but the choice of its pick-one group keeps the option out."""
        return any(self.trail.reason[seat.variable] == BY_GROUP for seat in self.rulebook.rows[option].seats)

    def is_out(self, option: OptionId, swapped: int = 0) -> bool:
        """True when nothing can bring the option in; ``swapped`` masks choices that are thought away."""
        variable = self.rulebook.clauses.option[option]
        return self.trail.value[variable] == -1 and not self.trail.mask[variable] & swapped


def run(rulebook: Rulebook, choices: tuple[Choice, ...], answers: tuple[int, ...]) -> Run:
    """Propagate these choices in catalogue order, so that the order they were taken in changes nothing.

    Choices the catalogue does not know are passed over.
    """
    found = [(v, c) for c in choices if (v := _variable(rulebook, c)) is not None]
    found.sort(key=lambda pair: pair[0])
    held = tuple(c for _, c in found)
    variables = [v for v, _ in found]
    return Run(rulebook, held, propagate(rulebook.clauses, variables, answers))


def _variable(rulebook: Rulebook, choice: Choice) -> int | None:
    placement = rulebook.clauses.placement
    exact = placement.get(Placement(choice.option, choice.place))
    option = rulebook.catalogue.options.get(choice.option)
    if exact is not None or option is None:
        return exact
    return placement[placements_of(option)[0]]  # at a place it may not take: the rule about places says so


def choice_cause(catalogue: Catalogue, choice: Choice) -> Cause:
    """A choice as the end of a chain; a base van is told apart from the rest."""
    is_van = catalogue.options[choice.option].van is not None
    return Cause(kind=CauseKind.VAN if is_van else CauseKind.CHOICE, option=choice.option, place=choice.place)
