"""Beside: of very many alternatives at once, each in place of something held, whether a build has it.

Each answer keeps its certificate: a build that shows it, or a core that forbids it. After an edit most certificates
still hold, or hold again once the change the edit made to one build is carried over (``carry``). What is left is swept
together, a row a swap (``sweep``); only the rest is searched for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple, Protocol

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.builds import Cover, Kept, cover_of
from specbuilder.reasoning.carry import Change, Rooms
from specbuilder.reasoning.engine import Core
from specbuilder.reasoning.sweep import Sweep
from specbuilder.reasoning.wiring import Wiring

KEPT_CERTIFICATES_MAX = 5_000
CORES_MAX = 40


class Swap(NamedTuple):
    """A literal wanted in place of some literals held."""

    lit: int
    released: tuple[int, ...] = ()


class Shown(NamedTuple):
    """A build that has the swap."""

    mask: int
    room: int
    """What it leaves of the limits, see ``carry.Rooms``."""


class Forbidden(NamedTuple):
    """A core that rules the swap out."""

    core: Core


@dataclass(slots=True)
class Case:
    """A swap with what is known of it."""

    swap: Swap
    certificate: Shown | Forbidden | None = None


class Held:
    """What is held, and what of it a swap keeps."""

    def __init__(self, lits: Sequence[int], count: int) -> None:
        self.lits = lits
        self._lits, self._count = frozenset(lits), count
        self._cover = cover_of(lits, count)
        self._kept: dict[tuple[int, ...], Cover] = {}

    def without(self, released: tuple[int, ...]) -> Cover:
        """What is held but for what a swap lets go of."""
        found = self._kept.get(released)
        if found is None:
            gone = cover_of([lit for lit in released if lit in self._lits], self._count).care
            found = self._kept[released] = Cover(self._cover.care & ~gone, self._cover.want & ~gone)
        return found

    def is_contrary(self, swap: Swap) -> bool:
        """Whether the opposite of the literal is held and not released."""
        return -swap.lit in self._lits and -swap.lit not in swap.released

    def has(self, core: Core, swap: Swap) -> bool:
        """Whether all of a core would be held under a swap."""
        lit, released = swap
        lits = self._lits
        return all(other == lit or (other in lits and other not in released) for other in core)


class Search(Protocol):
    """What is searched with. Handed in at each question and never kept: a reasoner that hung on to itself would wait
    for the collector, and it is the largest thing there is."""

    def hold(self, held: Sequence[int]) -> Core | None:
        """Begin with some literals; a core when propagation alone refutes them."""
        ...

    def search(self, held: Sequence[int], budget: Budget) -> Kept | Core:
        """A build that keeps some literals, or a core; raises Spent."""
        ...


class Beside:
    """The certificates of swaps."""

    def __init__(self, wiring: Wiring) -> None:
        self._wiring = wiring
        self._rooms = Rooms(wiring)
        self._cases: dict[Swap, Case] = {}
        self._cores: list[Core] = []
        self.current: Kept | None = None
        """The build that kept what was held last."""

    def build(self, swap: Swap) -> Kept | None:
        """The build that showed a swap when it was last asked for; None: it was not shown."""
        case = self._cases.get(swap)
        return self._rooms.kept(*case.certificate) if case and isinstance(case.certificate, Shown) else None

    def answers(
        self, held: Sequence[int], current: Kept | Core, swaps: Sequence[Swap], search: Search, budget: Budget
    ) -> list[bool | Core | None]:
        """See ``Reasoner.beside``. ``current``: a build that keeps ``held``, or a core of it."""
        question = Held(held, self._wiring.engine.count)
        cases = [self._case(swap) for swap in swaps]
        change: Change | None = None
        if isinstance(current, Kept):
            if self.current is not None and self.current.mask != current.mask:
                change = Change(self._wiring, self._rooms, self.current, current)
            self.current = current
        else:
            self._note(current)
        open_cases = [case for case in cases if not self._still_stands(case, question, change)]
        if open_cases and isinstance(current, Kept):
            open_cases = self._swept(open_cases, held, current)
        self._search_for_all(
            [case for case in open_cases if not self._is_ruled_out(case, question)], question, search, budget
        )
        return [self._answer(case, question) for case in cases]

    def answers_to_contrary(
        self, held: Sequence[int], swaps: Sequence[Swap], search: Search, budget: Budget
    ) -> list[bool | Core | None]:
        """The same when a literal and its opposite are both held: each swap is searched for by itself."""
        answers: list[bool | Core | None] = []
        for swap in swaps:
            case = self._case(swap)
            self._search_for(case, held, search, budget)
            match case.certificate:
                case Forbidden(core=core):
                    answers.append(core)
                    case.certificate = None
                case certificate:
                    answers.append(None if certificate is None else True)
        return answers

    def _case(self, swap: Swap) -> Case:
        case = self._cases.get(swap)
        if case is None:
            if len(self._cases) >= KEPT_CERTIFICATES_MAX:
                self._cases.clear()
            case = self._cases[swap] = Case(swap)
        return case

    def _still_stands(self, case: Case, held: Held, change: Change | None) -> bool:
        """Whether the certificate holds for what is held now, as it is or with the change carried over."""
        swap, certificate = case.swap, case.certificate
        if held.is_contrary(swap):
            return True
        if certificate is None:
            return False
        if isinstance(certificate, Forbidden):
            return held.has(certificate.core, swap)
        keep, mask = held.without(swap.released), certificate.mask
        if not (mask ^ keep.want) & keep.care:
            return True
        if change is None or not change.is_like_before(mask):
            return False
        moved, room = change.carried(mask), certificate.room + change.drawn
        if moved is None or (moved ^ keep.want) & keep.care or (moved ^ mask) >> abs(swap.lit) & 1:
            return False
        if not self._rooms.are_kept(room):
            return False
        case.certificate = Shown(moved, room)
        return True

    def _is_ruled_out(self, case: Case, held: Held) -> bool:
        """Whether a core found for another swap rules out this one too."""
        for core in self._cores:
            if held.has(core, case.swap):
                case.certificate = Forbidden(core)
                return True
        return False

    def _swept(self, cases: list[Case], held: Sequence[int], current: Kept) -> list[Case]:
        """Sweep cases a row each, from their old builds or from the present one; those not shown."""
        old = (case.certificate for case in cases)
        crowd = [self._rooms.kept(*shown) if isinstance(shown, Shown) else current for shown in old]
        sweep = Sweep(self._wiring, crowd, Cover(0, 0), self._wiring.engine.facts())
        every = sweep.alive
        free: dict[int, int] = {}
        for row, case in enumerate(cases):
            for lit in case.swap.released:
                free[lit] = free.get(lit, 0) | 1 << 8 * row
        for lit in held:
            sweep.force(lit, every & ~free.get(lit, 0))
        for row, case in enumerate(cases):
            sweep.force(case.swap.lit, 1 << 8 * row)
        builds = sweep.harvest()[0]
        for row, kept in builds.items():
            cases[row].certificate = self._shown(kept)
        return [case for row, case in enumerate(cases) if row not in builds]

    def _shown(self, kept: Kept) -> Shown:
        return Shown(kept.mask, self._rooms.of(kept))

    def _search_for_all(self, cases: Sequence[Case], held: Held, search: Search, budget: Budget) -> None:
        """Search for swaps one after another, beginning with what all of them keep: what is held first stays."""
        if len(cases) > 1:
            loose = {lit for case in cases for lit in case.swap.released}
            search.hold([lit for lit in held.lits if lit not in loose])
        for case in cases:
            if not self._is_ruled_out(case, held):
                self._search_for(case, held.lits, search, budget)

    def _search_for(self, case: Case, held: Sequence[int], search: Search, budget: Budget) -> None:
        case.certificate = None
        rest = [lit for lit in held if lit not in case.swap.released]
        try:
            found = search.search([*rest, case.swap.lit], budget)
        except Spent:
            return
        case.certificate = self._shown(found) if isinstance(found, Kept) else self._note(found)

    def _note(self, core: Core) -> Forbidden:
        if all(-lit not in core for lit in core):
            self._cores = [core, *self._cores[: CORES_MAX - 1]]
        return Forbidden(core)

    def _answer(self, case: Case, held: Held) -> bool | Core | None:
        if held.is_contrary(case.swap):
            return frozenset((case.swap.lit, -case.swap.lit))
        match case.certificate:
            case Shown():
                return True
            case Forbidden(core=core):
                return core
            case _:
                return None
