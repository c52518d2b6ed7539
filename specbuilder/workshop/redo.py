"""What a signed change asks for at steps of the build that were passed before it: done again before work goes on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from specbuilder.model.catalogue import Catalogue, WorkStep
from specbuilder.model.change_order import ChangeOrder
from specbuilder.model.comparison import ChangeKind, Comparison, PieceChange, PieceKind
from specbuilder.model.holes import HoleLine
from specbuilder.model.papers import Case
from specbuilder.model.record import Record, RecordKind
from specbuilder.model.spec import Choice, Spec

from .gaps import gap_mm
from .pieces import hole_lines, size_of
from .view import Chosen, SpecView, view_of

SOUND_MM = 50
"""So much sound metal stays between a closed hole and a new one (ESTIMATE): the patch needs an edge to sit on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Closing:
    """A hole that is cut and not wanted any more."""

    hole: HoleLine
    """As it was cut."""
    near: tuple[str, ...]
    """Labels of new holes that overlap it or come too close."""
    unsure: tuple[str, ...]
    """Labels of new holes in the same surface of which nobody can tell before they are measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Redo:
    """One passed step of the build that the change touches."""

    step: WorkStep
    hold: WorkStep
    """The step at whose hold point it is looked at: itself, or the next that has one."""
    passed: Record
    """Before the change."""
    revision: int
    """The signed revision it was passed for."""
    again: Record | None
    """After it."""
    close: tuple[Closing, ...]
    out: tuple[str, ...]
    """Parts that were fitted and cables that were run, to be taken out, in words of the workshop."""
    cut: tuple[HoleLine, ...]
    fit: tuple[Chosen, ...]
    circuits: tuple[PieceChange, ...]

    @property
    def empty(self) -> bool:
        """Nothing of this step is touched."""
        return not (self.close or self.out or self.cut or self.fit or self.circuits)


@dataclass(frozen=True, slots=True, kw_only=True)
class Owed:
    """Holes that an older change, or one whose old revision is not at hand, left to be closed."""

    order: int
    words: str
    labels: tuple[str, ...]


def redos(case: Case, view: SpecView) -> tuple[Redo, ...]:
    """One for every passed step that the newest change touches, in build order."""
    if case.before is None or case.changes is None or case.change_order is None:
        return ()
    was = view_of(case.before.catalogue, case.before.spec, case.before.report)
    find = _Finder(was=was, now=view, order=case.change_order, changes=case.changes)
    found = (find.redo(step) for step in view.catalogue.work.values())
    return tuple(redo for redo in found if redo is not None and not redo.empty)


def owed(case: Case) -> tuple[Owed, ...]:
    """What earlier changes left to be closed, as long as its hold point was not passed after they were signed."""
    spec, catalogue = case.stand.spec, case.stand.catalogue
    newest = case.change_order.number if case.change_order is not None else None
    found = (work for work in spec.undone if work.holes and work.order != newest)
    return tuple(
        Owed(order=work.order, words=work.words, labels=work.holes)
        for work in found
        if not _is_passed_since(catalogue, spec, work.holes, _signed_at(spec, work.order))
    )


def _is_passed_since(catalogue: Catalogue, spec: Spec, labels: Iterable[str], signed_at: str) -> bool:
    steps = {hole.freeze_step for o in catalogue.options.values() for hole in o.holes if hole.id in set(labels)}
    holds = {catalogue.work[step].hold_point for step in steps if step in catalogue.work}
    passed = spec.recorded(RecordKind.PASSED)
    return bool(holds) and all(any(r.about == hold and r.at > signed_at for r in passed) for hold in holds)


def _signed_at(spec: Spec, order: int) -> str:
    """When a change order was signed: they are counted over the signed revisions before them."""
    signed = {record.revision: record.at for record in spec.recorded(RecordKind.SIGNED)}
    revisions = sorted(signed)
    return signed[revisions[order]] if order < len(revisions) else _NEVER


_NEVER = "9999"
"""After every moment that is written down."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finder:
    was: SpecView
    now: SpecView
    order: ChangeOrder
    changes: Comparison

    def redo(self, step: WorkStep) -> Redo | None:
        """None for a step that was not passed before the change."""
        hold, passed, again = self._passed(step)
        if hold is None or passed is None:
            return None
        gone, come = self._holes()
        cut = tuple(hole for hole in come if _frozen_at(self.now, hole) == step.id)
        return Redo(
            step=step,
            hold=hold,
            passed=passed,
            revision=self.order.of_revision,
            again=again,
            close=tuple(_closing(hole, come) for hole in gone if _frozen_at(self.was, hole) == step.id),
            out=tuple(self._out(step)),
            cut=cut,
            fit=tuple(self._fit(step)),
            circuits=tuple(p for p in self.changes.pieces if p.kind is PieceKind.CIRCUIT and step.hours_per_circuit),
        )

    def _passed(self, step: WorkStep) -> tuple[WorkStep | None, Record | None, Record | None]:
        """Where it is looked at, when it was passed before the change, and after it."""
        spec = self.now.spec
        signed = [r.at for r in spec.recorded(RecordKind.SIGNED) if r.revision == spec.revision]
        since = signed[-1] if signed else _NEVER
        after = (one for one in self.now.catalogue.work.values() if step.id in one.predecessors and one.hold_point)
        for hold in (step,) if step.hold_point else tuple(after):
            records = [r for r in spec.recorded(RecordKind.PASSED) if r.about == hold.hold_point]
            before = [r for r in records if r.at <= since]
            if before:
                return hold, before[-1], next((r for r in reversed(records) if r.at > since), None)
        return None, None, None

    def _holes(self) -> tuple[list[HoleLine], list[HoleLine]]:
        """Those that are cut and not wanted any more, and those that are new."""
        gone, come = list[HoleLine](), list[HoleLine]()
        for piece in self.changes.pieces:
            before, after = _of_counts(piece) if piece.kind is PieceKind.HOLE else (None, None)
            gone += [before] if before is not None else []
            come += [after] if after is not None else []
        told = {hole.id for hole in (*gone, *come)}
        labels = {label for work in self.order.undone for label in work.holes} - told
        gone += [hole for hole in hole_lines(self.was) if hole.id in labels]
        come += [hole for hole in hole_lines(self.now) if hole.id in labels]
        return gone, come

    def _out(self, step: WorkStep) -> Iterator[str]:
        """What the change says is done there; holes are told by their labels."""
        holes = {work.words for work in self.order.undone if work.holes}
        for point in self.order.freeze:
            if point.step == step.id:
                yield from (words for words in point.done if words not in holes)

    def _fit(self, step: WorkStep) -> Iterator[Chosen]:
        """Parts that come in, and those that stand elsewhere now, of this step."""
        old = [_as_fitted(choice) for choice in self.was.spec.choices]
        for one in self.now.in_build_order():
            option = one.option
            if option is None or option.is_none or self.now.build_step(option) != step.id:
                continue
            if (option.mass_kg or option.labour_h) and _as_fitted(one.choice) not in old:
                yield one


