"""All ledgers and figures of a full build, beside the same sums done once in plain Python by the referee."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable
from dataclasses import replace
from statistics import median

from specbuilder.calc import made, told_beside
from specbuilder.calc.circuits.circuit_schedule import circuit_schedule
from specbuilder.model.kinds import LedgerKind
from specbuilder.session.situate import lay
from specbuilder.storage.rules_files import read_rules, rules_folder
from tests.independent.build import build
from tests.independent.sums import NAMES, SUMS

from .evaluation import examples


def run(rounds: int = 20) -> None:
    """Measure and print."""
    catalogue = read_rules(rules_folder())
    specs = examples(catalogue)
    ledgers = catalogue.ledgers
    calculations = made(catalogue)
    linear = [c for c in calculations if ledgers[c.id].kind is LedgerKind.LEDGER]
    beside = told_beside(catalogue)
    every, plain, sums, more, cables = list[float](), list[float](), list[float](), list[float](), list[float]()
    for name in NAMES:
        laid = lay(catalogue, specs[name], exact=False).situation
        here = build(name)
        for reading in (*calculations, *beside):
            reading.read(laid)
        gc.collect()
        for _ in range(rounds):
            s = replace(laid)
            every.append(_timed(lambda s=s: [c.read(s) for c in calculations]))
            s = replace(laid)
            sums.append(_timed(lambda s=s: [c.read(s) for c in linear]))
            s = replace(laid)
            more.append(_timed(lambda s=s: [c.read(s) for c in beside]))
            s = replace(laid)
            cables.append(_timed(lambda s=s: circuit_schedule(s)))
            plain.append(_timed(lambda b=here: [work_out(b) for work_out in SUMS.values()]))
    print(f"all sums      {_spread(every)}   (bound 10), {len(calculations)} ledgers and figures")
    print(f"              {median(every) / median(plain):4.1f}x the referee's {len(SUMS)}, {_spread(plain)}")
    print(f"linear ones   {_spread(sums)}   (bound 5), {len(linear)} ledgers")
    print(f"told beside   {_spread(more)}   (only when somebody looks), {len(beside)} figures")
    print(f"circuits      {_spread(cables)}")


def _timed(work: Callable[[], object]) -> float:
    began = time.perf_counter()
    work()
    return (time.perf_counter() - began) * 1000


def _spread(times: list[float]) -> str:
    ordered = sorted(times)
    return f"median {median(ordered):5.2f} ms, p95 {ordered[int(0.95 * (len(ordered) - 1))]:5.2f} ms, n={len(ordered)}"


if __name__ == "__main__":
    run()
