"""One peer through the questions of one task, in a process of its own with a cap; and the table."""

from __future__ import annotations

import gc
import multiprocessing
import os
from collections import Counter
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from statistics import median
from time import monotonic, perf_counter
from typing import Any

from tests.benchmarks.reasoning.models import Model
from tests.benchmarks.reasoning.tasks import Question, Task, answerer, comparer


@dataclass(slots=True, kw_only=True)
class Measured:
    """What one peer did with the questions."""

    peer: str
    build_ms: float | None = None
    times_ms: dict[int, float] = field(default_factory=dict)
    answers: dict[int, Hashable] = field(default_factory=dict)
    note: str = "stopped at the cap"


def measure(
    task: Task, peer: Callable[[Model], Any], model: Model, asked: Sequence[Question], seconds: float
) -> Measured:
    """Ask until everything is answered or the cap is reached."""
    here, there = multiprocessing.get_context("fork").Pipe(duplex=False)
    child = multiprocessing.get_context("fork").Process(target=_child, args=(there, task, peer, model, asked))
    child.start()
    there.close()
    measured = Measured(peer=getattr(peer, "__name__", "peer"))
    end = monotonic() + seconds
    try:
        while here.poll(max(0.0, end - monotonic())):
            match here.recv():
                case ("built", float(took)):
                    measured.build_ms = took
                case ("answer", int(at), float(took), answer):
                    measured.times_ms[at], measured.answers[at] = took, answer
                case ("end", str(note)):
                    measured.note = note
                    break
    except EOFError:
        measured.note = "died"
    child.kill()
    child.join()
    return measured


def _child(pipe: Connection, task: Task, peer: Callable[[Model], Any], model: Model, asked: Sequence[Question]) -> None:
    silent = os.open(os.devnull, os.O_WRONLY)
    os.dup2(silent, 1)
    gc.collect()
    gc.freeze()
    try:
        start = perf_counter()
        answer_of = answerer(task, peer(model))
        pipe.send(("built", (perf_counter() - start) * 1e3))
        shown = comparer(task, model)
        for at, question in enumerate(asked):
            start = perf_counter()
            answer = answer_of(question)
            took = (perf_counter() - start) * 1e3
            pipe.send(("answer", at, took, shown(question, answer)))
        pipe.send(("end", ""))
    except Exception as failure:  # noqa: BLE001 - a peer that fails is a result too
        pipe.send(("end", f"{type(failure).__name__}: {failure}"))


def percentile(times: Sequence[float], share: float) -> float:
    """The value that so large a share lies under."""
    ordered = sorted(times)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]


HEADER = (
    f"{'model':24s} {'task':8s} {'who':8s} {'build':>8s} {'first':>9s} {'median':>9s} {'p95':>9s} {'max':>9s} "
    f"{'n':>5s} {'same':>8s}  ours / this: median, p95 on common questions"
)


def table(model: Model, task: Task, all_measured: Sequence[Measured], asked: int) -> list[str]:
    """The rows of one task on one model; ours comes first."""
    ours = all_measured[0]
    agreed = {at: _majority(at, all_measured) for at in range(asked)}
    rows = []
    for one in all_measured:
        head = f"{model.name[:24]:24s} {task.value:8s} {one.peer:8s} "
        if not one.times_ms:
            rows.append(f"{head}{one.note}")
            continue
        times = _counted(task, one)
        same = sum(one.answers[at] == agreed[at] for at in one.answers if one.answers[at] is not None)
        numbers = [one.build_ms or 0.0, one.times_ms[0], *_spread(times)]
        texts = " ".join(f"{number:9.3f}" for number in numbers[1:])
        ratio = "" if one is ours else _ratio(task, ours, one)
        rows.append(
            f"{head}{numbers[0]:8.1f} {texts} {len(times):5d} {same:4d}/{len(one.answers):<3d}  {ratio} {one.note}"
        )
    rows.append(_verdict(task, ours, all_measured[1:]))
    return rows


def _counted(task: Task, one: Measured) -> dict[int, float]:
    """Where the first question is one with nothing held, it stands in a column of its own."""
    return {at: took for at, took in one.times_ms.items() if at or task not in (Task.STATES, Task.BEST)}


def _spread(times: dict[int, float]) -> tuple[float, float, float]:
    values = list(times.values()) or [float("nan")]
    return median(values), percentile(values, 0.95), max(values)


def _ratios(task: Task, ours: Measured, other: Measured) -> tuple[float, float, int] | None:
    mine, theirs = _counted(task, ours), _counted(task, other)
    both = sorted(mine.keys() & theirs.keys())
    if not both:
        return None
    one, two = [mine[at] for at in both], [theirs[at] for at in both]
    return median(one) / median(two), percentile(one, 0.95) / percentile(two, 0.95), len(both)


def _ratio(task: Task, ours: Measured, other: Measured) -> str:
    ratios = _ratios(task, ours, other)
    return "" if ratios is None else f"{ratios[0]:.2f}x, {ratios[1]:.2f}x (n={ratios[2]})"


def _verdict(task: Task, ours: Measured, others: Sequence[Measured]) -> str:
    ratios = {other.peer: ratio for other in others if (ratio := _ratios(task, ours, other)) is not None}
    if not ratios:
        return "    nobody to compare with"
    by_median, by_tail = max(ratios, key=lambda p: ratios[p][0]), max(ratios, key=lambda p: ratios[p][1])
    return (
        f"    ours to the best peer: median {ratios[by_median][0]:.2f}x ({by_median}), "
        f"p95 {ratios[by_tail][1]:.2f}x ({by_tail})"
    )


def _majority(at: int, all_measured: Sequence[Measured]) -> Hashable:
    votes = Counter(one.answers[at] for one in all_measured if one.answers.get(at) is not None)
    return votes.most_common(1)[0][0] if votes else None
