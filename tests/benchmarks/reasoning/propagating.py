"""Propagating one choice costs by the rules it touches, not by the catalogue: shown at three sizes without limits."""

from __future__ import annotations

from random import Random
from statistics import median
from time import perf_counter

from specbuilder.reasoning.engine import Engine
from tests.benchmarks.reasoning.generated import model_document
from tests.benchmarks.reasoning.measure import percentile
from tests.benchmarks.reasoning.models import compiled

SIZES = (150, 1_500, 15_000)
CHOICES = 400
REPEATS = 5


def propagation_table() -> list[str]:
    """One row a size: microseconds for one choice and its taking back, and how much it touched."""
    rows = [
        f"{'options':>8s} {'rules':>8s} {'median us':>10s} {'p95 us':>8s} {'max us':>8s} "
        f"{'set':>6s} {'us / set':>9s} {'n':>5s}"
    ]
    for size in SIZES:
        model = compiled(model_document(size, 1, limits=False))
        engine, random = Engine(model.problem), Random(size)
        times: list[float] = []
        per_literal: list[float] = []
        reached: list[int] = []
        for lit in random.choices(model.options, k=CHOICES):
            took, count = _best_of(engine, lit)
            if count:
                times.append(took)
                reached.append(count)
                per_literal.append(took / count)
        rows.append(
            f"{size:8d} {len(model.problem.clauses):8d} {median(times):10.1f} {percentile(times, 0.95):8.1f} "
            f"{max(times):8.1f} {median(reached):6.0f} {median(per_literal):9.2f} {len(times):5d}"
        )
    return rows


def _best_of(engine: Engine, lit: int) -> tuple[float, int]:
    """Microseconds of the quickest of a few goes, and how many literals it set."""
    best, count = float("inf"), 0
    for _ in range(REPEATS):
        mark = engine.mark()
        start = perf_counter()
        engine.assume(lit)
        count = engine.mark() - mark
        engine.undo(mark)
        best = min(best, perf_counter() - start)
    return best * 1e6, count
