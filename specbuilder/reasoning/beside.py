"""Beside: of very many alternatives at once, each in place of something held, whether a build has it.

Each answer keeps its certificate: a build that shows it, or a core that forbids it. After an edit most certificates
still hold, or hold again once the change the edit made to one build is carried over (``carry``). What is left is swept
together, a row a swap (``sweep``); only the rest is searched for.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from specbuilder.reasoning.budget import Budget, Spent
from specbuilder.reasoning.builds import Cover, Kept, cover_of
from specbuilder.reasoning.carry import Change, Rooms
from specbuilder.reasoning.engine import Core
from specbuilder.reasoning.sweep import Sweep
from specbuilder.reasoning.wiring import Wiring

KEPT_CERTIFICATES_MAX = 5_000
CORES_MAX = 40


@dataclass(frozen=True, slots=True)
class Swap:
    """A literal wanted in place of some literals held."""

    lit: int
    released: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Shown:
    """A build that has the swap."""

    kept: Kept
    room: int


@dataclass(frozen=True, slots=True)
class Forbidden:
    """A core that rules the swap out."""

    core: Core
    cover: Cover


@dataclass(slots=True)
class Case:
    """A swap with what is known of it."""

    swap: Swap
    lit: Cover
    true: int
    false: int
    certificate: Shown | Forbidden | None = None

    def wanted(self, held: Cover) -> tuple[int, int]:
        """What a build that shows the swap must keep: which variables, and which of them true."""
        released = held.want & self.true | held.care & ~held.want & self.false
        return held.care & ~released | self.lit.care, held.want & ~released | self.lit.want

    def is_contrary(self, held: Cover) -> bool:
        """Whether the opposite of the literal is held and not released."""
        opposite = self.lit.care & held.care & (held.want ^ self.lit.want)
        return bool(opposite & ~(self.false if self.lit.want else self.true))


class Beside:
    """The certificates of swaps."""

    def __init__(self, wiring: Wiring, search: Callable[[Sequence[int], Budget], Kept | Core]) -> None:
        """``search``: a build that keeps some literals, or a core; raises Spent."""
        self._wiring, self._search = wiring, search
        self._rooms = Rooms(wiring)
        self._cases: dict[Swap, Case] = {}
        self._cores: list[Forbidden] = []
        self.current: Kept | None = None
        """The build that kept what was held last."""

    def build(self, swap: Swap) -> Kept | None:
        """The build that showed a swap when it was last asked for; None: it was not shown."""
        case = self._cases.get(swap)
        return case.certificate.kept if case and isinstance(case.certificate, Shown) else None

    def answers(
        self, held: Sequence[int], current: Kept | Core, swaps: Sequence[Swap], budget: Budget
    ) -> list[bool | Core | None]:
        """See ``Reasoner.beside``. ``current``: a build that keeps ``held``, or a core of it."""
        cover = cover_of(held, self._wiring.engine.count)
        cases = [self._case(swap) for swap in swaps]
        change: Change | None = None
        if isinstance(current, Kept):
            if self.current is not None and self.current.mask != current.mask:
                change = Change(self._wiring, self._rooms, self.current, current)
            self.current = current
        else:
            self._note(current)
        open_cases = [case for case in cases if not self._still_stands(case, cover, change)]
        if open_cases and isinstance(current, Kept):
            open_cases = self._swept(open_cases, held, current)
        for case in open_cases:
            if not self._is_ruled_out(case, cover):
                self._search_for(case, held, budget)
        return [self._answer(case, cover) for case in cases]

    def answers_to_contrary(
        self, held: Sequence[int], swaps: Sequence[Swap], budget: Budget
    ) -> list[bool | Core | None]:
        """The same when a literal and its opposite are both held: each swap is searched for by itself."""
        answers: list[bool | Core | None] = []
        for swap in swaps:
            case = self._case(swap)
            self._search_for(case, held, budget)
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
            count = self._wiring.engine.count
            true = cover_of([lit for lit in swap.released if lit > 0], count).care
            false = cover_of([lit for lit in swap.released if lit < 0], count).care
            case = self._cases[swap] = Case(swap, cover_of([swap.lit], count), true, false)
        return case

    def _still_stands(self, case: Case, held: Cover, change: Change | None) -> bool:
        """Whether the certificate holds for what is held now, as it is or with the change carried over."""
        if case.is_contrary(held):
            return True
        care, want = case.wanted(held)
        certificate = case.certificate
        if isinstance(certificate, Forbidden):
            return _is_within(certificate.cover, care, want)
        if certificate is None:
            return False
        mask = certificate.kept.mask
        if not (mask ^ want) & care:
            return True
        if change is None or not change.is_like_before(mask):
            return False
        moved = change.carried(mask)
        room = certificate.room + change.drawn
        if moved is None or (moved ^ want) & care or not self._rooms.are_kept(room):
            return False
        sums = tuple(map(int.__add__, certificate.kept.sums, change.shift))
        case.certificate = Shown(Kept(moved, sums), room)
        return True

    def _is_ruled_out(self, case: Case, held: Cover) -> bool:
        """Whether a core found for another swap rules out this one too."""
        care, want = case.wanted(held)
        for forbidden in self._cores:
            if _is_within(forbidden.cover, care, want):
                case.certificate = forbidden
                return True
        return False

    def _swept(self, cases: list[Case], held: Sequence[int], current: Kept) -> list[Case]:
        """Sweep cases a row each, from their old builds or from the present one; those not shown."""
        crowd = [case.certificate.kept if isinstance(case.certificate, Shown) else current for case in cases]
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
        shown = sweep.harvest()[0]
        for row, kept in shown.items():
            cases[row].certificate = Shown(kept, self._rooms.of(kept))
        return [case for row, case in enumerate(cases) if row not in shown]

    def _search_for(self, case: Case, held: Sequence[int], budget: Budget) -> None:
        case.certificate = None
        rest = [lit for lit in held if lit not in case.swap.released]
        try:
            found = self._search([*rest, case.swap.lit], budget)
        except Spent:
            return
        if isinstance(found, Kept):
            case.certificate = Shown(found, self._rooms.of(found))
        else:
            case.certificate = self._note(found)

    def _note(self, core: Core) -> Forbidden:
        forbidden = Forbidden(core, cover_of(list(core), self._wiring.engine.count))
        if all(-lit not in core for lit in core):
            self._cores = [forbidden, *self._cores[: CORES_MAX - 1]]
        return forbidden

    def _answer(self, case: Case, held: Cover) -> bool | Core | None:
        if case.is_contrary(held):
            return frozenset((case.swap.lit, -case.swap.lit))
        match case.certificate:
            case Shown():
                return True
            case Forbidden(core=core):
                return core
            case _:
                return None


def _is_within(core: Cover, care: int, want: int) -> bool:
    """Whether all literals of a core are among some literals."""
    return not (core.care & ~care or (core.want ^ want) & core.care)
