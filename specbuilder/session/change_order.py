"""A change to what was signed: what of the old build is done already, what undoing it costs, what comes too late.

A step of the build is done when its hold point is passed. What was fitted, cut or run in such a step and is not wanted
any more is undone in as many hours as fitting it took (ESTIMATE), a hole in the hours the firm counts for one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from specbuilder.calc.formulas.money import gross_pence
from specbuilder.model.catalogue import Catalogue, Option
from specbuilder.model.change_order import ChangeOrder, FreezePoint
from specbuilder.model.comparison import Comparison
from specbuilder.model.ids import BriefKey
from specbuilder.model.record import RecordKind, Undone
from specbuilder.model.spec import Choice, Spec
from specbuilder.model.stand import Stand
from specbuilder.workshop.view import Chosen, SpecView, view_of

_LATE = BriefKey("past_freeze")


@dataclass(frozen=True, slots=True)
class _Work:
    """Something of the old build that the change touches, at one step of the build."""

    step: str
    name: str
    """What is touched, by name."""
    undo: str = ""
    """How it is undone, in words; empty: nothing of it is there to be undone."""
    hours: float = 0
    holes: tuple[str, ...] = ()
    """Labels of the holes that are closed."""


def order_number(spec: Spec) -> int:
    """The number of the change order that brings this revision: counted over the signed revisions before it."""
    return len({record.revision for record in spec.recorded(RecordKind.SIGNED) if record.revision < spec.revision})


def settled(base: Stand, spec: Spec) -> Spec:
    """A revision that changes a signed one, with the work it makes useless in its price, and whether it comes late."""
    points = freeze_points(base, spec)
    answers, line = spec.answers, base.catalogue.brief.get(_LATE)
    if line is not None:
        answers = answers.with_answer(_LATE, "yes" if any(point.late for point in points) else "no")
    return replace(spec, answers=answers, undone=(*base.spec.undone, *undoing(base, spec)))


def undoing(base: Stand, spec: Spec) -> tuple[Undone, ...]:
    """The work that a change makes useless, in build order."""
    rate, number, passed = base.catalogue.firm.undo_rate_net_pence_per_h, order_number(spec), _passed(base, spec)
    done = (work for work in _touched(base, spec) if work.undo and work.hours and work.step in passed)
    return tuple(
        Undone(words=work.undo, hours=work.hours, net_pence=round(work.hours * rate), order=number, holes=work.holes)
        for work in done
    )


def freeze_points(base: Stand, spec: Spec) -> tuple[FreezePoint, ...]:
    """Every step of the build with what the change touches there."""
    passed, touched = _passed(base, spec), tuple(_touched(base, spec))
    points: list[FreezePoint] = []
    for step in base.catalogue.work:
        here = [work for work in touched if work.step == step]
        done = [work.undo for work in here if work.undo] if step in passed else []
        names = tuple(dict.fromkeys(work.name for work in here))
        points.append(FreezePoint(step=step, passed=passed.get(step, ""), touched=names, done=tuple(done)))
    return tuple(points)


def change_order(base: Stand, after: Stand, comparison: Comparison) -> ChangeOrder:
    """The change order from the signed revision ``base`` to the one that shall replace it."""
    number = order_number(after.spec)
    undone = tuple(work for work in after.spec.undone if work.order == number)
    vat_percent = after.catalogue.firm.vat_percent
    return ChangeOrder(
        number=number,
        of_revision=base.spec.revision,
        becomes=after.spec.revision,
        signed_on=base.spec.signed_on,
        reason=after.spec.reason,
        comparison=comparison,
        undone=undone,
        undone_gross_pence=gross_pence(sum(work.net_pence for work in undone), vat_percent),
        freeze=freeze_points(base, after.spec),
    )


def _passed(base: Stand, spec: Spec) -> dict[str, str]:
    """Steps whose hold point is passed, with the day; a step without one is passed with one that comes after it."""
    work = base.catalogue.work
    days = {record.about: record.day for record in spec.recorded(RecordKind.PASSED)}
    found = {step.id: days[step.hold_point] for step in work.values() if step.hold_point in days}
    for step in reversed(tuple(work.values())):
        later = [found[each.id] for each in work.values() if step.id in each.predecessors and each.id in found]
        if not step.hold_point and later:
            found[step.id] = min(later)
    return found


def _touched(base: Stand, spec: Spec) -> Iterator[_Work]:
    """All that goes out of the old build and all that comes into it, in build order."""
    was = view_of(base.catalogue, base.spec, base.report)
    now = view_of(base.catalogue, spec, replace(base.report, spec=spec))
    gone, come = _not_in(was, spec), _not_in(now, base.spec)
    found = [work for one in gone for work in _out(was, one)]
    found += [work for one in come for work in _in(now, one)]
    order = {step: number for number, step in enumerate(base.catalogue.work)}
    yield from sorted(found, key=lambda work: order.get(work.step, len(order)))


def _not_in(view: SpecView, spec: Spec) -> tuple[Chosen, ...]:
    """What stands in the view and not, or not at this place, in the other spec; of a count what is over."""
    found: list[Chosen] = []
    for one in view.in_build_order():
        other = next((c for c in spec.choices if (c.option, c.place) == (one.choice.option, one.choice.place)), None)
        over = one.choice.count - (other.count if other is not None and _same(other, one.choice) else 0)
        if over > 0:
            found.append(replace(one, choice=replace(one.choice, count=over)))
    return tuple(found)


def _same(one: Choice, other: Choice) -> bool:
    """Another owner or sheet makes it another part."""
    return (one.owner, one.own_part) == (other.owner, other.own_part)


def _out(view: SpecView, one: Chosen) -> Iterator[_Work]:
    option, catalogue, count = one.option, view.catalogue, one.choice.count
    if option is None or option.is_none:
        return
    step, name = view.build_step(option), option.name
    if option.labour_h:
        yield _Work(step, name, f"take out {name}, fitted at {step}", option.labour_h * count)
    elif option.mass_kg > 0:
        yield _Work(step, name)
    for at in dict.fromkeys(hole.freeze_step for hole in one.holes):
        labels = tuple(hole.id for hole in one.holes if hole.freeze_step == at)
        holes = len(labels) * count
        words = f"make good {holes} {'hole' if holes == 1 else 'holes'} of {name}, cut at {at}"
        yield _Work(at, name, words, catalogue.firm.undo_h_per_hole * holes, labels)
    yield from _cables(catalogue, option, len(one.circuits) * count, "take out the cables of")


def _in(view: SpecView, one: Chosen) -> Iterator[_Work]:
    """What comes in is work of its own, and in the price of the part; here it only says where it is needed."""
    option = one.option
    if option is None or option.is_none:
        return
    if option.labour_h or option.mass_kg > 0:
        yield _Work(view.build_step(option), option.name)
    yield from (_Work(hole.freeze_step, option.name) for hole in one.holes)
    yield from _cables(view.catalogue, option, len(one.circuits), "")


def _cables(catalogue: Catalogue, option: Option, circuits: int, undo: str) -> Iterator[_Work]:
    """Steps that count hours for every cable run."""
    for step in catalogue.work.values():
        if circuits and step.hours_per_circuit:
            words = f"{undo} {option.name}, done at {step.id}" if undo else ""
            yield _Work(step.id, option.name, words, step.hours_per_circuit * circuits)
