"""One evaluation of the whole demo catalogue, beside the least any evaluation could do: touch everything once."""

from __future__ import annotations

import gc
import time
from dataclasses import replace
from pathlib import Path
from statistics import median

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Edit, LeaveOut, Take
from specbuilder.model.spec import Spec
from specbuilder.rulegraph.graph import atoms_of
from specbuilder.session.apply import apply
from specbuilder.session.evaluate import evaluate
from specbuilder.storage.rules_files import read_rules, rules_folder
from specbuilder.storage.spec_files import read_spec


def examples(catalogue: Catalogue) -> dict[str, Spec]:
    """The example specs by name."""
    folder = Path(__file__).parents[2] / "examples"
    return {f.stem: read_spec(f.read_text("utf-8"), f.name, catalogue).spec for f in sorted(folder.glob("*.toml"))}


def run(rounds: int = 30) -> None:
    """Evaluate every example and the spec one edit further in turn, as undo and redo at the counter would."""
    began = time.perf_counter()
    catalogue = read_rules(rules_folder())
    read_s = time.perf_counter() - began
    specs = list(examples(catalogue).values())
    evaluate(catalogue, specs[0])
    gc.collect()
    gc.freeze()  # as the app does once the catalogue is read
    gc.set_threshold(20_000, 20, 50)
    times, edits, floors = list[float](), list[float](), list[float]()
    for spec in specs:
        for edited in (spec, apply(catalogue, spec, _edit(spec)).spec) * (rounds // 2):
            here = replace(edited)  # a value of its own, so that no report of it is at hand
            times.append(_timed(lambda here=here: evaluate(catalogue, here)))
            floors.append(_timed(lambda here=here: _touch(catalogue, here)))
            edits.append(_timed(lambda here=here: apply(catalogue, here, _edit(here))))
    p95 = sorted(times)[int(0.95 * len(times))]
    print(
        f"evaluation    median {median(times) * 1000:5.2f} ms (bound 5), p95 {p95 * 1000:5.2f} ms,"
        f" ratio to touching everything once {median(times) / median(floors):4.1f}   n={len(times)}"
    )
    print(f"an edit       median {median(edits) * 1000:5.2f} ms   n={len(edits)}")
    print(f"catalogue     read once in {read_s * 1000:5.0f} ms")


def _timed(work) -> float:  # type: ignore[no-untyped-def]
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def _edit(spec: Spec) -> Edit:
    last = spec.choices[-1].option if spec.choices else None
    return LeaveOut(option=last) if last else Take(option=last)  # type: ignore[arg-type]


def _touch(catalogue: Catalogue, spec: Spec) -> int:
    """Every option with what it gives and needs, every atom of every rule, every choice: once."""
    seen = sum(len(o.gives) + len(o.needs) + len(o.zones) for o in catalogue.options.values())
    seen += sum(1 for r in catalogue.rules.values() for side in (r.when, r.then) for _ in atoms_of(side))
    return seen + sum(c.count for c in spec.choices)
