"""Print our reasoning beside its peers, in one run.

    python -m tests.benchmarks.reasoning [MODEL.json VISIT.json] [--models DIR] [--only NAME ...]
                                         [--tasks states,reason,repairs,best,propagate] [--seconds N] [--peers NAME ...]

``DIR`` (or the environment variable SPECBUILDER_MODELS) holds ``models/*.json`` and, by the same names,
``sessions/*.json``. Without it the models are made up here.
"""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks.reasoning.generated import model_document, visit_document
from tests.benchmarks.reasoning.measure import HEADER, measure, table
from tests.benchmarks.reasoning.models import Model, Step, compiled, read_model, read_visit, visit_of
from tests.benchmarks.reasoning.propagating import propagation_table
from tests.benchmarks.reasoning.tasks import PEERS, Task, questions

MADE = ((150, True), (1500, True), (1500, False))
"""Sizes made up when no folder is named, and whether they have limits."""


def main() -> None:
    """Measure and print."""
    arguments = _arguments()
    names = arguments.tasks.split(",")
    tasks = [task for task in Task if task.value in names]
    if tasks:
        print(HEADER)
        for model, visit in _models(arguments):
            _compare(model, visit, tasks, arguments)
    if "propagate" in names:
        print(*propagation_table(), sep="\n")


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.reasoning")
    parser.add_argument("pair", nargs="*", help="MODEL.json VISIT.json")
    parser.add_argument("--models", default=os.environ.get("SPECBUILDER_MODELS", ""))
    parser.add_argument("--only", nargs="+", default=[], help="names of models, or the start of them")
    parser.add_argument("--tasks", default="states,reason,repairs,best,propagate")
    parser.add_argument("--peers", nargs="+", default=[])
    parser.add_argument("--seconds", type=float, default=30.0, help="cap of one peer on one task")
    return parser.parse_args()


def _models(arguments: argparse.Namespace) -> Iterator[tuple[Model, list[Step]]]:
    if arguments.pair:
        model, visit = map(Path, arguments.pair)
        yield read_model(model), read_visit(visit)
    elif arguments.models:
        folder = Path(arguments.models)
        for path in sorted((folder / "models").glob("*.json")):
            if not arguments.only or path.stem.startswith(tuple(arguments.only)):
                yield read_model(path), read_visit(folder / "sessions" / path.name)
    else:
        for size, limits in MADE:
            document = model_document(size, 1, limits=limits)
            if not arguments.only or document["name"].startswith(tuple(arguments.only)):
                yield compiled(document), visit_of(visit_document(document, 1))


def _compare(model: Model, visit: list[Step], tasks: list[Task], arguments: argparse.Namespace) -> None:
    for task, asked in questions(model, visit, tasks).items():
        if not asked:
            print(f"{model.name[:24]:24s} {task.value:8s} nothing to ask")
            continue
        peers = [peer for peer in PEERS[task] if not arguments.peers or peer.__name__ in ("Ours", *arguments.peers)]
        measured = [measure(task, peer, model, asked, arguments.seconds) for peer in peers]
        print(*table(model, task, measured, len(asked)), sep="\n", flush=True)


if __name__ == "__main__":
    main()