def _as_fitted(choice: Choice) -> Choice:
    """Without what makes no other part of it."""
    return replace(choice, note="", at="", came_with=())


def _of_counts(piece: PieceChange) -> tuple[HoleLine | None, HoleLine | None]:
    """Both sides of a hole; where only the number of alike ones differs, those that are over."""
    before = piece.before if isinstance(piece.before, HoleLine) else None
    after = piece.after if isinstance(piece.after, HoleLine) else None
    if before is None or after is None or piece.change is not ChangeKind.RESIZED:
        return before, after
    if size_of(replace(before, count=after.count)) != size_of(after):
        return before, after
    more = after.count - before.count
    return (None, replace(after, count=more)) if more > 0 else (replace(before, count=-more), None)


def _closing(hole: HoleLine, come: list[HoleLine]) -> Closing:
    gaps = [(new.id, gap_mm(hole, new)) for new in come]
    return Closing(
        hole=hole,
        near=tuple(label for label, gap in gaps if gap is not None and gap < SOUND_MM),
        unsure=tuple(label for label, gap in gaps if gap is None),
    )


def _frozen_at(view: SpecView, line: HoleLine) -> str:
    """The step at whose hold point a hole is frozen."""
    option = view.catalogue.options.get(line.option)
    holes = option.holes if option is not None else ()
    return next((hole.freeze_step for hole in holes if hole.id == line.id), "")
